/**
 * Where every quantity stands. This file alone knows sheets, rows and columns.
 *
 * Quantities that exist once stand below each other on `Values`; the others stand in blocks, one block for each
 * combination of axes: a row for each member (or pair of members), a column for each quantity, and for a quantity
 * that goes `across` an axis a column for each member of it. What a design gives stands on `Inputs` instead, in
 * the unit in which people write it; its value in the model's unit follows from that. There the runs stand beside
 * each other, as in the table of a data sheet.
 */
import type { Axis, Quantity } from '../basis/quantity.ts';
import { namesFor, type OnRequest, QUANTITIES, type QuantityName } from '../model/model.ts';
import type { Members } from './axes.ts';
import { entryUnit } from './cell.ts';
import { type Entering, METRIC } from './entering.ts';
import { INPUT_GROUPS } from './input-groups.ts';
import { INPUT_SHEET, INPUTS, SHEETS, type SheetOf } from './sheets.ts';

/** The axis whose members stand beside each other on `Inputs`: it has many inputs and few members. */
const BESIDE: Axis = 'run';

/** The axis whose members stand in an order of their own there. */
const ORDERED: Axis = 'wire';

/** Heading rows above a block of members: label, symbol, unit, source, member; of inputs label, then unit and range. */
export const HEADINGS = { label: 0, symbol: 1, unit: 2, source: 3, member: 4 } as const;
export const ENTRY_HEADINGS = { label: 0, unit: 1 } as const;
/** Single inputs have their headings once, above all blocks. */
const HEADING_ROWS = { table: 5, entries: 2, list: 1, single: 0, beside: 1 } as const;
/** Rows that the title and the explanation of a sheet take, and the headings of the inputs. */
const FIRST = { values: 3, inputs: 4 } as const;
/** Row of the headings of single inputs. */
export const INPUT_HEADINGS = FIRST.inputs - 1;
/** Fewest columns of entries: what is said beside a single input takes the others. */
const LEAST_COLUMNS = 4;

export interface Place {
  readonly sheet: string;
  /** First row and column of the values, counted from 0. */
  readonly row: number;
  readonly column: number;
  readonly rows: readonly Axis[];
  readonly across?: Axis;
  readonly counts: readonly number[];
  /** Members go to the right instead of down. */
  readonly beside?: true;
  /** Position of each member where they do not stand in their own order. */
  readonly order?: readonly number[];
}

export interface Block {
  readonly sheet: string;
  readonly title: string;
  readonly rows: readonly Axis[];
  readonly quantities: readonly QuantityName[];
  /** First heading row, counted from 0; single inputs have their title in the row before. */
  readonly top: number;
  readonly kind: 'values' | 'inputs';
  readonly form: keyof typeof HEADING_ROWS;
}

export interface Placement {
  /** Of the values that formulas use. */
  readonly places: ReadonlyMap<QuantityName, Place>;
  /** Of the cells that a person fills in. */
  readonly entries: ReadonlyMap<QuantityName, Place>;
  readonly blocks: readonly Block[];
  /** Name of each sheet, with its title and its explanation. */
  readonly sheets: ReadonlyMap<string, SheetOf>;
  /** Columns on `Inputs`, counted from 0. */
  readonly columns: InputColumns;
  readonly entering: Entering;
}

export interface InputColumns {
  readonly label: number;
  readonly unit: number;
  /** The first of `count` columns of entries. */
  readonly value: number;
  readonly count: number;
  /** Free for a person's own notes. */
  readonly notes: number;
  /** What is wrong with the entries of the row. */
  readonly check: number;
  readonly range: number;
  /** Of the inputs of runs where they come from, and what to know; of others that stands beside the value. */
  readonly source: number;
}

/** Columns of a block of single values, and of the label columns before a block of members. */
export const SCALAR_COLUMNS = { label: 0, symbol: 1, value: 2, unit: 3, source: 4, note: 5 } as const;

const isEntry = (q: Quantity): boolean => q.kind === 'input';
/**
 * An input that stands in a column, in the unit of the model, needs no second cell. A single one does: its name would
 * read 0 where the cell is empty.
 */
const sameCell = (q: Quantity, { system }: Entering): boolean =>
  q.kind === 'input' && entryUnit(q, system) === q.unit && !['', BESIDE, ORDERED].includes(keyOf(q));
const keyOf = (q: Quantity): string => (q.per ?? []).join(',');
const isBeside = (q: Quantity): boolean => keyOf(q) === BESIDE;

