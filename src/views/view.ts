/**
 * A view: a table that people or programs read, declared once as a list of quantities.
 *
 * Label, unit, digits and symbol come from the record of the quantity; the key in JSON is its name, or what stands
 * behind `as`, with the unit behind it. `read` goes everywhere: terminal, workbook, page, JSON and docs/result.md; what
 * only programs ask for stands in `more`.
 */
import type { At, Axis, Quantity } from '../basis/quantity.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { QUANTITIES, type QuantityName, type SUBJECTS } from '../model/model.ts';
import { standsIn } from './stand-in.ts';

/** A quantity, or a quantity and its key in JSON: `coil_supply as supply`. */
export type Field = QuantityName | `${QuantityName} as ${string}`;

export interface View {
  /** As a heading. */
  readonly title: string;
  /** What one row of it is, in a few words. */
  readonly row: string;
  readonly read: readonly Field[];
  readonly more?: readonly Field[];
}

type NameOf<F> = F extends `${infer N} as ${string}` ? N : F;
type KeyOf<F> = F extends `${string} as ${infer K}` ? K : F;

type Subjects = (typeof SUBJECTS)[keyof typeof SUBJECTS];
type RecordOf<N> = Subjects extends infer S
  ? S extends unknown
    ? N extends keyof S
      ? S[N]
      : never
    : never
  : never;
type UnitOf<N> = RecordOf<N> extends { readonly unit: infer U extends string } ? U : string;

/** What a unit is called at the end of a key; a plain number and a speed, which is called by its unit, have nothing there. */
const ENDINGS = { '1': '', text: '', rpm: '', degC: '_C', 'mm^2': '_mm2', Hz: '_per_s' } as const;
type Ending<U> = U extends keyof typeof ENDINGS ? (typeof ENDINGS)[U] : U extends string ? `_${U}` : '';

type Words<N> =
  RecordOf<N> extends { readonly flag: true }
    ? boolean
    : RecordOf<N> extends { readonly names: string } | { readonly unit: 'text' }
      ? string | null
      : number | null;

type Fields<V extends View> = V['read'][number] | (V['more'] extends readonly (infer F)[] ? F : never);

/** A row of a view as JSON: SI numbers, areas in mm² and temperatures in °C; null for what is not known. */
export type Row<V extends View> = {
  readonly [F in Fields<V> as `${KeyOf<F> & string}${Ending<UnitOf<NameOf<F>>>}`]: Words<NameOf<F>>;
};

export const quantityOf = (field: Field): QuantityName => field.split(' as ')[0] as QuantityName;

/** Its key in JSON. */
export function keyOf(field: Field): string {
  const [name = '', key = name] = field.split(' as ');
  return key + keyEnding(name as QuantityName);
}

/** What stands behind a key for the unit: `_V`; nothing for words and plain numbers. */
export function keyEnding(name: QuantityName): string {
  const { unit } = QUANTITIES[name];
  return Object.hasOwn(ENDINGS, unit) ? ENDINGS[unit as keyof typeof ENDINGS] : `_${unit}`;
}

export const fieldsOf = ({ read, more }: View): readonly Field[] =>
  more === undefined ? read : read.concat(more);

/** Name of a member of an axis by its number, counted from 1; coils go by their own name. */
export function memberName({ design, grid }: Evaluation, axis: Axis, number: number | null): string | null {
  const at = (number ?? 0) - 1;
  return (axis === 'coil' ? design.coils[at]?.id : grid.axes[axis][at]) ?? null;
}

/** What a quantity has for these members, as JSON has it: a number, a name, yes or no; null for what is not known or of sizes that were not found. */
export function plainValue(e: Evaluation, name: QuantityName, at: At): number | string | boolean | null {
  const { flag, names, unit }: Quantity = QUANTITIES[name];
  if (standsIn(e, name, at)) return null;
  const value = e.value(name, at);
  if (flag) return value === 1;
  if (names !== undefined) return memberName(e, names, value as number | null);
  // A time without end is not known to end.
  if (unit === 's' && typeof value === 'number' && value >= (e.number('no_end') ?? 0)) return null;
  return value;
}

/** A row as JSON. */
export const rowOf = <V extends View>(view: V, e: Evaluation, at: At): Row<V> =>
  Object.fromEntries(fieldsOf(view).map((f) => [keyOf(f), plainValue(e, quantityOf(f), at)])) as Row<V>;
