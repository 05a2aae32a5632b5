/** Where the table of a recording stands in its text: its columns and their headings, and what is told around it. */
import { bare, type Heading, headingOf, TIME_UNITS, type Unit, unitOf } from './heading.ts';
import {
  beyond,
  blank,
  cellsOf,
  clockOf,
  type Line,
  linesOf,
  numberOf,
  type Read,
  refused,
  type Separator,
  separatorOf,
} from './lines.ts';

export interface Layout {
  readonly separator: Separator;
  /** Number of the first line with values. */
  readonly first: number;
  /** Of every column, from the left. */
  readonly headings: readonly Heading[];
  /** Indices of the columns that hold numbers. */
  readonly numeric: readonly number[];
  /** The first rows with values, as cells. */
  readonly rows: readonly (readonly string[])[];
  readonly around: Around;
}

/** What instruments tell above or beside the table. */
export interface Around {
  /** Time between samples [s]. */
  readonly interval: number | null;
  readonly vertical: Unit | null;
  readonly horizontal: Unit | null;
}

/** So many lines tell how the table is laid out: beyond any heading. */
const TELLING = 1000;

/** Fewer samples than this hold no charge that could be judged. */
export const LEAST_SAMPLES = 30;
export const tooFew = (samples: number): string =>
  `It has ${samples} samples: too few to see a charge rise; record some thousand.`;

/** Finds the table. `single` says that one column will do, because the times are known otherwise. */
export function layoutOf(pieces: Iterable<string>, single: boolean): Read<Layout> {
  const lines: Line[] = [];
  for (const line of linesOf(pieces)) {
    lines.push(line);
    if (lines.length === TELLING) break;
  }
  // Whatever stands above the table, the last lines belong to it.
  const last = lines.slice(-Math.ceil(lines.length / 3));
  const separator = separatorOf(last);
  const cells = lines.map(({ text }) => cellsOf(text, separator));
  const numeric = numericOf(cells.slice(-last.length));
  if (numeric.length === 0 || (numeric.length < 2 && !single && !told(cells)))
    return refused(
      numeric.length === 0 || lines.length < 3
        ? 'No line of it has two numbers: it takes a column of times and one of amperes, separated by commas, ' +
            'semicolons or tabs, and plain numbers without units behind them.'
        : 'No line of it has two numbers: it has one column of numbers only. Give the time from one sample to the ' +
            'next, such as "--interval 10us".',
    );
  if (separator === ',' && commasTwice(cells.slice(-last.length)))
    return refused('Commas are both decimal marks and separators in it: export it with semicolons or tabs.');
  const starts = firstRow(cells, numeric);
  const above = lines.slice(0, starts).map(({ text }) => headCells(text, separator));
  const { headings, from } = headingsOf(above, Math.max(...numeric) + 1, numeric);
  const beside = cells.map((row, i) => (i < starts ? row : row.filter((_, c) => !numeric.includes(c))));
  const rows = cells.slice(starts);
  if (rows.length < LEAST_SAMPLES) return refused(tooFew(rows.length));
  return {
    ok: true,
    value: {
      separator,
      first: lines[starts]?.number ?? 1,
      headings,
      numeric,
      rows,
      around: aroundOf([...beside.slice(0, from), ...beside.slice(starts)]),
    },
  };
}

const told = (cells: readonly (readonly string[])[]): boolean => aroundOf(cells).interval !== null;

const isNumber = (cell: string): boolean => numberOf(cell) !== null || beyond(cell) || clockOf(cell) !== null;

/** Columns that hold numbers in most of the rows. */
function numericOf(rows: readonly (readonly string[])[]): number[] {
  const width = rows.reduce((most, { length }) => Math.max(most, length), 0);
  return Array.from({ length: width }, (_, column) => column).filter(
    (column) => rows.filter((row) => isNumber(row[column] ?? '')).length > 0.5 * rows.length,
  );
}

/** Index of the first of the lines at the end that all have numbers, or nothing, in these columns. */
function firstRow(cells: readonly (readonly string[])[], numeric: readonly number[]): number {
  const broken = cells.findLastIndex((row) => {
    const own = numeric.map((column) => row[column] ?? '');
    return !own.every((cell) => isNumber(cell) || blank(cell)) || !own.some(isNumber);
  });
  // A line out of order in the midst of the table is said when it is read: only words in a heading end it.
  const table = cells.findIndex((row) => numeric.every((column) => isNumber(row[column] ?? '')));
  return table >= 0 && broken > table + 20 ? table : broken + 1;
}

