import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// The clock and zone are fixed, so that a printed time reads the same on every machine.
process.env.TZ = 'UTC';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 20_000,
    hookTimeout: 60_000,
    pool: 'forks',
  },
});
