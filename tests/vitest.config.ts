import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './longest-first.ts';

// The clock and zone are fixed, so that a printed time reads the same on every machine.
process.env.TZ = 'UTC';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    testTimeout: 20_000,
    hookTimeout: 60_000,
    sequence: { sequencer: LongestFirst },
    setupFiles: ['tests/seed.ts'],
    pool: 'forks',
    // Files of one worker share what they import: a definition is proved once in a worker, not once in a file.
    isolate: false,
    // By itself vitest leaves one processor free, which on two is half of them.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: { name: 'code', include: ['tests/**/*.test.ts'], exclude: ['tests/browser/**'] },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/harness/global-setup.ts'],
          testTimeout: 60_000,
        },
      },
    ],
  },
});
