/** The findings as cells: value, limit and verdict of every rule for every subject, all formulas. */

import { address } from '../basis/address.ts';
import type { At } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import type { Cell, Sheet } from '../engine/cell.ts';
import { type Grid, translate } from '../engine/translate.ts';
import { cellFor } from '../engine/where.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { ownCell, ownRows, SENSES } from '../own/rows.ts';
import { ofSizes } from '../views/stand-in.ts';
import { laidOut } from './judged.ts';
import { RULES, type Rule } from './rules.ts';
import { cellFormulas } from './verdict.ts';

/** Sheet of the workings where the findings stand in the order of the rules. */
export const JUDGED = 'Judged';
export const JUDGED_COLUMNS = { rule: 0, subject: 1, value: 2, limit: 3, verdict: 4, margin: 5 } as const;
export const JUDGED_TOP = 3;

export function judgedSheet(grid: Grid, design: Design): Sheet {
  const title: Cell = { role: 'title', value: 'Every rule with every subject, in the order of the rules' };
  const headings = ['Rule', 'Subject', 'Value', 'Limit', 'Verdict', 'Margin'];
  const head: Cell[] = headings.map((value) => ({ role: 'label', value }));
  const rows = laidOut(grid, design).map(({ rule, subject, at }, i): Cell[] => {
    const { value, limit, per }: Rule = RULES[rule];
    const row = JUDGED_TOP + i;
    const here = (column: number): string => address(row, column, false);
    const [verdict, margin] = cellFormulas(rule, here(JUDGED_COLUMNS.value), here(JUDGED_COLUMNS.limit));
    const applies = conditions(RULES[rule]).map((when) =>
      translate(grid, when, { rows: per === undefined ? [] : [per], sheet: JUDGED })(at),
    );
    const shown = (formula: string): string =>
      applies.reduceRight((inner, when) => `IF(IFERROR(IF(${when},1,0),0)=1,${inner},"")`, formula);
    return [
      { role: 'member', value: rule },
      { role: 'member', value: subject },
      { role: 'formula', formula: finite(grid, value, at), quantity: value },
      { role: 'formula', formula: finite(grid, limit, at), quantity: limit },
      { role: 'formula', formula: shown(verdict) },
      margin === null ? { role: 'member', value: null } : { role: 'formula', formula: shown(margin) },
    ];
  });
  return [[title], [], head, ...rows, ...ownJudged(design, JUDGED_TOP + rows.length)];
}

/** Rows of the sheet: every rule with every subject, then the rows for rules of the author. */
export const judgedRows = (grid: Grid, design: Design): number =>
  laidOut(grid, design).length + ownRows(design);

/** Rules of the author, judged where they stand; rows without one stay empty. */
function ownJudged(design: Design, top: number): Cell[][] {
  return Array.from({ length: ownRows(design) }, (_, i): Cell[] => {
    const here = (column: number): string => address(top + i, column, false);
    const [v, l] = [here(JUDGED_COLUMNS.value), here(JUDGED_COLUMNS.limit)];
    const formula = (text: string): Cell => ({ role: 'formula', formula: text });
    const number = (cell: string): Cell => formula(`IFERROR(IF(ISNUMBER(${cell}),${cell},""),"")`);
    const towards = `IF(${ownCell(i, 'sense')}="${SENSES.at_least}",${v}-${l},${l}-${v})`;
    return [
      { role: 'member', value: 'own' },
      { role: 'member', value: 'author’s rule' },
      number(ownCell(i, 'value')),
      number(ownCell(i, 'limit')),
      formula(`LOWER(${ownCell(i, 'verdict')})`),
      formula(
        `IF(${here(JUDGED_COLUMNS.verdict)}="","",IF(ISNUMBER(${v})*ISNUMBER(${l}),IF(${l}=0,"",${towards}/ABS(${l})),""))`,
      ),
    ];
  });
}

/** When a rule is judged: what it is about is there, and the sizes that it looks at were found. */
const conditions = ({ when, value, limit, per }: Rule): string[] => [
  ...(when === undefined ? [] : [when]),
  ...(ofSizes(value) || ofSizes(limit) ? [per === 'run' ? 'undone=0' : 'solved=1'] : []),
];

/**
 * The value as a formula, the empty text when there is no finite number: an error would spread into counts and ranks,
 * and a cell that a person left empty would read as 0.
 */
function finite(grid: Grid, name: QuantityName, at: At): string {
  const cell = cellFor(grid, name, at);
  return QUANTITIES[name].kind === 'input' ? `IFERROR(IF(${cell}="","",${cell}),"")` : `IFERROR(${cell},"")`;
}
