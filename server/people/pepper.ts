import { randomBytes } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, unlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const PEPPER_BYTES = 32;

export interface PepperPlace {
  /** Where the key lies; made there if it is the first start. */
  readonly file: string;
  /** The data folder: an earlier release kept the key in it, and it is moved out. */
  readonly dataFolder: string;
  /** PINs have been hashed already: another key would let nobody in any more. */
  readonly isInUse: boolean;
}

/**
 * The key that PINs are hashed with. It lies neither in the database nor in the data folder, so that a copy of either
 * gives no PIN away: a short PIN is soon tried out by whoever has hash and key. Whoever may read all files of this
 * machine has both, and against them only the slow hash is left.
 *
 * @throws Error in plain words if the key is missing, or is not what was written
 */
export function readPepper({ file, dataFolder, isInUse }: PepperPlace): Uint8Array {
  const former = join(dataFolder, 'yokeside.pepper');
  if (!existsSync(file)) {
    if (existsSync(former)) moveOut(former, file);
    else if (isInUse) throw missing(file);
    else writePepper(file, randomBytes(PEPPER_BYTES).toString('hex'));
  }
  const text = readFileSync(file, 'utf8').trim();
  if (!/^[0-9a-f]{64}$/.test(text))
    throw new Error(`The file ${file} was changed. Put the backup of it back.`);
  return Buffer.from(text, 'hex');
}

function writePepper(file: string, text: string): void {
  const folder = dirname(file);
  if (!existsSync(folder)) mkdirSync(folder, { recursive: true, mode: 0o700 });
  // `wx`: never over another one, or nobody could sign in any more.
  writeFileSync(file, `${text}\n`, { mode: 0o600, flag: 'wx' });
  chmodSync(file, 0o600);
}

/** Written there before it goes here: a stop between the two leaves both. */
function moveOut(former: string, file: string): void {
  writePepper(file, readFileSync(former, 'utf8').trim());
  unlinkSync(former);
}

function missing(file: string): Error {
  return new Error(
    `The key of the PINs is not at ${file}, and without it nobody can sign in. Put its backup there, or name its ` +
      'place in YOKESIDE_PEPPER. Lost for good: npm run let-in -- --new-key "the name of an engineer or supervisor".',
  );
}
