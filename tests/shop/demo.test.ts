/** The shop of the demos: it contradicts itself nowhere, has all that they take, and leaves their sizes as they are without it. */
import { expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { readShop } from '../../src/design/shop/read.ts';
import { run } from '../../src/run.ts';
import { judgeShop } from '../../src/shop/judge.ts';
import { feedBill } from '../../src/shop/prices.ts';
import { type ResultJson, toJson } from '../../src/writers/json.ts';
import { DEMOS, demo, design, SHOP } from '../design/helpers.ts';

test('it can be read, and nothing in it is doubtful', () => {
  const read = readShop(SHOP);
  expect(read.ok ? judgeShop(read.shop) : read.problems).toEqual([]);
});

test.each(DEMOS)('%s: everything has its price, and every size could be bought elsewhere', (name) => {
  const own = run(design(demo(name)));
  expect(feedBill(own.evaluation)).toMatchObject({ open: [], total: expect.any(Number) });
  // The same parts by name, and nothing to choose from but what there is at all.
  const text = parse(demo(name));
  const { wire, fuses, ...shop } = text.shop;
  const free = run(design(stringify({ ...text, shop: name === 'two-bank-v8' ? { ...shop, fuses } : shop })));
  // The largest size that there is is another one.
  const seen = ({ findings, shop: _, ...rest }: ResultJson) => ({
    ...rest,
    findings: findings.filter(({ rule }) => rule !== 'series_ampacity'),
  });
  expect(seen(toJson(own))).toEqual(seen(toJson(free)));
});
