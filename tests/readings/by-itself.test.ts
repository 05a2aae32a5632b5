/** A battery at rest and while the starter turns; a hot place by camera; the holder of a fuse by itself. */
import { describe, expect, test } from 'vitest';
import { checked } from '../../src/readings/check.ts';
import { expectedAt } from '../../src/readings/expected.ts';
import { run } from '../../src/run.ts';
import { demo, design } from '../design/helpers.ts';
import { namesOf } from './named.ts';

const bare = demo('hill-climb-six').replace(/\nmeasured:[\s\S]*$/, '\n');
const of = (...readings: string[]) =>
  checked(run(design(`${bare}\nmeasured:\n${readings.map((r) => `  - ${r}\n`).join('')}`)));
const battery = (c: ReturnType<typeof of>) =>
  c.mend.filter(({ subject }) => subject === 'battery').map(({ harm }) => harm);

describe('a battery of 12 V, by the voltages of common practice', () => {
  // 12.4 V is three quarters charged, 12.0 V a quarter, 12.9 V just charged; a meter of 0.5 % + 2 digits is 0.08 V off.
  test.each([
    [12.6, []],
    [12.35, []],
    [12.2, ['note']],
    [11.9, ['stop']],
    [13.1, ['note']],
  ])('%s V at rest', (volts, harms) => {
    expect(battery(of(`{ what: resting, meter: ${volts} V }`))).toEqual(harms);
  });

  // The point states 9.6 V, which may be 2 % and 0.07 V off; below 9.6 V the battery is weak.
  test.each([
    [9.7, []],
    [9.2, ['stop']],
  ])('%s V held while the starter turns', (volts, harms) => {
    expect(battery(of(`{ what: supply, point: cranking, least: ${volts} V }`))).toEqual(harms);
  });

  test('what is held at a coil is judged by what was held at the posts', () => {
    const coil = (posts: number, volts: number) =>
      of(
        `{ what: supply, point: cranking, least: ${posts} V }`,
        `{ what: supply, coil: "3", point: cranking, least: ${volts} V }`,
      ).mend.filter(({ subject }) => subject === 'coil 3').length;
    // The average current of a cranking engine drops next to nothing; two starts differ by 0.2 V, two readings by 0.14 V.
    expect([coil(9.8, 9.5), coil(9.8, 8.6), coil(10.8, 9.5)]).toEqual([0, 1, 1]);
  });

  test('they are judged by themselves: nothing of the feed is said by them', () => {
    const c = of('{ what: resting, meter: 11.9 V }', '{ what: supply, point: cranking, least: 8.9 V }');
    expect(c.diagnosis.inference).toBeNull();
    expect(c.diagnosis.found).toEqual([]);
  });
});

describe('a thermal camera', () => {
  const camera = (celsius: number, place = 'across: joint 1, ') =>
    `{ what: temperature, run: main, ${place}point: limiter, ambient: 30 degC, camera: ${celsius} degC }`;

  test('the rise of a joint in 12 AWG: two fins of 3.31 mm², 2.05 mm thick', () => {
    const { result } = of(camera(31));
    const e = result.evaluation;
    // 1/(2·√(10 W/m²K · π·2.053e-3 m · 390 W/mK · 3.309e-6 m²)) = 54.8 K/W
    expect(e.number('place_rise', { run: 0 })).toBeCloseTo(54.8, 1);
    const where = { what: 'temperature', instrument: 'camera', wire: 0, coil: null } as const;
    const point = e.design.points.findIndex(({ name }) => name === 'limiter');
    const amps = e.number('expected_effective', { spread: 1, wire: 0, point }) as number;
    const own = e.number('expected_wire_rise', { spread: 1, wire: 0, point }) as number;
    const x = expectedAt(e, { ...where, point, across: 'joint 1', ambient: 30 });
    // 0.3 mΩ of a crimp; computed with 54.8 K/W, which is rounded.
    expect(x.expected).toBeCloseTo(30 + own + 54.8 * 0.3e-3 * amps ** 2, 2);
    expect(x.unit).toBe('degC');
  });

  test('a joint 45 K above the air and nothing else wrong to be seen: that joint, and hot', () => {
    const c = of('{ what: supply, point: limiter, meter: 14.2 V }', camera(75));
    expect(namesOf(c.result.evaluation, c.diagnosis)[0]).toContain('joint 1 of main');
    expect(c.verdict).toBe('fail');
  });

  test('a few kelvins are nothing', () => {
    const c = of('{ what: supply, point: limiter, meter: 14.2 V }', camera(33));
    expect(c.diagnosis.found).toEqual([]);
    expect(c.readings.map(({ stands }) => stands)).toEqual(['within', 'within']);
  });

  test('hotter than its insulation withstands can burn, whatever the reason', () => {
    // Class C withstands 125 °C.
    const told = (celsius: number) =>
      of(camera(celsius, '')).mend.filter(({ says }) => says.includes('insulation')).length;
    expect([told(120), told(130)]).toEqual([0, 1]);
  });
});

test('the holder by itself: it is told from the fuse in it', () => {
  const posts = '{ what: supply, point: limiter, meter: 14.2 V }';
  const drop = (mV: number, across = '') =>
    `{ what: drop, run: main, ${across}point: limiter, meter: ${mV} mV }`;
  // The main has some 170 mV; 200 mV more, all of it across the fuse with its holder, and across the holder alone.
  const holder = of(posts, drop(370), drop(245, 'across: fuse, '), drop(215, 'across: holder, '));
  expect(namesOf(holder.result.evaluation, holder.diagnosis)).toEqual([['holder of main']]);
  const fuse = of(posts, drop(370), drop(245, 'across: fuse, '), drop(15, 'across: holder, '));
  expect(namesOf(fuse.result.evaluation, fuse.diagnosis)).toEqual([['fuse of main']]);
});

test('what cannot be is refused, each with its place', () => {
  const { readings } = of('{ what: drop, run: main, across: contact, point: limiter, meter: 12 mV }');
  expect(readings[0]?.reading.across).toBe('relay');
});
