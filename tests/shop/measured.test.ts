/** The resistance that a shop measured takes the place of that of a size, in every figure; elsewhere nothing changes. */
import { describe, expect, test } from 'vitest';
import { withCopy } from '../../src/design/shop/copy.ts';
import { readShop } from '../../src/design/shop/read.ts';
import { type Evaluation, evaluate } from '../../src/engine/evaluate.ts';
import { spread } from '../../src/engine/spreadsheet.ts';
import { explain } from '../../src/explain/tree.ts';
import { alikeSize } from '../../src/readings/sizes.ts';
import { run } from '../../src/run.ts';
import { runLaid } from '../../src/run-laid.ts';
import { judgeShop } from '../../src/shop/judge.ts';
import { report } from '../../src/writers/report.ts';
import { measure } from '../ngspice/accuracy.ts';
import { design as judged } from '../ngspice/cases.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { apart, known } from '../physics/harness.ts';
import { designOf, judge, runOf } from '../protection/feeds.ts';

/** Temperature coefficient of copper at 20 °C, IEC 60028. */
const ALPHA = 0.00393;
const WIRE = {
  size: '10 AWG',
  insulation: 'C',
  resistance: '3.4 mohm/m',
  measured_at: '30 degC',
  from: 'our milliohm meter',
};
/** A wire that carries next to nothing at 60 °C, two conductors of 3 m, without joints. */
const feed = (wire: object[], own: object = {}) => ({
  ...designOf({ feed: [runOf({ run: 'main', length: '3 m', conductors: 2, ...own })] }),
  shop: { wire },
});

test('by hand: measured at 30 °C, warm as its place, in parallel', () => {
  const { e } = judge(feed([WIRE]));
  // 3.4 mΩ/m at 30 °C are 3.4/1.0393 at 20 °C; there are 3 m of two, at 60 °C.
  const cold = ((3.4e-3 / (1 + ALPHA * 10)) * 3) / 2;
  // A microampere more than none warms the conductor by less than a millionth.
  expect(apart(known(e, 'wire_copper_ohm', { wire: 0 }), cold * (1 + ALPHA * 40))).toBeLessThan(1e-6);
  expect(apart(known(e, 'cold_ohm', { wire: 0 }), cold)).toBeLessThan(1e-12);
});

test.each([
  ['at 20 °C where nothing is said', [{ ...WIRE, measured_at: undefined }], 3.4e-3],
  [
    'the worse of two reels',
    [
      { ...WIRE, measured_at: '20 degC' },
      { ...WIRE, resistance: '3.5 mohm/m', measured_at: '20 degC' },
    ],
    3.5e-3,
  ],
  ['of another insulation: not this one', [{ ...WIRE, insulation: 'B' }], null],
  ['of another size: not this one', [{ ...WIRE, size: '12 AWG' }], null],
])('%s', (_, wire, metre) => {
  const { e } = judge(feed(wire));
  const bare = judge(feed([{ size: '10 AWG', insulation: 'C' }])).e;
  const found = known(e, 'run_metre', { run: 0 });
  if (metre === null) expect(found).toBe(known(bare, 'run_metre', { run: 0 }));
  else expect(apart(found, metre)).toBeLessThan(1e-12);
});

test('nothing measured: every size has the resistance that it had, to the last bit', () => {
  const { e } = judge(feed([{ size: '10 AWG', insulation: 'C' }]));
  const row = known(e, 'gauge_row', { run: 0 }) - 1;
  expect(known(e, 'run_metre', { run: 0 })).toBe(known(e, 'size_ohm', { size: row }));
});

test('a size is chosen by what was measured: a worse wire makes a larger one needed', () => {
  const coil = { resistance: '0.5 ohm', inductance: '2 mH' };
  const sized = (gauge: string, wire: object, drop?: number) =>
    judge({
      ...designOf({
        feed: [runOf({ run: 'main', length: '3 m', gauge })],
        coil,
        ...(drop === undefined ? {} : { limits: { drop: `${drop.toFixed(4)} V` } }),
      }),
      shop: {
        wire: [
          { ...WIRE, resistance: undefined, measured_at: undefined, ...wire },
          { size: '8 AWG', insulation: 'C' },
        ],
      },
    }).e;
  // A limit 5 % above what copper of 10 AWG drops, which has 3.34 mΩ/m: 3.7 mΩ/m are a tenth more.
  const limit = known(sized('10 AWG', {}), 'worst_drop') * 1.05;
  expect(sized('auto', {}, limit).value('gauge', { run: 0 })).toBe('10 AWG');
  expect(sized('auto', { resistance: '3.7 mohm/m' }, limit).value('gauge', { run: 0 })).toBe('8 AWG');
});

