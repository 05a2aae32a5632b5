/**
 * Values in the units that a reader wants: metric, US customary where the trade uses it, or both. The value is
 * converted first and printed then, so that each system has its own sensible digits. Electrical units, times, speeds
 * and the sizes of conductors are the same in both.
 */
import { asRead, printNumber } from './print.ts';
import { convert, zeroOf } from './units.ts';

export const UNITS = ['metric', 'us', 'both'] as const;
export type Units = (typeof UNITS)[number];
/** A single system, where `both` has no place: a column, an axis, an entry. */
export type System = Exclude<Units, 'both'>;

/** From here on a length is read in feet and inches, below in inches [in]. Arbitrary: tapes are read so. */
const IN_FEET = 72;
/** Short lengths want hundredths: tabs, strips, the place of a fuse [in]. Arbitrary. */
const SHORT = 10;

const US: Readonly<Record<string, string>> = { m: 'ft', cm: 'in', mm: 'in', degC: 'degF', g: 'oz', kg: 'lb' };

/** Unit in which a column, an axis or an entry holds values of `unit`; the unit itself where both systems share it. */
export const unitIn = (unit: string, system: System): string =>
  system === 'us' && Object.hasOwn(US, unit) ? (US[unit] as string) : unit;

/** A value of one unit in another one [to]. On a scale of temperature the zero moves with it; a difference is in K. */
export function inUnit(value: number, from: string, to: string): number {
  if (from === to) return value;
  const step = from === 'K' || to === 'K';
  const moved = (value + (step ? 0 : zeroOf(from))) * convert(from, to) - (step ? 0 : zeroOf(to));
  // Fifteen digits: all that a number holds for sure, so that 55 in is 1.397 m and 140 °F is 60 °C.
  return Number(moved.toPrecision(15));
}

/** Without zeros that say nothing: `55`, `59.1`. */
const plain = (value: number, places: number): string =>
  printNumber(Number(value.toFixed(places)), 6)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');

/** `55 in`, `17 ft 0 in`; metres in. */
function feetAndInches(metres: number): [string, string] {
  const inches = inUnit(metres, 'm', 'in');
  const whole = Math.round(Math.abs(inches));
  if (whole < IN_FEET) return [plain(inches, Math.abs(inches) < SHORT ? 2 : 1), 'in'];
  return [`${inches < 0 ? '−' : ''}${Math.floor(whole / 12)} ft ${whole % 12}`, 'in'];
}

/** Lengths and masses take the unit that suits their size. Null where there is no other unit. */
function customary(value: number, unit: string, exact: boolean): [string, string] | null {
  switch (unit) {
    case 'm':
    case 'cm':
    case 'mm':
      return feetAndInches(inUnit(value, unit, 'm'));
    case 'g':
    case 'kg': {
      const to = Math.abs(inUnit(value, unit, 'lb')) < 1 ? 'oz' : 'lb';
      return asRead(inUnit(value, unit, to), to, to, exact);
    }
    case 'degC':
      return [plain(inUnit(value, 'degC', 'degF'), 1), '°F'];
    // A difference, which must not be read as a point on the scale.
    case 'K':
      return [printNumber(inUnit(value, 'K', 'degF')), 'Δ°F'];
    default:
      return null;
  }
}

/**
 * A value of the model's `unit` as text and unit, `['12.3', 'mΩ']`; `shown` is the unit in which metric readers read
 * it, where it is another one. Ratings and counts are `exact`: without zeros behind them.
 */
export function readIn(
  value: number | null,
  unit: string,
  system: System,
  shown?: string,
  exact = false,
): [string, string] {
  const metric = asRead(value, unit, shown, exact);
  if (system === 'metric' || value === null || !Number.isFinite(value)) return metric;
  return customary(value, unit, exact) ?? metric;
}

/** `1.40 m`, `55.1 in`, or both: `1.40 m (55.1 in)`. */
export function shownIn(
  value: number | null,
  unit: string,
  units: Units,
  shown?: string,
  exact = false,
): string {
  if (value === null) return 'not known';
  const text = (system: System): string => readIn(value, unit, system, shown, exact).join(' ').trim();
  if (units !== 'both') return text(units);
  const [first, second] = [text('metric'), text('us')];
  return first === second ? first : `${first} (${second})`;
}
