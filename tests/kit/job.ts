/** A kit to test: a batch of 25 with a few serial numbers. */
import { harnessOf } from '../../src/kit/harness.ts';
import type { Job } from '../../src/kit/job.ts';
import { result } from './designs.ts';

export const DIGEST = 'ab12'.repeat(16);

export function jobOf(text: string, more: Partial<Pick<Job, 'batch' | 'serials'>> = {}): Job {
  const found = result(text);
  return {
    result: found,
    harness: harnessOf(found.evaluation),
    digest: DIGEST,
    batch: 25,
    serials: ['A001', 'A002', 'A003'],
    ...more,
  };
}
