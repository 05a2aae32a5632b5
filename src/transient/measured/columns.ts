/** Which column of a recording holds the times and which the current: told by headings or by the person who asks. */
import { quote } from '../../design/problems.ts';
import type { Heading } from './heading.ts';
import type { Layout } from './layout.ts';
import { clockOf, numberOf, type Read, refused } from './lines.ts';
import type { Scale } from './scale.ts';

export interface Asked {
  /** By number from 1, or by heading. */
  readonly column?: string | undefined;
  readonly timeColumn?: string | undefined;
  readonly scale?: Scale | undefined;
  /** Time between samples [s], in place of a column of times. */
  readonly interval?: number | undefined;
}

export interface Columns {
  /** Null where the time between samples is known instead. */
  readonly time: number | null;
  readonly current: number;
}

/** `column 2 "CH1 (V)"` */
export const columnName = ({ headings }: Layout, column: number): string => {
  const title = headings[column]?.title ?? '';
  return `column ${column + 1}${title === '' ? '' : ` ${quote(title)}`}`;
};

export function columnsOf(layout: Layout, asked: Asked): Read<Columns> {
  const current = asked.column === undefined ? null : named(layout, asked.column, '--column');
  if (current !== null && !current.ok) return current;
  const found = currentOf(layout, current?.value, asked);
  if (!found.ok) return found;
  const time = timeOf(layout, found.value, asked);
  return time.ok ? { ok: true, value: { time: time.value, current: found.value } } : time;
}

/** The column that a person names. */
function named(layout: Layout, text: string, option: string): Read<number> {
  const { headings, numeric } = layout;
  const wanted = text.trim().toLowerCase();
  const titles = headings.map(({ title }) => title.toLowerCase());
  const exact = titles.flatMap((title, i) => (title === wanted && title !== '' ? [i] : []));
  const parts = titles.flatMap((title, i) => (wanted !== '' && title.includes(wanted) ? [i] : []));
  const found = exact.length > 0 ? exact : /^\d+$/.test(wanted) ? [Number(wanted) - 1] : parts;
  const all = numeric.map((column) => columnName(layout, column)).join(', ');
  if (found.length !== 1)
    return refused(
      `${option} ${quote(text)} names ${found.length === 0 ? 'no column' : 'several columns'} of it. It has ${all}.`,
    );
  const [column = -1] = found;
  return numeric.includes(column)
    ? { ok: true, value: column }
    : refused(`${option} ${quote(text)} is no column of numbers. It has ${all}.`);
}

/** Whole numbers that rise by one from row to row. */
function counts({ rows }: Layout, column: number): boolean {
  const values = rows.map((row) => numberOf(row[column] ?? ''));
  return (
    values.length > 2 &&
    values.every((v, i) => v !== null && (i === 0 || v - (values[i - 1] as number) === 1))
  );
}

/** Numbers that rise from row to row, nearly always. */
function rises({ rows }: Layout, column: number): boolean {
  const values = rows.map((row) => numberOf(row[column] ?? '') ?? clockOf(row[column] ?? '') ?? Number.NaN);
  const up = values.filter((v, i) => i > 0 && v > (values[i - 1] as number)).length;
  const down = values.filter((v, i) => i > 0 && v < (values[i - 1] as number)).length;
  return down === 0 && up > 0.8 * (values.length - 1);
}

const isClock = ({ rows }: Layout, column: number): boolean => clockOf(rows[0]?.[column] ?? '') !== null;

/** Columns that are no current for what they are called or hold. */
function isOther(layout: Layout, column: number): boolean {
  const { unit, word } = layout.headings[column] as Heading;
  if (unit?.kind === 'current') return false;
  if (unit?.kind === 'time' || unit?.kind === 'other' || isClock(layout, column)) return true;
  return (
    (word !== null && word !== 'current') ||
    counts(layout, column) ||
    (unit === null && word === null && rises(layout, column))
  );
}

