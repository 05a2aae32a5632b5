/** Worked examples of the primary current, through designs: the values that others print. */
import { describe, expect, test } from 'vitest';
import { known, modelOf } from './harness.ts';

interface Example {
  ohm: number;
  henry: number;
  volts: number;
  dwell: number;
  rpm: number;
}

/** One coil on one cylinder of a 2-stroke: one firing a turn. The feed does not enter the stiff current. */
const example = ({ ohm, henry, volts, dwell, rpm }: Example) =>
  modelOf({
    coilfeed: 1,
    title: 'Worked example',
    engine: { cylinders: 1, stroke: 2, firing_order: [1] },
    ignition: { layout: 'single_coil', dwell: `${dwell} s`, rest: '1 ms' },
    coil: { resistance: `${ohm} ohm`, inductance: `${henry} H` },
    points: [{ name: 'example', rpm: `${rpm} rpm`, supply: `${volts} V` }],
    feed: [
      { run: 'main', carries: 'all', length: '1 m', ambient: '20 degC', insulation: 'C', gauge: '10 AWG' },
    ],
  });

const at = { speed: 0, wire: 0, point: 0 };

describe('Alexander and Sadiku, automobile ignition (quoted): 4 Ω, 6 mH, 12 V', () => {
  // 40 time constants of 1.5 ms: e^−40 is nothing, so that this is the steady state of the book.
  const e = example({ ohm: 4, henry: 6e-3, volts: 12, dwell: 60e-3, rpm: 600 });

  test('3 A', () => expect(known(e, 'peak', at)).toBeCloseTo(3, 9));
  test('27 mJ', () => expect(known(e, 'energy', at)).toBeCloseTo(27e-3, 11));
});

test('a coil of 10 mH and 2 Ω reaches 95 % in 14.98 ms (quoted)', () => {
  const e = example({ ohm: 2, henry: 10e-3, volts: 12, dwell: 14.98e-3, rpm: 1200 });
  const share = known(e, 'peak', at) / known(e, 'final_current', at);
  // Printed to 0.01 ms: at 5 ms time constant and 5 % left that is 0.005 ms/5 ms · 0.05 = 5e-5 of the share.
  expect(Math.abs(share - 0.95)).toBeLessThanOrEqual(5e-5);
});

describe('14 V, 0.5 Ω, 3 mH, 3 ms (calculated outside, closed form and numeric integration agree)', () => {
  // 3000 rpm of a 2-stroke: one cycle of 20 ms.
  const e = example({ ohm: 0.5, henry: 3e-3, volts: 14, dwell: 3e-3, rpm: 3000 });

  // Each tolerance is half of the last digit that is given.
  test('a cycle of 20 ms', () => expect(known(e, 'cycle_time', at)).toBeCloseTo(0.02, 15));
  test('11.017 A', () => expect(Math.abs(known(e, 'peak', at) - 11.017)).toBeLessThanOrEqual(0.0005));
  test('182.1 mJ', () => expect(Math.abs(known(e, 'energy', at) - 182.1e-3)).toBeLessThanOrEqual(0.05e-3));
  test('average 0.89486 A', () =>
    expect(Math.abs(known(e, 'average', at) - 0.89486)).toBeLessThanOrEqual(0.000005));
  test('effective 2.61714 A', () =>
    expect(Math.abs(known(e, 'effective', at) - 2.61714)).toBeLessThanOrEqual(0.000005));
});
