import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './longest-first.ts';

// The clock and zone are fixed, so that a printed time reads the same on every machine.
process.env.TZ = 'UTC';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    // Long enough for a busy machine: a test that runs into it hangs.
    testTimeout: 120_000,
    expect: { poll: { timeout: 30_000 } },
    hookTimeout: 120_000,
    sequence: { sequencer: LongestFirst },
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/run-folder.ts', 'tests/browser/harness/global-setup.ts'],
    setupFiles: ['tests/seed.ts', 'tests/leave-nothing.ts'],
    pool: 'forks',
    // Files of one worker share what they import: a definition is proved once in a worker, not once in a file.
    isolate: false,
    // Half the time of the tests in a browser is waiting: three at work on two processors end sooner than two.
    maxWorkers: Math.ceil(availableParallelism() * 1.5),
  },
});
