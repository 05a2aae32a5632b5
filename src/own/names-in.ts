/** What a person's formulas need of a workbook: their sheets, and the names that they use. */
import type { Design } from '../design/design.ts';
import type { Path } from '../design/problems.ts';
import type { Theirs } from '../engine/spreadsheet.ts';
import { placeOf, rangeOf } from '../engine/where.ts';
import { QUANTITIES } from '../model/model.ts';
import { look } from './formula.ts';
import { meantBy, SHORT } from './names.ts';
import { OWN, ownCell, quoted, shortCell } from './rows.ts';

/** Sheets whose cells a person fills in. */
export const ownSheets = ({ added }: Pick<Design, 'added'>): string[] => [OWN, ...added.keys()];

/** Every formula of a person, with its key in the design file and its cell in a workbook. */
export const formulasOf = ({ own, added }: Design): { key: Path; cell: string; formula: string }[] => [
  ...own.map(({ formula }, i) => ({
    key: ['own', i, 'formula'],
    cell: ownCell(i, 'value').replaceAll('$', ''),
    formula,
  })),
  ...[...added].flatMap(([sheet, cells]) =>
    [...cells].flatMap(([cell, content]) =>
      isFormula(content)
        ? [{ key: ['added', sheet, cell], cell: `${quoted(sheet)}!${cell}`, formula: content.slice(1) }]
        : [],
    ),
  ),
];

export const isFormula = (cell: number | string): cell is string =>
  typeof cell === 'string' && cell.startsWith('=') && cell.length > 1;

/** Names that a person's formulas use, each once, in small letters. */
export const namesUsed = (design: Design): string[] => {
  const sheets = ownSheets(design);
  const used = formulasOf(design).flatMap(({ formula }) => look(formula, sheets).names);
  return [...new Set(used.map((name) => name.toLowerCase()))];
};

export const theirs = (design: Design): Theirs => ({
  sheets: ownSheets(design),
  names: (grid) =>
    namesUsed(design).flatMap((name) => {
      const meant = meantBy(name);
      if (meant === undefined) return [];
      if ('short' in meant)
        return [{ name, expression: `=${shortCell(design, SHORT.indexOf(meant.short))}` }];
      const place = placeOf(grid, meant.quantity);
      const single = place.rows.length === 0 && QUANTITIES[meant.quantity].across === undefined;
      // The engine has the single ones already.
      return single ? [] : [{ name, expression: `=${rangeOf(grid, meant.quantity, place)}` }];
    }),
});
