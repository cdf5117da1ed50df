import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder of the project: the next one up with a `package.json`, also for what was compiled into `.cache`. */
export const ROOT = nextWithPackage(dirname(fileURLToPath(import.meta.url)));

function nextWithPackage(folder: string): string {
  if (existsSync(join(folder, 'package.json'))) return folder;
  if (dirname(folder) === folder) throw new Error('No folder above holds a package.json.');
  return nextWithPackage(dirname(folder));
}
