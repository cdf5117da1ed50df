import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../root.ts';

/** One file of the project, by its path from the root with forward slashes. */
export interface TextFile {
  readonly path: string;
  readonly text: string;
}

/** What a machine makes for itself; `.gitignore` names the same. */
const MADE_HERE = new Set(['.git', 'node_modules', 'dist', 'yokeside-data', '.cache']);

/** Pictures and fonts are no text. */
const NO_TEXT = /\.(png|woff2|ico|sqlite|pdf)$/;

/** What lies on the top level, without what a machine makes for itself. */
export function topLevel(): readonly string[] {
  return readdirSync(ROOT)
    .filter((name) => !MADE_HERE.has(name) && !name.endsWith('.log'))
    .sort();
}

/** Every text file of the project. */
export function everyFile(): readonly TextFile[] {
  return topLevel().flatMap((name) => filesBelow(name));
}

function filesBelow(path: string): readonly TextFile[] {
  const whole = join(ROOT, path);
  if (NO_TEXT.test(path)) return [];
  try {
    return readdirSync(whole, { withFileTypes: true }).flatMap((entry) =>
      filesBelow(`${path}/${entry.name}`),
    );
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOTDIR') throw error;
    return [{ path, text: readFileSync(whole, 'utf8') }];
  }
}
