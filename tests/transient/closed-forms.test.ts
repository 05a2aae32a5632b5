/** The exact currents judge the closed forms of the model on random feeds. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Circuit, circuitAt, whyNoTrace } from '../../src/transient/circuit.ts';
import { steady } from '../../src/transient/steady.ts';
import { traceOf } from '../../src/transient/trace.ts';
import { cpu } from '../cpu.ts';
import { againstExact } from '../ngspice/accuracy.ts';
import { CASES, design, modelOfCase } from '../ngspice/cases.ts';
import { modelOf } from '../physics/harness.ts';
import { samples } from '../samples.ts';

const GAUGES = ['6 AWG', '8 AWG', '10 AWG', '12 AWG', '14 AWG', '16 AWG', '18 AWG'];

const designs = fc
  .record({
    cylinders: fc.integer({ min: 1, max: 8 }),
    // Degrees by which each cylinder fires off the even beat.
    uneven: fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 8, maxLength: 8 }),
    rpm: fc.integer({ min: 200, max: 9000 }),
    supply: fc.integer({ min: 90, max: 150 }),
    dwell: fc.integer({ min: 10, max: 60 }),
    limit: fc.option(fc.integer({ min: 6, max: 24 }), { nil: undefined }),
    gauge: fc.constantFrom(...GAUGES),
    decimetres: fc.integer({ min: 2, max: 40 }),
    sparks: fc.option(fc.integer({ min: 5, max: 40 }), { nil: undefined }),
  })
  .map(({ cylinders, uneven, rpm, supply, dwell, limit, gauge, decimetres, sparks }) =>
    design({
      angles: Array.from({ length: cylinders }, (_, i) => (i * 720) / cylinders + (uneven[i] as number)),
      rpm,
      supply: supply / 10,
      dwell: dwell / 10,
      ...(limit === undefined ? {} : { limit }),
      ...(sparks === undefined ? {} : { sparks: sparks / 10 }),
      trunk: [gauge, decimetres / 10],
    }),
  );

test('loads are never below the exact ones; the energy is within 0.5 % up to 0.7 V of drop', () => {
  let good = 0;
  fc.assert(
    fc.property(designs, (document) => {
      const e = modelOf(document);
      if ((e.number('dwell', { speed: 0 }) ?? 0) === 0) return;
      const { drop, loads, energy, supply } = againstExact(traceOf(e, 0));
      // Rounding of the sums; in both computations a load of nothing but one coil at its limit is the same.
      expect(loads[0]).toBeGreaterThanOrEqual(-1e-9);
      expect(supply).toBeLessThanOrEqual(1e-9);
      if (drop > 0.7) return;
      good++;
      expect(Math.abs(energy)).toBeLessThanOrEqual(0.005);
    }),
    { numRuns: samples(20), seed: 4 },
  );
  expect(good).toBeGreaterThan(7);
});

test('a coil of which only a bound is known is refused with a sentence', () => {
  const document = CASES[0]?.design;
  const bound = modelOf({ ...document, coil: { resistance: '0.4 ohm', peak: '12 A' } });
  expect(whyNoTrace(bound)).toMatch(/^Only a peak current is known .*\.$/);
  expect(() => circuitAt(bound, 0)).toThrow('Only a peak current is known');
});

test('eight coils take less time than two million exponentials, and twice the firings about twice the time', () => {
  const eight = circuitAt(modelOfCase(CASES.find(({ name }) => name.includes('eight')) as never), 0);
  // The same circuit, every coil firing n times in a cycle n times as long.
  const longer = (n: number): Circuit => ({
    ...eight,
    cycle: eight.cycle * n,
    firings: Array.from({ length: n }, (_, i) =>
      eight.firings.map((firing) => ({ ...firing, at: firing.at + i * eight.cycle })),
    ).flat(),
  });
  const time = (circuit: Circuit): number => cpu(() => steady(circuit), 9);
  const exponentials = cpu(() => {
    let sum = 0;
    for (let i = 0; i < 2_000_000; i++) sum += Math.exp(-i * 1e-6);
    return sum;
  }, 3);
  time(eight);
  // Some 20 ms on a machine of its time; a cycle takes a small part of it.
  expect(time(eight)).toBeLessThan(exponentials);
  // Sixteen times the firings: a cost that grows with the square would be 256 times as high.
  expect(time(longer(32)) / time(longer(2))).toBeLessThan(64);
});
