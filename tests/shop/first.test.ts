/** First designs: for every usual engine one that reads and sizes as it is; and the shop's file to start from. */
import { expect, test } from 'vitest';
import { printProblem } from '../../src/design/problems.ts';
import { readDesign } from '../../src/design/read.ts';
import { readShop } from '../../src/design/shop/read.ts';
import { run } from '../../src/run.ts';
import { fromShelf } from '../../src/shop/choose.ts';
import { firstDesign, LAYOUTS_ASKED, orderFor, shopStarter, USUAL_ORDERS } from '../../src/shop/first.ts';
import { judgeShop } from '../../src/shop/judge.ts';

const SHOP = { text: shopStarter(), file: 'shop.yaml' };

test('every usual firing order names each cylinder once, and starts with the first', () => {
  for (const [cylinders, orders] of Object.entries(USUAL_ORDERS))
    for (const order of orders) {
      const numbers = order.split('-').map(Number);
      expect(
        numbers.toSorted((a, b) => a - b),
        order,
      ).toEqual(Array.from({ length: Number(cylinders) }, (_, i) => i + 1));
      expect(numbers[0]).toBe(1);
    }
});

test('a first design passes as it is, for every number of cylinders and layout', () => {
  const wrong: string[] = [];
  for (const layout of LAYOUTS_ASKED)
    for (let cylinders = 1; cylinders <= 12; cylinders++) {
      // Pairs that fire together take an even number.
      if (layout === 'coil_per_pair' && cylinders % 2 === 1) continue;
      // Twelve coils that fire twice draw more than the relay of the example breaks.
      if (layout === 'wasted_coil_per_cylinder' && cylinders === 12) continue;
      const asked = {
        cylinders,
        stroke: 4,
        layout,
        order: null,
        shop: null,
        coil: null,
        dwell: null,
        has: null,
      } as const;
      const read = readDesign(firstDesign(asked), 'new');
      const name = `${layout} ${cylinders}`;
      if (!read.ok) wrong.push(`${name}: ${read.problems.map(printProblem).join('; ')}`);
      else {
        const { verdict, findings } = run(read.design);
        const bad = findings.filter((f) => f.verdict === 'fail' || f.verdict === 'unknown');
        if (verdict !== 'pass') wrong.push(`${name}: ${bad.map((f) => `${f.rule} ${f.subject}`).join(', ')}`);
      }
    }
  expect(wrong).toEqual([]);
});

test('with a coil of the shop it uses it, at the dwell of its bench test, and passes', () => {
  const text = firstDesign({
    cylinders: 8,
    stroke: 4,
    layout: 'coil_per_cylinder',
    order: '1-8-4-3-6-5-7-2',
    shop: 'shop.yaml',
    coil: 'example coil',
    dwell: '2.8 ms',
    has: null,
  });
  const read = readDesign(text, 'new', SHOP);
  if (!read.ok) throw new Error(read.problems.map(printProblem).join('\n'));
  const { design } = read;
  expect(design.engine.firing_order).toEqual([1, 8, 4, 3, 6, 5, 7, 2]);
  expect(design.coil.resistance).toBe(0.5);
  expect(design.used.map(({ name }) => name)).toEqual(['example coil']);
  expect(run(design).verdict).toBe('pass');
});

test('with a shelf it takes an insulation, a type of fuse and a relay that are there, and passes', () => {
  const sizes = ['18', '16', '14', '12', '10', '8', '6'].map(
    (size) => `{ size: ${size} SAE, insulation: TXL }`,
  );
  const shop = `wire: [${sizes.join(', ')}]
fuses: [{ name: b20, type: E, rating: 20 A }, { name: b30, type: E, rating: 30 A }]
relays: [{ name: r50, rating: 50 A, rated_at: 85 degC, coil: 90 ohm, pull_in: 7 V, drop_out: 1.2 V, coil_max: 16 V, suppression: resistor }]
`;
  const own = readShop({ text: shop, file: 'shop.yaml' });
  if (!own.ok) throw new Error(own.problems.map(printProblem).join('\n'));
  const answers = { cylinders: 4, stroke: 4, layout: 'coil_per_cylinder', order: null } as const;
  const text = firstDesign({ ...answers, shop: 'shop.yaml', coil: null, dwell: null, has: own.shop });
  const read = readDesign(text, 'new', { text: shop, file: 'shop.yaml' });
  if (!read.ok) throw new Error(read.problems.map(printProblem).join('\n'));
  const design = fromShelf(read.design, run);
  expect(design.runs.filter(({ gauge }) => gauge === 'auto').map(({ insulation }) => insulation)).toEqual([
    'TXL',
    'TXL',
    'TXL',
  ]);
  expect(design.runs[0]?.fuse?.type).toBe('E');
  expect(design.used.map(({ name }) => name)).toEqual(['r50']);
  expect(run(design).verdict).toBe('pass');
});

