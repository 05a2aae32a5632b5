/** The findings as cells: value, limit and verdict of every rule for every subject, all formulas. */
import type { At } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import type { Cell, Sheet } from '../engine/cells.ts';
import { cellOf } from '../engine/cells.ts';
import type { Place } from '../engine/layout.ts';
import { address } from '../engine/layout.ts';
import type { Grid } from '../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { RULE_IDS, RULES, type Rule, type RuleId, type Sense } from './rules.ts';

/** Sheet of the workings where the findings stand in the order of the rules. */
export const JUDGED = 'Judged';
export const JUDGED_COLUMNS = { rule: 0, subject: 1, value: 2, limit: 3, verdict: 4, margin: 5 } as const;
export const JUDGED_TOP = 3;

/** One row: a rule and what it is applied to. */
export interface Judged {
  readonly rule: RuleId;
  readonly subject: string;
  readonly at: At;
}

/** Every rule with every subject that it applies to. */
export function judged(grid: Grid, design: Design): Judged[] {
  return RULE_IDS.flatMap((rule) => {
    const { per, applies }: Rule = RULES[rule];
    if (per === undefined) {
      return applies === undefined || applies(design, 0) ? [{ rule, subject: 'feed', at: {} }] : [];
    }
    return grid.axes[per].flatMap((subject, i) =>
      applies === undefined || applies(design, i) ? [{ rule, subject, at: { [per]: i } }] : [],
    );
  });
}

const COMPARE: Readonly<Record<Sense, string>> = {
  'at most': '<=',
  'at least': '>=',
  below: '<',
  above: '>',
};

export function judgedSheet(grid: Grid, design: Design): Sheet {
  const title: Cell = { role: 'title', value: 'Every rule with every subject, in the order of the rules' };
  const headings = ['Rule', 'Subject', 'Value', 'Limit', 'Verdict', 'Margin'];
  const head: Cell[] = headings.map((value) => ({ role: 'label', value }));
  const rows = judged(grid, design).map(({ rule, subject, at }, i): Cell[] => {
    const { value, limit, sense, plain, advice }: Rule = RULES[rule];
    const row = JUDGED_TOP + i;
    const here = (column: number): string => address(row, column, false);
    const v = here(JUDGED_COLUMNS.value);
    const l = here(JUDGED_COLUMNS.limit);
    const [broken, open] = advice ? ['advice', 'advice'] : ['fail', 'unknown'];
    const towards = sense === 'at most' || sense === 'below' ? `${l}-${v}` : `${v}-${l}`;
    return [
      { role: 'member', value: rule },
      { role: 'member', value: subject },
      { role: 'formula', formula: finite(grid, value, at), quantity: value },
      { role: 'formula', formula: finite(grid, limit, at), quantity: limit },
      {
        role: 'formula',
        formula: `IF(ISNUMBER(${v}),IF(ISNUMBER(${l}),IF(${v}${COMPARE[sense]}${l},"pass","${broken}"),"${open}"),"${open}")`,
      },
      plain
        ? { role: 'member', value: null }
        : {
            role: 'formula',
            formula: `IF(ISNUMBER(${v}),IF(ISNUMBER(${l}),IF(${l}=0,"",(${towards})/ABS(${l})),""),"")`,
          },
    ];
  });
  return [[title], [], head, ...rows];
}

/**
 * The value as a formula, the empty text when there is no finite number: an error would spread into counts and ranks,
 * and a cell that a person left empty would read as 0.
 */
function finite(grid: Grid, name: QuantityName, at: At): string {
  const cell = quantityAddress(grid, name, at);
  return QUANTITIES[name].kind === 'input' ? `IFERROR(IF(${cell}="","",${cell}),"")` : `IFERROR(${cell},"")`;
}

/** Address of a quantity's value for the members at hand. */
export function quantityAddress(grid: Grid, name: QuantityName, at: At): string {
  const place = grid.placement.places.get(name) as Place;
  const [row, column] = cellOf(place, at);
  return `${place.sheet}!${address(row, column)}`;
}
