/**
 * A calculation with an answer that is known: a program that computes the formulas of the workbook otherwise is told apart
 * before anybody trusts what it shows. The values are worked out by hand.
 */
import { address } from '../../basis/address.ts';
import type { Cell } from '../cell.ts';

/** Two numbers and an unknown one, in a column; then a word. */
const GIVEN = [2, '', 5, 'Drop'] as const;

/** Formulas over the column, and what they must come to. */
const probes = (of: (i: number) => string): [string, number][] => {
  const range = `${of(0)}:${of(2)}`;
  return [
    // The larger of 2 and 5, as the only ones that are known.
    [`SUMPRODUCT(LARGE((${range}<>"")*1,1))`, 1],
    [`SUMPRODUCT((${range}<>"")*1)`, 2],
    [`SMALL(${range},2)`, 5],
    [`COUNT(${range})+MATCH(5,${range},0)`, 5],
    [`IF(${of(1)}="",1,0)+ISNUMBER(${of(1)})`, 1],
    // Text is compared without regard to capitals.
    [`IF(${of(3)}="drop",1,0)`, 1],
    [`IFERROR(1/0,3)+IFERROR(${of(3)}+1,4)`, 7],
    ['EXP(LN(2))*SQRT(4)-ABS(-1)', 3],
    ['IF(1/3*3=1,1,0)+IF(2<1,10,0)', 1],
  ];
};

/** The cells from `top` on, and the formula that is 1 when all answers are right, 0 when one is not. */
export function knownAnswer(top: number): { cells: Cell[][]; right: string } {
  const of = (i: number): string => address(top + i, 1);
  const rows = probes(of);
  const cells = rows.map(([formula, answer], i): Cell[] => {
    const row = top + i;
    const [found, wanted] = [address(row, 2, false), address(row, 3, false)];
    return [
      { role: 'member', value: i < GIVEN.length ? 'given' : '' },
      GIVEN[i] === '' ? { role: 'formula', formula: '""' } : { role: 'given', value: GIVEN[i] ?? null },
      { role: 'formula', formula: `IFERROR(${formula},"")` },
      { role: 'given', value: answer },
      { role: 'formula', formula: `IF(ISNUMBER(${found}),IF(ABS(${found}-${wanted})<=1e-9,1,0),0)` },
    ];
  });
  const right = `IF(SUM(${address(top, 4)}:${address(top + rows.length - 1, 4)})=${rows.length},1,0)`;
  return { cells, right };
}
