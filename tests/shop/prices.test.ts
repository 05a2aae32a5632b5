/** Prices of a feed and of a kit, by hand. */
import { expect, test } from 'vitest';
import { harnessOf } from '../../src/kit/harness.ts';
import { kitBills, priceTable } from '../../src/kit/prices.ts';
import { run } from '../../src/run.ts';
import { feedBill } from '../../src/shop/prices.ts';
import { base, design } from '../design/helpers.ts';

const SHOP = `shop:
  currency: EUR
  wire:
    - { size: 10 AWG, insulation: C, price: 2 EUR/m }
    - { size: 14 AWG, insulation: TXL, price: 0.30 EUR/ft }
    - { size: 4 AWG, insulation: C }
  fuses: [{ name: blade 20, type: C, rating: 20 A, price: 60 EUR/100 }, { name: other, type: C, rating: 20 A, price: 1 EUR }]
  relays: [{ name: power 40, rating: 40 A, pull_in: 7.2 V, price: 11 EUR }]
  terminals: [{ name: ring, price: 0.5 EUR }]
  splices: [{ name: splice, price: 3 EUR }]
  labels: [{ name: label, price: 0.1 EUR }]
`;
const priced = (fuse = 'type: C, rating: 20 A') =>
  design(
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
`,
  );

test('a feed: its wire as long as it is laid, its fuses and relays', () => {
  const bill = feedBill(run(priced()).evaluation);
  // 1.5 m of 10 AWG are 3 EUR, four drops of 0.5 m of TXL at 0.3 / 0.3048 EUR/m are 1.9685 EUR; the cheaper of two fuses
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

/** Labels in a kit: two for each piece of wire, one for the fuse, one for the relay, and that of the kit. */
const labelsOf = ({ harness }: { harness: ReturnType<typeof harnessOf> }): number =>
  2 * harness.pieces.length + 3;

test('no prices, no bill', () => {
  expect(feedBill(run(design(base())).evaluation)).toBeNull();
});
