/** Cells that show a value of the workings, in the unit in which the trade reads it. */

import { address } from '../../basis/address.ts';
import type { At, Quantity } from '../../basis/quantity.ts';
import { type Units, unitIn } from '../../basis/shown.ts';
import { printUnit } from '../../basis/units.ts';
import { type Cell, turned } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { cellFor, placeOf, rangeOf } from '../../engine/where.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';

export { cellFor, rangeOf } from '../../engine/where.ts';

/** All values of a quantity that goes over members. */
export const column = (grid: Grid, name: QuantityName): string => {
  const range = rangeOf(grid, name, placeOf(grid, name));
  return range.includes(':') ? range : `${range}:${range.split('!')[1]}`;
};

/** The members' names beside a quantity that has one axis. */
export function labels(grid: Grid, name: QuantityName): string {
  const { sheet, row, counts } = placeOf(grid, name);
  return `${sheet}!${address(row, 0)}:${address(row + (counts[0] as number) - 1, 0)}`;
}

/** The value in a row and a column of a range, counted from 1. Not every program looks one up in a single cell. */
export const indexed = (range: string, row: string, column: string | number = 1): string => {
  const [first = '', last] = range.split(':');
  const alone = last === undefined || first.split('!').at(-1) === last;
  return alone ? first : `INDEX(${range},${row},${column})`;
};

/** Unit in which a cell shows a quantity: one system in a workbook, whose cells hold numbers; metric where both are asked for. */
export const unitOf = (name: QuantityName, units: Units = 'metric'): string => {
  const q: Quantity = QUANTITIES[name];
  return unitIn(q.shown ?? q.unit, units === 'us' ? 'us' : 'metric');
};
/** Unit as it stands above a column; nothing above words. */
export const heading = (name: QuantityName, units: Units = 'metric'): string => {
  const { unit, flag, names }: Quantity = QUANTITIES[name];
  return unit === 'text' || flag || names !== undefined ? '' : printUnit(unitOf(name, units)) || '–';
};

/** The value for these members. */
export const shown = (grid: Grid, name: QuantityName, at: At = {}, units: Units = 'metric'): Cell => {
  const cell = cellFor(grid, name, at);
  const q: Quantity = QUANTITIES[name];
  // A cell that a person left empty would read as 0.
  const formula = q.kind === 'input' ? `IF(${cell}="","",${cell})` : cell;
  return {
    role: 'formula',
    formula: turned(formula, q.unit, unitOf(name, units)),
    // What is sold by its number has the decimals that it has.
    unit: q.exact ? 'exact' : unitOf(name, units),
    tells: name,
  };
};

/** The value in the row that the formula `row` gives, counted from 1 over all members. */
export const picked = (grid: Grid, name: QuantityName, row: string, units: Units = 'metric'): Cell => ({
  role: 'formula',
  formula: turned(indexed(column(grid, name), row), QUANTITIES[name].unit, unitOf(name, units)),
  unit: unitOf(name, units),
});
