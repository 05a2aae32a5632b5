/** Tables of views: a column for each quantity, a row for each run, point or coil, all of it live. */
import type { At, Quantity } from '../../basis/quantity.ts';
import type { Design } from '../../design/design.ts';
import type { Cell, Sheet } from '../../engine/cell.ts';
import { PROBLEMS } from '../../engine/entered/sheet.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { labelOf } from '../../views/print.ts';
import { quantityOf, type View } from '../../views/view.ts';
import { cellFor, heading, indexed, labels, picked, shown } from './links.ts';
import { type Column, section, table } from './page.ts';
import { worstOf } from './worst.ts';

/** Columns of a view behind those that name its members. */
export const heads = ({ units }: Design, first: readonly string[], view: View): Column[] => [
  ...first.map((title) => ({ title })),
  ...view.read.map(quantityOf).map((name) => ({ title: labelOf(name), unit: heading(name, units) })),
];

/** Cells of a view for these members; of a run its conductor that carries most, of all coils the worst one. */
export const row = (grid: Grid, design: Design, view: View, at: At): Cell[] =>
  view.read.map((field) => live(grid, design, quantityOf(field), at));

/** Names of the members of an axis, as a range. */
const NAMED = { point: 'total_average', coil: 'coil_no' } as const satisfies Partial<
  Record<string, QuantityName>
>;

/** A value as people read it; none while an input cannot be taken. */
export function live(grid: Grid, design: Design, name: QuantityName, at: At): Cell {
  const cell = liveCell(grid, design, name, at);
  return { ...cell, formula: `IF(${PROBLEMS}>0,"",${cell.formula})`, tells: name };
}

function liveCell(grid: Grid, design: Design, name: QuantityName, at: At): Cell {
  const q: Quantity = QUANTITIES[name];
  const cell = valueCell(grid, design, name, at);
  const value = cell.formula as string;
  if (q.flag) return { role: 'formula', formula: `IF(${value}=1,"yes","no")` };
  if (q.names === 'point' || q.names === 'coil')
    return { role: 'formula', formula: indexed(labels(grid, NAMED[q.names]), value) };
  if (q.unit === 'text') return { role: 'formula', formula: `SUBSTITUTE(${value},"mm2","mm²")` };
  // A time in seconds may be without end.
  return q.unit === 's' && (q.shown ?? 's') === 's' ? { ...cell, unit: 'time' } : cell;
}

function valueCell(grid: Grid, design: Design, name: QuantityName, at: At): Cell {
  const { per = [] }: Quantity = QUANTITIES[name];
  const { units } = design;
  const points = design.points.length;
  const rowOf = (first: string): string =>
    per.includes('point') ? `(${first}-1)*${points}+${(at.point ?? 0) + 1}` : first;
  if (per[0] === 'wire' && at.wire === undefined)
    return picked(grid, name, rowOf(worstOf(at.run ?? 0, 'worst')), units);
  if (per[0] === 'coil' && at.coil === undefined)
    return picked(grid, name, rowOf(cellFor(grid, 'worst_coil', {})), units);
  return shown(grid, name, at, units);
}

/** Puts a view with its title at `row`; returns the row after it. A view without rows is left out. */
export function putView(
  cells: Sheet,
  top: number,
  title: string,
  wide: number,
  columns: Column[],
  rows: Cell[][],
): number {
  if (rows.length === 0) return top;
  return table(cells, section(cells, top, title, wide), columns, rows);
}

/** Name of the conductor of a run that carries most. */
export const worstName = (run: number): Cell => ({ role: 'formula', formula: worstOf(run, 'name') });
