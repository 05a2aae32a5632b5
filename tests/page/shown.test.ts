/** What the page shows: units, axes, the layout of the feed, fields of the design. */
import { describe, expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { designJsonSchema } from '../../src/design/schema-json.ts';
import { kindOf } from '../../src/page/form/schema.ts';
import { listOf, startOf } from '../../src/page/form/start.ts';
import { asTyped, asWritten } from '../../src/page/form/written.ts';
import { feedLayout } from '../../src/page/pictures/feed-layout.ts';
import type { Schema, Shown } from '../../src/page/protocol.ts';
import { rearranged } from '../../src/page/state/members.ts';
import { viewOf } from '../../src/page/worker/view.ts';
import { run } from '../../src/run.ts';
import { edited } from '../../src/saved/apply.ts';
import { toJson } from '../../src/writers/json.ts';
import { demo, design, stated } from '../design/helpers.ts';
import { demoDesign } from '../workbook/books.ts';

test('the diagram of two banks: trunks side by side, coils of a bank together, joints from the battery outward', () => {
  const json = toJson(run(demoDesign('two-bank-v8')));
  const { columns, coils, coilColumn, wires, joints } = feedLayout(json);
  expect(columns).toEqual([
    ['main'],
    ['left trunk', 'right trunk'],
    ['branch'],
    ['coils'],
    ['coil ground'],
    ['left strap', 'right strap'],
    ['battery ground'],
  ]);
  expect(coilColumn).toBe(3);
  expect(new Set(coils.slice(0, 4))).toEqual(new Set(['1', '2', '3', '4']));
  const rows = Object.fromEntries(wires.map(({ wire, row }) => [wire.id, row]));
  expect([rows.main, rows['left trunk'], rows['right trunk']]).toEqual([3.5, 1.5, 5.5]);
  expect(rows[`branch.${coils[0]}`]).toBe(0);
  // Battery to main, main to 2 trunks, 8 branches, 8 to coils; the same way back.
  expect(joints).toHaveLength(2 * (1 + 2 + 8 + 8));
});

test('where no sizes were found the picture and the drop tell nothing of those that stand in', () => {
  // No size brings this feed so low: held by the line after.
  const none = run(design(demo('hill-climb-six').replace(/^ {2}drop: .*$/m, '  drop: 0.1 V')));
  expect(none.evaluation.number('solved')).toBe(0);
  const { parts, budget } = viewOf(none, ['metric']).shown.metric as Shown;
  const told = parts
    .filter(({ kind, name }) => kind === 'wire' && name === 'none')
    .flatMap(({ id, shares }) => Object.values(shares).map((share) => [id, share]));
  expect(told.length).toBeGreaterThan(0);
  expect(told.filter(([, share]) => share !== null)).toEqual([]);
  expect(budget.runs).toEqual([]);
});

test('off the worst path a conductor has no share of its drop', () => {
  const six = run(demoDesign('hill-climb-six'));
  const { parts, budget } = viewOf(six, ['metric']).shown.metric as Shown;
  const told = (run: string): string[] =>
    parts.flatMap(({ id, shares }) => (id.startsWith(`${run}.`) && shares.drop != null ? [id] : []));
  expect(told('branch')).toEqual([`branch.${budget.coil}`]);
  expect(told('coil ground')).toEqual([`coil ground.${budget.coil}`]);
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
    expect(written('engine.firing_order', '1-3-4-2')).toEqual([1, 3, 4, 2]);
    expect(written('feed.carries', 'each')).toBe('each');
    expect(written('feed.carries', 'front, 2')).toEqual(['front', 2]);
    expect(written('coil.max_dwell', '  ')).toBeUndefined();
    expect(asTyped([1, '2+3'])).toBe('1, 2+3');
  });

  test('every part that can be added begins as one that the reader takes', () => {
    const text = stated('hill-climb-six');
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
    // A run of the feed goes before those that divide.
    const more = rearranged(text, ['feed'], { put: startOf(['feed'], 2), at: 1 });
    expect(readDesign(more, 'x').ok).toBe(true);
    expect(problems([['feed', 0, 'fuse']], [['feed', 0, 'relay']])).toEqual([]);
    // Lists start as lists, with as many rows as they must have.
    for (const key of [
      ['feed', 0, 'fuse', 'curve'],
      ['feed', 0, 'fuse', 'rerating'],
      ['feed', 0, 'relay', 'derating'],
    ])
      expect(readDesign(edited(text, [{ key, value: listOf(key) }]), 'x').ok, key.join()).toBe(true);
    expect(
      problems(
        [['tolerance']],
        [['tolerance', 'distribution']],
        [['instruments']],
        [['kit', 'spares']],
        [['kit', 'parts']],
        [['ignition', 'sparks']],
        [['coil', 'series_resistor']],
      ),
    ).toEqual([]);
    expect(problems([['return', 2], 2])).toEqual([]);
    // Another way of saying how the coil charges is a second one: the reader says so, and the form shows it.
    expect(problems([['coil', 'test_point']])).toEqual([
      'coil.test_point found inductance and test_point together',
    ]);
  });
});
