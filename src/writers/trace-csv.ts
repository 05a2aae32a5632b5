/** The waveforms of one working cycle as a table. */
import { currentOf, supplyOf } from '../transient/figures.ts';
import type { Trace } from '../transient/trace.ts';
import { instantsOf, type Reading, readAt } from '../transient/waveform.ts';
import { csv, fixed } from './csv.ts';

const TITLES = ['crank angle [deg]', 'time [ms]'];

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
  return csv([[...TITLES, ...columns.map(({ title }) => title)], ...rows]);
}
