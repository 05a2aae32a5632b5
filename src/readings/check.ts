/** An install as found: what fails, what was read, and what explains it. */

import type { Verdict } from '../findings/finding.ts';
import { overall } from '../findings/read.ts';
import type { Result } from '../findings/result.ts';
import { type Diagnosis, diagnose } from './diagnose.ts';
import { type Judged, judge } from './judge.ts';
import { type Mend, toMend } from './mend.ts';
import { type Open, settle } from './unknowns.ts';

export interface Checked {
  readonly result: Result;
  /** Of rules and readings together. */
  readonly verdict: Verdict;
  readonly readings: readonly Judged[];
  readonly diagnosis: Diagnosis;
  readonly mend: readonly Mend[];
  /** Parts that nobody knows, the one that decides most first. */
  readonly open: readonly Open[];
}

/**
 * Judges an install. The evaluation of the result must hold the subject `readings`; inputs that stand for unknown parts are
 * set to what is most likely.
 */
export function checked(given: Result): Checked {
  const { evaluation: e } = given;
  const { findings, open } = settle(e);
  const result = { ...given, findings, verdict: overall(findings) };
  const readings = e.design.measured.map((reading) => judge(e, reading));
  const diagnosis = diagnose(e);
  const wrong =
    diagnosis.causes.length > 0 || readings.some(({ stands }) => stands === 'low' || stands === 'high');
  return {
    result,
    verdict: wrong ? 'fail' : overall(findings),
    readings,
    diagnosis,
    mend: toMend(e, findings, diagnosis),
    open,
  };
}
