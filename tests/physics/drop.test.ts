/** Drop of the feed, supply at the coil and delivered energy, against a second computation from the numeric currents. */
import { describe, expect, test } from 'vitest';
import { apart, known, modelOf } from './harness.ts';
import {
  awgOhm,
  type Conductor,
  deliveredAfter,
  exactPeaks,
  neighbourDrop,
  pathDrop,
  pathOhm,
  warmedTo,
} from './feed.ts';
import { type Course, currentAt, figures } from './reference.ts';

interface Case {
  name: string;
  /** Crank angles of each coil [deg], 4-stroke. */
  coils: number[][];
  /** AWG number and length of the trunk; the branches are 14 AWG. */
  trunk: { gauge: number; metres: number };
  dwell: number;
  limit?: number;
}

const POINTS = [
  { rpm: 900, supply: 13.2 },
  { rpm: 7000, supply: 14 },
];
const COIL = { ohm: 0.45, henry: 2.5e-3, drop: 1.1 };
const even = (count: number): number[][] => Array.from({ length: count }, (_, i) => [(720 * i) / count]);

const CASES: Case[] = [
  { name: 'even six, good feed', coils: even(6), trunk: { gauge: 8, metres: 1.2 }, dwell: 3.1e-3 },
  { name: 'even eight, long overlap', coils: even(8), trunk: { gauge: 8, metres: 1 }, dwell: 4.4e-3 },
  { name: 'one bank of a cross-plane eight', coils: [[0], [180], [450], [630]], trunk: { gauge: 10, metres: 1.5 }, dwell: 3.7e-3 },
  { name: 'coils that fire together', coils: [[0, 360], [0, 360], [180, 540], [180, 540]], trunk: { gauge: 8, metres: 1 }, dwell: 2.9e-3 },
  { name: 'even six with a limit', coils: even(6), trunk: { gauge: 8, metres: 1.2 }, dwell: 4.1e-3, limit: 13 },
  { name: 'even eight, very poor feed', coils: even(8), trunk: { gauge: 14, metres: 6 }, dwell: 4.4e-3 },
];

const AMBIENT = 70;
const JOINT = 0.4e-3;
/** 33 CFR 183.425 table 5 (printed), 125 °C insulation. */
const TABLE_5: Readonly<Record<number, number>> = { 8: 90, 10: 70, 14: 40 };
const amps = (gauge: number, bundle: number): number =>
  (TABLE_5[gauge] ?? NaN) * Math.sqrt((125 - AMBIENT) / (125 - 30)) * bundle;

