/** Values as the papers print them: metric, US customary, or both; what is not known is a blank to fill in. */
import { printNumber } from '../basis/print.ts';
import { convert } from '../basis/units.ts';
import type { Units } from '../design/kit.ts';

/** What stands where the design says nothing, wide enough to write on. */
export const BLANK = '______';

/** How a value of one unit is read: in the metric world and in the customary one. */
interface Reading {
  readonly metric: string;
  readonly us: string;
  /** Decimal places of each. */
  readonly places: readonly [number, number];
}

const LENGTH: Reading = { metric: 'm', us: 'in', places: [3, 1] };
const LONG: Reading = { metric: 'm', us: 'ft', places: [2, 1] };
/** Decimal places of a short length in millimetres. */
export const SMALL_PLACES = 1;
const SMALL: Reading = { metric: 'mm', us: 'in', places: [SMALL_PLACES, 2] };

/** Between a number and its unit no line may break. */
const GAP = '\u00a0';

const fixed = (value: number, unit: string, places: number): string =>
  `${(value * convert('m', unit)).toFixed(places)}${GAP}${unit}`;

function lengthAs(metres: number | null, units: Units, { metric, us, places }: Reading): string {
  if (metres === null) return BLANK;
  const first = fixed(metres, metric, places[0]);
  const second = fixed(metres, us, places[1]);
  return units === 'metric' ? first : units === 'us' ? second : `${first} (${second})`;
}

/** A piece of wire [m]: to the millimetre. */
export const pieceLength = (metres: number | null, units: Units): string => lengthAs(metres, units, LENGTH);
/** A reel [m]. */
export const reelLength = (metres: number | null, units: Units): string => lengthAs(metres, units, LONG);
/** A strip, a tolerance [m]. */
export const smallLength = (metres: number | null, units: Units): string => lengthAs(metres, units, SMALL);

/** A temperature [°C], in whole degrees. */
export function temperature(celsius: number | null, units: Units): string {
  if (celsius === null) return BLANK;
  const first = `${celsius.toFixed(0)}${GAP}°C`;
  const second = `${((celsius * 9) / 5 + 32).toFixed(0)}${GAP}°F`;
  return units === 'metric' ? first : units === 'us' ? second : `${first} (${second})`;
}

/** Exact by definition: a pound of force is 0.45359237 kg at 9.80665 m/s². */
const NEWTONS = 0.45359237 * 9.80665;

/** A force [lbf]. */
export function force(pounds: number | null, units: Units): string {
  if (pounds === null) return BLANK;
  const first = `${(pounds * NEWTONS).toFixed(0)}${GAP}N`;
  const second = `${printNumber(pounds)}${GAP}lbf`;
  return units === 'metric' ? first : units === 'us' ? second : `${first} (${second})`;
}
