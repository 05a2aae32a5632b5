/** What a cell is, and a sheet of cells, before it is a workbook's. */
import type { At, Axis, Quantity } from '../basis/quantity.ts';
import { convert } from '../basis/units.ts';
import type { Design } from '../design/design.ts';
import type { QuantityName } from '../model/model.ts';

export type Role =
  | 'heading'
  | 'about'
  | 'title'
  | 'label'
  | 'symbol'
  | 'unit'
  | 'member'
  | 'source'
  | 'text'
  | 'code'
  | 'entry'
  | 'given'
  | 'formula'
  | 'verdict'
  | 'own'
  | 'warning';

export interface Cell {
  readonly role: Role;
  readonly value?: number | string | null;
  /** Without the leading equals sign. */
  readonly formula?: string;
  /** The quantity whose value this is. */
  readonly quantity?: QuantityName;
  /** The quantity that it shows as people read it, for some members; choosing the cell names it. */
  readonly tells?: QuantityName;
  /** In the unit in which a person writes it. */
  readonly entry?: boolean;
  /** Unit in which the number stands; it decides how many digits are shown. */
  readonly unit?: string;
  /** Columns that the cell takes, more than one. */
  readonly span?: number;
}

/** Rows of cells; a place without a cell is undefined. */
export type Sheet = (Cell | undefined)[][];

export const put = (sheet: Sheet, row: number, column: number, cell: Cell): void => {
  while (sheet.length <= row) sheet.push([]);
  (sheet[row] as (Cell | undefined)[])[column] = cell;
};

/** A value of the model's unit in the unit in which a person writes it. */
export function asEntered(value: number, q: Quantity): number {
  const factor = convert(q.shown ?? q.unit, q.unit);
  // 15 digits: what a spreadsheet keeps, and enough to hide the last bit of a unit's factor.
  return Number((factor < 1 ? value * Math.round(1 / factor) : value / factor).toPrecision(15));
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
  return asEntered(found as number, q);
}
