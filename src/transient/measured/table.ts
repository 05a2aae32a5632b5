/** A recording as instruments write it: text with a column of times and one of amperes, and perhaps words above. */

/** Factors of time units to seconds. */
export const TIME_UNITS = { s: 1, ms: 1e-3, us: 1e-6 } as const;
export type TimeUnit = keyof typeof TIME_UNITS;

export interface Recording {
  /** As written, in a unit that may not be known; not falling. */
  readonly time: readonly number[];
  /** [A] */
  readonly current: readonly number[];
  /** Unit that the heading names; null when it does not. */
  readonly unit: TimeUnit | null;
  /** What was taken how, as sentences. */
  readonly notes: readonly string[];
}

export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };
export const refused = (why: string): { readonly ok: false; readonly why: string } => ({ ok: false, why });

/** Fewer samples than this hold no charge that could be judged. */
const LEAST_SAMPLES = 30;

interface Line {
  /** From 1. */
  readonly number: number;
  readonly cells: readonly string[];
}

/**
 * The lines that are not empty, one after the other from an offset: a recording has up to a million, and an array of
 * them, cut into cells, would take some hundred megabytes.
 */
function* linesFrom(text: string, offset: number, number: number): Generator<Place> {
  for (let start = offset; start <= text.length; number++) {
    const feed = text.indexOf('\n', start);
    const back = text.charCodeAt(feed - 1) === 0x0d ? 1 : 0;
    const end = feed < 0 ? text.length : feed - back;
    const line = text.slice(start, end);
    if (line.trim() !== '') yield { number, start, line };
    if (feed < 0) return;
    start = feed + 1;
  }
}

interface Place {
  /** From 1. */
  readonly number: number;
  /** [characters from the start of the text] */
  readonly start: number;
  readonly line: string;
}

const cellsOf = (line: string, separator: string): string[] =>
  line.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));

/** Reads the text of a recording. Whatever is wrong with it comes back as one sentence. */
export function readRecording(raw: string): Read<Recording> {
  // A line ends by one sign from here on, or by two.
  const text = raw.includes('\n')
    ? raw.replace(/^\ufeff/, '')
    : raw.replace(/^\ufeff/, '').replaceAll('\r', '\n');
  const separator = separatorOf(text);
  const head: Line[] = [];
  let first: Place | null = null;
  for (const place of linesFrom(text, 0, 1)) {
    const cells = cellsOf(place.line, separator);
    if (cells.filter((cell) => numberOf(cell) !== null).length >= 2) {
      first = place;
      break;
    }
    head.push({ number: place.number, cells });
  }
  if (first === null)
    return refused(
      'No line of it has two numbers: it takes a column of times and one of amperes, separated by commas, semicolons ' +
        'or tabs.',
    );
  const { start, number, line } = first;
  const rows = (): Generator<Place> => linesFrom(text, start, number);
  const cells = cellsOf(line, separator);
  if (separator === ',' && cells.length === 4 && commasTwice(rows()))
    return refused('Commas are both decimal marks and separators in it: export it with semicolons or tabs.');
  const titles = titlesOf(head, cells.length);
  const columns = columnsOf(titles, cells, cells.length);
  return columns.ok ? valuesOf(rows(), separator, columns.value, titles) : columns;
}

/** Whether every row is four whole numbers: two values with a decimal comma each. */
function commasTwice(rows: Generator<Place>): boolean {
  for (const { line } of rows) {
    const cells = cellsOf(line, ',');
    if (cells.length !== 4 || !cells.every((cell) => /^[-+]?\d+$/.test(cell))) return false;
  }
  return true;
}

/** The separator: what no number contains wins. */
function separatorOf(text: string): string {
  let [all, tabs, semicolons] = [0, 0, 0];
  for (const { line } of linesFrom(text, 0, 1)) {
    all += 1;
    if (line.includes('\t')) tabs += 1;
    if (line.includes(';')) semicolons += 1;
  }
  return tabs > all / 2 ? '\t' : semicolons > all / 2 ? ';' : ',';
}

/** `1.5`, `1,5`, `-2e-3`; null for anything else, also for what is not finite. */
function numberOf(cell: string): number | null {
  if (!/^[-+]?(\d+[.,]?\d*|[.,]\d+)(e[-+]?\d+)?$/i.test(cell)) return null;
  const value = Number(cell.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

/** The words above each column, all lines of them together. */
const titlesOf = (lines: readonly Line[], width: number): string[] =>
  Array.from({ length: width }, (_, column) =>
    lines
      .filter(({ cells }) => cells.length >= Math.min(2, width))
      .map(({ cells }) => cells[column] ?? '')
      .join(' '),
  );

interface Columns {
  readonly time: number;
  readonly current: number;
  readonly notes: readonly string[];
}

const TIME = /\btime\b|^\s*t\b|\bsec(onds?)?\b|\b[mµμu]?s\b/i;
const CURRENT = /\bamp|\bcurrent\b|\bclamp\b|\bm?A\b/;

function columnsOf(titles: readonly string[], row: readonly string[], width: number): Read<Columns> {
  const named = titles.findIndex((title) => TIME.test(title));
  const time = Math.max(named, 0);
  const others = Array.from({ length: width }, (_, i) => i).filter(
    (i) => i !== time && numberOf(row[i] ?? '') !== null,
  );
  const called = others.filter((i) => CURRENT.test(titles[i] ?? ''));
  const current = called[0] ?? others[0];
  if (current === undefined) return refused('It has one column of numbers only: it takes times and amperes.');
  const volts = /\bm?V\b|\bvolts?\b/.exec(titles[current] ?? '');
  if (volts && called.length === 0)
    return refused(
      `Its second column is in ${volts[0]}: turn it into amperes by the factor of the clamp, and name the column "A".`,
    );
  const several = (called.length > 0 ? called : others).length;
  return {
    ok: true,
    value: {
      time,
      current,
      notes: several > 1 ? [`Of ${several} columns of currents, column ${current + 1} was taken.`] : [],
    },
  };
}

function valuesOf(
  rows: Generator<Place>,
  separator: string,
  columns: Columns,
  titles: readonly string[],
): Read<Recording> {
  const [time, current]: [number[], number[]] = [[], []];
  const milli = /\bmA\b/.test(titles[columns.current] ?? '');
  for (const { number, line } of rows) {
    const cells = cellsOf(line, separator);
    const [t, i] = [columns.time, columns.current].map((column) => numberOf(cells[column] ?? ''));
    if (t === null || t === undefined || i === null || i === undefined)
      return refused(`Line ${number} of it has no time and current where the lines before have them.`);
    if (time.length > 0 && t < (time.at(-1) as number))
      return refused(`Line ${number} of it goes back in time: it takes one recording, in order.`);
    time.push(t);
    current.push(milli ? i / 1000 : i);
  }
  if (time.length < LEAST_SAMPLES)
    return refused(`It has ${time.length} samples: too few to see a charge rise; record some thousand.`);
  if (time.at(-1) === time[0]) return refused('All its times are the same.');
  const unit = unitOf(titles[columns.time] ?? '');
  return {
    ok: true,
    value: {
      time,
      current,
      unit,
      notes: [...columns.notes, ...(milli ? ['The currents are in mA, as the heading says.'] : [])],
    },
  };
}

function unitOf(title: string): TimeUnit | null {
  if (/\b(ms|msec|milliseconds?)\b/i.test(title)) return 'ms';
  if (/(^|[^a-z])([uµμ]s|usec|microseconds?)\b/i.test(title)) return 'us';
  return /\b(s|secs?|seconds?)\b/i.test(title) ? 's' : null;
}
