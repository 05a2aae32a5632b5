/** What instruments are expected to show, against the exact currents of designs whose parts are off their values. */
import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.ts';
import { evaluate } from '../../src/engine/evaluate.ts';
import { type Expected, expectedReadings } from '../../src/readings/expected.ts';
import { DEMOS, demo, design } from '../design/helpers.ts';
import { random } from '../protection/random.ts';
import { coursesOff, type Off, shown } from './perturbed.ts';

/**
 * Of the demos, which drop up to 0.5 V: the mean path stands for each path, and the mean of the others' drop for its
 * course; the peak of a trunk is a sum of currents of different ages, in which that shows most.
 */
const CLOSE = 0.012;

const running = (rows: readonly Expected[], point: number): Expected[] =>
  rows.filter((row) => row.point === point && !(row.wire === null && row.coil === null));

const all = (end: number): Off => ({
  resistance: end,
  inductance: end,
  dwell: end,
  length: end,
  joints: end,
  warmth: end,
});

/** What an error is a share of: a supply is what is left, so that its error is one of the drop. */
const scaleOf = (row: Expected, truth: number, d: Design): number =>
  row.what === 'supply' ? Math.max((d.points[row.point as number]?.supply as number) - truth, 0.01) : truth;

describe.each(DEMOS)('%s', (name) => {
  const d = design(demo(name));
  const e = evaluate(d);
  const rows = expectedReadings(e);
  const worst = (by: Off, claim: (row: Expected) => number): number => {
    const courses = coursesOff(e, by);
    const errors = courses.flatMap((course, point) =>
      running(rows, point).map((row) => {
        const truth = shown(course, row);
        return Math.abs(claim(row) - truth) / scaleOf(row, truth, d);
      }),
    );
    return Math.max(...errors);
  };

  test('as designed: the exact currents', () => {
    const by = { ...all(0), warmth: 1 };
    expect(worst(by, (row) => row.expected as number)).toBeLessThan(CLOSE);
  });

  test('with all tolerances at one end: the ends of the range', () => {
    const end = (towards: 1 | -1) => (row: Expected) =>
      (row.what === 'supply' ? towards < 0 : towards > 0) ? (row.high as number) : (row.low as number);
    // The path before the coil is as designed at both ends, where it is up to 50 % more: half a percent of the current.
    expect(worst(all(-1), end(-1))).toBeLessThan(2 * CLOSE);
    expect(worst(all(1), end(1))).toBeLessThan(2 * CLOSE);
  });

  test('with tolerances anywhere: never outside of the range', () => {
    const next = random(6);
    for (let i = 0; i < 30; i++) {
      // Corners and inner points in turn.
      const pick = (): number => (i % 2 ? Math.sign(next() - 0.5) : 2 * next() - 1);
      const by = {
        resistance: pick(),
        inductance: pick(),
        dwell: pick(),
        length: pick(),
        joints: pick(),
        warmth: pick(),
      };
      const outside = coursesOff(e, by).flatMap((course, point) =>
        running(rows, point).filter((row) => {
          const value = shown(course, row);
          const slack = 2 * CLOSE * scaleOf(row, value, d);
          return !(value >= (row.low as number) - slack && value <= (row.high as number) + slack);
        }),
      );
      expect(outside, JSON.stringify(by)).toEqual([]);
    }
  });
});

test('where only a peak current is known a reading has an upper bound', () => {
  const text = demo('pair-four').replace('use: van pair', 'use: van pair, peak: 10 A');
  const rows = expectedReadings(evaluate(design(text)));
  const peak = rows.find(
    (row) => row.what === 'current' && row.coil === 0 && row.instrument === 'clamp_peak',
  );
  expect([peak?.low, peak?.expected, peak?.high]).toEqual([0, 10, 10]);
});
