/**
 * Tables as comma-separated text, as RFC 4180 describes it, of which no spreadsheet program makes anything but words
 * and numbers. Without a byte order mark: a reader that goes by the RFC would take it for part of the first title.
 */
import { cut, plain } from './plain-text.ts';

/** A number that is written with fixed places. */
export interface Fixed {
  readonly value: number;
  readonly places: number;
}

/** Text, a number in its shortest form, a number with fixed places, or nothing. */
export type CsvCell = string | number | Fixed | null;

export const fixed = (value: number, places: number): Fixed => ({ value, places });

/** The rows, each ending in CR LF. Throws on a number that is none. */
export const csv = (rows: readonly (readonly CsvCell[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');

function cell(content: CsvCell): string {
  if (content === null) return '';
  if (typeof content === 'string') return csvText(content);
  const [value, text] =
    typeof content === 'number' ? [content, String(content)] : [content.value, printFixed(content)];
  if (!Number.isFinite(value)) throw new Error(`${value} cannot stand in a table`);
  // No negative zero.
  return text.replace(/^-(0(?:\.0*)?)$/, '$1');
}

const printFixed = ({ value, places }: Fixed): string => value.toFixed(places);

/** What spreadsheet programs take for the start of a formula, also its wide forms, and behind spaces and quotes. */
const SIGNS = '[=+\\-@\\uff1d\\uff0b\\uff0d\\uff20]';
const UNSEEN = '[\\s"\\u200b-\\u200f\\u202a-\\u202e\\u2060-\\u2069\\ufeff]*';
const FORMULA = new RegExp(`^${UNSEEN}${SIGNS}`);
/** In countries that write a decimal comma the cells of a table are parted by semicolons, whatever the quotes say. */
const AFTER_SEMICOLON = new RegExp(`;(?=${UNSEEN}${SIGNS})`, 'g');

/**
 * A text as a cell. What would begin a formula gets an apostrophe before it, the sign for text in every spreadsheet
 * program; line ends and tabs become spaces, since some programs begin a new cell there even within quotes.
 */
export function csvText(text: string): string {
  const line = plain(text)
    .replace(/[\r\n\t\u2028\u2029]+/g, ' ')
    .replace(AFTER_SEMICOLON, ',');
  const safe = cut(FORMULA.test(line) ? `'${line}` : line);
  return /[",]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