test('with a metric shelf it takes its series, and passes', () => {
  const sizes = ['0.75', '1', '1.5', '2.5', '4', '6', '10'].map(
    (size) => `{ size: ${size} mm2, insulation: B }`,
  );
  const shop = `coils: [{ name: tall coil, resistance: 0.6 ohm, inductance: 3 mH }, { name: flat }]
wire: [${sizes.join(', ')}]
`;
  const own = readShop({ text: shop, file: 'shop.yaml' });
  if (!own.ok) throw new Error(own.problems.map(printProblem).join('\n'));
  const answers = { cylinders: 6, stroke: 4, layout: 'coil_per_cylinder', order: null } as const;
  const text = firstDesign({ ...answers, shop: 'shop.yaml', coil: null, dwell: null, has: own.shop });
  // Which coils the shop has, as one would write them.
  expect(text).toContain('use: "tall coil" or "flat"');
  const read = readDesign(text, 'new', { text: shop, file: 'shop.yaml' });
  if (!read.ok) throw new Error(read.problems.map(printProblem).join('\n'));
  const { evaluation, verdict } = run(read.design);
  const chosen = read.design.runs.flatMap(({ gauge }, at) =>
    gauge === 'auto' ? [String(evaluation.value('gauge', { run: at }))] : [],
  );
  expect(chosen.filter((size) => !size.endsWith(' mm2'))).toEqual([]);
  expect(verdict).toBe('pass');
});

test('each part that is taken says where it comes from, of a shop or invented', () => {
  const answers = { cylinders: 4, stroke: 4, layout: 'coil_per_cylinder', order: null } as const;
  const own = readShop(SHOP);
  if (!own.ok) throw new Error('the starter cannot be read');
  const bare = firstDesign({ ...answers, shop: null, coil: null, dwell: null, has: null });
  const used = firstDesign({ ...answers, shop: 'shop.yaml', coil: null, dwell: null, has: own.shop });
  /** The line of a part and the comments right above it. */
  const about = (text: string, line: RegExp): string => {
    const lines = text.split('\n');
    const at = lines.findIndex((one) => line.test(one));
    let top = at;
    while (/^\s*#/.test(lines[top - 1] ?? '')) top -= 1;
    return lines.slice(top, at + 1).join('\n');
  };
  for (const [part, invented, shops] of [
    [/^coil:/, 'invented', 'invented'],
    [/^ {4}fuse:/, "type's standard", "shop's fuses"],
    [/^ {4}relay:/, 'invented', "shop's relays"],
    [/^sizes:/, 'any size of this series', "shop's wire"],
    [/^ {4}insulation:/, 'class A', "shop's wire"],
  ] as const) {
    expect(about(bare, part).replace(/\n\s*# /g, ' ')).toContain(invented);
    expect(about(used, part)).toContain(shops);
  }
});

test('an order that is no usual one says so; one cylinder is one', () => {
  const answers = { stroke: 4, layout: 'coil_per_cylinder', order: null, shop: null, coil: null } as const;
  const of = (cylinders: number): string => firstDesign({ ...answers, cylinders, dwell: null, has: null });
  expect(of(7)).toContain('no order is usual with 7');
  expect(of(8)).not.toContain('no order is usual');
  expect(of(1)).toContain('title: 1 cylinder, coil per cylinder\n');
});

test('the order that is taken is a usual one, and in turn where none is known', () => {
  expect(orderFor(8)).toBe('1-8-4-3-6-5-7-2');
  expect(orderFor(7)).toBe('1-2-3-4-5-6-7');
});

test('the shop’s file to start from can be read, and contradicts itself nowhere', () => {
  const read = readShop(SHOP);
  if (!read.ok) throw new Error(read.problems.map(printProblem).join('\n'));
  expect(judgeShop(read.shop)).toEqual([]);
});
