/** A recording as instruments write it: text with a column of times and one of amperes or volts, and words around them. */
import { type Asked, type Columns, columnName, columnsOf, sentence } from './columns.ts';
import type { TimeUnit } from './heading.ts';
import { type Layout, LEAST_SAMPLES, layoutOf, tooFew } from './layout.ts';
import { beyond, blank, cellOf, clockOf, linesOf, numberOf, type Read, refused } from './lines.ts';

export interface Recording {
  /** As written, in a unit that may not be known; not falling. */
  readonly time: Float64Array;
  /** As written; times one of `factors` it is in amperes. */
  readonly current: Float64Array;
  readonly unit: TimeUnit | null;
  /** Several where nothing says in what unit it is. */
  readonly factors: readonly number[];
  readonly unitNamed: boolean;
  /** What the column is called. */
  readonly column: string;
  /** What was taken how, as sentences. */
  readonly notes: readonly string[];
}

/** Where more of the samples than this share have the time of the one before, the times are rounded. Arbitrary. */
const STANDING = 0.3;

/**
 * Reads a recording, given as pieces of its text that can be gone through more than once. Whatever is wrong with it comes
 * back as one sentence.
 */
export function readRecording(pieces: Iterable<string>, asked: Asked = {}): Read<Recording> {
  const layout = layoutOf(pieces, asked.interval !== undefined);
  if (!layout.ok) return layout;
  const columns = columnsOf(layout.value, asked);
  if (!columns.ok) return columns;
  const factors = factorsOf(layout.value, columns.value, asked);
  if (!factors.ok) return factors;
  return valuesOf(pieces, layout.value, columns.value, asked, factors.value);
}

/** By what the values are multiplied to be amperes; several where nothing says in what unit they are. */
function factorsOf(layout: Layout, { current }: Columns, { scale }: Asked): Read<readonly number[]> {
  const unit = layout.headings[current]?.unit ?? layout.around.vertical;
  const name = columnName(layout, current);
  if (unit?.kind === 'voltage') {
    if (scale === undefined)
      return refused(
        `${sentence(name)} is in ${unit.symbol}, as stated above the table. Say how many volts the clamp gives for an ` +
          'ampere, such as "--scale 100mV/A".',
      );
    return scale.shows === 'voltage'
      ? { ok: true, value: [unit.factor / scale.perAmpere] }
      : refused(
          `${sentence(name)} is in ${unit.symbol}: --scale takes volts for an ampere, such as "100mV/A".`,
        );
  }
  if (unit?.kind === 'current') {
    if (scale === undefined) return { ok: true, value: [unit.factor] };
    return scale.shows === 'current'
      ? { ok: true, value: [unit.factor / scale.perAmpere] }
      : refused(
          `${sentence(name)} is in ${unit.symbol} already, so that it takes no --scale. Where the instrument had a wrong ` +
            'factor, say how many amperes it shows for one, such as "--scale 10A/A".',
        );
  }
  if (scale === undefined) return { ok: true, value: [1] };
  const one = 1 / scale.perAmpere;
  return { ok: true, value: scale.shows === 'current' ? [one] : [one, one / 1000] };
}

function valuesOf(
  pieces: Iterable<string>,
  layout: Layout,
  columns: Columns,
  { scale, interval = layout.around.interval ?? 0 }: Asked,
  factors: readonly number[],
): Read<Recording> {
  const { separator, first } = layout;
  const [times, currents] = [new Column(), new Column()];
  const clock = columns.time !== null && clockOf(layout.rows[0]?.[columns.time] ?? '') !== null;
  const seen = { blank: 0, beyond: 0, standing: 0, point: false, comma: false };
  let [before, row] = [Number.NEGATIVE_INFINITY, 0];
  const numberIn = (cell: string): number | null => {
    if (cell.includes('.')) seen.point = true;
    else if (cell.includes(',')) seen.comma = true;
    return numberOf(cell);
  };
  for (const { number, text } of linesOf(pieces)) {
    if (number < first) continue;
    const shown = cellOf(text, separator, columns.current);
    const at = columns.time === null ? '' : cellOf(text, separator, columns.time);
    const value = numberIn(shown);
    row += 1;
    if (value === null && blank(shown)) {
      seen.blank += 1;
      continue;
    }
    const over = value === null && beyond(shown);
    const t = columns.time === null ? (row - 1) * interval : clock ? clockOf(at) : numberIn(at);
    if (t === null || (value === null && !over))
      return refused(`Line ${number} of it has no time and current where the lines before have them.`);
    if (t < before)
      return refused(`Line ${number} of it goes back in time: it takes one recording, in order.`);
    if (t === before) seen.standing += 1;
    if (over) seen.beyond += 1;
    times.push(t);
    currents.push(value ?? (/^[-\u2212]/.test(shown) ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY));
    before = t;
  }
  const [time, current] = [times.values(), currents.values()];
  const wrong = whyNot(time, current, seen, columnName(layout, columns.current));
  if (wrong !== null) return refused(wrong);
  limited(current);
  const own = layout.headings[columns.current]?.unit ?? layout.around.vertical;
  const unit = columns.time === null || clock ? 's' : unitOfTimes(layout, columns.time);
  return {
    ok: true,
    value: {
      time,
      current,
      unit,
      factors,
      unitNamed: own !== null || scale?.shows === 'current',
      column: columnName(layout, columns.current),
      notes: notesOf(layout, columns, factors, seen, scale !== undefined, interval),
    },
  };
}