function currentOf(
  layout: Layout,
  asked: number | undefined,
  { timeColumn, interval, scale }: Asked,
): Read<number> {
  const { headings, numeric } = layout;
  const timed = timeColumn === undefined ? null : named(layout, timeColumn, '--time-column');
  const heading = (column: number): Heading => headings[column] as Heading;
  const open = numeric.filter((column) => timed?.ok !== true || timed.value !== column);
  const candidates =
    asked === undefined
      ? narrowed(
          open.filter((c) => !isOther(layout, c)),
          heading,
        )
      : [asked];
  const list = (columns: readonly number[]): string => columns.map((c) => columnName(layout, c)).join(', ');
  const [column] = candidates;
  if (column === undefined) {
    const single = numeric.length === 1 && interval === undefined;
    return refused(
      single
        ? 'It has one column of numbers only: it takes times and amperes. For a column of amperes alone give "--interval".'
        : `None of its columns is a current: ${list(numeric)}. Name the column of the clamp by "--column".`,
    );
  }
  if (candidates.length > 1)
    return refused(`Several of its columns may be the current: ${list(candidates)}. Name one by "--column".`);
  const { unit } = heading(column);
  if (unit?.kind === 'voltage' && scale === undefined)
    return refused(
      `${sentence(columnName(layout, column))} is in ${unit.symbol}. Say how many volts the clamp gives for an ampere, ` +
        'such as "--scale 100mV/A".',
    );
  if (unit?.kind === 'time' || unit?.kind === 'other')
    return refused(`${sentence(columnName(layout, column))} is in ${unit.symbol}, and no current.`);
  return { ok: true, value: column };
}

/** Those in amperes, else those that are called a current, else all. */
function narrowed(columns: readonly number[], heading: (column: number) => Heading): readonly number[] {
  const amperes = columns.filter((column) => heading(column).unit?.kind === 'current');
  const called = columns.filter((column) => heading(column).word === 'current');
  const both = amperes.filter((column) => called.includes(column));
  return amperes.length > 0 ? (both.length === 1 ? both : amperes) : called.length > 0 ? called : columns;
}

export const sentence = (text: string): string => `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;

function timeOf(layout: Layout, current: number, asked: Asked): Read<number | null> {
  if (asked.interval !== undefined) return { ok: true, value: null };
  const { headings, numeric, around } = layout;
  if (asked.timeColumn !== undefined) {
    const found = named(layout, asked.timeColumn, '--time-column');
    return found.ok && found.value === current
      ? refused('--column and --time-column name the same column.')
      : found;
  }
  const others = numeric.filter((column) => column !== current);
  const called = others.filter((column) => {
    const { unit, word } = headings[column] as Heading;
    return unit?.kind === 'time' || isClock(layout, column) || (unit === null && word === 'time');
  });
  // Where each channel has times of its own, those of a current stand to its left.
  const [near = called[0]] = called.filter((column) => column < current).slice(-1);
  if (near !== undefined) return { ok: true, value: near };
  const rising = others.filter((column) => {
    const { unit, word } = headings[column] as Heading;
    return unit === null && (word === null || word === 'index') && rises(layout, column);
  });
  const counted = rising.filter((column) => counts(layout, column) || headings[column]?.word === 'index');
  const [free, more] = rising.filter((column) => !counted.includes(column));
  if (free !== undefined && more === undefined) return { ok: true, value: free };
  if (around.interval !== null) return { ok: true, value: null };
  return refused(
    more !== undefined
      ? 'Several of its columns may be the times: name one by "--time-column".'
      : counted[0] !== undefined
        ? `${sentence(columnName(layout, counted[0]))} counts samples, or is in a unit that is not named. Give the ` +
          'time from one sample to the next, such as "--interval 10us".'
        : 'None of its columns rises as times do. Give the time from one sample to the next, such as "--interval 10us".',
  );
}
