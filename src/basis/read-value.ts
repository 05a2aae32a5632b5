/**
 * Reads a value as people write it: `3.2 ms`, `1,4 m`, `4 ft 7 in`, `55"`, `6400 RPM`, `20 amps`, `0.32R`. What could
 * mean two things is not read: the message names both.
 */
import { convert, SYMBOLS, sameDimension, unit, zeroOf } from './units.ts';

/** Other ways in which people write the same symbol, where capital and small letters differ. */
const SPELLINGS: Readonly<Record<string, string>> = {
  R: 'ohm',
  Ω: 'ohm',
  mΩ: 'mohm',
  kΩ: 'kohm',
  'Ω/m': 'ohm/m',
  'mΩ/m': 'mohm/m',
  'mΩ/ft': 'mohm/ft',
  '°': 'deg',
  μs: 'us',
  μH: 'uH',
  μF: 'uF',
  '"': 'in',
  "''": 'in',
  '″': 'in',
  '”': 'in',
  "'": 'ft',
  '′': 'ft',
  '’': 'ft',
  'min-1': 'rpm',
  '1/min': 'rpm',
  'r/min': 'rpm',
};

/** The same in small letters: capitals do not matter here. */
const WORDS: Readonly<Record<string, string>> = {
  v: 'V',
  volt: 'V',
  volts: 'V',
  mv: 'mV',
  millivolts: 'mV',
  a: 'A',
  amp: 'A',
  amps: 'A',
  'amp(s)': 'A',
  ampere: 'A',
  amperes: 'A',
  ma: 'mA',
  milliamps: 'mA',
  ka: 'kA',
  ohm: 'ohm',
  ohms: 'ohm',
  mohm: 'mohm',
  mohms: 'mohm',
  milliohm: 'mohm',
  milliohms: 'mohm',
  kohm: 'kohm',
  kohms: 'kohm',
  mh: 'mH',
  uh: 'uH',
  uf: 'uF',
  sec: 's',
  second: 's',
  seconds: 's',
  ms: 'ms',
  msec: 'ms',
  us: 'us',
  usec: 'us',
  rpm: 'rpm',
  hz: 'Hz',
  m: 'm',
  meter: 'm',
  meters: 'm',
  metre: 'm',
  metres: 'm',
  cm: 'cm',
  mm: 'mm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  c: 'degC',
  f: 'degF',
  '°c': 'degC',
  '℃': 'degC',
  degc: 'degC',
  'deg c': 'degC',
  celsius: 'degC',
  '°f': 'degF',
  '℉': 'degF',
  degf: 'degF',
  'deg f': 'degF',
  fahrenheit: 'degF',
  deg: 'deg',
  degree: 'deg',
  degrees: 'deg',
  percent: '%',
  'a²s': 'A2s',
  'a^2s': 'A2s',
  'a²·s': 'A2s',
  a2s: 'A2s',
  'a^2*s': 'A2s',
};

/** `M` before a unit is a million and not a thousandth: `2 MH` is not read as millihenries. */
const MEGA = /^M(?:v|a|ohms?|h|s|Ω)$/i;

/** The symbol for what a person wrote; null when it is not known. */
function symbolOf(written: string): string | null {
  // The ohm and micro signs have twins in Unicode; one spelling of each is enough.
  const text = written.normalize('NFC').replace('\u00b5', '\u03bc').replace(/\s+/g, ' ');
  if (Object.hasOwn(SYMBOLS, text)) return text === '1' ? null : text;
  if (Object.hasOwn(SPELLINGS, text)) return SPELLINGS[text] as string;
  const small = text.toLowerCase();
  if (!Object.hasOwn(WORDS, small) || (text.startsWith('M') && MEGA.test(text))) return null;
  return WORDS[small] as string;
}

/** What came of reading a person's text. */
export type Reading =
  | { readonly ok: true; readonly value: number }
  | {
      readonly ok: false;
      readonly why: 'no number' | 'unknown unit' | 'wrong dimension';
      readonly unit?: string;
    }
  /** A number without the unit that it needs. */
  | { readonly ok: false; readonly why: 'no unit'; readonly number: number }
  /** A comma that may part thousands or decimals: the two values, as they would be written with a point. */
  | { readonly ok: false; readonly why: 'two meanings'; readonly readings: readonly [string, string] };

/** Units with a zero of their own. They are points on a scale; a kelvin is a step, and neither stands for the other. */
const onScale = (symbol: string): boolean => symbol === 'degC' || symbol === 'degF';