const modelFor = ({ coils, trunk, dwell, limit }: Case) => {
  const ids = coils.map((_, i) => `c${i + 1}`);
  const branch = { carries: 'each', ambient: `${AMBIENT} degC`, insulation: 'C', gauge: '14 AWG', bundle: 3, joints: 3 };
  return modelOf({
    coilfeed: 1,
    title: 'Drop',
    engine: { cylinders: 8, stroke: 4, firing_order: [1, 8, 4, 3, 6, 5, 7, 2] },
    ignition: { layout: 'listed', coils: coils.map((fires_at, i) => ({ id: ids[i], fires_at })), dwell: `${dwell} s`, rest: '0.5 ms' },
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
function byHand({ coils, trunk, dwell, limit }: Case): { courses: Course[]; conductors: Conductor[] } {
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
  const conductor = (own: number[], gauge: number, metres: number, bundle: number, fixed: number): Conductor => {
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

/** Both sides are good to 1e-9; the closed forms of the model are the same quantity. */
const TOLERANCE = 1e-6;

describe.each(CASES)('$name', (one) => {
  const e = modelFor(one);
  const { courses, conductors } = byHand(one);
  const stiff = courses.map((course) => currentAt(course.charging, course.dwell));
  const near = (model: number, reference: number): void => expect(apart(model, reference)).toBeLessThan(TOLERANCE);

  test('resistance of every conductor', () => {
    expect(e.design.wires).toHaveLength(conductors.length);
    conductors.forEach(({ ohm, coils }, wire) => {
      expect(e.design.wires[wire]?.coils).toEqual(coils);
      near(known(e, 'wire_ohm', { wire }), ohm);
    });
  });

  test.each([0, 1])('drops at point %i, firing for firing', (point) => {
    const course = courses[point] as Course;
    course.fires.forEach((_, event) => {
      near(known(e, 'path_ohm', { event }), pathOhm(course, conductors, event));
      near(known(e, 'path_drop', { point, event }), pathDrop(course, conductors, event));
      const others = neighbourDrop(course, conductors, event);
      const found = known(e, 'neighbour_drop', { point, event });
      // Where nobody else is charged the model has a difference of two equal numbers.
      if (others === 0) expect(Math.abs(found)).toBeLessThan(1e-9);
      else near(found, others);
    });
  });

  test.each([0, 1])('what a multimeter and a scope show at point %i', (point) => {
    conductors.forEach(({ coils, ohm }, wire) => {
      const { average, peak } = figures(courses[point] as Course, coils);
      near(known(e, 'drop_average', { wire, point }), ohm * average);
      near(known(e, 'drop_peak', { wire, point }), ohm * peak);
    });
  });

  test.each([0, 1])('delivered peak and energy at point %i, firing for firing and coil for coil', (point) => {
    const course = courses[point] as Course;
    const peaks = course.fires.map((_, k) => deliveredAfter(course, conductors, k, course.dwell));
    peaks.forEach((peak, event) => {
      near(known(e, 'delivered_peak', { point, event }), peak);
    });
    one.coils.forEach((_, coil) => {
      const own = course.fires.flatMap((fire, k) => (fire.coil === coil ? [k] : []));
      const least = Math.min(...own.map((k) => peaks[k] as number));
      const drop = Math.max(...own.map((k) => pathDrop(course, conductors, k)));
      near(known(e, 'coil_peak', { coil, point }), least);
      near(known(e, 'coil_energy', { coil, point }), (COIL.henry * least ** 2) / 2);
      near(known(e, 'energy_kept', { coil, point }), (least / (stiff[point] as number)) ** 2);
      near(known(e, 'coil_drop', { coil, point }), drop);
      near(known(e, 'coil_supply', { coil, point }), (POINTS[point]?.supply ?? NaN) - drop);
    });
  });

  test.each([0, 1])('the dwell that wins the loss back gives the stiff peak at point %i', (point) => {
    const course = courses[point] as Course;
    course.fires.forEach((_, event) => {
      const dwell = known(e, 'winning_dwell', { point, event });
      expect(dwell).toBeGreaterThanOrEqual(course.dwell);
      near(deliveredAfter(course, conductors, event, dwell), stiff[point] as number);
      // No shorter one does, unless nothing was lost: at the limit.
      const lost = (stiff[point] as number) - deliveredAfter(course, conductors, event, course.dwell);
      if (lost > 1e-6)
        expect(deliveredAfter(course, conductors, event, dwell * 0.999)).toBeLessThan(stiff[point] as number);
      else near(dwell, course.dwell);
    });
    one.coils.forEach((_, coil) => {
      const own = course.fires.flatMap((fire, k) =>
        fire.coil === coil ? [known(e, 'winning_dwell', { point, event: k })] : [],
      );
      near(known(e, 'coil_winning_dwell', { coil, point }), Math.max(...own));
    });
  });

  test('the worst drop is that of the worst firing at the worst point', () => {
    const all = courses.flatMap((course) => course.fires.map((_, k) => pathDrop(course, conductors, k)));
    near(known(e, 'worst_drop'), Math.max(...all));
    const point = known(e, 'worst_drop_point') - 1;
    const coil = known(e, 'worst_coil') - 1;
    near(known(e, 'coil_drop', { point, coil }), Math.max(...all));
  });

  if (one.limit === undefined)
    test.each([0, 1])('against the coupled circuit at point %i', (point) => {
      const course = courses[point] as Course;
      const exact = exactPeaks(course, conductors);
      exact.forEach((peak, event) => {
        const found = known(e, 'delivered_peak', { point, event });
        // What the method promises: 0.3 % for feeds that drop up to 0.7 V; 3 % and on the low side for very poor ones.
        const drop = pathDrop(course, conductors, event);
        const short = 1 - found / peak;
        expect(Math.abs(short)).toBeLessThan(drop <= 0.7 ? 0.003 : 0.03);
        // A coil alone is solved exactly: there the steps of the integration show, 1e-8 of the current.
        if (drop > 0.7) expect(short).toBeGreaterThan(-1e-8);
      });
    });
});

test('the cases hold good and very poor feeds', () => {
  const drops = CASES.map((one) => known(modelFor(one), 'worst_drop'));
  expect(Math.min(...drops)).toBeLessThan(0.5);
  expect(Math.max(...drops)).toBeGreaterThan(1.9);
});

test('a feed that lets less through than the peak: no dwell wins it back', () => {
  const e = modelFor({ name: 'hopeless', coils: even(1), trunk: { gauge: 14, metres: 90 }, dwell: 12e-3 });
  // 90 m of 14 AWG are 0.76 Ω and more beside a coil of 0.45 Ω: 12.9 V drive less than 10 A, the stiff peak is 25 A.
  expect(known(e, 'coil_peak', { coil: 0, point: 1 })).toBeLessThan(11);
  expect(known(e, 'peak', { speed: 1 })).toBeGreaterThan(24);
  expect(e.value('winning_dwell', { point: 1, event: 0 })).toBeNull();
  expect(e.value('coil_winning_dwell', { point: 1, coil: 0 })).toBeNull();
});
