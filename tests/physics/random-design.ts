/** Random designs for the physics tests: as plain values, as the text that the reader takes, as the reference sees them. */
import fc from 'fast-check';
import { eventsOf, type Frame } from './random-frame.ts';
import { type Charging, type Course, copperAt, inductanceOf } from './reference.ts';
import { cycleAngle, cycleTime, dwellAsked, shortestGap } from './reference-engine.ts';

/** What changes: every value is a share between 0 and 1, spread over its range below. */
export type Shares = number[];

/** One point or row of the sweep: engine speed and supply. */
export interface Point {
  rpm: number;
  supply: number;
}

export interface Values {
  ohm: number;
  temperature: number;
  drop: number;
  henry: number;
  limit: number | null;
  test: { supply: number; dwell: number; peak: number };
  height: number;
  rest: number;
  dwell: { supply: number; dwell: number }[];
  points: Point[];
  sweep: { from: number; step: number; supply: number };
}

/** Shares with more digits than anybody writes, so that no two instants fall together by chance. */
export const shares: fc.Arbitrary<Shares> = fc.array(
  fc.noBias(fc.integer({ min: 0, max: 1_000_003 })).map((share) => share / 1_000_003),
  { minLength: 32, maxLength: 32 },
);

/** Six significant digits: written and read back without loss. */
const six = (value: number): number => Number(value.toPrecision(6));

/** Spreads shares over ranges that hold every coil, speed and supply one meets, and somewhat more. */
export function valuesOf(frame: Frame, given: Shares): Values {
  let next = 0;
  const range = (low: number, high: number): number =>
    six(low + (high - low) * (given[next++ % given.length] ?? 0));
  const spread = (low: number, high: number): number =>
    six(low * (high / low) ** (given[next++ % given.length] ?? 0));
  const ohm = spread(0.2, 4);
  const temperature = range(-30, 120);
  const drop = range(0, 2.5);
  const supply = range(8, 16);
  // The bench test has a temperature of its own: 20 °C where it says nothing, where the resistance is known.
  const most = (supply - drop) / ohm;
  const test = { supply, dwell: spread(0.0005, 0.01), peak: six(most * range(0.2, 0.95)) };
  const limited = range(0, 1) < 0.5;
  const limit = spread(2, 25);
  const points = Array.from({ length: frame.points }, () => ({
    rpm: spread(120, 15000),
    supply: range(4, 18),
  }));
  // A stated peak is one that the highest supply can drive.
  const driven = (Math.max(...points.map((point) => point.supply)) - drop) / (ohm * copperAt(temperature));
  return {
    ohm,
    temperature,
    drop,
    henry: spread(0.0005, 0.02),
    limit: limited ? limit : null,
    test,
    height: six(Math.min(range(3, 25), driven * 0.99)),
    rest: spread(0.0001, 0.002),
    // Steps between the rows, so that they rise.
    dwell: Array.from({ length: Math.max(1, frame.dwellRows) }, (_, i) => ({
      supply: six(6 + 3 * i + range(0, 2.5)),
      dwell: spread(0.0008, 0.009),
    })),
    points,
    sweep: { from: spread(150, 4000), step: spread(100, 5000), supply: range(8, 16) },
  };
}

/** The design that a person would write for it. Gauges are stated: what they are does not matter to the currents. */
export function documentOf(frame: Frame, values: Values): object {
  const { sweep } = values;
  const ids = frame.layout === 'listed' ? frame.listed.map((_, i) => `coil ${i + 1}`) : [];
  const run = { length: '0.5 m', ambient: '60 degC', insulation: 'C', gauge: '8 AWG' };
  const ohm = `${values.ohm} ohm`;
  const constant = values.dwell[0];
  return {
    coilfeed: 1,
    title: 'Random',
    engine: {
      cylinders: frame.angles.length,
      stroke: frame.stroke,
      firing_order: frame.angles.map((_, i) => i + 1),
      ...(frame.written ? { firing_angles: frame.angles } : {}),
    },
    ignition: {
      layout: frame.layout,
      ...(frame.layout === 'listed'
        ? { coils: frame.listed.map((fires_at, i) => ({ id: ids[i], fires_at })) }
        : {}),
      dwell:
        frame.dwellRows === 0
          ? `${constant?.dwell} s`
          : values.dwell.map((row) => ({ supply: `${row.supply} V`, dwell: `${row.dwell} s` })),
      rest: `${values.rest} s`,
    },
    coil: {
      resistance: ohm,
      temperature: `${values.temperature} degC`,
      driver_drop: `${values.drop} V`,
      ...(values.limit === null ? {} : { current_limit: `${values.limit} A` }),
      ...(frame.known === 'inductance' ? { inductance: `${values.henry} H` } : {}),
      ...(frame.known === 'peak' ? { peak: `${values.height} A` } : {}),
      ...(frame.known === 'test_point'
        ? {
            test_point: {
              supply: `${values.test.supply} V`,
              dwell: `${values.test.dwell} s`,
              peak: `${values.test.peak} A`,
            },
          }
        : {}),
    },
    points: values.points.map(({ rpm, supply }, i) => ({
      name: `point ${i + 1}`,
      rpm: `${rpm} rpm`,
      supply: `${supply} V`,
    })),
    ...(frame.sweepRows === 0
      ? {}
      : {
          sweep: {
            from: `${sweep.from} rpm`,
            // Half a step more: what is left over makes no row.
            to: `${sweep.from + (frame.sweepRows - 0.5) * sweep.step} rpm`,
            step: `${sweep.step} rpm`,
            supply: `${sweep.supply} V`,
          },
        }),
    feed: [
      { ...run, run: 'main', carries: 'all' },
      ...(frame.layout === 'listed'
        ? [{ ...run, run: 'bank', carries: ids.slice(0, Math.ceil(ids.length * frame.bank)) }]
        : []),
      { ...run, run: 'drop', carries: 'each' },
    ],
    return: [{ ...run, run: 'strap', carries: 'all' }],
  };
}

/** Points first, then the rows of the sweep, as they stand. */
export const speedsOf = (frame: Frame, { points, sweep }: Values): Point[] => [
  ...points,
  ...Array.from({ length: frame.sweepRows }, (_, i) => ({
    rpm: sweep.from + i * sweep.step,
    supply: sweep.supply,
  })),
];

/** What the reference makes of it at one point. */
export function courseOf(
  frame: Frame,
  values: Values,
  { rpm, supply }: Point,
): { course: Course; asked: number; clipped: boolean; henry: number | null } {
  const cycle = cycleTime(frame.stroke, rpm);
  const events = eventsOf(frame);
  const room = shortestGap(events, cycleAngle(frame.stroke), cycle) - values.rest;
  const table = frame.dwellRows === 0 ? (values.dwell[0]?.dwell ?? Number.NaN) : values.dwell;
  const asked = dwellAsked(table, supply);
  const ohm = values.ohm * copperAt(values.temperature);
  const henry =
    frame.known === 'peak'
      ? null
      : frame.known === 'inductance'
        ? values.henry
        : inductanceOf(values.test, values.ohm, values.drop);
  const charging: Charging =
    henry === null
      ? { height: Math.min(values.height, values.limit ?? Infinity) }
      : { ohm, henry, volts: supply - values.drop, limit: values.limit };
  const course = {
    charging,
    dwell: Math.max(0, Math.min(asked, room)),
    cycle,
    fires: events.map(({ coil, angle }) => ({ coil, at: (angle / cycleAngle(frame.stroke)) * cycle })),
  };
  return { course, asked, clipped: asked > room, henry };
}
