/** A feed of single conductors for the tests of resistance and ampacity: every run carries the one coil. */
import type { Evaluation } from '../../src/engine/evaluate.ts';
import { known, modelOf } from './harness.ts';

export interface Piece {
  gauge: string;
  /** [degC] */
  ambient: number;
  insulation?: string;
  bundle?: number;
  /** [m] */
  length?: number;
}

/**
 * Runs in series, at most 24, without joints. The current is a rectangular pulse of `amps`, 1 ms of every 60 ms. The
 * milliampere that it is by default warms a wire by less than 1e-6 K: it has the temperature of its place.
 */
export function feedOf(pieces: readonly Piece[], amps = 0.001): Evaluation {
  const e = modelOf({
    coilfeed: 1,
    title: 'Single conductors',
    engine: { cylinders: 1, stroke: 2, firing_order: [1] },
    ignition: { layout: 'single_coil', dwell: '1 ms', rest: '1 ms' },
    coil: { resistance: '0.5 ohm', peak: '20 A', current_limit: '20 A' },
    points: [{ name: 'one', rpm: '1000 rpm', supply: '14 V' }],
    feed: pieces.map(({ gauge, ambient, insulation = 'F', bundle = 1, length = 1 }, i) => ({
      run: `run ${i + 1}`,
      carries: 'all',
      length: `${length} m`,
      ambient: `${ambient} degC`,
      insulation,
      bundle,
      gauge,
      joints: 0,
    })),
    limits: { drop: '10 V', joint_resistance: '0 mohm' },
  });
  // No coil draws as little as a person may write, so the cells are written over.
  for (const name of ['peak_alone', 'current_limit'] as const) e.set(name, {}, amps);
  return e;
}

/** Resistance of each conductor [ohm]. */
export const resistances = (e: Evaluation): number[] =>
  e.design.wires.map((_, wire) => known(e, 'wire_ohm', { wire }));

/** Ampacity of each run [A]; null where the model has no figure. */
export const ampacities = (e: Evaluation): (number | null)[] =>
  e.design.runs.map((_, run) => e.number('ampacity', { run }));

/** Ampacities of any number of pieces, in feeds of 24 runs. */
export function ampacitiesOf(pieces: readonly Piece[]): (number | null)[] {
  const found: (number | null)[] = [];
  for (let i = 0; i < pieces.length; i += 24) found.push(...ampacities(feedOf(pieces.slice(i, i + 24))));
  return found;
}
