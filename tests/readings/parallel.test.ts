/** Readings on a run of several conductors in parallel. */
import { expect, test } from 'vitest';
import { evaluate } from '../../src/engine/evaluate.ts';
import { demo, design } from '../design/helpers.ts';

test('two conductors in parallel have half the copper resistance of one, cold and warm, joints apart', () => {
  const text = demo('hill-climb-six').replace(/gauge: auto/, 'gauge: 12 AWG');
  const [one, two] = [text, text.replace(/( +)gauge: 12 AWG/, '$1gauge: 12 AWG\n$1conductors: 2')].map((t) =>
    evaluate(design(t)),
  );
  const copper = (e = one, name: 'expected_ohm' | 'spread_wire_ohm'): number =>
    (e?.number(name, { spread: 1, wire: 0 }) ?? Number.NaN) -
    (e?.number('fixed_ohm', { run: 0 }) ?? Number.NaN);
  expect(one?.value('gauge', { run: 0 })).toBe('12 AWG');
  // At 20 °C in both cases: exactly half, but for the last digits of the difference.
  expect(copper(two, 'expected_ohm') / copper(one, 'expected_ohm')).toBeCloseTo(0.5, 9);
  // Warm: half the current in each, a quarter of the rise; 10 K less are 4 % less resistance of copper.
  const warm = copper(two, 'spread_wire_ohm') / copper(one, 'spread_wire_ohm');
  expect(warm).toBeLessThan(0.5);
  expect(warm).toBeGreaterThan(0.45);
  // As the feed itself is judged: both know the same conductor.
  expect(
    (two?.number('spread_wire_T', { spread: 1, wire: 0 }) ?? 0) - (two?.number('wire_T', { wire: 0 }) ?? 0),
  ).toBeLessThan(2);
});
