/** What the coils take of the alternator, how much of the time they charge, and what one firing sends through a fuse, by hand. */
import { expect, test } from 'vitest';
import { known, modelOf } from './harness.ts';

/** Four coils as a bound: rectangular pulses of 10 A and 3 ms, so that every mean is a product. */
const e = modelOf({
  coilfeed: 1,
  title: 'Rectangular pulses',
  engine: { cylinders: 4, stroke: 4, firing_order: [1, 3, 4, 2] },
  ignition: { layout: 'coil_per_cylinder', dwell: '3 ms' },
  coil: { resistance: '0.5 ohm', peak: '10 A' },
  supply: { source_resistance: '10 mohm', alternator: '50 A', other_load: '30 A' },
  points: [
    { name: 'slow', rpm: '1000 rpm', supply: '13 V' },
    { name: 'fast', rpm: '6000 rpm', supply: '14 V' },
  ],
  feed: [
    {
      run: 'main',
      carries: 'all',
      length: '1 m',
      ambient: '30 degC',
      insulation: 'C',
      gauge: '8 AWG',
      joints: 0,
      capacitor: '4700 uF',
      fuse: { type: 'E', rating: '30 A', melting: '900 A2s' },
    },
  ],
});
const [slow, fast] = [0, 1];

test('time of a cycle, firings and duty', () => {
  // Two turns: 120 s/1000 and 120 s/6000.
  expect(known(e, 'cycle_time', { speed: slow })).toBeCloseTo(0.12, 12);
  expect(known(e, 'cycle_time', { speed: fast })).toBeCloseTo(0.02, 12);
  // Each coil fires once in a cycle.
  expect(known(e, 'firing_rate', { speed: fast })).toBeCloseTo(50, 9);
  expect(known(e, 'duty', { speed: fast })).toBeCloseTo(0.15, 12);
});

test('average of all coils, and their share of what the alternator leaves', () => {
  // 4 × 10 A × 3 ms in 20 ms, and in 120 ms.
  expect(known(e, 'total_average', { point: fast })).toBeCloseTo(6, 9);
  expect(known(e, 'total_average', { point: slow })).toBeCloseTo(1, 9);
  expect(known(e, 'alternator_left')).toBe(20);
  expect(known(e, 'alternator_share')).toBeCloseTo(0.3, 9);
});

test('effective current and I²t of a firing', () => {
  const at = { wire: 0, point: fast };
  // A firing every 5 ms: the pulses do not touch. √(100 A² × 12 ms/20 ms).
  expect(known(e, 'effective', at)).toBeCloseTo(Math.sqrt(60), 9);
  // 100 A² × 3 ms.
  expect(known(e, 'pulse_energy', at)).toBeCloseTo(0.3, 9);
  expect(known(e, 'run_pulse', { run: 0 })).toBeCloseTo(0.3, 9);
});

test('inrush into a capacitor: highest supply over the source and the cold conductor with its fuse', () => {
  // 8 AWG is 8.366 mm² (ASTM B258); 1.02/58 Ω·mm²/m over it 2.102 mΩ; a fuse of 30 A, type E, 100 mV over 30 A 3.333 mΩ:
  // 14 V over 10 + 2.102 + 3.333 = 15.435 mΩ are 907.0 A.
  expect(Math.abs(known(e, 'inrush', { wire: 0 }) - 907)).toBeLessThan(0.1);
  expect(known(e, 'make_current')).toBe(known(e, 'inrush', { wire: 0 }));
});