/** Whether every row is pairs of whole numbers: values with a decimal comma each. */
const commasTwice = (rows: readonly (readonly string[])[]): boolean =>
  rows.every((cells) => cells.length === 4 && cells.every((cell) => /^[-+]?\d+$/.test(cell)));

/** Cells of a heading: where gaps separate, a unit in brackets or behind a stroke belongs to the word before it. */
const headCells = (text: string, separator: Separator): string[] =>
  cellsOf(
    (separator === ' ' ? text.replace(/\s+(?=[[(/])/g, '').replace(/\/\s+/g, '/') : text).replace(
      /^\s*[#%*!']+\s*(?=[\p{L}"[(])/u,
      '',
    ),
    separator,
  );

/** The heading of each column, and the index of the first line that belongs to it. */
function headingsOf(
  above: readonly (readonly string[])[],
  width: number,
  numeric: readonly number[],
): { headings: Heading[]; from: number } {
  const worded = (row: readonly string[]): boolean =>
    row.filter((cell, column) => numeric.includes(column) && /[\p{L}%°#]/u.test(cell)).length >=
    Math.min(2, numeric.length);
  const unitsOnly = (row: readonly string[]): boolean => {
    const own = row.filter((cell, column) => numeric.includes(column) && /[\p{L}%°]/u.test(cell));
    // `Time,Volt,Volt` are units, too; a lone letter beside the word is the name of a channel.
    const units = own.filter((cell) => bare(cell) !== null);
    const rest = own.filter((cell) => bare(cell) === null);
    return (
      units.length > 0 &&
      rest.every((cell) => headingOf(cell).word === 'time') &&
      (rest.length === 0 || units.every((cell) => cell.length > 1))
    );
  };
  const near = above.findLastIndex(worded);
  const none = { headings: Array.from({ length: width }, () => headingOf('')), from: above.length };
  if (near < 0 || near < above.length - 3) return none;
  const row = above[near] as readonly string[];
  const before = above.slice(0, near).findLastIndex(worded);
  const close = before >= 0 && before >= near - 2 ? (above[before] as readonly string[]) : null;
  // Units stand below the names, or above them.
  const [names, units, from] = unitsOnly(row)
    ? [close ?? [], row, close === null ? near : before]
    : close !== null && unitsOnly(close)
      ? [row, close, before]
      : [row, [], near];
  const headings = Array.from({ length: width }, (_, column) =>
    headingOf(names[column] ?? '', units[column] ?? ''),
  );
  return { headings, from };
}

/** Searches what stands around the table for a time between samples, and for units. */
function aroundOf(lines: readonly (readonly string[])[]): Around {
  let [interval, vertical, horizontal]: [number | null, Unit | null, Unit | null] = [null, null, null];
  for (const cells of lines) {
    const text = cells
      .filter((cell) => cell !== '')
      .join(' ')
      .replace(/[_=:"]/g, ' ')
      .replace(/\s+/g, ' ')
      .trim();
    if (text === '' || text.length > 200) continue;
    interval ??= intervalIn(text);
    vertical ??= unitBehind(text, /\b(?:vertical|y|channel) ?units? (\S+)$/i);
    horizontal ??= unitBehind(text, /\b(?:horizontal|x|time) ?units? (\S+)$/i);
  }
  return { interval, vertical, horizontal };
}

const unitBehind = (text: string, pattern: RegExp): Unit | null => unitOf(pattern.exec(text)?.[1] ?? '');

const PER_SECOND: Readonly<Record<string, number>> = { '': 1, k: 1e3, m: 1e6, g: 1e9 };

/** `Sample Interval 1e-05 s`, `Sampling rate 100 kHz`, both with their unit. */
function intervalIn(text: string): number | null {
  const [, step, symbol] =
    /\b(?:sampl\w* ?(?:interval|period|time)|interval|(?:x ?)?increment|delta t|dt|Δt)\b[^\d]*?([\d.,]+(?:e[-+]?\d+)?) ?([a-zµμ]+)$/i.exec(
      text,
    ) ?? [];
  const unit = unitOf(symbol ?? '');
  const value = numberOf(step ?? '');
  if (unit?.kind === 'time' && value !== null && value > 0) return value * TIME_UNITS[unit.symbol];
  const [, rate, size] =
    /\b(?:sampl\w* ?(?:rate|freq\w*)|sps)\b[^\d]*?([\d.,]+(?:e[-+]?\d+)?) ?([kmg]?)(?:hz|sa\/s|s\/s|sps|samples\/s|samples per second)$/i.exec(
      text,
    ) ?? [];
  const often = numberOf(rate ?? '');
  return often !== null && often > 0 ? 1 / (often * (PER_SECOND[(size ?? '').toLowerCase()] ?? 1)) : null;
}
