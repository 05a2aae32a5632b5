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

/** A formula over a value and a limit that are known, and the word where one of them is not. */
interface Told {
  readonly formula: string;
  readonly unknown: string;
}

const verdictOf = ({ sense, advice }: Rule): Told => {
  const [broken, unknown] = advice ? ['advice', 'advice'] : ['fail', 'unknown'];
  return { formula: `IF(value${COMPARE[sense]}limit,"pass","${broken}")`, unknown };
};

/** Distance to the limit as a share of it; none where that means nothing. */
const marginOf = ({ sense, plain }: Rule): Told | null => {
  if (plain) return null;
  const towards = sense === 'at most' || sense === 'below' ? 'limit-value' : 'value-limit';
  return { formula: `IF(limit=0,"",(${towards})/ABS(limit))`, unknown: '' };
};

/** The two formulas over the addresses of value and limit; the margin is null where there is none. */
export function cellFormulas(rule: RuleId, value: string, limit: string): [string, string | null] {
  const at = ({ formula, unknown }: Told): string =>
    tokens(`IF(ISNUMBER(value),IF(ISNUMBER(limit),${formula},"${unknown}"),"${unknown}")`)
      .map(({ text }) => (text === 'value' ? value : text === 'limit' ? limit : text))
      .join('');
  const margin = marginOf(RULES[rule]);
  return [at(verdictOf(RULES[rule])), margin === null ? null : at(margin)];
}

/** These formulas ask nothing of a design. */
const HAND = null as never;
const taken = { value: 0, limit: 0 };
const compiled = ({ formula }: Told) =>
  scalar(compile(formula, ({ name }) => numeric(() => taken[name as keyof typeof taken])));

const JUDGES = new Map(
  RULE_IDS.map((rule) => {
    const [verdict, margin] = [verdictOf(RULES[rule]), marginOf(RULES[rule])];
    return [
      rule,
      {
        unknown: verdict.unknown as Verdict,
        verdict: compiled(verdict),
        margin: margin === null ? null : compiled(margin),
      },
    ] as const;
  }),
);

/** What a rule makes of a value and its limit, null being unknown. */
export function judgeRule(
  rule: RuleId,
  value: number | null,
  limit: number | null,
): { verdict: Verdict; margin: number | null } {
  const { unknown, verdict, margin } = JUDGES.get(rule) as NonNullable<ReturnType<typeof JUDGES.get>>;
  if (value === null || limit === null) return { verdict: unknown, margin: null };
  taken.value = value;
  taken.limit = limit;
  const distance = margin?.number(HAND);
  return {
    verdict: verdict.word(HAND) as Verdict,
    margin: distance === undefined || Number.isNaN(distance) ? null : distance,
  };
}
