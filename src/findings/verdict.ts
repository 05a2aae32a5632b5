/** The verdict of a rule and its margin, as formulas over `value` and `limit`: the same in process and in the workbook. */
import { tokens } from '../basis/formula.ts';
import { compile } from '../engine/compile.ts';
import { numeric, scalar } from '../engine/node.ts';
import type { Verdict } from './finding.ts';
import { RULE_IDS, RULES, type Rule, type RuleId, type Sense } from './rules.ts';

const COMPARE: Readonly<Record<Sense, string>> = {
  'at most': '<=',
  'at least': '>=',
  below: '<',
  above: '>',
};

const known = (formula: string, otherwise: string): string =>
  `IF(ISNUMBER(value),IF(ISNUMBER(limit),${formula},"${otherwise}"),"${otherwise}")`;

const verdictFormula = ({ sense, advice }: Rule): string => {
  const [broken, open] = advice ? ['advice', 'advice'] : ['fail', 'unknown'];
  return known(`IF(value${COMPARE[sense]}limit,"pass","${broken}")`, open);
};

/** Distance to the limit as a share of it; none where that means nothing. */
const marginFormula = ({ sense, plain }: Rule): string | null => {
  if (plain) return null;
  const towards = sense === 'at most' || sense === 'below' ? 'limit-value' : 'value-limit';
  return known(`IF(limit=0,"",(${towards})/ABS(limit))`, '');
};

/** The two formulas over the addresses of value and limit; the margin is null where there is none. */
export function cellFormulas(rule: RuleId, value: string, limit: string): [string, string | null] {
  const at = (formula: string): string =>
    tokens(formula)
      .map(({ text }) => (text === 'value' ? value : text === 'limit' ? limit : text))
      .join('');
  const margin = marginFormula(RULES[rule]);
  return [at(verdictFormula(RULES[rule])), margin === null ? null : at(margin)];
}

/** These formulas ask nothing of a design. */
const HAND = null as never;
const taken = { value: Number.NaN, limit: Number.NaN };
const compiled = (formula: string) =>
  scalar(compile(formula, ({ name }) => numeric(() => taken[name as keyof typeof taken])));

const JUDGES = new Map(
  RULE_IDS.map((rule) => {
    const margin = marginFormula(RULES[rule]);
    return [
      rule,
      [compiled(verdictFormula(RULES[rule])), margin === null ? null : compiled(margin)],
    ] as const;
  }),
);

/** What a rule makes of a value and its limit, null being unknown. */
export function judgeRule(
  rule: RuleId,
  value: number | null,
  limit: number | null,
): { verdict: Verdict; margin: number | null } {
  taken.value = value ?? Number.NaN;
  taken.limit = limit ?? Number.NaN;
  const [verdict, margin] = JUDGES.get(rule) as NonNullable<ReturnType<typeof JUDGES.get>>;
  const distance = margin?.number(HAND);
  return {
    verdict: verdict.word(HAND) as Verdict,
    margin: distance === undefined || Number.isNaN(distance) ? null : distance,
  };
}
