/**
 * Every formula finds what it names: one design of each layout and of each way to leave something out is laid out and
 * evaluated, and every cell of every quantity is read. An open axis throws when the formulas are laid out, an error in
 * a cell when it is read.
 */
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { members } from '../../src/engine/cells.ts';
import { shapeOf } from '../../src/engine/choose.ts';
import { evaluate } from '../../src/engine/evaluate.ts';
import { placement } from '../../src/engine/layout.ts';
import { disagreements, spread } from '../../src/engine/spreadsheet.ts';
import { translate } from '../../src/engine/translate.ts';
import { ON_REQUEST, QUANTITIES, type QuantityName } from '../../src/model/model.ts';

type Part = Record<string, unknown>;

const run = { length: '0.5 m', ambient: '60 degC', insulation: 'C', gauge: 'auto' };
const base: Part = {
  coilfeed: 1,
  title: 'Evaluates',
  engine: { cylinders: 4, stroke: 4, firing_order: [1, 3, 4, 2] },
  ignition: { layout: 'coil_per_cylinder', dwell: '3 ms' },
  coil: { resistance: '0.5 ohm', inductance: '3 mH', current_limit: '15 A' },
  points: [
    { name: 'cranking', rpm: '200 rpm', supply: '9.6 V' },
    { name: 'fast', rpm: '6000 rpm', supply: '14 V' },
  ],
  supply: { source_resistance: '8 mohm', alternator: '90 A', other_load: '35 A' },
  sweep: { from: '1000 rpm', to: '3000 rpm', step: '1000 rpm', supply: '14 V' },
  feed: [
    {
      ...run,
      run: 'main',
      carries: 'all',
      fuse: { type: 'E', rating: 'auto' },
      relay: { rating: '40 A', pull_in: '7.2 V' },
    },
    { ...run, run: 'drop', carries: 'each' },
  ],
  return: [{ ...run, run: 'strap', carries: 'all' }],
};

const listed = {
  layout: 'listed',
  dwell: '3 ms',
  coils: [
    { id: 'a', fires_at: [0, 270] },
    { id: 'b', fires_at: [0, 400] },
  ],
};

const CASES: readonly [string, Part][] = [
  ['a coil per cylinder', {}],
  ['a wasted coil per cylinder', { ignition: { layout: 'wasted_coil_per_cylinder', dwell: '3 ms' } }],
  ['a coil per pair', { ignition: { layout: 'coil_per_pair', dwell: '3 ms' } }],
  ['a single coil', { ignition: { layout: 'single_coil', dwell: '3 ms' } }],
  ['listed coils', { ignition: listed }],
  ['one cylinder, 2-stroke', { engine: { cylinders: 1, stroke: 2, firing_order: [1] } }],
  [
    'a dwell table',
    {
      ignition: {
        layout: 'coil_per_cylinder',
        dwell: [
          { supply: '8 V', dwell: '6 ms' },
          { supply: '12 V', dwell: '3 ms' },
        ],
      },
    },
  ],
  [
    'a dwell table of one row',
    { ignition: { layout: 'coil_per_cylinder', dwell: [{ supply: '8 V', dwell: '6 ms' }] } },
  ],
  [
    'a bench test',
    { coil: { resistance: '0.5 ohm', test_point: { supply: '13 V', dwell: '3 ms', peak: '9 A' } } },
  ],
  ['a bound', { coil: { resistance: '0.5 ohm', peak: '12 A' } }],
  ['a bound with a limit', { coil: { resistance: '0.5 ohm', peak: '12 A', current_limit: '8 A' } }],
  ['no limit', { coil: { resistance: '0.5 ohm', inductance: '3 mH' } }],
  [
    'a speed that cannot be served',
    {
      points: [{ name: 'fast', rpm: '30000 rpm', supply: '14 V' }],
      ignition: { layout: 'single_coil', dwell: '3 ms' },
    },
  ],
  ['no sweep', { sweep: undefined }],
  ['no return', { return: undefined }],
  ['no supply', { supply: undefined }],
  ['an alternator, other load not known', { supply: { alternator: '90 A' } }],
  ['no fuse, no relay', { feed: [{ ...run, run: 'main', carries: 'all' }] }],
  [
    'every gauge stated',
    { feed: [{ ...run, run: 'main', carries: 'all', gauge: '8 AWG' }], return: undefined },
  ],
  ['a gauge without a figure', { feed: [{ ...run, run: 'main', carries: 'all', gauge: '22 AWG' }] }],
  [
    'a place too hot for its insulation',
    { feed: [{ ...run, run: 'main', carries: 'all', ambient: '150 degC' }] },
  ],
  ['nothing in the series suffices', { coil: { resistance: '0.05 ohm', peak: '200 A' } }],
  ['SAE sizes', { sizes: { series: 'SAE' } }],
  ['metric sizes', { sizes: { series: 'mm2', smallest: '1.5 mm2' } }],
  ['a relay to be chosen', { feed: [{ ...run, run: 'main', carries: 'all', relay: { rating: 'auto' } }] }],
  [
    'a strip fuse',
    { feed: [{ ...run, run: 'main', carries: 'all', fuse: { type: 'SF30', rating: '100 A' } }] },
  ],
  [
    'a fuse that is not on the list',
    { feed: [{ ...run, run: 'main', carries: 'all', fuse: { type: 'C', rating: '22 A' } }] },
  ],
];

const names = Object.keys(QUANTITIES) as QuantityName[];

test.each(CASES)('%s', (_, change) => {
  const result = readDesign(JSON.stringify({ ...base, ...change }), 'design.json');
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const e = evaluate(result.design);
  let cells = 0;
  const wrong: string[] = [];
  for (const name of names) {
    const { per = [], across, unit } = QUANTITIES[name];
    for (const at of members(e.grid.axes, across === undefined ? per : [...per, across])) {
      cells += 1;
      try {
        const value = e.value(name, at);
        // Words only where the unit says so; `auto` may stand where a number is chosen.
        if (typeof value === 'string' && unit !== 'text' && value !== 'auto')
          wrong.push(`${name} at ${JSON.stringify(at)}: "${value}"`);
      } catch (error) {
        wrong.push((error as Error).message);
      }
    }
  }
  expect(wrong).toEqual([]);
  expect([...disagreements(spread(result.design, undefined, ON_REQUEST), e)]).toEqual([]);
  expect(cells).toBeGreaterThan(1000);
});

test('an open axis and an unknown name are found', () => {
  const result = readDesign(JSON.stringify(base), 'design.json');
  if (!result.ok) throw new Error('the base is refused');
  const shape = shapeOf(result.design);
  const grid = { ...shape, placement: placement(shape.axes) };
  const laid = (formula: string) => () => translate(grid, formula, { rows: ['run'], sheet: 'EachRun' });
  expect(laid('run_ambient+ampacity_ambient')).not.toThrow();
  expect(laid('point_rpm')).toThrow('left open');
  expect(laid('no_such_name')).toThrow('no quantity');
});
