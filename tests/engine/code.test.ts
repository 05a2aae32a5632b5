/** Formulas as code against the same as functions: each value is the same to the last bit, and each error the same. */
import { expect, test } from 'vitest';
import { codeOf } from '../../src/engine/code/code.ts';
import { type Evaluation, evaluate } from '../../src/engine/evaluate.ts';
import { frame } from '../../src/engine/frame.ts';
import { codeFor, writeCode } from '../../src/engine/functions.ts';
import { Fault } from '../../src/engine/node.ts';
import { QUANTITIES, type QuantityName } from '../../src/model/model.ts';
import { installsOf } from '../../src/spread/spread.ts';
import { DEMOS, demo, design } from '../design/helpers.ts';
import { feedDesign } from '../protection/random.ts';
import { samples } from '../samples.ts';
import { documentOf, generator } from '../workbook/random-design.ts';

const SAMPLES = samples(12);
const NAMES = Object.keys(QUANTITIES) as QuantityName[];

type Found = number | string | null;

function foundAt(read: () => number, word: () => string | null): Found {
  try {
    const number = read();
    return Number.isNaN(number) ? word() : number;
  } catch (error) {
    if (error instanceof Fault) return `${error.what} in ${error.place}`;
    throw error;
  }
}

function all(e: Evaluation): Map<string, Found> {
  const found = new Map<string, Found>();
  for (const name of NAMES) {
    const store = e.stores.of(name);
    const size = store.counts.reduce((count, one) => count * one, 1);
    for (let i = 0; i < size; i++)
      found.set(
        `${name} ${i}`,
        foundAt(
          () => store.number(i),
          () => store.word(i),
        ),
      );
  }
  return found;
}

const designs = [
  ...DEMOS.map((name) => demo(name)),
  ...Array.from({ length: SAMPLES }, (_, i) => JSON.stringify(feedDesign((i + 1) * 77))),
  ...Array.from({ length: SAMPLES }, (_, i) => JSON.stringify(documentOf(i + 1))),
].map((text) => design(text));

/** Installs whose parts are off: values that are held, and values that are added to. */
function installs(): number[][] {
  const built = installsOf(design(demo('pair-four')));
  const random = generator(7);
  return Array.from({ length: SAMPLES }, () => {
    const { figures, passes, weakest } = built.outcome(built.inputs.map(random));
    return [...figures, ...passes, weakest];
  });
}

test('demos and random designs, every quantity', () => {
  const byFunctions = designs.map((one) => all(evaluate(one)));
  const before = installs();
  writeCode(codeOf);
  expect(installs()).toEqual(before);
  designs.forEach((one, i) => {
    const expected = byFunctions[i] as Map<string, Found>;
    const found = all(evaluate(one));
    const unlike = [...expected].filter(([key, value]) => !Object.is(found.get(key), value));
    expect(unlike.map(([key, value]) => `${key}: ${value}, by code ${found.get(key)}`)).toEqual([]);
    expect(found.size).toBe(expected.size);
  });
  // Not by leaving everything to the functions.
  expect(NAMES.filter((name) => codeFor(frame(name)) !== null).length).toBeGreaterThan(400);
});
