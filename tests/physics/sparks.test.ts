/** Further sparks at low speed: by hand, and against the exact currents. */
import { describe, expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { run } from '../../src/run.ts';
import { traceOf } from '../../src/transient/trace.ts';
import { known, modelOf } from './harness.ts';

const one = (rpm: string, sparks?: object, own: object = {}): object => ({
  coilfeed: 1,
  title: 'Sparks',
  engine: { cylinders: 1, stroke: 4, firing_order: [1] },
  ignition: { layout: 'coil_per_cylinder', dwell: '3 ms', ...(sparks ? { sparks } : {}) },
  coil: { resistance: '0.5 ohm', inductance: '3 mH', ...own },
  points: [{ name: 'idle', rpm, supply: '14 V' }],
  feed: [
    { run: 'main', carries: 'all', length: '0.5 m', ambient: '40 degC', insulation: 'C', gauge: '8 AWG' },
  ],
});
const THREE = { count: 3, below: '2500 rpm', charge: '1.2 ms' };

describe('one coil at 900 rpm, 133.3 ms for a cycle, τ = 6 ms, 28 A in the end', () => {
  const at = { wire: 0, point: 0 };
  test('average: 17.897 mAs for the first spark, 3.147 mAs for each of two more', () => {
    // 28·(3 − 6·(1 − e^−0.5)) = 28·0.63918; 28·(1.2 − 6·(1 − e^−0.2)) = 28·0.11238 mAs.
    const charge = 28 * (3 - 6 * (1 - Math.exp(-0.5))) + 2 * 28 * (1.2 - 6 * (1 - Math.exp(-0.2)));
    expect(charge).toBeCloseTo(17.897 + 2 * 3.147, 2);
    expect(known(modelOf(one('900 rpm', THREE)), 'average', at)).toBeCloseTo(charge / (120e3 / 900), 12);
  });

  test('effective: the squares of all three, which never overlap', () => {
    // ∫(1 − e^(−t/τ))² = t − 2τ(1 − e^(−t/τ)) + τ/2·(1 − e^(−2t/τ)).
    const square = (t: number): number =>
      784 * (t - 12 * (1 - Math.exp(-t / 6)) + 3 * (1 - Math.exp(-t / 3)));
    const rms = Math.sqrt((square(3) + 2 * square(1.2)) / (120e3 / 900));
    expect(known(modelOf(one('900 rpm', THREE)), 'effective', at)).toBeCloseTo(rms, 12);
  });

  test('from the speed on that is stated, and where no time is left, there is one spark', () => {
    const alone = known(modelOf(one('2500 rpm')), 'effective', at);
    expect(known(modelOf(one('2500 rpm', THREE)), 'effective', at)).toBe(alone);
    // 48 ms of cycle; four more of 11 + 0.5 ms, the first charge and 1 ms of rest are 50 ms.
    const long = { count: 5, below: '3000 rpm', charge: '11 ms' };
    const read = readDesign(JSON.stringify(one('2500 rpm', long)), 'design.json');
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { evaluation, findings } = run(read.design);
    expect(known(evaluation, 'effective', at)).toBe(alone);
    expect(findings.find(({ rule }) => rule === 'sparks_fit')?.verdict).toBe('advice');
  });

  test('the time from a spark to the next charge changes nothing for one coil alone', () => {
    const [a, b] = ['0.2 ms', '4 ms'].map((burn) =>
      known(modelOf(one('900 rpm', { ...THREE, burn })), 'effective', at),
    );
    expect(a).toBe(b);
  });
});

/** Eight coils whose further charges overlap with first ones and with each other. */
const eight = (known: object): object => ({
  ...one('2300 rpm', { count: 4, below: '2500 rpm', charge: '2.6 ms', burn: '0.3 ms' }, known),
  engine: { cylinders: 8, stroke: 4, firing_order: [1, 2, 3, 4, 5, 6, 7, 8] },
});

test.each<[string, object]>([
  ['free', {}],
  ['limited', { current_limit: '6 A' }],
])('overlapping, %s: a feed that drops nothing is met exactly', (_, own) => {
  const e = modelOf(eight(own));
  // 1 µm of wire: what it drops is a millionth.
  e.set('wire_length', { wire: 0 }, 0.01);
  const { wires, course } = traceOf(e, 0);
  const [wire] = wires;
  if (wire === undefined) throw new Error('no conductor');
  expect(course.circuit.firings).toHaveLength(32);
  // The resistance that is left, a centimetre and a crimp at each end, is 0.6 mΩ of 0.5 Ω: 0.3 % at most.
  for (const pair of [wire.average, wire.effective, wire.peak]) {
    expect(pair.closed as number).toBeGreaterThanOrEqual(pair.exact * (1 - 1e-12));
    expect((pair.closed as number) / pair.exact - 1).toBeLessThan(0.004);
  }
});
