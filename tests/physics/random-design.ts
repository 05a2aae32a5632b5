/** Random designs for the physics tests: as a plain description, and as the text that the reader takes. */
import fc from 'fast-check';
import {
  type Charging,
  type Course,
  copperAt,
  cycleAngle,
  cycleTime,
  dwellAsked,
  type Firing,
  firings,
  inductanceOf,
  shortestGap,
} from './reference.ts';

/** What stays when inputs are changed: engine, layout, who carries whom, and how many rows there are. */
export interface Frame {
  stroke: number;
  layout: string;
  /** Crank angles in firing order [deg]. */
  angles: number[];
  /** Written out, or left to the reader as even firing. */
  written: boolean;
  /** Coils of the layout `listed` [deg]. */
  listed: number[][];
  /** Rows of the dwell table, 0 for a constant dwell. */
  dwellRows: number;
  points: number;
  sweepRows: number;
  /** How the coil is known. */
  known: 'inductance' | 'test_point' | 'peak';
  /** Share of the coils, the first ones, in a run of their own. */
  bank: number;
}

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

export const eventsOf = (frame: Frame): Firing[] =>
  firings(frame.layout, frame.angles, frame.listed).sort((a, b) => a.angle - b.angle || a.coil - b.coil);
export const coilCount = (frame: Frame): number => Math.max(...eventsOf(frame).map((e) => e.coil)) + 1;

// Steps of half a degree: far apart enough that no two intervals are taken for one.
const angleSet = (count: number, below: number) =>
  fc
    .uniqueArray(fc.integer({ min: 0, max: below * 2 - 1 }), { minLength: count, maxLength: count })
    .map((steps) => steps.sort((a, b) => a - b).map((step) => step / 2));

const evenly = (count: number, cycle: number): number[] =>
  Array.from({ length: count }, (_, i) => (i * cycle) / count);

const engines = fc.oneof(
  // Even firing, angles left out.
  fc
    .record({
      stroke: fc.constantFrom(2, 4),
      layout: fc.constantFrom('coil_per_cylinder', 'single_coil'),
      count: fc.integer({ min: 1, max: 8 }),
    })
    .map(({ stroke, layout, count }) => ({
      stroke,
      layout,
      angles: evenly(count, cycleAngle(stroke)),
      written: false,
      listed: [] as number[][],
    })),
  fc
    .record({
      layout: fc.constantFrom('wasted_coil_per_cylinder', 'coil_per_pair'),
      half: fc.integer({ min: 1, max: 3 }),
    })
    .map(({ layout, half }) => ({
      stroke: 4,
      layout,
      angles: evenly(half * 2, 720),
      written: false,
      listed: [] as number[][],
    })),
  // Uneven firing.
  fc
    .record({
      stroke: fc.constantFrom(2, 4),
      layout: fc.constantFrom('coil_per_cylinder', 'single_coil'),
      angles: fc.integer({ min: 2, max: 5 }).chain((count) => angleSet(count, 360)),
    })
    .map((engine) => ({ ...engine, written: true, listed: [] as number[][] })),
  angleSet(3, 720).map((angles) => ({
    stroke: 4,
    layout: 'wasted_coil_per_cylinder',
    angles,
    written: true,
    listed: [] as number[][],
  })),
  fc
    .integer({ min: 1, max: 3 })
    .chain((count) => angleSet(count, 360))
    .map((half) => ({
      stroke: 4,
      layout: 'coil_per_pair',
      angles: [...half, ...half.map((angle) => angle + 360)],
      written: true,
      listed: [] as number[][],
    })),
  // Listed: coils of one to three firings, free to fire at the same instant as others.
  fc
    .record({
      stroke: fc.constantFrom(2, 4),
      listed: fc.array(
        fc.integer({ min: 1, max: 3 }).chain((count) =>
          fc
            .uniqueArray(fc.integer({ min: 0, max: 11 }), { minLength: count, maxLength: count })
            .map((steps) => steps.sort((a, b) => a - b).map((step) => step * 30)),
        ),
        { minLength: 1, maxLength: 4 },
      ),
    })
    .map(({ stroke, listed }) => ({
      stroke,
      layout: 'listed',
      angles: evenly(4, cycleAngle(stroke)),
      written: false,
      listed,
    })),
);

export const frames: fc.Arbitrary<Frame> = fc
  .record({
    engine: engines,
    dwellRows: fc.constantFrom(0, 0, 2, 3),
    points: fc.integer({ min: 1, max: 2 }),
    sweepRows: fc.integer({ min: 0, max: 3 }),
    known: fc.constantFrom<Frame['known']>('inductance', 'inductance', 'inductance', 'test_point', 'peak'),
    bank: fc.constantFrom(0.3, 0.6, 0.9),
  })
  .map(({ engine, ...rest }) => ({ ...engine, ...rest }));

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
  const range = (low: number, high: number): number => six(low + (high - low) * (given[next++ % given.length] ?? 0));
  const spread = (low: number, high: number): number => six(low * (high / low) ** (given[next++ % given.length] ?? 0));
  const ohm = spread(0.2, 4);
  const temperature = range(-30, 120);
  const drop = range(0, 2.5);
  const supply = range(8, 16);
  const most = (supply - drop) / (ohm * copperAt(temperature));
  const test = { supply, dwell: spread(0.0005, 0.01), peak: six(most * range(0.1, 0.95)) };
  const limited = range(0, 1) < 0.5;
  const limit = spread(2, 25);
  return {
    ohm,
    temperature,
    drop,
    henry: spread(0.0005, 0.02),
    limit: limited ? limit : null,
    test,
    height: range(3, 25),
    rest: spread(0.0001, 0.002),
    // Steps between the rows, so that they rise.
    dwell: Array.from({ length: Math.max(1, frame.dwellRows) }, (_, i) => ({
      supply: six(6 + 3 * i + range(0, 2.5)),
      dwell: spread(0.0008, 0.009),
    })),
    points: Array.from({ length: frame.points }, () => ({ rpm: spread(120, 15000), supply: range(4, 18) })),
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
        : inductanceOf(values.test, ohm, values.drop);
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
