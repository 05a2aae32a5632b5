/** A shop's file and its use in a design: what is read, what stands beside, and every way to be wrong. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import type { Design } from '../../src/design/design.ts';
import { printProblem } from '../../src/design/problems.ts';
import { readDesign, shopNamed } from '../../src/design/read.ts';
import { shopJsonSchemaText } from '../../src/design/schema-json.ts';
import { readPrice } from '../../src/design/shop/price.ts';
import { readShop } from '../../src/design/shop/read.ts';
import { evaluate } from '../../src/engine/evaluate.ts';
import { explain } from '../../src/explain/tree.ts';
import { base } from '../design/helpers.ts';

const SHOP = `shop: { name: Invented Ignitions, address: [1 Main Street, Anytown], revision: C }
currency: EUR
coils:
  - name: race twenty
    resistance: 0.42 ohm
    test_point: { supply: 13.5 V, dwell: 3 ms, peak: 12 A }
    driver_drop: 1.2 V
    largest: 14 AWG
    from: the maker’s sheet of 2031
    price: 79 EUR
wire:
  - { size: 14 AWG, insulation: TXL, colours: [red, black], price: 85 EUR/100 m }
fuses:
  - name: blade 20
    type: C
    rating: 20 A
    curve: [{ current: 27 A, within: 600 s }, { current: 40 A, within: 5 s }]
    price: 60 EUR/100
relays:
  - { name: power 50, rating: 50 A, rated_at: 85 degC, coil: 90 ohm, pull_in: 7.2 V }
terminals:
  - { name: ring M8, smallest: 14 AWG, largest: 8 AWG, stud: M8 }
instruments:
  - { name: bench meter, kind: meter, accuracy: 0.1 % + 1 digit }
`;

/** The base design with a coil, a fuse and a relay of the shop, and what stands beside each. */
const using = ({ coil = '', fuse = '', relay = '' } = {}): string =>
  base(
    ['coil:\n  resistance: 0.5 ohm\n  inductance: 3.0 mH\n', `coil: { use: race twenty${coil} }\n`],
    ['fuse: { type: C, rating: auto }', `fuse: { use: blade 20${fuse} }`],
    ['relay: { rating: 40 A, pull_in: 7.2 V }', `relay: { use: power 50${relay} }`],
  );
const read = (design: string, shop = SHOP) =>
  readDesign(design, 'design.yaml', { text: shop, file: 'shop.yaml' });
const got = (design: string, shop = SHOP): Design => {
  const result = read(design, shop);
  if (!result.ok) throw new Error(result.problems.map(printProblem).join('\n'));
  return result.design;
};
const told = (design: string, shop = SHOP): string[] => {
  const result = read(design, shop);
  return result.ok ? [] : result.problems.map(printProblem);
};

test('a part of the shop stands where it is used, with what is stated beside it in its place', () => {
  const { coil, runs, used, shop } = got(using({ coil: ', driver_drop: 1.5 V, temperature: 40 degC' }));
  expect(coil).toMatchObject({ resistance: 0.42, driver_drop: 1.5, temperature: 40, inductance: null });
  expect(coil.test_point).toEqual({ supply: 13.5, dwell: 3e-3, peak: 12, temperature: null });
  expect(runs[0]?.fuse).toMatchObject({ type: 'C', rating: 20, curve: [{ current: 27 }, { within: 5 }] });
  expect(runs[0]?.relay).toMatchObject({ rating: 50, rated_at: 85, coil: 90, pull_in: 7.2 });
  expect(used).toMatchObject([
    {
      path: 'coil',
      kind: 'coils',
      name: 'race twenty',
      from: 'the maker’s sheet of 2031',
      beside: ['driver_drop'],
    },
    { path: 'feed[0].fuse', kind: 'fuses', name: 'blade 20', from: null, beside: [] },
    { path: 'feed[0].relay', kind: 'relays', name: 'power 50', from: null, beside: [] },
  ]);
  expect(shop).toMatchObject({ file: 'shop.yaml', currency: 'EUR', shop: { revision: 'C' } });
});

