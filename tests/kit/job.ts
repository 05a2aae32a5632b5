/** A kit to test: a batch of 25 with a few serial numbers. */
import { harnessOf } from '../../src/kit/harness.ts';
import type { Job } from '../../src/kit/job.ts';
import { result } from './designs.ts';

export const DIGEST = 'ab12'.repeat(16);

/** `readings`: with what the test card needs. */
export function jobOf(text: string, readings = true): Job {
  const found = result(text, readings);
  return {
    result: found,
    harness: harnessOf(found.evaluation),
    digest: DIGEST,
    batch: 25,
    serials: ['A001', 'A002', 'A003'],
  };
}
