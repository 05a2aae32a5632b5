/** The two engines against each other: the compiled model, and the same formulas as cells of a spreadsheet engine. */
import { describe, expect, test } from 'vitest';
import { type Evaluation, evaluate } from '../../src/engine/evaluate.ts';
import { AGREEMENT, disagreements, spread } from '../../src/engine/spreadsheet.ts';
import { ON_REQUEST } from '../../src/model/model.ts';
import { DEMOS, demo, design } from '../design/helpers.ts';
import { feedDesign } from '../protection/random.ts';
import { samples } from '../samples.ts';

const SAMPLES = samples(6);

const differences = (laid: ReturnType<typeof spread>, e: Evaluation): string[] => [...disagreements(laid, e)];

describe.each(DEMOS)('%s', (name) => {
  const of = design(demo(name));

  test('every value of every quantity is the same in both engines', () => {
    expect(differences(spread(of, undefined, ON_REQUEST), evaluate(of))).toEqual([]);
  });

  test('inputs that are written over in both give the same again', () => {
    const [laid, e] = [spread(of, undefined, ON_REQUEST), evaluate(of)];
    for (const one of [laid, e]) {
      one.set('point_supply', { point: 1 }, 13.7);
      one.set('wire_length', { wire: 0 }, 3.2);
      one.set('run_insulation', { run: 1 }, 'D');
      one.set('coil_T', {}, 35);
    }
    expect(differences(laid, e)).toEqual([]);
  });
});

test('random designs', () => {
  for (let seed = 1; seed <= SAMPLES; seed++) {
    const of = design(JSON.stringify(feedDesign(seed * 101)));
    expect(differences(spread(of, undefined, ON_REQUEST), evaluate(of)), `seed ${seed}`).toEqual([]);
  }
});

test('a difference above the stated one is found and named', () => {
  const of = design(demo('pair-four'));
  const e = evaluate(of);
  const off: Evaluation = {
    ...e,
    value: (name, at) => {
      const value = e.value(name, at);
      return name === 'worst_drop' ? (value as number) * (1 + 2 * AGREEMENT) : value;
    },
  };
  expect(differences(spread(of), off)).toEqual([expect.stringContaining('(worst_drop)')]);
});

test('what is written over and read is what the changed design gives afresh', () => {
  const text = demo('two-bank-v8');
  const e = evaluate(design(text));
  // Asked before, so that nothing of it may stay.
  expect(e.number('worst_drop')).toBeGreaterThan(0);
  e.set('coil_T', {}, 20);
  e.set('coil_T', {}, e.design.coil.temperature);
  const fresh = evaluate(design(text));
  for (const name of ['worst_drop', 'copper_total', 'coil_L'] as const)
    expect(e.number(name)).toBe(fresh.number(name));
});

test('a value that does not exist is refused', () => {
  const e = evaluate(design(demo('pair-four')));
  expect(() => e.number('wire_ohm', { wire: 99 })).toThrow('wire 99');
  expect(() => e.number('gauge', { run: 0 })).toThrow('where a number is needed');
});
