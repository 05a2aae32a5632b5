/** As usual, with one factor of the model changed. */
import usual from '../../vitest.config.ts';

export default {
  ...usual,
  root: new URL('../..', import.meta.url).pathname,
  test: {
    ...usual.test,
    setupFiles: ['tests/mutations/setup.ts'],
    reporters: ['json'],
    maxWorkers: 1,
    bail: 1,
  },
};
