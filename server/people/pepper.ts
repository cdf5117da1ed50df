import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const PEPPER_BYTES = 32;

/**
 * The key that PINs are hashed with, in a file beside the database and not in it: a copy of the database alone, a
 * backup for example, gives no PIN away. Whoever copies the whole data folder has both.
 *
 * @throws Error if the file is there and is not what was written
 */
export function readPepper(folder: string): Uint8Array {
  const file = join(folder, 'yokeside.pepper');
  if (!existsSync(file)) {
    // `wx`: never over another one, or nobody could sign in any more.
    writeFileSync(file, `${randomBytes(PEPPER_BYTES).toString('hex')}\n`, { mode: 0o600, flag: 'wx' });
  }
  const text = readFileSync(file, 'utf8').trim();
  if (!/^[0-9a-f]{64}$/.test(text))
    throw new Error(`The file ${file} was changed. Put the backup of it back.`);
  return Buffer.from(text, 'hex');
}
