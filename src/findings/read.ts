/** Reads the findings of an evaluated model. */
import type { At } from '../basis/quantity.ts';
import { type Evaluation, ModelError } from '../engine/evaluate.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { standsIn } from '../views/stand-in.ts';
import { type Finding, MARGINAL, type Overall, VERDICTS, type Verdict } from './finding.ts';
import { judged } from './judged.ts';
import { citationOf, RULES } from './rules.ts';
import { judgeRule } from './verdict.ts';

/**
 * What rests on sizes that were not found is not judged. Failing first, then unknown, then advice, then passing;
 * within these the one with the least margin first, and before all of them what fails by being missing.
 */
export function findings(e: Evaluation): Finding[] {
  const margin = (f: Finding): number => f.margin ?? (f.verdict === 'fail' ? -1 : 1) * Number.MAX_VALUE;
  return judged(e.grid, e.design)
    .filter(({ rule, at }) => !standsIn(e, RULES[rule].value, at) && !standsIn(e, RULES[rule].limit, at))
    .map(({ rule, subject, at }): Finding => {
      const { value, limit, sense } = RULES[rule];
      const found = known(e, value, at);
      const bound = known(e, limit, at);
      const { verdict, margin } = judgeRule(rule, found, bound);
      return {
        rule,
        subject,
        at,
        verdict,
        value: found,
        limit: bound,
        unit: QUANTITIES[value].unit,
        sense,
        margin,
        marginal: verdict === 'pass' && margin !== null && margin < MARGINAL,
        source: citationOf(rule, e.design),
      };
    })
    .sort((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict) || margin(a) - margin(b));
}

/** What comes to no finite number is not compared: it is unknown. */
function known(e: Evaluation, name: QuantityName, at: At): number | null {
  try {
    return e.number(name, at);
  } catch (error) {
    if (error instanceof ModelError) return null;
    throw error;
  }
}

/** Fails when anything fails; unknown when nothing fails and something is unknown. Advice changes nothing. */
export const overall = (found: readonly { readonly verdict: Verdict | null }[]): Overall =>
  found.some((f) => f.verdict === 'fail')
    ? 'fail'
    : found.some((f) => f.verdict === 'unknown')
      ? 'unknown'
      : 'pass';
