import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

/** What a build makes beside the programs, from the folder that it is built into. */
export const VERIFIER = 'server/verifier/verify.js';
export const BUILT_ASSETS = 'server/assets';

const HERE = dirname(fileURLToPath(import.meta.url));

/** The folder that holds package.json: the same for the program as written and as built into a folder below. */
export function projectFolder(): string {
  const found = folderAbove(HERE, 'package.json');
  if (found === null) throw new Error('There is no package.json above the program. Install it again.');
  return found;
}

/** The folder that this program was built into; null where it runs as it was written. */
export function builtFolder(): string | null {
  return folderAbove(HERE, VERIFIER);
}

function folderAbove(from: string, holding: string): string | null {
  if (existsSync(join(from, holding))) return from;
  const above = dirname(from);
  return above === from ? null : folderAbove(above, holding);
}

const manifest = z.object({ version: z.string() });

/** Release of the program, as it goes into every entry. */
export function codeVersion(): string {
  return manifest.parse(JSON.parse(readFileSync(join(projectFolder(), 'package.json'), 'utf8'))).version;
}
