/** A recording as instruments write it: text with a column of times and one of amperes, and perhaps words above. */

/** Factors of time units to seconds. */
export const TIME_UNITS = { s: 1, ms: 1e-3, us: 1e-6 } as const;
export type TimeUnit = keyof typeof TIME_UNITS;

export interface Recording {
  /** As written, in a unit that may not be known; not falling. */
  readonly time: Float64Array;
  /** [A] */
  readonly current: Float64Array;
  /** Unit that the heading names; null when it does not. */
  readonly unit: TimeUnit | null;
  /** What was taken how, as sentences. */
  readonly notes: readonly string[];
}

export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };
export const refused = (why: string): { readonly ok: false; readonly why: string } => ({ ok: false, why });

/** Fewer samples than this hold no charge that could be judged. */
const LEAST_SAMPLES = 30;

/** So many lines tell what separates the cells: beyond any heading. */
const TELLING = 1000;

interface Line {
  /** From 1. */
  readonly number: number;
  readonly cells: readonly string[];
}

/**
 * The lines that are not empty, one after the other. A recording has up to a million: neither the whole text nor all of
 * its lines ever stand in memory. A line ends by a line feed, or by a carriage return where there is no line feed.
 */
function* linesOf(pieces: Iterable<string>): Generator<Place> {
  const end = someHas(pieces, '\n') ? '\n' : '\r';
  let [rest, number] = ['', 1];
  const placed = (line: string): Place => ({
    number,
    line: number === 1 ? line.replace(/^\ufeff/, '') : line,
  });
  for (const piece of pieces) {
    let start = 0;
    for (let at = piece.indexOf(end); at >= 0; at = piece.indexOf(end, start)) {
      const line = rest + piece.slice(start, at);
      if (line.trim() !== '') yield placed(line);
      rest = '';
      start = at + 1;
      number += 1;
    }
    rest += piece.slice(start);
  }
  if (rest.trim() !== '') yield placed(rest);
}

function someHas(pieces: Iterable<string>, sign: string): boolean {
  for (const piece of pieces) if (piece.includes(sign)) return true;
  return false;
}

interface Place {
  /** From 1. */
  readonly number: number;
  readonly line: string;
}

const bare = (cell = ''): string => {
  const text = cell.trim();
  return text.startsWith('"') ? text.replace(/^"(.*)"$/, '$1') : text;
};
const cellsOf = (line: string, separator: string): string[] => line.split(separator).map(bare);

/**
 * Reads a recording, given as pieces of its text that can be gone through more than once. Whatever is wrong with it comes
 * back as one sentence.
 */
export function readRecording(pieces: Iterable<string>): Read<Recording> {
  const separator = separatorOf(pieces);
  const head: Line[] = [];
  let first: Place | null = null;
  for (const place of linesOf(pieces)) {
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
  const { number, line } = first;
  const cells = cellsOf(line, separator);
  if (separator === ',' && cells.length === 4 && commasTwice(linesOf(pieces), number))
    return refused('Commas are both decimal marks and separators in it: export it with semicolons or tabs.');
  const titles = titlesOf(head, cells.length);
  const columns = columnsOf(titles, cells, cells.length);
  return columns.ok ? valuesOf(linesOf(pieces), number, separator, columns.value, titles) : columns;
}

/** Whether every row is four whole numbers: two values with a decimal comma each. */
function commasTwice(lines: Generator<Place>, first: number): boolean {
  for (const { number, line } of lines) {
    if (number < first) continue;
    const cells = cellsOf(line, ',');
    if (cells.length !== 4 || !cells.every((cell) => /^[-+]?\d+$/.test(cell))) return false;
  }
  return true;
}

/** The separator: what no number contains wins. */
function separatorOf(pieces: Iterable<string>): string {
  let [all, tabs, semicolons] = [0, 0, 0];
  for (const { line } of linesOf(pieces)) {
    if (++all > TELLING) break;
    if (line.includes('\t')) tabs += 1;
    if (line.includes(';')) semicolons += 1;
  }
  return tabs > all / 2 ? '\t' : semicolons > all / 2 ? ';' : ',';
}

/** `1.5`, `1,5`, `-2e-3`; null for anything else, also for what is not finite. */
function numberOf(cell: string): number | null {
  if (!/^[-+]?(\d+[.,]?\d*|[.,]\d+)(e[-+]?\d+)?$/i.test(cell)) return null;
  const value = Number(cell.includes(',') ? cell.replace(',', '.') : cell);
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
  lines: Generator<Place>,
  first: number,
  separator: string,
  columns: Columns,
  titles: readonly string[],
): Read<Recording> {
  const [times, currents] = [new Column(), new Column()];
  const milli = /\bmA\b/.test(titles[columns.current] ?? '');
  let before = Number.NEGATIVE_INFINITY;
  for (const { number, line } of lines) {
    if (number < first) continue;
    const cells = line.split(separator);
    const t = numberOf(bare(cells[columns.time]));
    const i = numberOf(bare(cells[columns.current]));
    if (t === null || i === null)
      return refused(`Line ${number} of it has no time and current where the lines before have them.`);
    if (t < before)
      return refused(`Line ${number} of it goes back in time: it takes one recording, in order.`);
    times.push(t);
    currents.push(milli ? i / 1000 : i);
    before = t;
  }
  const [time, current] = [times.values(), currents.values()];
  if (time.length < LEAST_SAMPLES)
    return refused(`It has ${time.length} samples: too few to see a charge rise; record some thousand.`);
  if (before === time[0]) return refused('All its times are the same.');
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

/** Numbers of which nobody knows how many there will be. */
class Column {
  private room = new Float64Array(1024);
  private count = 0;

  push(value: number): void {
    if (this.count === this.room.length) {
      const larger = new Float64Array(2 * this.count);
      larger.set(this.room);
      this.room = larger;
    }
    this.room[this.count++] = value;
  }

  values(): Float64Array {
    return this.room.subarray(0, this.count);
  }
}
