/** Prices of a feed and of a kit, by hand. */
import { expect, test } from 'vitest';
import { harnessOf } from '../../src/kit/harness.ts';
import { partsList } from '../../src/kit/parts.ts';
import { kitBills, priceTable } from '../../src/kit/prices.ts';
import { cutTable } from '../../src/kit/tables.ts';
import { run } from '../../src/run.ts';
import { billOf, feedBill, fusesTaken } from '../../src/shop/prices.ts';
import { report } from '../../src/writers/report.ts';
import { base, design } from '../design/helpers.ts';
import { readCsv } from '../kit/csv-reader.ts';

const SHOP = `shop:
  currency: EUR
  wire:
    - { size: 10 AWG, insulation: C, colours: [red], stock: W-10R, price: 2.5 EUR/m }
    - { size: 10 AWG, insulation: C, colours: [black], stock: W-10B, price: 2 EUR/m }
    - { size: 14 AWG, insulation: TXL, price: 0.30 EUR/ft }
    - { size: 4 AWG, insulation: C }
  fuses: [{ name: blade 20, type: C, rating: 20 A, price: 60 EUR/100 }, { name: other, type: C, rating: 20 A, price: 1 EUR }]
  relays: [{ name: power 40, rating: 40 A, pull_in: 7.2 V, price: 11 EUR }]
  terminals: [{ name: ring, price: 0.5 EUR }]
  splices: [{ name: splice, price: 3 EUR }]
  labels: [{ name: label, price: 0.1 EUR }]
`;
const pricedText = (fuse = 'type: C, rating: 20 A'): string =>
  base(
    ['gauge: auto', 'gauge: 10 AWG'],
    ['fuse: { type: C, rating: auto }', `fuse: { ${fuse} }`],
    ['relay: { rating: 40 A, pull_in: 7.2 V }', 'relay: { use: power 40 }'],
  ) +
  SHOP +
  `kit:
  allowance: 10 %
  end_allowance: 0 mm
  waste: 0 %
  samples: 0
  sample_length: 0 mm
  spares: { fuse: 1, relay: 0, terminals: 2 }
  terminals: { main: { from: { use: ring } } }
  parts: { splice: { use: splice }, label: { use: label } }
`;
const priced = (fuse?: string) => design(pricedText(fuse));

test('a feed: its wire as long as it is laid, its fuses and relays', () => {
  const bill = feedBill(run(priced()).evaluation);
  // 1.5 m of 10 AWG at the lower of two prices are 3 EUR, four drops of 0.5 m of TXL at 0.3 / 0.3048 EUR/m are 1.9685 EUR; the cheaper of two fuses
  // of 20 A is 0.60 EUR, the relay 11 EUR. The strap of 4 AWG has no price.
  expect(bill?.total).toBeCloseTo(3 + (2 * 0.3) / 0.3048 + 0.6 + 11, 9);
  expect(bill?.open).toEqual(['4 AWG, class C']);
  expect(bill?.lines.map(({ count, unit }) => `${count} ${unit}`)).toEqual([
    '1.5 m',
    '1 pcs',
    '1 pcs',
    '2 m',
    '0.5 m',
  ]);
});

test('the fuse that is used has its own price', () => {
  const bill = feedBill(run(priced('use: other')).evaluation);
  expect(bill?.total).toBeCloseTo(3 + (2 * 0.3) / 0.3048 + 1 + 11, 9);
  // Of two of one type and rating it is told by its name; the one relay of 40 A needs none.
  expect(bill?.lines.map(({ what }) => what)).toEqual(
    expect.arrayContaining(['20 A fuse, type C, “other”', '40 A relay']),
  );
});

test('parts that are called alike and cost differently are not taken for one', () => {
  const line = { what: '50 A relay', unit: 'pcs' } as const;
  const bill = billOf('EUR', [
    { ...line, count: 1, each: 9.8 },
    { ...line, count: 2, each: 10.4 },
    { ...line, count: 1, each: 9.8 },
  ]);
  // 2 · 9.80 + 2 · 10.40
  expect(bill.total).toBeCloseTo(40.4, 12);
  expect(bill.lines.map(({ count, each }) => [count, each])).toEqual([
    [2, 9.8],
    [2, 10.4],
  ]);
});

test('a kit, and a batch of three', () => {
  const result = run(priced());
  const job = { result, harness: harnessOf(result.evaluation), digest: 'abc', batch: 3, serials: [] };
  const bills = kitBills(job);
  // With 10 % of allowance: 1.65 m of 10 AWG are 3.30 EUR, 2.2 m of TXL 2.1654 EUR. Two fuses with the spare one 1.20 EUR, the
  // relay 11 EUR; of the ring one and two spare ones 1.50 EUR; the splice of main and the four drops 3 EUR.
  const labels = labelsOf(job) * 0.1;
  const one = 3.3 + (2.2 * 0.3) / 0.3048 + 1.2 + 11 + 1.5 + 3 + labels;
  expect(labels).toBeGreaterThan(1);
  expect(bills?.kit.total).toBeCloseTo(one, 9);
  // Without waste a batch of three is three times one kit, and the ring of the first crimp, which is pulled apart.
  const three = 3 * one + 0.5;
  expect(bills?.batch.total).toBeCloseTo(three, 9);
  expect(bills?.kit.open.length).toBeGreaterThan(3);
  expect(priceTable(job)).toContain(`Sum of what has a price,,,,,,${one.toFixed(2)},,${three.toFixed(2)}`);
});

