import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { ROOT } from './root.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Folder of this run, inside the project so that what is compiled there finds its packages. */
    runFolder: string;
  }
}

/** Makes the folder of the run before its first test, and removes it after the last. */
export default function setUp(project: TestProject): () => void {
  const cache = join(ROOT, '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'run-'));
  project.provide('runFolder', folder);
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}
