/**
 * Two feeds side by side, as a sheet in the workbook of the second one. A workbook holds one model: the figures of the
 * first feed stand as numbers, those of the second follow its inputs, and so does the difference.
 */

import { address } from '../../basis/address.ts';
import type { At } from '../../basis/quantity.ts';
import { inUnit } from '../../basis/shown.ts';
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { open as isOpen } from '../../findings/finding.ts';
import type { Result } from '../../findings/result.ts';
import { heading as titleOf } from '../../findings/words.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { pointOf } from '../../readings/compare.ts';
import { labelOf } from '../../views/print.ts';
import { quantityOf, type View } from '../../views/view.ts';
import { COMPARED, FEED } from '../../views/views.ts';
import { heading, shown, unitOf } from './links.ts';
import { opening, type Page, section, words } from './page.ts';

export const COMPARE = 'Compare';
const WIDTHS = [22, 38, 12, 14, 14, 16];
const TITLES = ['Point', 'Figure', 'Unit', 'First', 'Second', 'Second to first'];

/** The page; `firstResult` is that of the feed that the workbook's own is set beside. */
export function comparePage(
  grid: Grid,
  design: Design,
  firstResult: Result,
  names: readonly [string, string],
): Page {
  const first = firstResult.evaluation;
  const cells: Sheet = [];
  const row = opening(
    cells,
    'Two feeds side by side',
    'First: as computed when this workbook was made. Second: the feed of this workbook, live.',
  );
  put(cells, row, 0, words('First'));
  put(cells, row, 1, { ...words(names[0]), span: 5 });
  put(cells, row + 1, 0, words('Second'));
  put(cells, row + 1, 1, { ...words(names[1]), span: 5 });
  let at = section(cells, row + 3, 'At the points that both have', WIDTHS.length);
  TITLES.forEach((value, column) => {
    put(cells, at, column, { role: 'label', value });
  });
  at += 1;
  /** A line for each quantity: the first feed's as a number, that of this workbook live. */
  const lines = (view: View, name: string, there: At, here: At): void => {
    for (const quantity of view.read.map(quantityOf)) {
      lineOf(grid, design, at, name, quantity, first.number(quantity, there), here).forEach(
        (cell, column) => {
          put(cells, at, column, cell);
        },
      );
      at += 1;
    }
  };
  design.points.forEach(({ name }, point) => {
    const other = pointOf(first, name);
    if (other < 0) return;
    lines(COMPARED, name, { point: other, speed: other }, { point, speed: point });
  });
  at = section(cells, at + 1, FEED.title, WIDTHS.length);
  lines(FEED, '', {}, {});
  const open = firstResult.findings.filter(isOpen);
  at = section(
    cells,
    at + 1,
    'What did not pass with the first; the sheet Findings has the second',
    WIDTHS.length,
  );
  for (const found of open.length === 0 ? [null] : open) {
    put(cells, at, 0, words(found === null ? '' : found.verdict));
    put(cells, at, 1, { ...words(found === null ? 'nothing' : titleOf(found)), span: 5 });
    at += 1;
  }
  return {
    name: COMPARE,
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [3, 0],
    landscape: false,
    looks: [],
  };
}

function lineOf(
  grid: Grid,
  { units }: Design,
  row: number,
  point: string,
  name: QuantityName,
  first: number | null,
  here: At,
): Cell[] {
  const [a, b] = [address(row, 3, false), address(row, 4, false)];
  const unit = unitOf(name, units);
  return [
    words(point),
    words(labelOf(name)),
    { role: 'unit', value: heading(name, units) },
    { role: 'given', value: first === null ? null : inUnit(first, QUANTITIES[name].unit, unit), unit },
    shown(grid, name, here, units),
    {
      role: 'formula',
      formula: `IF(ISNUMBER(${a}),IF(ISNUMBER(${b}),IF(${a}=0,"",${b}/${a}),""),"")`,
      unit: 'any',
    },
  ];
}
