/** Fills the places with cells: headings, values, and one formula for each member of a formula's quantity. */
import type { At, Axis, Quantity } from '../basis/quantity.ts';
import { printCitation } from '../basis/sources.ts';
import { convert, printUnit } from '../basis/units.ts';
import type { Design } from '../design/design.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { address, type Block, HEADINGS, headingRows, INPUTS, type Place, SCALAR_COLUMNS } from './layout.ts';
import { compile, type Grid } from './translate.ts';

export type Role =
  | 'title'
  | 'label'
  | 'symbol'
  | 'unit'
  | 'member'
  | 'source'
  | 'entry'
  | 'given'
  | 'formula';

export interface Cell {
  readonly role: Role;
  readonly value?: number | string | null;
  /** Without the leading equals sign. */
  readonly formula?: string;
  /** The quantity whose value this is. */
  readonly quantity?: QuantityName;
  /** In the unit in which a person writes it. */
  readonly entry?: boolean;
}

/** Rows of cells; a place without a cell is undefined. */
export type Sheet = (Cell | undefined)[][];

const put = (sheet: Sheet, row: number, column: number, cell: Cell): void => {
  while (sheet.length <= row) sheet.push([]);
  (sheet[row] as (Cell | undefined)[])[column] = cell;
};

/** Every working sheet of a design, by name. */
export function workings(grid: Grid, design: Design): Map<string, Sheet> {
  const sheets = new Map<string, Sheet>(grid.placement.sheets.map((name) => [name, []]));
  for (const block of grid.placement.blocks) {
    const sheet = sheets.get(block.sheet) as Sheet;
    heading(grid, block, sheet);
    for (const name of block.quantities) values(grid, design, block, name, sheet);
  }
  return sheets;
}

function heading(grid: Grid, block: Block, sheet: Sheet): void {
  put(sheet, block.top + HEADINGS.title, 0, { role: 'title', value: block.title });
  if (block.rows.length === 0) {
    const titles = {
      label: 'Quantity',
      symbol: 'Symbol',
      value: 'Value',
      unit: 'Unit',
      source: 'Source',
      note: 'Note',
    };
    for (const [key, text] of Object.entries(titles)) {
      put(sheet, block.top + 1, SCALAR_COLUMNS[key as keyof typeof titles], { role: 'label', value: text });
    }
    return;
  }
  members(grid.axes, block.rows).forEach((at, i) => {
    block.rows.forEach((axis, j) => {
      const value = grid.axes[axis][at[axis] as number] as string;
      put(sheet, block.top + headingRows(block) + i, j, { role: 'member', value });
    });
  });
}

/** Every combination of members of the axes, the last axis running fastest. */
export function members(axes: Grid['axes'], rows: readonly Axis[]): At[] {
  return rows.reduce<At[]>(
    (found, axis) => found.flatMap((at) => axes[axis].map((_, i) => ({ ...at, [axis]: i }))),
    [{}],
  );
}

function values(grid: Grid, design: Design, block: Block, name: QuantityName, sheet: Sheet): void {
  const q: Quantity = QUANTITIES[name];
  const entry = block.kind === 'inputs';
  const place = (entry ? grid.placement.entries : grid.placement.places).get(name) as Place;
  const unit = entry ? (q.shown ?? q.unit) : q.unit;
  describe(q, unit, block, place, sheet);
  const across = q.across;
  const content = filler(grid, design, name, entry, place.sheet);
  members(grid.axes, block.rows).forEach((at, i) => {
    const row = place.row + i;
    if (across === undefined) put(sheet, row, place.column, content(at));
    else
      grid.axes[across].forEach((_, j) => {
        put(sheet, row, place.column + j, content({ ...at, [across]: j }));
      });
  });
  if (across !== undefined)
    grid.axes[across].forEach((member, j) => {
      put(sheet, block.top + HEADINGS.member, place.column + j, { role: 'member', value: member });
    });
}

