/** What the page shows: units, axes, the layout of the feed, fields of the design. */
import { describe, expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { designJsonSchema } from '../../src/design/schema-json.ts';
import { kindOf } from '../../src/page/form/schema.ts';
import { startOf } from '../../src/page/form/start.ts';
import { asTyped, asWritten } from '../../src/page/form/written.ts';
import { feedLayout } from '../../src/page/pictures/feed-layout.ts';
import type { Schema } from '../../src/page/protocol.ts';
import type { ResultJson } from '../../src/page/result-json.ts';
import { inUnits } from '../../src/page/units.ts';
import { run } from '../../src/run.ts';
import { edited } from '../../src/saved/apply.ts';
import { toJson } from '../../src/writers/json.ts';
import { demoDesign } from '../workbook/books.ts';

describe('US units', () => {
  // Exact: 1 in is 25.4 mm, 1 ft 0.3048 m, 1 oz 28.349523125 g, 1 lb 453.59237 g; water freezes at 32 °F, boils at 212.
  test.each([
    ['0 °C', '32.0 °F'],
    ['100 °C', '212 °F'],
    ['−40 °C', '−40.0 °F'],
    ['0.254 m', '10.0 in'],
    ['3.048 m', '10.0 ft'],
    ['8 × 0.508–0.762 m', '8 × 20.0–30.0 in'],
    ['25.4 mm', '1.00 in'],
    ['340.194 g', '12.0 oz'],
    ['5443.11 g', '12.0 lb'],
    ['the fuse 0.254 m from the source at 100 °C.', 'the fuse 10.0 in from the source at 212 °F.'],
  ])('%s is %s', (metric, us) => {
    expect(inUnits(metric, 'us')).toBe(us);
    expect(inUnits(metric, 'metric')).toBe(metric);
  });

  test.each([
    '6 mm²',
    '15 A',
    '13.8 V',
    '2.40 ms',
    '12.3 mΩ',
    '240 mJ',
    '6 AWG',
    '5 m²',
    'drop.1 m',
    '3 kg/m',
  ])('%s stays what it is', (text) => expect(inUnits(text, 'us')).toBe(text));
});

test('the diagram of two banks: trunks side by side, coils of a bank together, joints from the battery outward', () => {
  const json = toJson(run(demoDesign('two-bank-v8'))) as unknown as ResultJson;
  const { columns, coils, coilColumn, wires, joints } = feedLayout(json);
  expect(columns).toEqual([
    'main',
    'left trunk, right trunk',
    'drop',
    'coils',
    'coil ground',
    'left strap, right strap',
    'battery ground',
  ]);
  expect(coilColumn).toBe(3);
  expect(new Set(coils.slice(0, 4))).toEqual(new Set(['1', '2', '3', '4']));
  const rows = Object.fromEntries(wires.map(({ wire, row }) => [wire.id, row]));
  expect([rows.main, rows['left trunk'], rows['right trunk']]).toEqual([3.5, 1.5, 5.5]);
  expect(rows[`drop.${coils[0]}`]).toBe(0);
  // Battery to main, main to 2 trunks, 8 drops, 8 to coils; the same way back.
  expect(joints).toHaveLength(2 * (1 + 2 + 8 + 8));
});

describe('forms', () => {
  const schema = designJsonSchema() as Schema;
  const at = (...path: string[]): Schema =>
    path.reduce((one, key) => (one.items ?? one).properties?.[key] as Schema, schema);

  test('each part of the schema has its kind of field', () => {
    const kinds = (path: string): string => kindOf(at(...path.split('.'))).kind;
    expect(
      [
        'title',
        'engine.cylinders',
        'engine.stroke',
        'engine.firing_order',
        'ignition.dwell',
        'coil',
        'coil.test_point',
        'points',
        'sizes.series',
        'feed',
        'feed.carries',
        'feed.length',
        'feed.gauge',
        'feed.fuse.type',
        'feed.relay',
        'feed.bundle',
        'limits.drop',
      ].map(kinds),
    ).toEqual([
      'text',
      'number',
      'choice',
      'series',
      'either',
      'group',
      'group',
      'list',
      'choice',
      'list',
      'series',
      'either',
      'text',
      'choice',
      'group',
      'number',
      'text',
    ]);
  });

  test('what is typed is written as the reader takes it', () => {
    const written = (path: string, typed: string) => asWritten(typed, kindOf(at(...path.split('.'))));
    expect(written('feed.length', ' 55 in ')).toBe('55 in');
    expect(written('engine.cylinders', '8')).toBe(8);
    expect(written('engine.cylinders', 'eight')).toBe('eight');
    expect(written('engine.stroke', '2')).toBe(2);
    expect(written('feed.bundle', '3')).toBe(3);
    expect(written('feed.bundle', 'unknown')).toBe('unknown');
    expect(written('engine.firing_order', '1, 3,4 , 2,')).toEqual([1, 3, 4, 2]);
    expect(written('feed.carries', 'each')).toBe('each');
    expect(written('feed.carries', 'front, 2')).toEqual(['front', 2]);
    expect(written('coil.max_dwell', '  ')).toBeUndefined();
    expect(asTyped([1, '2+3'])).toBe('1, 2+3');
  });

  test('every part that can be added begins as one that the reader takes', () => {
    const text = demoDesign('hill-climb-six').text;
    const problems = (...edits: [(string | number)[], number?][]): string[] => {
      const now = edits.reduce(
        (t, [key, count]) => edited(t, [{ key, value: startOf(key, count ?? 0) }]),
        text,
      );
      const read = readDesign(now, 'x');
      return read.ok ? [] : read.problems.map(({ key, found }) => `${key} ${found}`);
    };
    expect(problems([['supply']], [['sweep']], [['sizes']], [['limits']])).toEqual([]);
    expect(problems([['points', 4], 4])).toEqual([]);
    expect(problems([['feed', 2], 2], [['feed', 2, 'fuse']], [['feed', 2, 'relay']])).toEqual([]);
    expect(problems([['return', 2], 2])).toEqual([]);
    // Another way of saying how the coil charges is a second one: the reader says so, and the form shows it.
    expect(problems([['coil', 'test_point']])).toEqual([
      'coil.test_point found inductance and test_point together',
    ]);
  });
});
