/**
 * Where every quantity stands. This file alone knows sheets, rows and columns.
 *
 * Quantities that exist once stand below each other on `Values`; the others stand in blocks, one block for each
 * combination of axes: a row for each member (or pair of members), a column for each quantity, and for a quantity
 * that goes `across` an axis a column for each member of it. What a design gives stands on `Inputs` instead, in
 * the unit in which people write it; its value in the model's unit follows from that.
 */
import type { Axis, Quantity } from '../basis/quantity.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import type { Members } from './axes.ts';

export const INPUTS = 'Inputs';

/** Sheet of each combination of row axes, in the order of the flow. */
const SHEETS: Readonly<Record<string, { sheet: string; title: string }>> = {
  '': { sheet: 'Values', title: 'Constants, limits and what exists once' },
  coil: { sheet: 'Coils', title: 'Every coil' },
  event: { sheet: 'Firings', title: 'Every firing, and how far every other one is from it' },
  lag: { sheet: 'Intervals', title: 'Intervals between firings, and who meets whom at which interval' },
  point: { sheet: 'Points', title: 'Operating points' },
  dwell_row: { sheet: 'Dwell', title: 'Dwell by supply' },
  speed: { sheet: 'Speeds', title: 'Charge of one coil at every point, then at every speed of the sweep' },
  'speed,lag': { sheet: 'Overlap', title: 'What two charges have in common, at every speed and interval' },
  'point,event': { sheet: 'Firing', title: 'What flows at the instant of each firing, and what it costs' },
  'coil,point': { sheet: 'Delivered', title: 'What each coil is left with at every point' },
  wire: { sheet: 'Conductors', title: 'Every conductor' },
  'wire,point': { sheet: 'Loads', title: 'Current and drop of every conductor at every point' },
  run: { sheet: 'Runs', title: 'Every run: load, protection, and the size chosen' },
  candidate: { sheet: 'Candidates', title: 'Sizes that may be chosen' },
  size: { sheet: 'Sizes', title: 'Conductor sizes' },
  amps_row: { sheet: 'Ampacity', title: 'Ampacity' },
  amps_column: { sheet: 'Ratings', title: 'Insulation ratings of the ampacity table' },
  insulation: { sheet: 'Insulation', title: 'Insulation' },
  fuse_type: { sheet: 'FuseTypes', title: 'Types of fuse' },
  fuse_size: { sheet: 'Fuses', title: 'Rated currents of fuses' },
  bundle_row: { sheet: 'Bundles', title: 'Conductors in a bundle' },
  relay_size: { sheet: 'Relays', title: 'Customary relay ratings' },
};

/** Rows and columns that the headings of a block take. */
const HEADING_ROWS = 4;

export interface Place {
  readonly sheet: string;
  /** First row and column of the values, counted from 0. */
  readonly row: number;
  readonly column: number;
  readonly rows: readonly Axis[];
  readonly across?: Axis;
  readonly counts: readonly number[];
}

export interface Block {
  readonly sheet: string;
  readonly title: string;
  readonly rows: readonly Axis[];
  readonly quantities: readonly QuantityName[];
  /** First heading row, counted from 0; values begin `HEADING_ROWS` below. */
  readonly top: number;
  readonly kind: 'values' | 'inputs';
}

export interface Placement {
  /** Of the values that formulas use. */
  readonly places: ReadonlyMap<QuantityName, Place>;
  /** Of the cells that a person fills in. */
  readonly entries: ReadonlyMap<QuantityName, Place>;
  readonly blocks: readonly Block[];
  readonly sheets: readonly string[];
}

/** Columns of a block of single values, and of the label columns before a block of members. */
export const SCALAR_COLUMNS = { label: 0, symbol: 1, value: 2, unit: 3, source: 4, note: 5 } as const;

const isEntry = (q: Quantity): boolean => q.kind === 'input';
/** An input that is written in the unit of the model needs no second cell. */
const sameCell = (q: Quantity): boolean =>
  q.kind === 'input' && (q.shown === undefined || q.shown === q.unit);

/** Finds a place for every quantity. */
export function placement(axes: Members): Placement {
  const places = new Map<QuantityName, Place>();
  const entries = new Map<QuantityName, Place>();
  const blocks: Block[] = [];
  const next = new Map<string, number>();

  const lay = (sheet: string, title: string, names: QuantityName[], kind: Block['kind']): void => {
    const first = names[0];
    if (first === undefined) return;
    const rows = QUANTITIES[first].per ?? [];
    const counts = rows.map((axis) => axes[axis].length);
    const top = next.get(sheet) ?? 2;
    const height = rows.length === 0 ? names.length : counts.reduce((a, b) => a * b, 1);
    const target = kind === 'inputs' ? entries : places;
    let column = rows.length;
    names.forEach((name, i) => {
      const q = QUANTITIES[name];
      const place: Place =
        rows.length === 0
          ? { sheet, row: top + 2 + i, column: SCALAR_COLUMNS.value, rows, counts }
          : {
              sheet,
              row: top + HEADING_ROWS,
              column,
              rows,
              counts,
              ...(q.across === undefined ? {} : { across: q.across }),
            };
      column += q.across === undefined ? 1 : axes[q.across].length;
      target.set(name, place);
      if (kind === 'inputs' && sameCell(q)) places.set(name, place);
    });
    blocks.push({ sheet, title, rows, quantities: names, top, kind });
    next.set(sheet, top + (rows.length === 0 ? 2 : HEADING_ROWS) + height + 2);
  };

  const names = Object.keys(QUANTITIES) as QuantityName[];
  const keys = [...new Set(['', ...names.map((n) => (QUANTITIES[n].per ?? []).join(','))])];
  const order = Object.keys(SHEETS).filter((key) => keys.includes(key));
  const unknown = keys.find((key) => SHEETS[key] === undefined);
  if (unknown !== undefined) throw new Error(`no sheet is named for quantities per ${unknown}`);
  const of = (key: string, wanted: (q: Quantity) => boolean): QuantityName[] =>
    names.filter((n) => (QUANTITIES[n].per ?? []).join(',') === key && wanted(QUANTITIES[n]));

  for (const key of order) lay(INPUTS, SHEETS[key]?.title ?? '', of(key, isEntry), 'inputs');
  for (const key of order) {
    const { sheet, title } = SHEETS[key] as { sheet: string; title: string };
    lay(
      sheet,
      title,
      of(key, (q) => !sameCell(q)),
      'values',
    );
  }
  return { places, entries, blocks, sheets: [...new Set(blocks.map((b) => b.sheet))] };
}

/** Row of a block's headings: label, symbol, unit, member. */
export const HEADINGS = { title: -1, label: 0, symbol: 1, unit: 2, member: 3 } as const;
export const headingRows = (block: Block): number => (block.rows.length === 0 ? 2 : HEADING_ROWS);

const letters = (column: number): string =>
  column < 26
    ? String.fromCharCode(65 + column)
    : letters(Math.floor(column / 26) - 1) + letters(column % 26);

/** `Sheet!$C$5`; what is not fixed stands without its dollar sign. */
export const address = (row: number, column: number, fixedRow = true, fixedColumn = true): string =>
  `${fixedColumn ? '$' : ''}${letters(column)}${fixedRow ? '$' : ''}${row + 1}`;