test('a value is explained by the part of the shop that it came from, and what stands beside by the design', () => {
  const e = evaluate(got(using({ coil: ', driver_drop: 1.5 V, temperature: 40 degC' })));
  expect(explain(e, 'coil_ohm_20', {}).source).toBe(
    'the shop’s file shop.yaml, coil “race twenty”, from the maker’s sheet of 2031 (coil.resistance)',
  );
  expect(explain(e, 'relay_pull_in_20', { run: 0 }).source).toContain(
    'relay “power 50” (feed[0].relay.pull_in)',
  );
  expect(explain(e, 'driver_drop', {}).source).toBe('the design, coil.driver_drop');
});

test('what no longer holds of a part is dropped with it', () => {
  const { runs, coil } = got(
    using({ fuse: ', rating: 15 A', coil: ', inductance: 2 mH', relay: ', rating: 40 A' }),
  );
  // Another rating is another fuse: the curve was that of 20 A. A coil charges in one way.
  expect(runs[0]?.fuse).toMatchObject({ type: 'C', rating: 15, curve: null });
  expect(coil).toMatchObject({ inductance: 2e-3, test_point: null });
  expect(runs[0]?.relay).toMatchObject({ rating: 40, rated_at: null, coil: 90 });
});

test('the text of the design then stands for itself, comments and all', () => {
  const text = using().replace('title: Base', '# ours\nshop: shop.yaml # beside it\ntitle: Base # same');
  const design = got(text);
  expect(shopNamed(text)).toBe('shop.yaml');
  for (const kept of ['# ours', '# beside it', 'title: Base # same'])
    expect(design.text.toString()).toContain(kept);
  expect(readDesign(design.text.toString(), 'again.yaml')).toEqual({ ok: true, design });
  // Without the key, and as JSON.
  for (const other of [using(), JSON.stringify(parse(using()))]) {
    const own = got(other);
    expect(readDesign(own.text.toString(), 'again.yaml')).toEqual({ ok: true, design: own });
    expect(own.runs).toEqual(design.runs);
  }
});

test('terminals and instruments are used by name', () => {
  const { kit, instruments, used } = got(
    `${using()}kit: { terminals: { main: { from: { use: ring M8 }, to: crimp } }, parts: { ground: { use: ring M8 } } }
instruments: { meter: { use: bench meter } }
`,
  );
  expect(kit.terminals.get('main')).toEqual({ from: 'ring M8', to: 'crimp' });
  expect(kit.parts.ground).toBe('ring M8');
  expect(instruments.meter).toEqual({ share: 0.001, digits: 1, counts: 2000, least: 0 });
  expect(used.slice(3).map(({ path, kind }) => [path, kind])).toEqual([
    ['kit.terminals.main.from', 'terminals'],
    ['kit.parts.ground', 'terminals'],
    ['instruments.meter', 'instruments'],
  ]);
});

test('the other feed uses the shop as well', () => {
  const design = got(
    `${using()}original:
  feed: [{ run: old, carries: all, length: 3 m, ambient: 60 degC, insulation: C, gauge: 16 AWG, fuse: { use: blade 20 } }]
`,
  );
  expect(design.original?.runs[0]?.fuse?.rating).toBe(20);
  expect(design.original?.shop).toEqual(design.shop);
});

test.each([
  ['1.20 EUR', 'piece', 1.2],
  ['1,20 eur', 'piece', 1.2],
  // A hundred for 9.50 are 9.5 cents each.
  ['9.50 EUR/100', 'piece', 0.095],
  ['9.50 EUR / 100 pcs', 'piece', 0.095],
  ['0.85 EUR/m', 'length', 0.85],
  ['85 EUR/100 m', 'length', 0.85],
  // 1 ft = 0.3048 m.
  ['0.3048 USD/ft', 'length', 1],
  ['0 EUR', 'piece', 0],
  ['0.85 EUR', 'length', null],
  ['0.85 EUR/m', 'piece', null],
  ['-1 EUR', 'piece', null],
  ['1.20', 'piece', null],
  ['1.20 €', 'piece', null],
  ['EUR 1.20', 'piece', null],
  ['1 EUR/0', 'piece', null],
  ['1 EUR/', 'piece', null],
  ['1e9 EUR', 'piece', null],
] as const)('price %s of a %s: %s', (text, per, amount) => {
  const price = readPrice(text, per);
  if (amount === null) expect(price).toBeNull();
  else expect(price?.amount).toBeCloseTo(amount, 12);
});

