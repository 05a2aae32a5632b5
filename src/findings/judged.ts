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
export const judged = (shape: Shape, design: Design): Judged[] =>
  each(shape, design, ({ applies }) => applies);

/** The rows of a workbook: also those that an input may bring in. */
export const laidOut = (shape: Shape, design: Design): Judged[] =>
  each(shape, design, ({ applies, when, room }) => (when === undefined ? applies : room));

function each(
  { axes }: Shape,
  design: Design,
  which: (rule: Rule) => ((design: Design, index: number) => boolean) | undefined,
): Judged[] {
  return RULE_IDS.flatMap((rule) => {
    const { per }: Rule = RULES[rule];
    const wanted = which(RULES[rule]);
    if (per === undefined)
      return wanted === undefined || wanted(design, 0) ? [{ rule, subject: 'feed', at: {} }] : [];
    return axes[per].flatMap((subject, i) =>
      wanted === undefined || wanted(design, i) ? [{ rule, subject, at: { [per]: i } }] : [],
    );
  });
}
