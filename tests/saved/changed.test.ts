/** What a person changes in the workbook comes back as a design, in the author's own text. */
import { beforeAll, describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import type { At } from '../../src/basis/quantity.ts';
import { withCopy } from '../../src/design/shop/copy.ts';
import type { QuantityName } from '../../src/model/model.ts';
import { DEMOS, design, demo as named, stated } from '../design/helpers.ts';
import { type Book, bookOf, entryOf } from '../workbook/books.ts';
import { documentOf } from '../workbook/random-design.ts';
import { fill, readBack, type Typed } from './edit.ts';

const COIL = `coil:
  resistance: 0.42 ohm # primary, at 20 degC
  inductance: 2.4 mH
  driver_drop: 1.2 V
  current_limit: 21 A
  temperature: 20 degC # cold start: a cold coil draws most
  max_dwell: 8 ms
  max_duty: 50 %
  min_supply: 6 V`;
const RELAY = `    relay:
      rating: 54 A
      rated_at: 85 degC
      coil: 90 ohm
      pull_in: 7.2 V
      drop_out: 1.2 V
      contact: 3 mohm
      ambient: 60 degC
      coil_rise: 20 K
      suppression: resistor
      trigger_drop: 0.3 V
      tab: 9.5 mm`;
/** A demo; the straight six with coil and relay stated, where comments and values stand beside each other. */
const demo = (name: string): string =>
  name === 'hill-climb-six'
    ? named(name)
        .replace(/^coil: .*$/m, COIL)
        .replace(/^ {4}relay: .*$/m, RELAY)
    : named(name);

/** The author's text without the file of the shop within it, of which a workbook holds a part. */
const apartFromShop = (text: string): string => text.replace(/^shop:\n(?: .*\n)*/m, '');

let six: Book;
beforeAll(async () => {
  six = await bookOf(design(demo('hill-climb-six')));
});

/** Lines that are in one text and not in the other, `-` before and `+` after. */
function lines(before: string, after: string): string[] {
  const [a, b] = [before.split('\n'), after.split('\n')];
  return [
    ...a.filter((line) => !b.includes(line)).map((line) => `-${line}`),
    ...b.filter((line) => !a.includes(line)).map((line) => `+${line}`),
  ];
}

describe('nothing changed', () => {
  test.each(DEMOS)('%s comes back letter for letter', async (name) => {
    const given = design(demo(name));
    const { design: back, changed } = await readBack((await bookOf(given)).bytes);
    // Of the shop's file a workbook holds what the design uses; everything else is as it was given.
    expect(back).toEqual(withCopy(given));
    expect(apartFromShop(back?.text.toString() ?? '')).toBe(apartFromShop(demo(name)));
    expect(changed).toEqual([]);
  });

  test.each([1, 3, 5, 7])('a random design %i comes back, as JSON or as YAML', async (seed) => {
    for (const text of [seed % 4 === 1 ? JSON.stringify(documentOf(seed)) : stringify(documentOf(seed))]) {
      const { design: back } = await readBack((await bookOf(design(text))).bytes);
      expect(back).toEqual(design(text));
    }
  });

  test('a text with everything that a cell might change', async () => {
    const strange = [
      "'leading quote",
      '=1+1 _x0041_ \t tab',
      '  two blanks,  and at the end  ',
      '',
      '🚗 <b>&amp; ‮ abc',
      '@x',
      '+1',
      'TRUE',
      '1/2',
    ];
    const text = `# ${'x'.repeat(70_000)}🚗\n${demo('pair-four')}notes: |\n${strange.map((l) => `  ${l}\n`).join('')}#\n\n# end`;
    const own = text.replace(/^notes: [^|\n].*\n/m, '');
    const { design: back } = await readBack((await bookOf(design(own))).bytes);
    expect(apartFromShop(back?.text.toString() ?? '')).toBe(apartFromShop(`${own}\n`));
    expect(back?.notes).toBe(design(own).notes);
  });

  test('a text with more lines than a sheet should have keeps its values', async () => {
    const text = demo('pair-four') + '# a line\n'.repeat(3000);
    const { design: back } = await readBack((await bookOf(design(text))).bytes);
    expect({ ...back, text: '' }).toEqual({ ...withCopy(design(text)), text: '' });
  });
});

test('words and sizes in other spellings: the same is no change, another one is written as a design has it', async () => {
  // Of no shop, whose wire would be the only one that may be chosen.
  const {
    design: back,
    changed,
    said,
  } = await readBack(
    fill(
      await bookOf(design(stated('hill-climb-six'))),
      ['run_gauge', { run: 0 }, 'Auto'],
      ['run_gauge', { run: 1 }, '2.5 mm²'],
      ['run_gauge', { run: 3 }, 'AWG 4 '],
      ['run_insulation', { run: 0 }, 'c'],
      ['run_insulation', { run: 1 }, 'txl'],
      ['relay_suppression', { run: 0 }, 'Resistor'],
      ['fuse_given', { run: 0 }, 'AUTO'],
    ),
  );
  expect(said).toEqual([]);
  expect(changed.map(({ key, now }) => [key, now])).toEqual([
    ['feed[1].gauge', '2.5 mm2'],
    ['feed[1].insulation', 'TXL'],
  ]);
  expect([back?.runs[1]?.gauge, back?.runs[1]?.insulation]).toEqual(['2.5 mm2', 'TXL']);
});

interface Case {
  what: string;
  cells: [QuantityName, At, Typed][];
  /** Lines of the text that go and come. */
  lines: string[];
}

const CASES: Case[] = [
  {
    what: 'a number, its comment stays',
    cells: [['coil_ohm_20', {}, 0.5]],
    lines: ['-  resistance: 0.42 ohm # primary, at 20 degC', '+  resistance: 0.5 ohm # primary, at 20 degC'],
  },
  {
    what: 'a number with all the digits of a sum',
    cells: [['wire_length', { wire: 0 }, 0.1 + 0.2]],
    lines: ['-    length: 1.5 m', '+    length: 0.3 m'],
  },
  {
    what: 'a word, and a number in its place',
    cells: [
      ['run_gauge', { run: 0 }, '8 AWG'],
      ['relay_given', { run: 0 }, 'auto'],
    ],
    lines: ['-      rating: 54 A', '+    gauge: 8 AWG', '+      rating: auto'],
  },
  {
    what: 'the length of one of six conductors',
    cells: [['wire_length', { wire: 2 }, 0.6]],
    lines: [
      '-    length: 0.45 m',
      '+    length: { "1": 0.45 m, "2": 0.45 m, "3": 0.45 m, "4": 0.45 m, "5": 0.6 m, "6": 0.45 m }',
    ],
  },
  {
    what: 'an optional value taken out',
    cells: [['current_limit', {}, null]],
    lines: ['-  current_limit: 21 A'],
  },
  {
    what: 'an optional value put in, in a map on one line and in a block',
    cells: [
      ['max_peak', {}, 20],
      ['fuse_distance_given', { run: 0 }, null],
      ['capacitor', { run: 1 }, 2.2],
    ],
    lines: [
      '-    fuse: { type: E, rating: auto, ambient: 60 degC, from_source: 0.15 m }',
      '+  max_peak: 20 A',
      '+    fuse: { type: E, rating: auto, ambient: 60 degC }',
      '+    capacitor: 2.2 uF',
    ],
  },
  {
    what: 'a whole block taken out',
    cells: [
      ['source_given', {}, null],
      ['alternator', {}, null],
      ['other_load', {}, null],
    ],
    lines: ['-supply:', '-  source_resistance: 8 mohm', '-  alternator: 95 A', '-  other_load: 40 A'],
  },
  {
    what: 'a formula that is only a number',
    cells: [['coil_T', {}, { formula: '35' }]],
    lines: [
      '-  temperature: 20 degC # cold start: a cold coil draws most',
      '+  temperature: 35 degC # cold start: a cold coil draws most',
    ],
  },
  {
    what: 'a constant dwell',
    cells: [['dwell_time', { dwell_row: 0 }, 2.9]],
    lines: ['-  dwell: 3.2 ms', '+  dwell: 2.9 ms'],
  },
  {
    what: 'a constant dwell that becomes a row of a table',
    cells: [['dwell_supply', { dwell_row: 0 }, 12]],
    lines: ['-  dwell: 3.2 ms', '+  dwell: [{ supply: 12 V, dwell: 3.2 ms }]'],
  },
  {
    what: 'uneven firing where the angles were left out',
    cells: [['event_angle', { event: 1 }, 110]],
    lines: ['+  firing_angles: [0, 110, 240, 360, 480, 600]'],
  },
  {
    what: 'the start of the sweep: as many speeds follow from it',
    cells: [['sweep_from', {}, 1500]],
    lines: [
      '-sweep: { from: 1000 rpm, to: 8000 rpm, step: 250 rpm, supply: 14.0 V }',
      '+sweep: { from: 1500 rpm, to: 8500 rpm, step: 250 rpm, supply: 14.0 V }',
    ],
  },
  {
    what: 'an ambient, and beside it the fuse keeps its own',
    cells: [['run_ambient', { run: 0 }, 75]],
    lines: ['-    ambient: 60 degC', '+    ambient: 75 degC'],
  },
  {
    what: 'the kind of knowledge about the coil',
    cells: [
      ['coil_L_given', {}, null],
      ['test_supply', {}, 13.5],
      ['test_dwell', {}, 3],
      ['test_peak', {}, 12],
    ],
    lines: ['-  inductance: 2.4 mH', '+  test_point: { supply: 13.5 V, dwell: 3 ms, peak: 12 A }'],
  },
];

test.each(CASES)('$what', async ({ cells, lines: wanted }) => {
  const { design: back, changed, said } = await readBack(fill(six, ...cells));
  expect(said).toEqual([]);
  expect(changed).toHaveLength(cells.length);
  // Every other line stays letter for letter.
  expect(lines(six.result.evaluation.design.text.toString(), back?.text.toString() ?? '')).toEqual(wanted);
  // The text is what the design was read from.
  expect(back).toEqual(design(back?.text.toString() ?? ''));
});

test('what followed from a value and no longer does is written out', async () => {
  // Without an ambient of its own a fuse has that of its run; its cell then shows it, and a person may change either.
  const text = demo('hill-climb-six').replace('ambient: 60 degC, from_source', 'from_source');
  const { design: back } = await readBack(fill(await bookOf(design(text)), ['run_ambient', { run: 0 }, 75]));
  expect([back?.runs[0]?.ambient, back?.runs[0]?.fuse?.ambient]).toEqual([75, 60]);
  expect(back?.text.toString()).toContain('from_source: 0.15 m, ambient: 60 degC }');
});

test.each([
  [
    'in rising order',
    '[{ supply: 8 V, dwell: 6.0 ms }, { supply: 14 V, dwell: 2.80 ms }]',
    '[{ supply: 8 V, dwell: 5 ms }, { supply: 14 V, dwell: 2.80 ms }]',
  ],
  [
    'in another order',
    '[{ supply: 14 V, dwell: 2.80 ms }, { supply: 8 V, dwell: 6.0 ms }]',
    '[{ supply: 8 V, dwell: 5 ms }, { supply: 14 V, dwell: 2.8 ms }]',
  ],
])('a table of the dwell %s', async (_, given, wanted) => {
  const text = demo('hill-climb-six').replace('dwell: 3.2 ms', `dwell: ${given}`);
  const { design: back, said } = await readBack(
    fill(await bookOf(design(text)), ['dwell_time', { dwell_row: 0 }, 5]),
  );
  expect(said).toEqual([]);
  expect(back?.text.toString()).toContain(`dwell: ${wanted}`);
});

test('listed coils keep their own angles, also where firings change places', async () => {
  const text = demo('hill-climb-six').replace(
    'layout: coil_per_cylinder',
    'layout: listed\n  coils: [{ id: front, fires_at: [0, 240] }, { id: rear, fires_at: [120, 480] }]',
  );
  const book = await bookOf(design(text));
  const second = book.result.evaluation.design.events.findIndex(({ coil }) => coil === 1);
  const { design: back, said } = await readBack(fill(book, ['event_angle', { event: second }, 300]));
  expect(said).toEqual([]);
  expect(back?.coils).toEqual([
    { id: 'front', fires_at: [0, 240] },
    { id: 'rear', fires_at: [300, 480] },
  ]);
});

test('what was changed is said with cell, key, owner and units', async () => {
  const bytes = fill(
    six,
    ['run_ambient', { run: 1 }, 100],
    ['max_duty', {}, 45],
    ['current_limit', {}, null],
  );
  const { changed } = await readBack(bytes);
  expect(changed.map(({ key, of, was, now }) => ({ key, of, was, now }))).toEqual([
    { key: 'coil.current_limit', of: '', was: '21 A', now: 'nothing' },
    { key: 'coil.max_duty', of: '', was: '50 %', now: '45 %' },
    { key: 'feed[1].ambient', of: 'branch', was: '95 degC', now: '100 degC' },
  ]);
  expect(changed[2]?.cell).toBe(`Inputs!${entryOf(six, 'run_ambient', { run: 1 })}`);
});

test('a fuse and a relay are taken out as a whole, and a fuse is put in', async () => {
  const gone = (['fuse_type', 'fuse_given', 'fuse_ambient', 'fuse_distance_given'] as const).map(
    (name): [QuantityName, At, Typed] => [name, { run: 0 }, null],
  );
  const back = (await readBack(fill(six, ...gone))).design;
  expect(back?.runs[0]?.fuse).toBeNull();
  expect(back?.text.toString()).not.toContain('fuse:');
  const relay = [...six.result.evaluation.grid.placement.entries.keys()].filter((name) =>
    /^(relay_(?!.*needed)|trigger)/.test(name),
  );
  const none = (
    await readBack(fill(six, ...relay.map((name): [QuantityName, At, Typed] => [name, { run: 0 }, null])))
  ).design;
  expect(none?.runs[0]?.relay).toBeNull();
  // Its place in the papers of the kit goes with it.
  expect(six.result.evaluation.design.text.toString()).toContain('relay_at:');
  expect(none?.text).not.toContain('relay_at:');
  const put = await readBack(
    fill(
      six,
      ['fuse_type', { run: 1 }, 'E'],
      ['fuse_given', { run: 1 }, 'auto'],
      ['fuse_ambient', { run: 1 }, 95],
    ),
  );
  expect(put.said).toEqual([]);
  expect(put.design?.runs[1]?.fuse).toMatchObject({
    type: 'E',
    rating: 'auto',
    ambient: 95,
    from_source: null,
  });
});

test('a value that several places share is changed in one of them', async () => {
  const text = demo('hill-climb-six')
    .replace('ambient: 60 degC\n    insulation', 'ambient: &hot 60 degC\n    insulation')
    .replace('ambient: 80 degC', 'ambient: *hot');
  const book = await bookOf(design(text));
  const { design: back } = await readBack(fill(book, ['run_ambient', { run: 0 }, 77]));
  expect([back?.runs[0]?.ambient, back?.runs[3]?.ambient]).toEqual([77, 60]);
});

test('a map of lengths keeps the lengths that nobody changed as they were written', async () => {
  const text = demo('hill-climb-six').replace(
    'length: 0.45 m',
    'length: { 1: 18 in, 5: 2 ft, 3: 0.4 m, 6: 0.3 m, 2: 0.2 m, 4: 10 cm }',
  );
  const { design: back } = await readBack(
    fill(await bookOf(design(text)), ['wire_length', { wire: 3 }, 0.5]),
  );
  expect(back?.text.toString()).toContain(
    'length: { 1: 18 in, 5: 2 ft, 3: 0.5 m, 6: 0.3 m, 2: 0.2 m, 4: 10 cm }',
  );
});

test('keys that have no cell come back untouched', async () => {
  const text = demo('hill-climb-six').replace('drop_out: 1.2 V', 'drop_out: 1.1 V # kept');
  const { design: back } = await readBack(fill(await bookOf(design(text)), ['coil_T', {}, 30]));
  expect(back?.text.toString()).toContain('drop_out: 1.1 V # kept');
  expect(back?.notes).toBe(design(text).notes);
});
