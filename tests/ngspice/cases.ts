/** Designs on which the currents in time are judged by a circuit simulator: one for each thing that can be special. */

import type { Evaluation } from '../../src/engine/evaluate.ts';
import { modelOf } from '../physics/harness.ts';

export interface Case {
  readonly name: string;
  readonly design: object;
}

export interface Values {
  angles: number[];
  layout?: string;
  coils?: { id: string; fires_at: number[] }[];
  rpm: number;
  supply?: number;
  dwell?: number;
  limit?: number;
  /** Gauge and length of the trunk, feed and return alike [AWG, m]. */
  trunk?: [string, number];
  /** Three sparks, this long charged before the later ones [ms]. */
  sparks?: number;
  /** Another steady load in the trunk [A]. */
  also?: number;
  /** Banks: ids of the coils of each. */
  banks?: string[][];
}

/** An engine with a trunk, perhaps banks, a conductor for each coil, and the way back. */
export function design(v: Values): object {
  const [gauge, length] = v.trunk ?? ['8 AWG', 1.5];
  const run = { ambient: '70 degC', insulation: 'C', joints: 2 };
  const each = { ...run, carries: 'each', gauge: '16 AWG' };
  return {
    coilfeed: 1,
    title: 'Judged by a circuit simulator',
    engine: {
      cylinders: v.angles.length,
      stroke: 4,
      firing_order: v.angles.map((_, i) => i + 1),
      firing_angles: v.angles,
    },
    ignition: {
      layout: v.layout ?? 'coil_per_cylinder',
      ...(v.coils ? { coils: v.coils } : {}),
      dwell: `${v.dwell ?? 3.2} ms`,
      rest: '0.8 ms',
      ...(v.sparks === undefined
        ? {}
        : { sparks: { count: 3, below: '2500 rpm', charge: `${v.sparks} ms`, burn: '0.6 ms' } }),
    },
    coil: {
      resistance: '0.42 ohm',
      inductance: '2.4 mH',
      driver_drop: '1.2 V',
      ...(v.limit === undefined ? {} : { current_limit: `${v.limit} A` }),
    },
    points: [{ name: 'judged', rpm: `${v.rpm} rpm`, supply: `${v.supply ?? 14.2} V` }],
    feed: [
      {
        ...run,
        run: 'main',
        carries: 'all',
        gauge,
        length: `${length} m`,
        fuse: { type: 'E', rating: '50 A' },
        ...(v.also === undefined ? {} : { also: `${v.also} A` }),
      },
      ...(v.banks ?? []).map((carries, i) => ({
        ...run,
        run: `bank ${i + 1}`,
        carries,
        gauge: '12 AWG',
        length: `${0.6 + 0.5 * i} m`,
      })),
      { ...each, run: 'drop', length: '0.5 m' },
    ],
    return: [
      { ...each, run: 'ground', length: '0.4 m' },
      { ...run, run: 'strap', carries: 'all', gauge, length: `${length / 2} m` },
    ],
  };
}

const even = (n: number): number[] => Array.from({ length: n }, (_, i) => (i * 720) / n);

/** Two coils at a time are more than this feed carries at the limit of both. */
export const LIMIT_LOST = 'limit lost when others load the feed';

export const CASES: readonly Case[] = [
  { name: 'even six, overlapping charges', design: design({ angles: even(6), rpm: 7800 }) },
  { name: 'uneven four', design: design({ angles: [0, 90, 270, 540], rpm: 6500, dwell: 4.5 }) },
  {
    name: 'wasted spark, two coils at a time',
    design: design({ angles: even(4), layout: 'wasted_coil_per_cylinder', rpm: 5000 }),
  },
  { name: 'coil per pair', design: design({ angles: even(6), layout: 'coil_per_pair', rpm: 6000 }) },
  { name: 'one coil for all', design: design({ angles: even(4), layout: 'single_coil', rpm: 4500 }) },
  {
    name: 'limited, held to the end',
    design: design({ angles: even(6), rpm: 5500, dwell: 5, limit: 12 }),
  },
  {
    name: LIMIT_LOST,
    design: design({ angles: even(6), rpm: 2000, dwell: 15, limit: 14, trunk: ['18 AWG', 8] }),
  },
  {
    name: 'dwell cut short',
    design: design({ angles: even(4), layout: 'single_coil', rpm: 9000, dwell: 6 }),
  },
  { name: 'cranking', design: design({ angles: even(6), rpm: 220, supply: 9.6, dwell: 5 }) },
  {
    name: 'eight coils in two uneven banks',
    design: design({
      angles: even(8),
      rpm: 7000,
      trunk: ['10 AWG', 1.2],
      banks: [
        ['1', '4', '6', '7'],
        ['2', '3', '5', '8'],
      ],
    }),
  },
  { name: 'three sparks at idle', design: design({ angles: even(8), rpm: 900, sparks: 1.2 }) },
  {
    name: 'three sparks that overlap, limited',
    design: design({ angles: [0, 75, 180, 270, 340, 450, 540, 600], rpm: 2300, sparks: 2.6, limit: 12 }),
  },
  { name: 'injectors on the same trunk', design: design({ angles: even(6), rpm: 7000, also: 13 }) },
  { name: 'poor feed', design: design({ angles: even(6), rpm: 7800, trunk: ['14 AWG', 2.5] }) },
  {
    name: 'very poor feed',
    design: design({ angles: even(8), rpm: 8000, supply: 12, dwell: 5, trunk: ['18 AWG', 3] }),
  },
];

/** The model of a case. */
export const modelOfCase = ({ design: document }: Case): Evaluation => modelOf(document);
