/** Reads the findings of an evaluated model. */
import type { Evaluation } from '../engine/evaluate.ts';
import { QUANTITIES } from '../model/model.ts';
import { type Finding, MARGINAL, type Overall, VERDICTS, type Verdict } from './finding.ts';
import { RULES } from './rules.ts';
import { JUDGED, JUDGED_COLUMNS, JUDGED_TOP, judged } from './sheet.ts';

/** Failing first, then unknown, then advice, then passing; within these the one with the least margin first. */
export function findings(e: Evaluation): Finding[] {
  const margin = (f: Finding): number => f.margin ?? Number.POSITIVE_INFINITY;
  return judged(e.grid, e.design)
    .map(({ rule, subject, at }, i): Finding => {
      const row = JUDGED_TOP + i;
      const number = (column: number): number | null => {
        const found = e.cached(JUDGED, row, column);
        return typeof found === 'number' ? found : null;
      };
      const { value, sense, source } = RULES[rule];
      const verdict = e.cached(JUDGED, row, JUDGED_COLUMNS.verdict) as Verdict;
      const margin = number(JUDGED_COLUMNS.margin);
      return {
        rule,
        subject,
        at,
        verdict,
        value: number(JUDGED_COLUMNS.value),
        limit: number(JUDGED_COLUMNS.limit),
        unit: QUANTITIES[value].unit,
        sense,
        margin,
        marginal: verdict === 'pass' && margin !== null && margin < MARGINAL,
        source,
      };
    })
    .sort((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict) || margin(a) - margin(b));
}

/** Fails when anything fails; unknown when nothing fails and something is unknown. Advice changes nothing. */
export const overall = (found: readonly Finding[]): Overall =>
  found.some((f) => f.verdict === 'fail')
    ? 'fail'
    : found.some((f) => f.verdict === 'unknown')
      ? 'unknown'
      : 'pass';
