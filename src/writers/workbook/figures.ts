/** Tables of figures: a column for each quantity, a row for each run, point or coil. */
import type { Design } from '../../design/design.ts';
import type { Cell, Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { cellFor, heading, picked, shown } from './links.ts';
import { type Column, section, table } from './page.ts';
import { worstOf } from './worst.ts';

/** A column of numbers: its title, and the quantity that stands in it. */
export type Figure = readonly [string, QuantityName];

export const columns = (first: readonly string[], figures: readonly Figure[]): Column[] => [
  ...first.map((title) => ({ title, unit: '' })),
  ...figures.map(([title, name]) => ({ title, unit: heading(name) })),
];

/** A table of a page: what stands above its columns, and its rows. */
export type Part = (grid: Grid, design: Design) => [Column[], Cell[][]];

/** Puts a part with its title at `row`; returns the row after it. A part without rows is left out. */
export function putPart(
  cells: Sheet,
  row: number,
  title: string,
  wide: number,
  [heads, rows]: readonly [Column[], Cell[][]],
): number {
  if (rows.length === 0) return row;
  return table(cells, section(cells, row, title, wide), heads, rows);
}

/** A quantity of the run, or of the conductor of it that carries most. */
export const ofRun = (grid: Grid, run: number, name: QuantityName): Cell =>
  QUANTITIES[name].per?.[0] === 'run'
    ? shown(grid, name, { run })
    : picked(grid, name, worstOf(run, 'worst'));

/** Name of the conductor of a run that carries most. */
export const worstName = (run: number): Cell => ({ role: 'formula', formula: worstOf(run, 'name') });

export const sizeOf = (grid: Grid, run: number): Cell => ({
  role: 'formula',
  formula: `SUBSTITUTE(${cellFor(grid, 'gauge', { run })},"mm2","mm²")`,
});
