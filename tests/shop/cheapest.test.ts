/** The least price from the shelf, over random feeds, shelves and prices: what an exhaustive search finds. */
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { evaluate } from '../../src/engine/evaluate.ts';
import { priceOf, withCheapest } from '../../src/shop/cheapest.ts';
import { feedBill } from '../../src/shop/prices.ts';
import { demo, design } from '../design/helpers.ts';
import { factsOf, optimum } from '../protection/exhaustive.ts';
import { dice, feedDesign } from '../protection/random.ts';
import { SERIES } from '../protection/truth.ts';
import { samples } from '../samples.ts';

const DESIGNS = samples(200);
/** [ms] An idle machine takes a tenth of it. */
const PATIENCE = 600_000;
const INSULATIONS = ['A', 'B', 'C', 'D', 'F', 'H', 'GPT', 'TXL'];
const SAE = ['GPT', 'TXL'];

/** Half of all sizes, at prices that now and then fall with the size, as those of a large reel do. */
function shelf(seed: number, series: string): object {
  const d = dice(seed * 29);
  const wire = INSULATIONS.flatMap((insulation) => {
    const own = SAE.includes(insulation) && series === 'AWG' ? 'SAE' : series;
    return ((SERIES as Record<string, readonly string[]>)[own] ?? []).flatMap((size, i) =>
      d.chance(0.5) ? [{ size, insulation, price: `${((i + 1) * d.spread(0.3, 3)).toFixed(2)} EUR/m` }] : [],
    );
  });
  return { currency: 'EUR', wire: [...wire, { size: '22 AWG', insulation: 'E', price: '1 EUR/m' }] };
}

test(
  'the price is the least there is, and there is one where an exhaustive search has one',
  () => {
    const wrong: string[] = [];
    let [found, cheaper] = [0, 0];
    for (let seed = 1, done = 0; done < DESIGNS; seed++) {
      const text = feedDesign(seed) as { sizes: { series: string } };
      const sizes = { ...text.sizes, aim: 'price' };
      const read = readDesign(JSON.stringify({ ...text, sizes, shop: shelf(seed, text.sizes.series) }), '');
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      const first = evaluate(read.design);
      const facts = factsOf(first);
      // Behind fuses of different kinds a run is not judged: the model says so, and asks for a run for each.
      if (facts.runs.some((_, run) => first.number('mixed', { run }) === 1)) continue;
      done += 1;
      const auto = facts.runs.flatMap((run, i) => (run.auto ? [i] : []));
      const own = withCheapest(read.design);
      const e = evaluate(own);
      const total = (of: typeof e): number =>
        auto.reduce((sum, run) => sum + priceOf(of, run, String(of.value('gauge', { run }))), 0);
      const best = optimum(facts, (run, gauge) => (facts.runs[run]?.auto ? priceOf(first, run, gauge) : 0));
      const solved = e.number('solved') === 1;
      if (solved !== (best !== null)) wrong.push(`${seed}: found ${solved}, there is ${best !== null}`);
      if (!solved || best === null) continue;
      found += 1;
      if (total(first) > total(e) * (1 + 1e-9)) cheaper += 1;
      // Sums of a few products on both sides.
      if (Math.abs(total(e) - best.copper) > 1e-9 * best.copper)
        wrong.push(`${seed}: ${total(e)} where the least is ${best.copper}: ${best.gauges.join(', ')}`);
    }
    expect(wrong).toEqual([]);
    expect(found).toBeGreaterThan(0.2 * DESIGNS);
    // Least copper is often not the least price.
    expect(cheaper).toBeGreaterThan(0.1 * found);
  },
  PATIENCE,
);

test('of the V8 it is found within what is evaluated, and costs no more than the least copper', () => {
  const text = demo('two-bank-v8');
  const copper = design(text);
  const own = withCheapest({ ...copper, sizes: { ...copper.sizes, aim: 'price' } });
  expect(own.pins).not.toBeNull();
  const [a, b] = [copper, own].map((one) => feedBill(evaluate(one))?.total ?? Number.NaN) as [number, number];
  // Sums of the same products.
  expect(b).toBeLessThanOrEqual(a * (1 + 1e-9));
});