/** What is changed in the shop's file, or in the design, and what is said. */
const SHOP_CASES: readonly (readonly [what: string, find: string, put: string, said: readonly string[]])[] = [
  [
    'a bad value of a part that is used, in the shop’s file and once',
    'resistance: 0.42 ohm',
    'resistance: 0.42',
    ['shop.yaml:5:17 coils[0].resistance: found 0.42; add its unit: 0.42 ohm? Takes ohm, mohm, kohm'],
  ],
  [
    'a misspelled key',
    'driver_drop: 1.2 V',
    'driver_dorp: 1.2 V',
    ['shop.yaml:7:5 coils[0].driver_dorp: unknown key "driver_dorp"; did you mean "driver_drop"?'],
  ],
  [
    'prices in two currencies',
    '60 EUR/100',
    '60 USD/100',
    ['shop.yaml:18:12 fuses[0].price: a price in USD; takes prices in one currency, EUR'],
  ],
  [
    'a price by length for a piece',
    '79 EUR',
    '79 EUR/m',
    ['shop.yaml:10:12 coils[0].price: found "79 EUR/m"; takes a price with its currency: 1.20 EUR'],
  ],
  [
    'a name given twice',
    'terminals:',
    'splices: [{ name: A }, { name: a }]\nterminals:',
    ['shop.yaml:21:32 splices[1].name: "a" a second time; give each part a name of its own'],
  ],
  [
    'a range turned round',
    'smallest: 14 AWG, largest: 8 AWG',
    'smallest: 8 AWG, largest: 14 AWG',
    ['shop.yaml:22:48 terminals[0].largest: 14 AWG, below the smallest, 8 AWG; takes a size not below it'],
  ],
  [
    'an error that no maker states',
    '0.1 % + 1 digit',
    'quite good',
    ['shop.yaml:24:49 instruments[0].accuracy: found "quite good"; takes an error as makers state it'],
  ],
  ['no YAML', 'currency: EUR', 'currency: [EUR', ['shop.yaml:3:']],
  [
    'a curve that rises, where it is used',
    'within: 600 s',
    'within: 1 s',
    ['shop.yaml:17:70 fuses[0].curve[1].within: 5 s, not below the point before, 1 s; allowed: below 1 s'],
  ],
  [
    'two ways to charge, where it is used',
    'driver_drop: 1.2 V',
    'inductance: 2 mH',
    ['shop.yaml:6:5 coils[0].test_point: found inductance and test_point together; give exactly one'],
  ],
];

test.each(SHOP_CASES)('in the shop’s file: %s', (_, find, put, said) => {
  expect(SHOP).toContain(find);
  const lines = told(using(), SHOP.replace(find, put));
  expect(lines.map((line, i) => line.slice(0, said[i]?.length ?? 200))).toEqual(said);
});

const DESIGN_CASES: readonly (readonly [what: string, design: string, said: readonly string[]])[] = [
  [
    'an unknown name, with the nearest',
    using().replace('race twenty', 'race twnety'),
    [
      'design.yaml:10:14 coil.use: "race twnety" is not among the coils of "shop.yaml"; did you mean "race twenty"?',
    ],
  ],
  [
    'an unknown name, near to none',
    using().replace('blade 20', 'zzz'),
    ['design.yaml:21:18 feed[0].fuse.use: "zzz" is not among the fuses of "shop.yaml"; it has "blade 20"'],
  ],
  [
    'a bad value beside, in the design',
    using({ coil: ', driver_drop: 1 A' }),
    ['design.yaml:10:40 coil.driver_drop: found "1 A"; takes a value with a unit: V, mV'],
  ],
  [
    'no name',
    using().replace('use: race twenty', 'use: 20'),
    ['design.yaml:10:14 coil.use: found 20; put it in quotes; takes a name of 1 to 40 characters'],
  ],
  [
    'an instrument of another kind',
    `${using()}instruments: { clamp: { use: bench meter } }\n`,
    [
      'design.yaml:36:30 instruments.clamp.use: "bench meter" is of the kind "meter"; takes one of the kind clamp',
    ],
  ],
];

