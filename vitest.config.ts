import { readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

/** Far beyond what anything takes on a busy machine: what takes longer hangs [ms]. */
const PATIENCE = 600_000;

export default defineConfig({
  define: { COILFEED_VERSION: JSON.stringify(version) },
  test: {
    include: ['tests/**/*.test.ts'],
    // By hand or by night: it runs other tests once for each of many mutations.
    exclude: process.env.COILFEED_MUTATIONS ? [] : ['tests/mutations/**'],
    globalSetup: 'tests/cli/build-once.ts',
    // Some tests start other programs and some change the user id, which threads of one process would share.
    pool: 'forks',
    maxWorkers: 2,
    // To load the model anew for each file costs more than most files take.
    isolate: false,
    testTimeout: PATIENCE,
    hookTimeout: PATIENCE,
    expect: { poll: { timeout: PATIENCE / 2 } },
    // The counts that the last line of .ci/run prints come from this file.
    reporters: process.env.CI
      ? ['default', ['json', { outputFile: 'node_modules/.cache/coilfeed/vitest.json' }]]
      : ['default'],
  },
});
