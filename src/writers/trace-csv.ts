/** The waveforms of one working cycle as a table: comma-separated text as RFC 4180 describes it. */
import { currentOf, supplyOf } from '../transient/figures.ts';
import type { Trace } from '../transient/trace.ts';
import { instantsOf, type Reading, readAt } from '../transient/waveform.ts';

const FIRST = 'crank angle [deg],time [ms],';

/** Steps of at most a degree, and at least fifty from one switching to the next. Arbitrary: fine enough to draw. */
const DEGREES = 1;
const STEPS = 50;

/** Decimal places: a tenth of a millidegree, a nanosecond, a microampere, a microvolt. */
const PLACES = { angle: 4, time: 6, current: 6, supply: 6 };

interface Column {
  readonly title: string;
  readonly reading: Reading;
  readonly places: number;
}

/**
 * One row for each instant, two where something switches: before and after. Columns: crank angle, time, current of each
 * conductor of `wires` (indices), supply at each coil.
 */
export function traceCsv(trace: Trace, wires: readonly number[]): string {
  const { course, circuit } = trace;
  const { design } = trace.evaluation;
  const columns: Column[] = [
    ...wires.map((wire) => ({
      title: `current of ${design.wires[wire]?.id} [A]`,
      reading: ((segment) => currentOf(course, wire, segment)) satisfies Reading,
      places: PLACES.current,
    })),
    ...design.coils.map(({ id }, coil) => ({
      title: `supply at coil ${id} [V]`,
      reading: ((segment) => supplyOf(course, coil, segment)) satisfies Reading,
      places: PLACES.supply,
    })),
  ];
  const rows = instantsOf(course, DEGREES, STEPS).map((instant) => [
    fixed((instant.at / circuit.cycle) * circuit.cycleAngle, PLACES.angle),
    fixed(instant.at * 1e3, PLACES.time),
    ...columns.map(({ reading, places }) => fixed(readAt(reading, instant), places)),
  ]);
  const head = `${FIRST}${columns.map(({ title }) => cell(title)).join(',')}`;
  return [head, ...rows.map((row) => row.join(',')), ''].join('\r\n');
}

/** Whether a file is one that `traceCsv` made, from its bytes. */
export const isTraceCsv = (bytes: Uint8Array): boolean =>
  new TextDecoder().decode(bytes.subarray(0, FIRST.length)) === FIRST;

/**
 * A text as a cell. Every title begins with a word of ours, so that no spreadsheet program takes a name for a formula;
 * line breaks inside a name would make rows of it in some of them.
 */
const cell = (text: string): string => {
  const line = text.replace(/[\r\n\t]+/g, ' ');
  return /[",]/.test(line) ? `"${line.replaceAll('"', '""')}"` : line;
};

/** A number with fixed places; no negative zero. */
const fixed = (value: number, places: number): string => value.toFixed(places).replace(/^-(0\.0*)$/, '$1');
