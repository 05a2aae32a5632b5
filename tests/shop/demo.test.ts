/** The shop of the demos: it contradicts itself nowhere, and the demos come out the same from its shelf, with prices. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { readShop } from '../../src/design/shop/read.ts';
import { run } from '../../src/run.ts';
import { judgeShop } from '../../src/shop/judge.ts';
import { feedBill } from '../../src/shop/prices.ts';
import { type ResultJson, toJson } from '../../src/writers/json.ts';
import { DEMOS, demo, design } from '../design/helpers.ts';

const SHOP = {
  text: readFileSync(new URL('../../workbooks/shop.yaml', import.meta.url), 'utf8'),
  file: 'shop.yaml',
};

test('it can be read, and nothing in it is doubtful', () => {
  const read = readShop(SHOP);
  expect(read.ok ? judgeShop(read.shop) : read.problems).toEqual([]);
});

test.each(DEMOS)('%s: the same sizes and figures from its shelf, and a price', (name) => {
  const read = readDesign(demo(name), name, SHOP);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const result = run(read.design);
  // The largest size that there is is another one.
  const seen = ({ findings, ...rest }: ResultJson) => ({
    ...rest,
    findings: findings.filter(({ rule }) => rule !== 'series_ampacity'),
  });
  const { shop, ...own } = seen(toJson(result));
  expect(own).toEqual(seen(toJson(run(design(demo(name))))));
  expect(shop?.price?.total).toBeGreaterThan(0);
  // Relays that a demo states and does not use have no price; every wire has.
  expect(feedBill(result.evaluation)?.open.filter((what) => !what.includes('relay'))).toEqual([]);
});

/** The coil that each demo states, as the shop has it. */
test.each([
  ['hill-climb-six', 'hill climb', 'temperature: 20 degC'],
  ['pair-four', 'van pair', 'temperature: -10 degC'],
  ['two-bank-v8', 'sand racer', 'temperature: 20 degC'],
])('%s with the coil %s of the shop is the demo', (name, coil, beside) => {
  const text = demo(name).replace(/^coil:\n(?: {2}.*\n)+/m, `coil: { use: ${coil}, ${beside} }\n`);
  expect(text).toContain('use:');
  const read = readDesign(text, name, SHOP);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(read.design.coil).toEqual(design(demo(name)).coil);
});
