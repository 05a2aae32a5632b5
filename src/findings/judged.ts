/** Which rules apply to what. */
import type { At } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import type { Shape } from '../engine/choose.ts';
import { RULE_IDS, RULES, type Rule, type RuleId } from './rules.ts';

/** One row: a rule and what it is applied to. */
export interface Judged {
  readonly rule: RuleId;
  readonly subject: string;
  readonly at: At;
}

/** Every rule with every subject that it applies to. */
export function judged({ axes }: Shape, design: Design): Judged[] {
  return RULE_IDS.flatMap((rule) => {
    const { per, applies }: Rule = RULES[rule];
    if (per === undefined) {
      return applies === undefined || applies(design, 0) ? [{ rule, subject: 'feed', at: {} }] : [];
    }
    return axes[per].flatMap((subject, i) =>
      applies === undefined || applies(design, i) ? [{ rule, subject, at: { [per]: i } }] : [],
    );
  });
}
