/** Values of quantities as a person reads them, in the units that the design asks for. */

import { printSize } from '../basis/print.ts';
import type { At, Quantity } from '../basis/quantity.ts';
import { readIn, type System, shownIn, type Units } from '../basis/shown.ts';
import { printUnit, sameDimension, unit as unitFrom } from '../basis/units.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { standsIn } from './stand-in.ts';
import { memberName } from './view.ts';

/** The label, short where there is a short one: a table says the rest. */
export const labelOf = (name: QuantityName): string => {
  const q: Quantity = QUANTITIES[name];
  return q.short ?? q.label;
};

const systems = (units: Units): readonly System[] => (units === 'both' ? ['metric', 'us'] : [units]);

/** Ratings, counts and what a person stated go without zeros that say nothing. */
const isExact = ({ kind, exact }: Quantity): boolean =>
  exact === true || kind === 'input' || kind === 'constant';

/** [s] A time that long is none: a driver that stays on for a day, and what is withstood continuously. */
const LONG = 86_400;
const endless = (name: QuantityName, value: number | string | null): boolean =>
  QUANTITIES[name].unit === 's' && typeof value === 'number' && value >= LONG;

/** A value with its unit; `as` is the quantity whose unit it is read in. */
export function printQuantity(
  name: QuantityName,
  value: number | null,
  units: Units = 'metric',
  as: QuantityName = name,
): string {
  const { unit, shown }: Quantity = QUANTITIES[as];
  if (endless(as, value)) return 'unlimited';
  return shownIn(value, unit, units, shown, isExact(QUANTITIES[name]));
}

/** Lengths and masses take the customary unit that suits their size, so that it stands with the value. */
const varies = (unit: string, units: Units): boolean =>
  units !== 'metric' && ['m', 'kg'].some((base) => sameDimension(unitFrom(unit), unitFrom(base)));

/** Unit above a column: `mΩ`, `°C (°F)`; nothing for words and where the unit stands with each value. */
export function unitAbove(name: QuantityName, units: Units): string {
  const { unit, shown, flag, names }: Quantity = QUANTITIES[name];
  if (unit === 'text' || flag || names !== undefined || varies(unit, units)) return '';
  const [first = '', second = first] = systems(units).map(
    (system) => readIn(0, unit, system, shown)[1] || printUnit(shown ?? unit),
  );
  return first === second ? first : `${first} (${second})`;
}

/** A value as it stands in a column under its unit; a dash for what is not known. */
export function cellText(e: Evaluation, name: QuantityName, at: At): string {
  const q: Quantity = QUANTITIES[name];
  if (standsIn(e, name, at)) return q.unit === 'text' ? 'none' : '–';
  const value = e.value(name, at);
  if (value === null) return '–';
  if (q.flag) return value === 1 ? 'yes' : 'no';
  if (q.names !== undefined) return memberName(e, q.names, value as number) ?? '–';
  if (typeof value === 'string') return printSize(value);
  const { units } = e.design;
  if (varies(q.unit, units)) return printQuantity(name, value, units);
  const [first = '', second = first] = systems(units).map(
    (system) => readIn(value, q.unit, system, q.shown, isExact(q))[0],
  );
  return first === second ? first : `${first} (${second})`;
}

/** A value with its unit, by its name and place. */
export const say = (e: Evaluation, name: QuantityName, at: At = {}): string => {
  const text = cellText(e, name, at);
  if (text === '–') return text;
  if (endless(name, e.value(name, at))) return 'unlimited';
  const unit = unitAbove(name, e.design.units);
  return e.design.units === 'both' && unit !== ''
    ? printQuantity(name, e.number(name, at), 'both')
    : `${text} ${unit}`.trim();
};

/** Units that have another one in the other system. */
const OTHER = ['m', 'cm', 'mm', 'degC', 'K', 'g', 'kg'];

/** A value that is written as a text of ours, `20 degC`, `10000 kohm`, in the units of the reader, `10 MΩ`; any other text stays. */
export function printWritten(text: string, units: Units): string {
  const [, number, unit] = /^(-?\d+(?:\.\d+)?) (\S+)$/.exec(text) ?? [];
  if (unit === 'kohm') return Number(number) < 1000 ? `${number} kΩ` : `${Number(number) / 1000} MΩ`;
  if (units === 'metric' || number === undefined || unit === undefined || !OTHER.includes(unit)) return text;
  return shownIn(Number(number), unit, units, unit, true);
}
