import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

const folders: string[] = [];

/** A new empty folder, gone again when the tests of the file are through. */
export function aFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'yokeside-test-'));
  folders.push(folder);
  return folder;
}

afterAll(() => {
  // Windows removes no file that is still open, and a closed database of the SQLite package stays open for a while.
  if (process.platform === 'win32') return;
  for (const folder of folders) rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
});
