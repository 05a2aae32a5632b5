/** The verdict on the whole, as it heads a report. */
import type { Overall } from '../findings/finding.ts';

export const VERDICT_WORDS: Readonly<Record<Overall, string>> = {
  pass: 'PASS',
  fail: 'FAIL',
  unknown: 'UNKNOWN',
};