function unitOfTimes({ headings, around }: Layout, column: number): TimeUnit | null {
  const unit = headings[column]?.unit ?? around.horizontal;
  return unit?.kind === 'time' ? unit.symbol : null;
}

interface Seen {
  readonly blank: number;
  readonly beyond: number;
  readonly standing: number;
  readonly point: boolean;
  readonly comma: boolean;
}

/** Why the values are of no use, as a sentence; null when they are. */
function whyNot(time: Float64Array, current: Float64Array, seen: Seen, column: string): string | null {
  if (time.length < LEAST_SAMPLES) return tooFew(time.length);
  if (seen.point && seen.comma)
    return 'It has numbers with a point and numbers with a comma: nothing tells which one marks the decimals.';
  if (time.at(-1) === time[0]) return 'All its times are the same.';
  if (seen.standing > STANDING * time.length)
    return (
      `Of its ${time.length} samples ${seen.standing} have the time of the one before: the times are rounded too far. ` +
      'Give the time from one sample to the next, such as "--interval 10us".'
    );
  const levels = new Set<number>();
  for (const value of current) if (levels.add(value).size > 3) return null;
  return levels.size === 1
    ? `${sentence(column)} stands still: no charge is in it. Is the clamp on, and on the right wire?`
    : `${sentence(column)} has ${levels.size} levels only: a trigger or a digital channel. Name the column of the clamp by "--column".`;
}

/** What left the range of the instrument is at its end. */
function limited(current: Float64Array): void {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of current) {
    if (!Number.isFinite(value)) continue;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  for (let i = 0; i < current.length; i++) current[i] = Math.min(high, Math.max(low, current[i] as number));
}

function notesOf(
  layout: Layout,
  columns: Columns,
  factors: readonly number[],
  seen: Seen,
  scaled: boolean,
  interval: number,
): string[] {
  const { headings, numeric, around } = layout;
  const used = [columns.time, columns.current];
  const left = numeric.filter((column) => !used.includes(column));
  const own = headings[columns.current]?.unit ?? around.vertical;
  return [
    ...(left.length > 0
      ? [
          `${sentence(columnName(layout, columns.current))} was taken; not ${left.map((c) => columnName(layout, c)).join(', ')}.`,
        ]
      : []),
    ...(own?.kind === 'current' && own.symbol !== 'A' && !scaled
      ? [`The currents are in ${own.symbol}, as the heading says.`]
      : []),
    ...(own !== null && factors.length === 1 && headings[columns.current]?.unit === null
      ? [`The unit ${own.symbol} is that named above the table.`]
      : []),
    ...(columns.time === null
      ? [
          `The samples were taken ${(interval * 1e6).toPrecision(4).replace(/\.?0+$/, '')} µs apart${around.interval === interval ? ', as stated above the table' : ''}.`,
        ]
      : []),
    ...(seen.blank > 0
      ? [`${seen.blank} line${seen.blank > 1 ? 's' : ''} without a current: left out.`]
      : []),
    ...(seen.beyond > 0
      ? [`${seen.beyond} sample${seen.beyond > 1 ? 's' : ''} beyond the range of the instrument.`]
      : []),
  ];
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