/** True when a value in `symbol` may stand where `wanted` is asked for. */
const fits = (symbol: string, wanted: string): boolean =>
  sameDimension(unit(symbol), unit(wanted)) && onScale(symbol) === onScale(wanted);

/** The units that a person may write where `wanted` is needed, in the order of the table. */
export const unitsTaken = (wanted: string): string[] =>
  Object.keys(SYMBOLS).filter((symbol) => symbol !== '1' && fits(symbol, wanted));

/** A number, a gap or none, and a unit: `3.2 ms`, `55in`, `80 %`, `−20 °C`. */
const VALUE = /^([+-]?(?:\d[\d.,]*|[.,]\d+)(?:[eE][+-]?\d+)?)\s*(\S.*)?$/s;
/** `4 ft 7 in`, `4' 7"`, `7 1/2 in`. */
const FEET = /^(\d[\d.,]*)\s*(?:ft|feet|foot|['′’])\s*(\d[\d.,]*)\s*(?:in|inch|inches|"|''|″|”)$/i;
const FRACTION = /^(?:(\d+)\s+)?(\d+)\/(\d+)\s*(?:in|inch|inches|"|″|”)$/i;

/** Thousands in groups of three before a decimal sign, or several groups: then the comma or point is told apart. */
const GROUPED =
  /^[+-]?\d{1,3}(?:(,)\d{3}(?:,\d{3})+|(,)\d{3}(?:,\d{3})*(?=\.\d)|(\.)\d{3}(?:\.\d{3})*(?=,\d)|(\.)\d{3}(?:\.\d{3})+)/;

/** A number as people write it; two of them where a comma may mean either; null for none. */
function numberOf(text: string): number | readonly [number, number] | null {
  const group = GROUPED.exec(text)
    ?.slice(1)
    .find((sign) => sign !== undefined);
  const bare = group === undefined ? text : text.replaceAll(group, '');
  const point = bare.replace(',', '.');
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/.test(point)) return null;
  const value = Number(point);
  // `0,400` is no group of thousands, and `1.400` is what the point has always meant here.
  if (group === undefined && /^[+-]?[1-9]\d{0,2},\d{3}$/.test(bare))
    return [value, Number(bare.replace(',', ''))];
  return value;
}

/** Reads `text` as a value and returns it in the unit `wanted`. */
export function readValue(text: string, wanted: string): Reading {
  const plain = text.trim().replace('\u2212', '-');
  const inches = fits('in', wanted) ? inchesOf(plain) : null;
  if (inches !== null) return { ok: true, value: rounded(inches * convert('in', wanted)) };
  const match = VALUE.exec(plain);
  const number = match?.[1] === undefined ? null : numberOf(match[1]);
  if (number === null) return { ok: false, why: 'no number' };
  const written = match?.[2];
  const symbol = written === undefined ? null : symbolOf(written);
  if (written !== undefined && symbol === null) return { ok: false, why: 'unknown unit', unit: written };
  if (typeof number !== 'number') {
    const tail = symbol === null ? '' : ` ${written}`;
    return { ok: false, why: 'two meanings', readings: [`${number[0]}${tail}`, `${number[1]}${tail}`] };
  }
  if (written === undefined || symbol === null)
    return wanted === '1' ? { ok: true, value: number } : { ok: false, why: 'no unit', number };
  if (!fits(symbol, wanted)) return { ok: false, why: 'wrong dimension', unit: written };
  return { ok: true, value: rounded((number + zeroOf(symbol)) * convert(symbol, wanted)) };
}

/** Feet and inches, or a fraction of inches [in]; null when the text is neither. */
function inchesOf(text: string): number | null {
  const [, feet, inches] = FEET.exec(text) ?? [];
  if (feet !== undefined && inches !== undefined) {
    const parts = [numberOf(feet), numberOf(inches)];
    return parts.every((part) => typeof part === 'number')
      ? (parts[0] as number) * 12 + (parts[1] as number)
      : null;
  }
  const [, whole = '0', over, under] = FRACTION.exec(text) ?? [];
  return over === undefined || Number(under) === 0 ? null : Number(whole) + Number(over) / Number(under);
}

/** Fifteen digits: all that a number holds for sure, so that 55 in is 1.397 m and 140 degF is 60 degC. */
const rounded = (value: number): number => Number(value.toPrecision(15));
