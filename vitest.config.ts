import { readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

export default defineConfig({
  define: { COILFEED_VERSION: JSON.stringify(version) },
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: 'tests/cli/build-once.ts',
    // Some tests start other programs and some change the user id, which threads of one process would share.
    pool: 'forks',
    maxWorkers: 2,
    // An office suite takes one to two seconds for a file, and several times that on a busy machine.
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // The counts that the last line of .ci/run prints come from this file.
    reporters: process.env.CI
      ? ['default', ['json', { outputFile: 'node_modules/.cache/coilfeed/vitest.json' }]]
      : ['default'],
  },
});
