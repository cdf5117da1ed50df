/**
 * The chain: each entry holds the hash of the entry before it in the site's log and of the one before it in its
 * own stream, so that the whole log, or one job alone, shows whether anything in it was changed. Pure.
 */
import { hash } from 'node:crypto';
import type { Json } from '../../procedures/json.ts';
import type { Head, LogEntry, SealedEntry, StoredLine, StreamHead } from '../store/store.ts';
import { canonical, parseStrict } from './canonical.ts';
import { isCanonical, membersOf } from './canonical-look.ts';

/** What stands for the hash before the first entry. */
export const NO_HASH = '0'.repeat(64);

export const EMPTY_HEAD: Head = { seq: 0, hash: NO_HASH };
export const EMPTY_STREAM: StreamHead = { place: 0, hash: NO_HASH };

/** An entry before it has its place: all but what the chain adds. */
export type UnsealedEntry = Omit<LogEntry, 'seq' | 'place' | 'previousHash' | 'previousInStream' | 'hash'>;

/** SHA-256 of a text's UTF-8 bytes, 64 hexadecimal digits. */
export const sha256 = (text: string): string => hash('sha256', text, 'hex');

/** A digest of what a request asks for, for `act`. Leave PINs out: a digest of four digits is soon guessed. */
export function fingerprintOf(content: Json): string {
  return sha256(canonical(content));
}

/**
 * Gives an entry its place behind the two heads. The entry returned is what a reader of the bytes will get.
 *
 * @throws TypeError if the entry holds what JSON cannot carry
 * @example seal(draft, { head: EMPTY_HEAD, streamHead: EMPTY_STREAM }).entry.seq // 1
 */
export function seal(
  unsealed: UnsealedEntry,
  heads: { readonly head: Head; readonly streamHead: StreamHead },
): SealedEntry {
  const bytes = canonical({
    ...unsealed,
    seq: heads.head.seq + 1,
    place: heads.streamHead.place + 1,
    previousHash: heads.head.hash,
    previousInStream: heads.streamHead.hash,
  });
  return { entry: { ...JSON.parse(bytes), hash: sha256(bytes) }, bytes };
}

/** A stored line that is not what was sealed. */
export class LogDamaged extends Error {
  override readonly name = 'LogDamaged';
  readonly line: StoredLine;
  readonly what: string;

  constructor(line: StoredLine, what: string) {
    super(`The log is damaged at entry ${line.seq} (${line.stream}, place ${line.place}): ${what}.`);
    this.line = line;
    this.what = what;
  }
}

/**
 * The entry of a stored line, after checking that the bytes are the ones hashed and that the columns beside
 * them say the same as the bytes.
 *
 * @throws LogDamaged saying what is wrong
 */
export function unseal(line: StoredLine): LogEntry {
  requireHash(line);
  // Nobody else has what was just read, so that it need not be copied.
  const entry: LogEntry = Object.assign(readFields(line), { hash: line.hash });
  for (const field of ['seq', 'stream', 'place'] as const) {
    if (entry[field] !== line[field]) {
      throw new LogDamaged(line, `its content says ${field} ${entry[field]}`);
    }
  }
  return entry;
}

/** What the chain needs of an entry. */
export type Link = Pick<LogEntry, 'seq' | 'stream' | 'place' | 'previousHash' | 'previousInStream' | 'hash'>;

/**
 * As `unseal`, of no more than the chain needs: of a line that is as it was sealed no value is made, which would take most of the time.
 *
 * @throws LogDamaged as `unseal`
 */
export function linkOf(line: StoredLine): Link {
  requireHash(line);
  return plainLink(line) ?? unseal(line);
}

/** Undefined for whatever wants a closer look. */
function plainLink(line: StoredLine): Link | undefined {
  const texts = membersOf(line.bytes, NAMES);
  if (texts === undefined) return undefined;
  const [at, codeVersion, kind, place, previousHash, previousInStream, screen, seq, stream] = texts;
  const isSame =
    Number(seq) === line.seq && Number(place) === line.place && stream?.slice(1, -1) === line.stream;
  const isComplete = isText(at) && isText(codeVersion) && isText(kind) && isText(screen) && isText(stream);
  if (!isSame || !isComplete || !isText(previousHash) || !isText(previousInStream)) return undefined;
  return {
    seq: line.seq,
    stream: line.stream,
    place: line.place,
    hash: line.hash,
    previousHash: previousHash.slice(1, -1),
    previousInStream: previousInStream.slice(1, -1),
  };
}

/** Of the text of a value. */
function isText(value: string | undefined): value is string {
  return value?.startsWith('"') === true;
}

function requireHash(line: StoredLine): void {
  if (sha256(line.bytes) !== line.hash) throw new LogDamaged(line, 'its content does not give its hash');
}

/** @throws LogDamaged where the bytes are not the one canonical text of what they say */
function readCanonical(line: StoredLine): Json {
  try {
    const read: Json = JSON.parse(line.bytes);
    // Nearly every line: no name stands twice in a text that comes out again letter by letter.
    if (isCanonical(line.bytes) || canonical(read) === line.bytes) return read;
    // Says which fault it is, where it is one that a reader can trip over.
    parseStrict(line.bytes);
  } catch (error) {
    throw new LogDamaged(line, `its content is not JSON (${error instanceof Error ? error.message : error})`);
  }
  throw new LogDamaged(line, 'its content is not in canonical form');
}

const FIELDS = Object.entries({
  seq: 'number',
  stream: 'string',
  place: 'number',
  at: 'string',
  screen: 'string',
  kind: 'string',
  codeVersion: 'string',
  previousHash: 'string',
  previousInStream: 'string',
} as const satisfies Partial<Record<keyof LogEntry, string>>) as readonly [keyof LogEntry, string][];
/** In their canonical order. */
const NAMES = FIELDS.map(([name]) => name).sort();

function readFields(line: StoredLine): Omit<LogEntry, 'hash'> {
  const fields = readCanonical(line) as unknown as LogEntry | null;
  for (const [name, type] of FIELDS) {
    if (typeof fields?.[name] !== type) {
      throw new LogDamaged(line, `its content has no ${name}`);
    }
  }
  return fields as LogEntry;
}