function describe(q: Quantity, unit: string, block: Block, place: Place, sheet: Sheet): void {
  const printed = unit === 'text' ? '' : printUnit(unit);
  const source = q.source ? printCitation(q.source) : '';
  if (block.rows.length === 0) {
    put(sheet, place.row, SCALAR_COLUMNS.label, { role: 'member', value: q.label });
    put(sheet, place.row, SCALAR_COLUMNS.symbol, { role: 'symbol', value: q.symbol });
    put(sheet, place.row, SCALAR_COLUMNS.unit, { role: 'unit', value: printed });
    put(sheet, place.row, SCALAR_COLUMNS.source, { role: 'source', value: source });
    put(sheet, place.row, SCALAR_COLUMNS.note, { role: 'source', value: q.note ?? '' });
    return;
  }
  put(sheet, block.top + HEADINGS.label, place.column, { role: 'label', value: q.label });
  put(sheet, block.top + HEADINGS.symbol, place.column, { role: 'symbol', value: q.symbol });
  put(sheet, block.top + HEADINGS.unit, place.column, { role: 'unit', value: printed });
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
  const quantity = name;
  switch (q.kind) {
    case 'constant':
      return () => ({ role: 'given', value: q.value, quantity });
    case 'column':
      return (at) => {
        const along = q.values[at[(q.per as readonly Axis[])[0] as Axis] as number];
        const value = Array.isArray(along) ? along[at[q.across as Axis] as number] : along;
        return { role: 'given', value: (value ?? null) as number | string | null, quantity };
      };
    case 'structure':
      return (at) => ({ role: 'given', value: q.value(at as Required<At>, design), quantity });
    case 'input':
      return entry
        ? (at) => ({ role: 'entry', value: inputValue(design, q, at), quantity, entry })
        : (at) => {
            const formula = scaled(entryAddress(grid, name, at), q.shown as string, q.unit);
            return { role: 'formula', formula, quantity };
          };
    case 'formula': {
      const axes = q.across === undefined ? (q.per ?? []) : [...(q.per ?? []), q.across];
      const formula = compile(grid, q.formula, axes, sheet);
      return (at) => ({ role: 'formula', formula: formula(at), quantity });
    }
  }
}

/** An entry in the model's unit; an entry left empty, or a word such as `auto`, stays what it is. */
function scaled(cell: string, from: string, to: string): string {
  const factor = convert(from, to);
  const value = factor < 1 ? `${cell}/${1 / factor}` : `${cell}*${factor}`;
  return `IF(ISNUMBER(${cell}),${value},"")`;
}

/** Address of the cell in which a person writes an input. */
export function entryAddress(grid: Grid, name: QuantityName, at: At): string {
  const place = grid.placement.entries.get(name) as Place;
  const [row, column] = cellOf(place, at);
  return `${INPUTS}!${address(row, column)}`;
}

/** Row and column, counted from 0, of a quantity's value for the members `at`. */
export function cellOf(place: Place, at: At): [number, number] {
  const row = place.rows.reduce(
    (sum, axis, i) => sum * (place.counts[i] as number) + (at[axis] as number),
    0,
  );
  return [place.row + row, place.column + (place.across === undefined ? 0 : (at[place.across] as number))];
}

/** What the design gives, in the unit in which a person writes it; null when it gives nothing. */
export function inputValue(design: Design, q: Quantity & { kind: 'input' }, at: At): number | string | null {
  const keys = q.path.split('.').map((key) => {
    const axis = /^\{(\w+)\}$/.exec(key)?.[1];
    return axis === undefined ? key : (at[axis as Axis] as number);
  });
  let found: unknown = design;
  for (const key of keys) found = (found as Record<string | number, unknown> | null | undefined)?.[key];
  if (found === null || found === undefined) return null;
  if (typeof found === 'string') return found;
  const factor = convert(q.shown ?? q.unit, q.unit);
  const value = found as number;
  // 15 digits: what a spreadsheet keeps, and enough to hide the last bit of a unit's factor.
  return Number((factor < 1 ? value * Math.round(1 / factor) : value / factor).toPrecision(15));
}
