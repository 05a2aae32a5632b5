/** Feeds for the tests of drop: as designs, and the same ones by hand. */
import { awgOhm, type Conductor, warmedTo } from './feed.ts';
import { modelOf } from './harness.ts';
import { type Course, figures } from './reference.ts';

export interface Case {
  name: string;
  /** Crank angles of each coil [deg], 4-stroke. */
  coils: number[][];
  /** AWG number and length of the trunk; the branches are 14 AWG. */
  trunk: { gauge: number; metres: number };
  dwell: number;
  limit?: number;
}

export const POINTS = [
  { rpm: 900, supply: 13.2 },
  { rpm: 7000, supply: 14 },
];
export const COIL = { ohm: 0.45, henry: 2.5e-3, drop: 1.1 };
export const even = (count: number): number[][] =>
  Array.from({ length: count }, (_, i) => [(720 * i) / count]);

export const CASES: Case[] = [
  { name: 'even six, good feed', coils: even(6), trunk: { gauge: 8, metres: 1.2 }, dwell: 3.1e-3 },
  { name: 'even eight, long overlap', coils: even(8), trunk: { gauge: 8, metres: 1 }, dwell: 4.4e-3 },
  {
    name: 'one bank of a cross-plane eight',
    coils: [[0], [180], [450], [630]],
    trunk: { gauge: 10, metres: 1.5 },
    dwell: 3.7e-3,
  },
  {
    name: 'coils that fire together',
    coils: [
      [0, 360],
      [0, 360],
      [180, 540],
      [180, 540],
    ],
    trunk: { gauge: 8, metres: 1 },
    dwell: 2.9e-3,
  },
  {
    name: 'even six with a limit',
    coils: even(6),
    trunk: { gauge: 8, metres: 1.2 },
    dwell: 4.1e-3,
    limit: 13,
  },
  { name: 'even eight, very poor feed', coils: even(8), trunk: { gauge: 14, metres: 6 }, dwell: 4.4e-3 },
];

const AMBIENT = 70;
const JOINT = 0.4e-3;
/** 33 CFR 183.425 table 5 (printed), 125 °C insulation. */
const TABLE_5: Readonly<Record<number, number>> = { 8: 90, 10: 70, 14: 40 };
const amps = (gauge: number, bundle: number): number =>
  (TABLE_5[gauge] ?? NaN) * Math.sqrt((125 - AMBIENT) / (125 - 30)) * bundle;

export const modelFor = ({ coils, trunk, dwell, limit }: Case) => {
  const ids = coils.map((_, i) => `c${i + 1}`);
  const branch = {
    carries: 'each',
    ambient: `${AMBIENT} degC`,
    insulation: 'C',
    gauge: '14 AWG',
    bundle: 3,
    joints: 3,
  };
  return modelOf({
    coilfeed: 1,
    title: 'Drop',
    engine: { cylinders: 8, stroke: 4, firing_order: [1, 8, 4, 3, 6, 5, 7, 2] },
    ignition: {
      layout: 'listed',
      coils: coils.map((fires_at, i) => ({ id: ids[i], fires_at })),
      dwell: `${dwell} s`,
      rest: '0.5 ms',
    },
    coil: {
      resistance: `${COIL.ohm} ohm`,
      inductance: `${COIL.henry} H`,
      driver_drop: `${COIL.drop} V`,
      ...(limit === undefined ? {} : { current_limit: `${limit} A` }),
    },
    points: POINTS.map(({ rpm, supply }, i) => ({ name: `p${i}`, rpm: `${rpm} rpm`, supply: `${supply} V` })),
    feed: [
      {
        run: 'trunk',
        carries: 'all',
        length: `${trunk.metres} m`,
        ambient: `${AMBIENT} degC`,
        insulation: 'C',
        gauge: `${trunk.gauge} AWG`,
        joints: 4,
        fuse: { type: 'E', rating: '50 A' },
        relay: { rating: '50 A', contact: '3 mohm' },
      },
      { run: 'branch', length: '0.4 m', ...branch },
    ],
    return: [{ run: 'ground', length: '0.3 m', ...branch }],
    limits: { joint_resistance: `${JOINT} ohm` },
  });
};

/** The same feed by hand: courses at both points, and every conductor in the order of the design. */
export function byHand({ coils, trunk, dwell, limit }: Case): { courses: Course[]; conductors: Conductor[] } {
  const fires = coils
    .flatMap((own, coil) => own.map((angle) => ({ coil, angle })))
    .sort((a, b) => a.angle - b.angle || a.coil - b.coil);
  const courses = POINTS.map(({ rpm, supply }): Course => {
    const cycle = 120 / rpm;
    return {
      charging: { ohm: COIL.ohm, henry: COIL.henry, volts: supply - COIL.drop, limit: limit ?? null },
      dwell,
      cycle,
      fires: fires.map(({ coil, angle }) => ({ coil, at: (angle / 720) * cycle })),
    };
  });
  const conductor = (
    own: number[],
    gauge: number,
    metres: number,
    bundle: number,
    fixed: number,
  ): Conductor => {
    const effective = Math.max(...courses.map((course) => figures(course, own).effective));
    const celsius = warmedTo(125, AMBIENT, effective, amps(gauge, bundle));
    return { coils: own, ohm: awgOhm(gauge, metres, celsius) + fixed };
  };
  const all = coils.map((_, i) => i);
  return {
    courses,
    conductors: [
      // Fuse of type E, 50 A: at most 100 mV at rated current (quoted).
      conductor(all, trunk.gauge, trunk.metres, 1, 4 * JOINT + 0.1 / 50 + 3e-3),
      // Three conductors together: 0.70.
      ...all.map((i) => conductor([i], 14, 0.4, 0.7, 3 * JOINT)),
      ...all.map((i) => conductor([i], 14, 0.3, 0.7, 3 * JOINT)),
    ],
  };
}
