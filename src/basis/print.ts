/** Numbers as a practitioner reads them: three to four digits, in the trade's unit. */
import { convert, printUnit } from './units.ts';

/** Unit in which a value is read when the quantity does not name one. */
const READ_AS: Readonly<Record<string, string>> = {
  ohm: 'mohm',
  J: 'mJ',
  s: 'ms',
  'mm^2': 'mm^2',
};

/** Unit in which a value of `unit` is read; `shown` where the quantity names one. */
export const readAs = (unit: string, shown?: string): string => shown ?? READ_AS[unit] ?? unit;

/** Decimal places that leave about `digits` significant digits, at most `most`. */
export const decimals = (value: number, digits = 3, most = 3): number =>
  value === 0 ? 0 : Math.min(most, Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value)) + 1e-12)));

/** With a capital first letter. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Below this three decimals would leave a nought, or one digit: so many more are printed. */
const SMALL = 0.0005;

/** `12.3`: about three significant digits, never an exponent; a dash for what is not known. */
export const printNumber = (value: number | null, digits = 3): string => {
  if (value === null || !Number.isFinite(value)) return '–';
  const places = Math.abs(value) < SMALL ? decimals(value, 1, 9) : decimals(value, digits);
  return value
    .toFixed(places)
    .replace('-', '−')
    .replace(/^−(0(?:\.0*)?)$/, '$1');
};

/** A number that is exact, a rating or a count: `7.5`, `20`. */
const printExact = (value: number): string =>
  printNumber(value, 4)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');

/** A value of `unit` in the unit in which it is read: `[12.3, 'mΩ']`. Counts and `exact` values go without zeros. */
export function asRead(value: number | null, unit: string, shown?: string, exact = false): [string, string] {
  const to = readAs(unit, shown);
  const read = value === null ? null : value * convert(unit, to);
  const plain = read !== null && (exact || (to === '1' && Number.isInteger(read)));
  return [plain ? printExact(read) : printNumber(read), printUnit(to)];
}

/** `12.3 mΩ` */
export const printValue = (value: number | null, unit: string, shown?: string, exact = false): string =>
  value === null ? 'not known' : asRead(value, unit, shown, exact).join(' ').trim();

/** `5.01–16.4`; from below 0 with a word, since a dash reads as another minus: `−0.98 to 26.7`. */
export const printRange = (low: string, high: string): string =>
  low === high ? low : `${low}${low.startsWith('−') ? ' to ' : '–'}${high}`;

/** `class C`, `TXL` */
export const printInsulation = (name: string): string => `${name.length === 1 ? 'class ' : ''}${name}`;

/** `6 mm²` */
export const printSize = (gauge: string): string => gauge.replace('mm2', 'mm²');
