/**
 * Values as the papers print them, metric, US customary, or both: to fixed places, which are what a cutter takes, a
 * millimetre or a hundredth of an inch, and what a calliper shows of a crimp.
 */
import { printNumber } from '../basis/print.ts';
import { inUnit, type System, type Units } from '../basis/shown.ts';

/** What stands where the design says nothing, wide enough to write on. */
export const BLANK = '______';

/** Decimal places of a short length in millimetres. */
export const SMALL_PLACES = 1;

/** Unit of the value; units and decimal places in which it is read in the metric world and in the customary one. */
const FORMS = {
  /** A piece of wire. */
  piece: ['m', 'm', 3, 'in', 2],
  reel: ['m', 'm', 2, 'ft', 1],
  /** A strip, a tolerance. */
  small: ['m', 'mm', SMALL_PLACES, 'in', 2],
  /** A crimp, between the jaws of a calliper. */
  height: ['m', 'mm', 2, 'in', 3],
  temperature: ['degC', 'degC', 0, 'degF', 0],
} as const;
export type Form = keyof typeof FORMS;

/** Between a number and its unit no line may break. */
const GAP = '\u00a0';

const either = (metric: string, us: string, units: Units): string =>
  units === 'metric' ? metric : units === 'us' ? us : `${metric} (${us})`;

/** What a cutter's lengths are rounded to. */
export const resolution = (units: Units): string => either(`1${GAP}mm`, `0.01${GAP}in`, units);

/** The one system of a column or a drawing, where two would not fit. */
export const systemOf = (units: Units): System => (units === 'us' ? 'us' : 'metric');

/** Unit and decimals of a form in a table for machines: cuts in millimetres, to as many of them as the sheet shows in metres. */
export function placesOf(
  form: Exclude<Form, 'temperature'>,
  units: System,
): { unit: string; places: number } {
  const [, metric, places, us, usPlaces] = FORMS[form];
  if (units === 'us') return { unit: us, places: usPlaces };
  return form === 'piece' ? { unit: 'mm', places: places - MILLI } : { unit: metric, places };
}

/** Places between a metre and a millimetre. */
const MILLI = 3;

/** A length [m] or a temperature [°C]. */
export function onPaper(value: number, form: Form, units: Units): string {
  const [unit, metric, places, us, usPlaces] = FORMS[form];
  const text = (to: string, count: number): string =>
    `${inUnit(value, unit, to).toFixed(count)}${GAP}${to.replace('deg', '°')}`;
  return either(text(metric, places), text(us, usPlaces), units);
}

/** A force [lbf]. */
export const force = (pounds: number, units: Units): string =>
  either(`${inUnit(pounds, 'lbf', 'N').toFixed(0)}${GAP}N`, `${printNumber(pounds)}${GAP}lbf`, units);
