/**
 * The words of a design in the spellings in which people write them: `18ga`, `#18` and `AWG 18` are 18 AWG. Pure
 * functions, null for what is not known; and what to answer then. The reader, the entries of a workbook and the fields
 * of a page use the same ones.
 */
import { FUSE_RATINGS } from '../data/fuse-ratings.ts';
import { FUSE_TYPES as FORMS } from '../data/fuses.ts';
import { INSULATIONS as INSULATION_DATA } from '../data/insulation.ts';
import type { FuseType, Series } from './design.ts';
import { FUSE_TYPES, INSULATIONS, SERIES, SIZES } from './names.ts';

/** A word without regard to capitals and to what joins its parts. */
const folded = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, '_');

/** One of the words: `Auto`, `Resistor`, `diode zener`. */
export const readWord = <W extends string>(text: string, words: readonly W[]): W | null =>
  words.find((word) => folded(word) === folded(text)) ?? null;

const IN_FRONT = /^(#|AWG|SAE|gauge|ga\.?)\s*(.+)$/i;
const BEHIND = /^(.+?)\s*(#|AWG|SAE|gauge|ga\.?|mm2|mm²|mm\^2|sq\.?\s?mm|qmm)$/i;
/** `00` is another way to write 2/0. */
const ZEROS: Readonly<Record<string, string>> = { '0': '1/0', '00': '2/0', '000': '3/0', '0000': '4/0' };

/** `8AWG`, `AWG 8`, `8 ga`, `#8` → `8 AWG`; `6 mm²`, `6 sq mm` → `6 mm2`. Null when the size is not known. */
export function readSize(text: string): string | null {
  const plain = text.trim();
  const [, unit, number] = IN_FRONT.exec(plain) ?? [];
  const [, before, behind] = BEHIND.exec(plain) ?? [];
  const [size, series] = number === undefined ? [before, behind] : [number, unit];
  if (size === undefined || series === undefined) return null;
  return sizeIn(size.trim(), /^sae$/i.test(series) ? 'SAE' : /mm/i.test(series) ? 'mm2' : 'AWG');
}

function sizeIn(text: string, series: Series): string | null {
  const decimal = /^\d{1,2}(?:[.,]\d{1,3})?$/.test(text) ? String(Number(text.replace(',', '.'))) : text;
  const number = series === 'mm2' ? decimal : (ZEROS[text] ?? text);
  return SIZES[series].includes(number) ? `${number} ${series}` : null;
}

/** Series of a size as `readSize` returns it. */
export const seriesOf = (size: string): Series => size.split(' ')[1] as Series;

/** What to answer to a size that is not known. A bare number is answered with the sizes that it could be. */
export function sizeTaken(input: unknown): string {
  if (input === null) return 'takes a size such as 4 AWG; "#4" needs quotes, or it is a comment';
  const number = typeof input === 'number' || typeof input === 'string' ? String(input).trim() : '';
  const could = SERIES.flatMap((series) => sizeIn(number, series) ?? []);
  if (could.length > 0) return `add its series: ${could.join(' or ')}?`;
  const metric = /^(\d+(?:[.,]\d+)?)\s*mm$/i.exec(number)?.[1];
  const area = metric === undefined ? null : sizeIn(metric, 'mm2');
  if (area !== null) return `takes an area, not a diameter: ${area}?`;
  return `takes a size: ${SERIES.map((series) => `${SIZES[series].join(' ')} ${series}`).join('; ')}`;
}

/** Class letter or type, in capitals or not: `c`, `txl`. */
export const readInsulation = (text: string): string | null => readWord(text, INSULATIONS);

/** `A 85 °C, B 100 °C, …` with what may be taken at each. */
const insulationsTaken = INSULATION_DATA.map(({ name, continuous }) => `${name} ${continuous} °C`).join(', ');

/** Types of building wire and flexible cord (from memory). Their insulation is not made for oil, fuel and vibration. */
const BUILDING =
  /^(?:THHN|THWN|THW|THHW|TW|XHHW|RHH|RHW|USE|UF|NM|NMC|SER?|SEU|MTW|AWM|TFFN|SO|SOOW|SJ|SJT|SJOOW|NYM|NYY|H0[57][VRB]\w*)(?![a-z])/i;

/** What to answer to an insulation that is not known. */
export function insulationTaken(input: unknown): string {
  const text = typeof input === 'number' || typeof input === 'string' ? String(input).trim() : '';
  const celsius = /^(\d{2,3})(?:\s*(?:°|deg\s?)?\s*c)?$/i.exec(text)?.[1];
  const alike = INSULATION_DATA.filter(({ continuous }) => continuous === Number(celsius));
  if (alike.length > 0) return `takes the class or the type: ${alike.map(({ name }) => name).join(', ')}?`;
  const why = BUILDING.test(text) ? 'that is building wire. Takes' : 'takes';
  return `${why} a class or a type: ${insulationsTaken}`;
}

/** `E`, `sf 30`. */
export const readFuseType = (text: string): FuseType | null =>
  FUSE_TYPES.find((type) => folded(type).replace('_', '') === folded(text).replace('_', '')) ?? null;

/** `C blade, medium, 1 to 40 A` */
const fusesTaken = FUSE_TYPES.map((type) => {
  const ratings = FUSE_RATINGS.rows.filter((row) => row.type === type).map((row) => row.rating);
  const form = FORMS.rows.find((row) => row.type === type)?.form ?? '';
  return `${type} (${form}, ${Math.min(...ratings)} to ${Math.max(...ratings)} A)`;
}).join(', ');

/** How people call them. The first that fits is named. */
const EVERYDAY: readonly [RegExp, FuseType][] = [
  [/\b(?:small|mini|miniature)\b/i, 'F'],
  [/\b(?:large|big|high)\b/i, 'E'],
  [/\b(?:bolt|bolted|bolt-on|screwed|strip)\b/i, 'SF30'],
  [/\b(?:medium|standard|normal|regular|blade)\b/i, 'C'],
];

/** What to answer to a type of fuse that is not known. */
export function fuseTaken(input: unknown): string {
  const text = typeof input === 'string' && input.length < 60 ? input : '';
  const meant = EVERYDAY.find(([words]) => words.test(text))?.[1];
  const guess = meant === undefined ? '' : `did you mean ${meant}? `;
  return `${guess}${guess === '' ? 'takes' : 'Takes'} ${fusesTaken}, or unknown`;
}

/** `1-5-6-3-7-2-4-8`, `1 3 4 2`, `1, 3, 4, 2` → the numbers; null when it is no such list. */
export function readOrder(text: string): number[] | null {
  const plain = text.trim();
  return /^\d{1,2}(?:(?:\s*[-–—,;/]\s*|\s+)\d{1,2})+$/.test(plain) ? plain.split(/[^\d]+/).map(Number) : null;
}
