import { StorageUnavailable } from '../storage-unavailable.ts';

/** By the codes of the system and of the database (its manual, appendix A). */
const WORDS: Readonly<Record<string, string>> = {
  ECONNREFUSED: 'nothing answers at the address of the database',
  ENOENT: 'nothing answers at the address of the database',
  ENOTFOUND: 'the name of the machine with the database is not known',
  EAI_AGAIN: 'the name of the machine with the database cannot be looked up',
  ECONNRESET: 'the connection to the database was lost',
  EPIPE: 'the connection to the database was lost',
  ETIMEDOUT: 'the database does not answer',
  EHOSTUNREACH: 'the machine with the database cannot be reached',
  ENETUNREACH: 'the machine with the database cannot be reached',
  '08006': 'the connection to the database was lost',
  '25006': 'the database takes nothing to write',
  '25P03': 'this server held the log for too long',
  '28000': 'the database does not let this server in: look at its name and password',
  '28P01': 'the database does not let this server in: look at its name and password',
  '3D000': 'there is no database of that name',
  '53100': 'the disk of the database is full',
  '53300': 'the database has no connection left for this server',
  '55P03': 'another server holds the log for too long',
  '57014': 'the database took too long',
  '57P01': 'the database is being stopped',
  '57P02': 'the database was stopped',
  '57P03': 'the database is being started',
};

/** What the driver says without a code. */
const SAID: readonly (readonly [RegExp, string])[] = [
  [
    /terminated|connection error|connection ended|closed the connection/i,
    'the connection to the database was lost',
  ],
  [/timeout/i, 'the database does not answer'],
  [/SSL|certificate/i, 'the database and this server agree on no encryption'],
];

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

/** In words for whoever looks after the server; undefined for what is no matter of reaching the database. */
function knownReason(error: unknown): string | undefined {
  const word = WORDS[codeOf(error)];
  if (word !== undefined || !(error instanceof Error)) return word;
  // A code of five characters comes from the database itself, which has said its reason.
  if (/^[0-9A-Z]{5}$/.test(codeOf(error))) return undefined;
  return SAID.find(([said]) => said.test(error.message))?.[1];
}

/** Never the connection string: the driver's messages do not hold it. */
export function reasonOf(error: unknown): string {
  return knownReason(error) ?? (error instanceof Error ? error.message : String(error));
}

/** Why it was not opened, for the console. */
export function cannotOpen(error: unknown): Error {
  return new Error(`The database cannot be used: ${reasonOf(error)}.`, { cause: error });
}

/** A failed write: nobody is told that it was recorded. */
export function notWritten(error: unknown): StorageUnavailable {
  if (error instanceof StorageUnavailable) return error;
  return new StorageUnavailable(reasonOf(error), { cause: error });
}

/** A failed look: a database that cannot be reached is no fault of this program. */
export function notRead(error: unknown): unknown {
  const reason = knownReason(error);
  return reason === undefined ? error : new StorageUnavailable(reason, { cause: error, reading: true });
}
