/** Values as a person wants to read them: metric, or in US units where the trade uses those. */
import { printNumber, printValue } from '../basis/print.ts';

export type System = 'metric' | 'us';

interface Other {
  readonly factor: number;
  readonly zero?: number;
  readonly unit: string;
}

/** Exact factors: 0.3048 m to the foot, 25.4 mm to the inch, 453.59237 g to the pound of 16 ounces. */
const OTHERS: Readonly<Record<string, (value: number) => Other>> = {
  m: (value) =>
    Math.abs(value) < 0.9144 ? { factor: 1 / 0.0254, unit: 'in' } : { factor: 1 / 0.3048, unit: 'ft' },
  mm: () => ({ factor: 1 / 25.4, unit: 'in' }),
  '°C': () => ({ factor: 9 / 5, zero: 32, unit: '°F' }),
  degC: () => ({ factor: 9 / 5, zero: 32, unit: 'degF' }),
  K: () => ({ factor: 9 / 5, unit: '°F (difference)' }),
  g: (value) =>
    Math.abs(value) < 453.59237
      ? { factor: 16 / 453.59237, unit: 'oz' }
      : { factor: 1 / 453.59237, unit: 'lb' },
  kg: () => ({ factor: 1 / 0.45359237, unit: 'lb' }),
};

/** A number, a gap and a unit that has another one, as our own texts print it. */
const VALUE =
  /(?<![\p{L}\p{N}.])([−-]?\d+(?:\.\d+)?)(?:–(\d+(?:\.\d+)?))? (mm|m|°C|degC|K|g|kg)(?![\p{L}\p{N}²³/·])/gu;

/** Text of ours with its values in the units that are wanted. */
export function inUnits(text: string, system: System): string {
  if (system === 'metric') return text;
  return text.replace(VALUE, (_, first: string, second: string | undefined, unit: string) => {
    const numbers = [first, second].flatMap((n) => (n === undefined ? [] : [Number(n.replace('−', '-'))]));
    const {
      factor,
      zero = 0,
      unit: other,
    } = (OTHERS[unit] as (value: number) => Other)(Math.max(...numbers.map(Math.abs)));
    return `${numbers.map((n) => printNumber(n * factor + zero)).join('–')} ${other}`;
  });
}

/** A value of a unit of the model, printed. */
export const show = (value: number | null, unit: string, system: System, shown?: string): string =>
  value === null ? '–' : inUnits(printValue(value, unit, shown), system);

/** A rating, without zeros that say nothing: `7.5 A`, `20 A`. */
export const showRating = (value: number | null): string =>
  value === null ? '–' : printValue(value, 'A', 'A', true);

/** `6 mm²` */
export const showSize = (gauge: string | null): string => (gauge ?? '–').replace('mm2', 'mm²');
