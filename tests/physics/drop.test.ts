/** Drop of the feed, supply at the coil and delivered energy, against a second computation from the numeric currents. */
import { describe, expect, test } from 'vitest';
import { byHand, CASES, COIL, even, modelFor, POINTS } from './drop-cases.ts';
import { deliveredAfter, exactPeaks, neighbourDrop, pathDrop, pathOhm } from './feed.ts';
import { apart, known } from './harness.ts';
import { type Course, currentAt, figures } from './reference.ts';

/** Both sides are good to 1e-9; the closed forms of the model are the same quantity. */
const TOLERANCE = 1e-6;

describe.each(CASES)('$name', (one) => {
  const e = modelFor(one);
  const { courses, conductors } = byHand(one);
  const stiff = courses.map((course) => currentAt(course.charging, course.dwell));
  const near = (model: number, reference: number): void =>
    expect(apart(model, reference)).toBeLessThan(TOLERANCE);

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

  test.each([0, 1])('the dwell to restore gives the stiff peak at point %i', (point) => {
    const course = courses[point] as Course;
    course.fires.forEach((_, event) => {
      const dwell = known(e, 'restoring_dwell', { point, event });
      // Where nothing is lost both are the same but for the rounding of a logarithm of an exponential.
      expect(dwell).toBeGreaterThanOrEqual(course.dwell * (1 - 1e-12));
      near(deliveredAfter(course, conductors, event, dwell), stiff[point] as number);
      // No shorter one does, unless nothing was lost: at the limit.
      const lost = (stiff[point] as number) - deliveredAfter(course, conductors, event, course.dwell);
      if (lost > 1e-6)
        expect(deliveredAfter(course, conductors, event, dwell * 0.999)).toBeLessThan(stiff[point] as number);
      else near(dwell, course.dwell);
    });
    one.coils.forEach((_, coil) => {
      const own = course.fires.flatMap((fire, k) =>
        fire.coil === coil ? [known(e, 'restoring_dwell', { point, event: k })] : [],
      );
      near(known(e, 'coil_restoring_dwell', { coil, point }), Math.max(...own));
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

test('a feed that lets less through than the peak: no dwell restores it', () => {
  const e = modelFor({ name: 'hopeless', coils: even(1), trunk: { gauge: 14, metres: 90 }, dwell: 12e-3 });
  // 90 m of 14 AWG are 0.76 Ω and more beside a coil of 0.45 Ω: 12.9 V drive less than 10 A, the stiff peak is 25 A.
  expect(known(e, 'coil_peak', { coil: 0, point: 1 })).toBeLessThan(11);
  expect(known(e, 'peak', { speed: 1 })).toBeGreaterThan(24);
  expect(e.value('restoring_dwell', { point: 1, event: 0 })).toBeNull();
  expect(e.value('coil_restoring_dwell', { point: 1, coil: 0 })).toBeNull();
});
