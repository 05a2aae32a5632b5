/** What a cell is, and a sheet of cells, before it is a workbook's. */
import type { At, Axis, Quantity } from '../basis/quantity.ts';
import { inUnit, type System, unitIn } from '../basis/shown.ts';
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
  | 'remark'
  | 'spare'
  | 'gap'
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

/** Unit in which a person enters an input: by the tape and the thermometer at hand. What is sold by a unit stays in it. */
export function entryUnit(q: Quantity, system: System): string {
  const unit = q.shown ?? q.unit;
  if (q.exact || system === 'metric') return unit;
  return unit === 'm' ? 'in' : unitIn(unit, system);
}

/** A value of the model's unit in the unit in which a person enters it. */
export function asEntered(value: number, q: Quantity, system: System = 'metric'): number {
  const unit = entryUnit(q, system);
  if (unit !== (q.shown ?? q.unit)) return inUnit(value, q.unit, unit);
  const factor = convert(unit, q.unit);
  // 15 digits: what a spreadsheet keeps, and enough to hide the last bit of a unit's factor.
  return Number((factor < 1 ? value * Math.round(1 / factor) : value / factor).toPrecision(15));
}

/** Formula of a value in another unit; what is not known stays the empty text. The value itself where nothing changes. */
export function turned(value: string, from: string, to: string): string {
  if (from === 'degC' && to === 'degF') return `IF(ISNUMBER(${value}),${value}*9/5+32,"")`;
  if (from === 'degF' && to === 'degC') return `IF(ISNUMBER(${value}),(${value}-32)*5/9,"")`;
  const factor = from === 'text' ? 1 : convert(from, to);
  if (factor === 1) return value;
  return `IF(ISNUMBER(${value}),${value}${factor < 1 ? `/${1 / factor}` : `*${factor}`},"")`;
}

/** Digits in which an end of a range is told where another unit makes it an odd number. */
const TOLD = 4;

/** Ends of the range of an input as they are told, within the range: `['0.03938', '3937']`; none where it has no range. */
export const boundsOf = (q: Quantity, system: System): string[] =>
  (q.range ?? []).map((end, i) => {
    const value = asEntered(end, q, system);
    const odd = entryUnit(q, system) !== (q.shown ?? q.unit);
    return String(odd ? within(value, i === 0) : value).replace('-', '−');
  });

/** The number with few digits, not below it or not above it. */
function within(value: number, up: boolean): number {
  const rounded = Number(value.toPrecision(TOLD));
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) + 1 - TOLD);
  if (up ? rounded >= value : rounded <= value) return rounded;
  return Number((rounded + (up ? step : -step)).toPrecision(TOLD));
}

/** What the design gives, in the unit in which a person enters it; null when it gives nothing. */
export function inputValue(
  design: Design,
  q: Quantity & { kind: 'input' },
  at: At,
  system: System = 'metric',
): number | string | null {
  const keys = q.path.split('.').map((key) => {
    const axis = /^\{(\w+)\}$/.exec(key)?.[1];
    return axis === undefined ? key : (at[axis as Axis] as number);
  });
  let found: unknown = design;
  for (const key of keys) found = (found as Record<string | number, unknown> | null | undefined)?.[key];
  if (found === null || found === undefined) return null;
  if (typeof found === 'string') return found;
  return asEntered(found as number, q, system);
}