/** Finds a place for every quantity, those of the subjects on request only where these are asked for. */
export function placement(
  axes: Members,
  asked: readonly OnRequest[] = [],
  entering: Entering = METRIC,
): Placement {
  const places = new Map<QuantityName, Place>();
  const entries = new Map<QuantityName, Place>();
  const blocks: Block[] = [];
  const names = namesFor(asked);
  const used = [...new Set(['', ...names.map((n) => keyOf(QUANTITIES[n]))])];
  const unknown = used.find((key) => SHEETS[key] === undefined);
  if (unknown !== undefined) throw new Error(`sheets.ts names no sheet for quantities per ${unknown}`);
  const order = Object.keys(SHEETS).filter((key) => used.includes(key));
  const of = (key: string, wanted: (q: Quantity) => boolean): QuantityName[] =>
    names.filter((n) => keyOf(QUANTITIES[n]) === key && wanted(QUANTITIES[n]));

  const groups = inputGroups(new Set(names.filter((n) => isEntry(QUANTITIES[n]))));
  const columns = inputColumns(
    Math.max(LEAST_COLUMNS, axes[BESIDE].length, ...groups.map(([, of]) => (isTable(of) ? of.length : 0))),
  );
  let next: number = FIRST.inputs;
  for (const [title, group] of groups) {
    next = layInputs({ axes, places, entries, blocks, columns, entering }, title, group, next);
  }
  for (const key of order) {
    const { sheet, title } = SHEETS[key] as SheetOf;
    layValues(
      { axes, places, blocks },
      sheet,
      title,
      of(key, (q) => !sameCell(q, entering)),
    );
  }
  const sheets = new Map<string, SheetOf>([[INPUTS, INPUT_SHEET]]);
  for (const key of order) {
    const found = SHEETS[key] as SheetOf;
    if (blocks.some((b) => b.sheet === found.sheet)) sheets.set(found.sheet, found);
  }
  return { places, entries, blocks, sheets, columns, entering };
}

const inputColumns = (count: number): InputColumns => ({
  label: 0,
  unit: 1,
  value: 2,
  count,
  notes: 2 + count,
  check: 3 + count,
  range: 4 + count,
  source: 5 + count,
});

/** Members of these inputs go down, inputs to the right. */
const isTable = ([name]: readonly QuantityName[]): boolean => {
  const q = QUANTITIES[name as QuantityName];
  return keyOf(q) !== '' && !isBeside(q);
};

/** The groups of inputs, as far as there are any of them. Throws when one has no group: groups are written by us. */
function inputGroups(entries: Set<QuantityName>): [string, QuantityName[]][] {
  const groups = INPUT_GROUPS.map(({ title, inputs }): [string, QuantityName[]] => [
    title,
    inputs.filter((name) => entries.delete(name)),
  ]);
  if (entries.size > 0) throw new Error(`sheets.ts has no group for ${[...entries].join(', ')}`);
  return groups.filter(([, names]) => names.length > 0);
}

interface Laying {
  readonly axes: Members;
  readonly places: Map<QuantityName, Place>;
  readonly blocks: Block[];
}

/** Lays one block of `Inputs` from row `at` on; returns the row where the next one may begin. */
function layInputs(
  to: Laying & {
    readonly entries: Map<QuantityName, Place>;
    readonly columns: InputColumns;
    readonly entering: Entering;
  },
  title: string,
  names: readonly QuantityName[],
  at: number,
): number {
  const q = QUANTITIES[names[0] as QuantityName];
  const rows = q.per ?? [];
  const counts = rows.map((axis) => to.axes[axis].length);
  const form = rows.length === 0 ? 'single' : isBeside(q) ? 'beside' : 'entries';
  const order = keyOf(q) === ORDERED ? { order: to.entering.wires } : {};
  // Single inputs have a title in a row of its own, the others above the names of the rows.
  const top = form === 'single' ? at + 1 : at;
  const first = top + HEADING_ROWS[form];
  names.forEach((name, i) => {
    const place: Place =
      form === 'entries'
        ? { sheet: INPUTS, row: first, column: to.columns.value + i, rows, counts, ...order }
        : {
            sheet: INPUTS,
            row: first + i,
            column: to.columns.value,
            rows,
            counts,
            ...(form === 'beside' ? { beside: true } : {}),
          };
    to.entries.set(name, place);
    if (sameCell(QUANTITIES[name], to.entering)) to.places.set(name, place);
  });
  to.blocks.push({ sheet: INPUTS, title, rows, quantities: names, top, kind: 'inputs', form });
  return first + (form === 'entries' ? counts.reduce((a, b) => a * b, 1) : names.length) + 1;
}

/** Lays the one block of a working sheet. */
function layValues(to: Laying, sheet: string, title: string, names: readonly QuantityName[]): void {
  const first = names[0];
  if (first === undefined) return;
  const rows = QUANTITIES[first].per ?? [];
  const counts = rows.map((axis) => to.axes[axis].length);
  const form = rows.length === 0 ? 'list' : 'table';
  const row = FIRST.values + HEADING_ROWS[form];
  let column = rows.length;
  names.forEach((name, i) => {
    const { across } = QUANTITIES[name];
    to.places.set(
      name,
      form === 'list'
        ? { sheet, row: row + i, column: SCALAR_COLUMNS.value, rows, counts }
        : { sheet, row, column, rows, counts, ...(across === undefined ? {} : { across }) },
    );
    column += across === undefined ? 1 : to.axes[across].length;
  });
  // A design without sparks after the first has no rows for them.
  if (!counts.includes(0))
    to.blocks.push({ sheet, title, rows, quantities: names, top: FIRST.values, kind: 'values', form });
}

/** First row of a block with its title. */
export const titleRow = ({ form, top }: Block): number => (form === 'single' ? top - 1 : top);

/** Row of the first member of a block. */
export const firstRow = (block: Block): number => block.top + HEADING_ROWS[block.form];
