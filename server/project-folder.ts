import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

/** The folder that holds package.json: the same for the program as written and as compiled into a folder below. */
export function projectFolder(from = dirname(fileURLToPath(import.meta.url))): string {
  if (existsSync(join(from, 'package.json'))) return from;
  const above = dirname(from);
  if (above === from) throw new Error('There is no package.json above the program. Install it again.');
  return projectFolder(above);
}

const manifest = z.object({ version: z.string() });

/** Release of the program, as it goes into every entry. */
export function codeVersion(): string {
  return manifest.parse(JSON.parse(readFileSync(join(projectFolder(), 'package.json'), 'utf8'))).version;
}
