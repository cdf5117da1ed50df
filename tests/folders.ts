import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const made: string[] = [];

/** A new empty folder, gone again when the tests of the file are through. */
export function aFolder(): string {
  // In a folder of its own, since a site keeps its keys beside its data.
  const around = goneAfterwards(mkdtempSync(join(tmpdir(), 'yokeside-test-')));
  const folder = join(around, 'data');
  mkdirSync(folder);
  return folder;
}

/** The folder given, marked to be removed when the tests of the file are through. */
function goneAfterwards(folder: string): string {
  made.push(folder);
  return folder;
}

/** Removes what the file's tests made. Called from the setup that each file runs: a hook of this module would run for
 * the first file of a worker only. */
export function removeFolders(): void {
  // Windows removes no file that is still open, and a closed database of the SQLite package stays open for a while.
  if (process.platform === 'win32') return;
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}