test('the result says so, and a value is explained by it', () => {
  const { e } = judge(feed([WIRE]));
  const made = evaluate(e.design);
  const result = run(made.design);
  const said = report(result, { coloured: false, all: true }, [], null);
  expect(said).toContain('main: wire 10 AWG, class C, 3.40 mΩ/m measured at 30.0 °C, from our milliohm');
  const tree = JSON.stringify(explain(made, 'run_metre', { run: 0 }));
  expect(tree).toContain('wire 10 AWG, C, from our milliohm meter');
});

test('a size is not taken for a thinner one of its own name', () => {
  // Measured 4 % below copper of the size: the size by its table has as much more.
  const { e } = judge(feed([{ ...WIRE, resistance: '3.2 mohm/m', measured_at: '20 degC' }]));
  const own = known(e, 'wire_copper_ohm', { wire: 0 });
  expect(alikeSize(e, 0, own * 0.05)).toBeNull();
  expect(alikeSize(e, 0, own * 0.6)).toBe('12 AWG');
});

test('the workbook has it as cells, which agree with the model and follow the size', () => {
  const { e } = judge(feed([WIRE, { size: '8 AWG', insulation: 'C' }]));
  // Where a cell differs from the model this throws.
  const { evaluation } = runLaid(e.design);
  const metre = (of: Pick<Evaluation, 'number'>): number | null => of.number('run_metre', { run: 0 });
  expect(metre(evaluation)).toBe(metre(e));
  const cells = spread(withCopy(e.design));
  cells.set('run_gauge', { run: 0 }, '8 AWG');
  expect(cells.value('run_metre', { run: 0 })).toBeCloseTo((17.241e-3 * 1.02) / 8.366, 4);
  cells.set('run_gauge', { run: 0 }, '10 AWG');
  expect(cells.value('run_metre', { run: 0 })).toBeCloseTo(3.4e-3 / (1 + ALPHA * 10), 12);
});

describe('a shop’s file', () => {
  const doubts = (wire: string): string[] => {
    const read = readShop({ text: `wire: [${wire}]`, file: 'shop.yaml' });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    return judgeShop(read.shop).map(({ words }) => words);
  };
  test('is judged at the temperature of the measurement, metric wire by what its class allows', () => {
    // 14 AWG: 2.0809 mm², 17.24 nΩm and 2 % lay: 8.45 mΩ/m; 8 % more at 40 °C is 0.2 % more at 20 °C.
    expect(doubts('{ size: 14 AWG, insulation: C, resistance: 9.13 mohm/m, measured_at: 40 degC }')).toEqual(
      [],
    );
    expect(doubts('{ size: 14 AWG, insulation: C, resistance: 9.13 mohm/m }')).toHaveLength(1);
    // Class 5 allows 7.98 mΩ/m of 2.5 mm².
    expect(doubts('{ size: 2.5 mm2, insulation: C, resistance: 7.9 mohm/m }')).toEqual([]);
    expect(doubts('{ size: 2.5 mm2, insulation: C, resistance: 8.5 mohm/m }')).toHaveLength(1);
  });
});

describeWithPeer('ngspice', 'with measured wire', () => {
  test('the exact currents are those of the simulator, and the feed is a worse one', () => {
    const angles = [0, 180, 360, 540];
    const plain = judged({ angles, rpm: 7000 });
    const shop = {
      wire: [{ size: '8 AWG', insulation: 'C', resistance: '4.2 mohm/m', measured_at: '25 degC' }],
    };
    const with_ = measure({ name: 'measured', design: { ...plain, shop } });
    const without = measure({ name: 'plain', design: plain });
    // As for every case of the simulator.
    expect(with_.simulator.supply).toBeLessThanOrEqual(0.001);
    expect(with_.simulator.peak).toBeLessThanOrEqual(0.001);
    // Twice the resistance of 8 AWG in trunk and strap.
    expect(with_.closed.drop).toBeGreaterThan(without.closed.drop * 1.2);
  });
});