test.each(DESIGN_CASES)('in the design: %s', (_, text, said) => {
  expect(told(text).map((line, i) => line.slice(0, said[i]?.length ?? 300))).toEqual(said);
});

test.each([
  [
    'a type of which the shop has none',
    '{ name: E 20, type: E, rating: 20 A }',
    'takes E, or the rating of another one',
  ],
  [
    'a type of which it has a rating beyond the standard alone',
    '{ name: C 17, type: C, rating: 17 A }',
    'takes a rating',
  ],
])('a fuse to choose of %s is refused', (_, fuse, taken) => {
  expect(told(base(), `fuses: [${fuse}]\n`)).toEqual([
    `design.yaml:23:19 feed[0].fuse.type: a fuse of type C to be chosen, of which the shop has none of a usual rating; ${taken}`,
  ]);
});

test('without the file a name leads nowhere, and is said once', () => {
  const said = (text: string): string[] => {
    const result = readDesign(text, 'design.yaml');
    return result.ok ? [] : result.problems.map(printProblem);
  };
  expect(said(`shop: shop.yaml\n${base()}`)).toEqual([
    'design.yaml:1:7 shop: the shop’s file "shop.yaml", which was not given; give it beside the design',
  ]);
  expect(
    said(using().replace('use: blade 20', 'type: C, rating: 20 A').replace('use: power 50', 'rating: 50 A')),
  ).toEqual([
    'design.yaml:10:14 coil.use: uses "race twenty" of no shop’s file; name the file: shop: shop.yaml, or --shop FILE',
  ]);
});

test('a shop’s file by itself', () => {
  expect(readShop({ text: '{}', file: 'shop.yaml' })).toMatchObject({ ok: true, shop: { currency: null } });
  const bad = readShop({ text: 'coils: [{ name: A, resistance: 1 V }]\nwires: []\n', file: 'shop.yaml' });
  expect(bad.ok ? [] : bad.problems.map(printProblem)).toEqual([
    'shop.yaml:1:32 coils[0].resistance: found "1 V"; takes a value with a unit: ohm, mohm, kohm',
    'shop.yaml:2:1 wires: unknown key "wires"; did you mean "wire"?',
  ]);
});

test('what is a number to YAML is asked for in quotes where text is meant', () => {
  const bad = readShop({
    text: 'shop: { name: A, revision: 3 }\nwire: [{ size: 14 AWG, insulation: C, stock: 0815 }]\nlabels: [{ name: 30 }]\n',
    file: 'shop.yaml',
  });
  const said = bad.ok ? [] : bad.problems.map(printProblem);
  expect(said).toHaveLength(3);
  for (const [i, at] of [
    'shop.yaml:1:28 shop.revision',
    'shop.yaml:2:46 wire[0].stock',
    'shop.yaml:3:18 labels[0].name',
  ].entries()) {
    expect(said[i]).toContain(`${at}: found `);
    expect(said[i]).toContain('; put it in quotes; takes ');
  }
});

test('docs/shop.md names every key, and docs/shop.schema.json is what the schema says', () => {
  const doc = (name: string): string => readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');
  expect(doc('shop.schema.json')).toBe(shopJsonSchemaText());
  const said = doc('shop.md') + doc('format.md');
  const keys = [...shopJsonSchemaText().matchAll(/"(\w+)": \{\n\s+"(?:anyOf|type|description)"/g)].map(
    ([, key]) => key,
  );
  expect(keys.length).toBeGreaterThan(60);
  // `items` is a word of JSON Schema.
  expect(keys.filter((key) => key !== 'items' && !said.includes(`\`${key}\``))).toEqual([]);
});
