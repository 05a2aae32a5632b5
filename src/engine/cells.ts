/** Fills the places with cells: values, and one formula for each member of a formula's quantity. */

import { address } from '../basis/address.ts';
import type { At, Axis, Quantity } from '../basis/quantity.ts';
import { convert } from '../basis/units.ts';
import type { Design } from '../design/design.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { type Cell, inputValue, put, type Sheet } from './cell.ts';
import { blockHeading, inputHeading, sheetHeading } from './headings.ts';
import { type Block, firstRow, type Place } from './layout.ts';
import { INPUTS } from './sheets.ts';
import { type Grid, translate } from './translate.ts';

export type { Cell, Role, Sheet } from './cell.ts';

/** Every working sheet of a design, by name. */
export function workings(grid: Grid, design: Design): Map<string, Sheet> {
  const sheets = new Map<string, Sheet>();
  for (const [name, about] of grid.placement.sheets) {
    const sheet: Sheet = [];
    sheetHeading(about, grid.placement.columns, sheet);
    sheets.set(name, sheet);
  }
  for (const block of grid.placement.blocks) {
    const sheet = sheets.get(block.sheet) as Sheet;
    if (block.kind === 'inputs') inputHeading(grid, design, block, sheet);
    else blockHeading(grid, block, sheet);
    if (block.form === 'table') memberNames(grid, block, sheet);
    for (const name of block.quantities) values(grid, design, block, name, sheet);
  }
  return sheets;
}

/** Every combination of members of the axes, the last axis running fastest. */
export function members(axes: Grid['axes'], rows: readonly Axis[]): At[] {
  return rows.reduce<At[]>(
    (found, axis) => found.flatMap((at) => axes[axis].map((_, i) => ({ ...at, [axis]: i }))),
    [{}],
  );
}

function values(grid: Grid, design: Design, block: Block, name: QuantityName, sheet: Sheet): void {
  const entry = block.kind === 'inputs';
  const place = (entry ? grid.placement.entries : grid.placement.places).get(name) as Place;
  const content = filler(grid, design, name, entry, place.sheet);
  const { across } = QUANTITIES[name];
  for (const at of members(grid.axes, block.rows)) {
    const each = across === undefined ? [at] : grid.axes[across].map((_, j) => ({ ...at, [across]: j }));
    for (const one of each) put(sheet, ...cellOf(place, one), content(one));
  }
}

/** The names of the members beside their rows. */
function memberNames(grid: Grid, block: Block, sheet: Sheet): void {
  members(grid.axes, block.rows).forEach((at, i) => {
    block.rows.forEach((axis, j) => {
      put(sheet, firstRow(block) + i, j, {
        role: 'member',
        value: grid.axes[axis][at[axis] as number] as string,
      });
    });
  });
}

/** What stands in the cell of each member. */
function filler(
  grid: Grid,
  design: Design,
  name: QuantityName,
  entry: boolean,
  sheet: string,
): (at: At) => Cell {
  const q: Quantity = QUANTITIES[name];
  const common = { quantity: name, unit: q.unit };
  switch (q.kind) {
    case 'constant':
      return () => ({ role: 'given', value: q.value, ...common });
    case 'column':
      return (at) => {
        const along = q.values[at[(q.per as readonly Axis[])[0] as Axis] as number];
        const value = Array.isArray(along) ? along[at[q.across as Axis] as number] : along;
        return { role: 'given', value: (value ?? null) as number | string | null, ...common };
      };
    case 'structure':
      return (at) => ({ role: 'given', value: q.value(at as Required<At>, design), ...common });
    case 'input':
      return entry
        ? (at) => ({
            role: 'entry',
            value: inputValue(design, q, at),
            quantity: name,
            entry,
            unit: q.shown ?? q.unit,
          })
        : (at) => {
            const formula = scaled(entryAddress(grid, name, at), q.shown ?? q.unit, q.unit);
            return { role: 'formula', formula, ...common };
          };
    case 'formula': {
      const home = { rows: q.per ?? [], sheet, ...(q.across === undefined ? {} : { across: q.across }) };
      const formula = translate(grid, q.formula, home);
      return (at) => ({ role: 'formula', formula: formula(at), ...common });
    }
  }
}

/**
 * Formula of a cell's value in another unit; what is not known stays the empty text. In the same unit a word such as
 * `auto` stays what it is.
 */
export function scaled(cell: string, from: string, to: string): string {
  const factor = convert(from, to);
  if (factor === 1) return `IF(${cell}="","",${cell})`;
  return `IF(ISNUMBER(${cell}),${factor < 1 ? `${cell}/${1 / factor}` : `${cell}*${factor}`},"")`;
}

/** Address of the cell in which a person writes an input. */
export function entryAddress(grid: Grid, name: QuantityName, at: At): string {
  const place = grid.placement.entries.get(name) as Place;
  const [row, column] = cellOf(place, at);
  return `${INPUTS}!${address(row, column)}`;
}

/** Row and column, counted from 0, of a quantity's value for the members `at`. */
export function cellOf(place: Place, at: At): [number, number] {
  const index = place.rows.reduce(
    (sum, axis, i) => sum * (place.counts[i] as number) + (at[axis] as number),
    0,
  );
  if (place.beside) return [place.row, place.column + index];
  return [place.row + index, place.column + (place.across === undefined ? 0 : (at[place.across] as number))];
}
