/** The shop's file within a design: what the author wrote around it stays, also where a copy takes its place. */
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { inlined } from '../../src/design/shop/inlined.ts';

/** A text of several lines stands last, so that what follows could become part of it. */
const SHOP = { currency: 'EUR', shop: { name: 'Shop', warranty: 'One line.\n# another, no comment\n' } };
const COPY = { ...SHOP, currency: 'USD' };

const TEXTS: readonly (readonly [what: string, text: string])[] = [
  ['a comment behind it', 'a: 1\nshop: shop.yaml   # ours\nb: 2 # two\n'],
  ['a comment below it', '# first\nshop: shop.yaml\n# units: us   # feet\n\nb: 2 # two\n'],
  ['a comment behind it and one below', 'shop: shop.yaml # ours\n# b\nb: 2\n'],
  ['the last line', 'b: 2 # two\nshop: shop.yaml'],
  ['the last line, with a comment', 'b: 2 # two\nshop: shop.yaml # ours'],
  ['line ends with a return', 'a: 1 # one\r\nshop: shop.yaml\r\n# units: us\r\nb: 2\r\n'],
  ['no such key', 'b: 2 # two\n'],
];

test.each(TEXTS)('%s: comments and values stay, once and when a copy takes its place', (_, text) => {
  const value = parse(text);
  const once = inlined(text, value, SHOP);
  const twice = inlined(once, { ...value, shop: SHOP }, COPY);
  expect(parse(once)).toEqual({ ...value, shop: SHOP });
  expect(parse(twice)).toEqual({ ...value, shop: COPY });
  const comments = text.match(/#[^\r\n]*/g) ?? [];
  for (const made of [once, twice]) for (const comment of comments) expect(made).toContain(comment);
});
