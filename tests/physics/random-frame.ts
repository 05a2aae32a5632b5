/** Random engines and ignitions for the physics tests: what stays when inputs are changed. */
import fc from 'fast-check';
import { cycleAngle, type Firing, firings } from './reference-engine.ts';

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

export const eventsOf = (frame: Frame): Firing[] =>
  firings(frame.layout, frame.angles, frame.listed).sort((a, b) => a.angle - b.angle || a.coil - b.coil);

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
        fc
          .integer({ min: 1, max: 3 })
          .chain((count) =>
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