test('parts are ordered as the shop has them, terminals of the fuse holder and of the relay among them', () => {
  const text = base(
    ['gauge: auto', 'gauge: 10 AWG'],
    ['fuse: { type: C, rating: auto }', 'fuse: { type: C, rating: 20 A }'],
    ['relay: { rating: 40 A, pull_in: 7.2 V }', 'relay: { use: power 40 }'],
  );
  const shop = SHOP.replace('name: blade 20,', 'name: blade 20, stock: F-20,').replace(
    '{ name: ring,',
    '{ name: blade contact, largest: 10 AWG, price: 0.2 EUR }, { name: tab 6.3, price: 0.3 EUR }, { name: ring,',
  );
  const kit = 'kit: { parts: { fuse_terminal: { use: blade contact }, relay_terminal: { use: tab 6.3 } } }\n';
  const result = run(design(text + shop + kit));
  const job = { result, harness: harnessOf(result.evaluation), digest: 'abc', batch: 1, serials: [] };
  const rows = partsList(job).map(({ kind, what, order, kit: count, each }) => ({
    kind,
    what,
    order,
    count,
    each,
  }));
  // The cheaper of two fuses of 20 A by its number, the relay, which has none, by its name.
  expect(rows.find(({ kind }) => kind === 'fuse')).toMatchObject({ order: 'F-20', each: 0.6 });
  expect(rows.find(({ kind }) => kind === 'relay')).toMatchObject({ order: 'power 40', each: 11 });
  // Two ends in the holder, two on the tabs of the load, and two spare ones of each.
  const contact = rows.filter(({ what }) => what.includes('blade contact'));
  const tab = rows.filter(({ what }) => what.includes('tab 6.3'));
  expect(contact.map(({ each }) => each)).toEqual([0.2]);
  expect(tab.map(({ each }) => each)).toEqual([0.3]);
  // They bound the wire of their run as its other terminals do.
  expect(result.evaluation.design.runs[0]?.largest).toBe('10 AWG');
});

test('wire is ordered by the number of its colour, and by none where the shop has other colours', () => {
  const orders = (colour: string): (string | null)[] => {
    const result = run({ ...priced(), kit: { ...priced().kit, colours: new Map([['main', colour]]) } });
    const job = { result, harness: harnessOf(result.evaluation), digest: 'abc', batch: 1, serials: [] };
    return partsList(job).flatMap(({ kind, what, order }) =>
      kind === 'wire' && what.startsWith('10 AWG') ? [order] : [],
    );
  };
  expect(orders('red')).toEqual(['W-10R, red']);
  expect(orders('black')).toEqual(['W-10B, black']);
  expect(orders('violet')).toEqual(['violet']);
});

test('an end that goes into the shop’s splice is bared for it', () => {
  const strips = (splice: string): string[] => {
    const text = pricedText().replace('name: splice,', `name: splice, ${splice}`);
    const result = run(design(text));
    const job = { result, harness: harnessOf(result.evaluation), digest: 'abc', batch: 1, serials: [] };
    const [head = [], ...rows] = readCsv(cutTable(job));
    const at = (title: string): number => head.indexOf(title);
    return [
      ...new Set(
        rows.flatMap((row) =>
          row[at('Terminal from')] === 'splice'
            ? [row[head.findIndex((one) => one.startsWith('Strip from'))] ?? '']
            : [],
        ),
      ),
    ];
  };
  expect(strips('')).toEqual(['']);
  expect(strips('strip: 8 mm,')).toEqual(['8.0']);
});

/** Labels in a kit: two for each piece of wire, one for the fuse, one for the relay, and that of the kit. */
const labelsOf = ({ harness }: { harness: ReturnType<typeof harnessOf> }): number =>
  2 * harness.pieces.length + 3;

test('no prices, no bill', () => {
  expect(feedBill(run(design(base())).evaluation)).toBeNull();
});

test('the fuse of the shop that a run gets is named, and of how many alike it is the cheapest', () => {
  const told = (fuse?: string): string => report(run(priced(fuse))).replace(/\s+/g, ' ');
  expect(fusesTaken(run(priced()).evaluation)).toEqual([{ run: 'main', name: 'blade 20', alike: 2 }]);
  expect(told()).toContain('fuse “blade 20”, the cheapest of 2 of its type and rating');
  // One that the design names is told as such.
  expect(fusesTaken(run(priced('use: other')).evaluation)).toEqual([]);
  expect(told('use: other')).toContain('fuse “other”');
  expect(told('use: other')).not.toContain('the cheapest of');
});

test.each([
  ['one price', /, price: 1 EUR/],
  ['no prices', /, price: (?:1 EUR|60 EUR\/100)/g],
])('of fuses that are alike, with %s none is said to be the cheapest', (_, without) => {
  const { evaluation } = run(design(pricedText().replace(without, '')));
  expect(fusesTaken(evaluation)).toEqual([{ run: 'main', name: 'blade 20', alike: 1 }]);
});

test('with another type beside its name it is another fuse, with another price', () => {
  // The shop has no blade of type F: it has no price.
  const bill = feedBill(run(priced('use: other, type: F')).evaluation);
  expect(bill?.open).toContain('20 A fuse, type F');
  expect(bill?.total).toBeCloseTo(3 + (2 * 0.3) / 0.3048 + 11, 9);
});
