/** What cannot be taken from a cell is said with sheet, cell and key; everything at once. */
import { strFromU8, unzipSync, zipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import type { At } from '../../src/basis/quantity.ts';
import type { QuantityName } from '../../src/model/model.ts';
import { design, stated } from '../design/helpers.ts';
import { type Book, bookOf, entryOf } from '../workbook/books.ts';
import { changedPart, fill, refusals, type Typed } from './edit.ts';

let six: Book;
beforeAll(async () => {
  six = await bookOf(design(stated('hill-climb-six')));
});

interface Case {
  what: string;
  cell: [QuantityName, At, Typed];
  key: string;
  says: string[];
}

const CASES: Case[] = [
  {
    what: 'a value out of bounds, as in a design file',
    cell: ['coil_ohm_20', {}, -3],
    key: 'coil.resistance',
    says: ['found "-3 ohm"', 'allowed: 1 mohm to 100 ohm'],
  },
  {
    what: 'words where a number belongs',
    cell: ['wire_length', { wire: 0 }, '1.5 m'],
    key: 'feed[0].length',
    says: ['found "1.5 m"', 'takes a number in m'],
  },
  {
    what: 'a decimal comma',
    cell: ['dwell_time', { dwell_row: 0 }, '3,2'],
    key: 'ignition.dwell',
    says: ['found "3,2"', 'takes a number in ms'],
  },
  {
    what: 'a word that is none of the words',
    cell: ['run_insulation', { run: 2 }, 'Q'],
    key: 'return[0].insulation',
    says: ['found "Q"', 'takes a class or a type: A 85 °C, B 100 °C'],
  },
  {
    what: 'a number where a word belongs',
    cell: ['run_gauge', { run: 1 }, 10],
    key: 'feed[1].gauge',
    says: ['found 10', 'add its series: 10 AWG or 10 SAE or 10 mm2? Or auto, unknown'],
  },
  {
    what: 'a formula over a result, whatever its stored one',
    cell: ['coil_T', {}, { formula: 'worst_drop*2' }],
    key: 'coil.temperature',
    says: ['the formula "=worst_drop*2"', 'as a value, or as a formula over other inputs alone'],
  },
  {
    what: 'a formula that asks other programs',
    cell: ['coil_T', {}, { formula: `[1]Sheet1!$A$1+cmd|' /C calc'!A0` }],
    key: 'coil.temperature',
    says: ['the formula', 'as a value, or as a formula over other inputs alone'],
  },
  {
    what: 'a truth value, as LibreOffice writes it',
    cell: ['run_bundle', { run: 0 }, { formula: 'TRUE' }],
    key: 'feed[0].bundle',
    says: ['the formula "=TRUE"', 'takes a number, 1 to 200'],
  },
  {
    what: 'a truth value',
    cell: ['run_bundle', { run: 0 }, true],
    key: 'feed[0].bundle',
    says: ['found TRUE'],
  },
  {
    what: 'an error',
    cell: ['point_rpm', { point: 1 }, { error: '#REF!' }],
    key: 'points[1].rpm',
    says: ['found the error #REF!'],
  },
  {
    what: 'a part of a conductor',
    cell: ['run_bundle', { run: 0 }, 1.5],
    key: 'feed[0].bundle',
    says: ['found 1.5', 'takes a whole number'],
  },
  {
    what: 'nothing where something must be',
    cell: ['coil_ohm_20', {}, null],
    key: 'coil.resistance',
    says: ['missing', 'takes a value with a unit'],
  },
  {
    what: 'nothing where a design file would take something else than the workbook',
    cell: ['driver_drop', {}, null],
    key: 'coil.driver_drop',
    says: ['left empty', 'without one a design file means 0 V'],
  },
  {
    what: 'another number of cylinders',
    cell: ['cylinders', {}, 8],
    key: 'engine.cylinders',
    says: ['found 8', 'takes 6', 'are fixed within a workbook', 'coilfeed size DESIGN --out'],
  },
  {
    what: 'angles out of order',
    cell: ['event_angle', { event: 2 }, 100],
    key: 'engine.firing_angles[2]',
    says: ['angles out of order'],
  },
  {
    what: 'a check between two cells',
    cell: ['relay_pull_in_20', { run: 0 }, 15],
    key: 'feed[0].relay.pull_in',
    says: ['not below the highest supply'],
  },
  {
    what: 'two ways of knowing the coil',
    cell: ['peak_alone', {}, 12],
    key: 'coil.peak',
    says: ['found inductance and peak together'],
  },
  {
    what: 'a fuse in a return run',
    cell: ['fuse_type', { run: 3 }, 'C'],
    key: 'return[1].fuse',
    says: ['found a fuse in a return run'],
  },
  {
    what: 'a series that does not fit the smallest size',
    cell: ['series', {}, 'mm2'],
    key: 'sizes.smallest',
    says: ['found "18 AWG" in the series mm2'],
  },
];

test.each(CASES)('$what', async ({ cell, key, says }) => {
  const said = await refusals(fill(six, cell));
  const own = said.find((line) => line.includes(` ${key}: `)) ?? said.join('\n');
  // A check between cells may speak about the other one.
  const place = key === 'sizes.smallest' ? entryOf(six, 'smallest') : entryOf(six, cell[0], cell[1]);
  expect(own).toContain(`edited.xlsx:Inputs!${place} ${key}: `);
  for (const part of says) expect(own).toContain(part);
});

test('all problems at once, in the order of the sheet', async () => {
  const said = await refusals(
    fill(
      six,
      ['run_ambient', { run: 1 }, 900],
      ['coil_ohm_20', {}, -1],
      ['drop_limit', {}, 0],
      ['point_supply', { point: 0 }, 99],
    ),
  );
  expect(said).toHaveLength(4);
  const rows = said.map((line) => Number(/Inputs![A-Z]+(\d+) /.exec(line)?.[1]));
  expect(rows).toEqual([...rows].sort((a, b) => a - b));
});

test('a sweep in a workbook that was made without one', async () => {
  const book = await bookOf(design(stated('hill-climb-six').replace(/^sweep:\n(?: .*\n)+/m, '')));
  const [said] = await refusals(fill(book, ['sweep_from', {}, 1000]));
  expect(said).toContain('this workbook has no rows for a sweep');
});

test('the second spark of a wasted coil that does not follow the first', async () => {
  const text = stated('hill-climb-six').replace(
    'layout: coil_per_cylinder',
    'layout: wasted_coil_per_cylinder',
  );
  const book = await bookOf(design(text));
  const { events } = book.result.evaluation.design;
  const second = events.findIndex(({ coil, angle }) => coil === 0 && angle === 360);
  const [said] = await refusals(fill(book, ['event_angle', { event: second }, 350]));
  expect(said).toContain('found 350; takes 360, which follows from the rest of the design');
});

describe('names and cells that are gone', () => {
  const names = (change: (xml: string) => string): Uint8Array =>
    changedPart(six.bytes, () => 'xl/workbook.xml', change);

  test.each([
    ['deleted', /<definedName name="in_point_rpm">[^<]*<\/definedName>/, '', 'no cells with this name'],
    ['without cells', /(name="in_point_rpm">)[^<]*/, '$1#REF!', 'no cells with this name'],
    ['with a row less', /(name="in_point_rpm">Inputs!\$[A-Z]+\$\d+:\$[A-Z]+\$)(\d+)/, '$15', '× 1 cells'],
    ['over two columns', /(name="in_point_rpm">Inputs!)[^<]*/, '$1$$B$$9:$$C$$12', '4 × 2 cells'],
  ])('a name %s', async (_, find, put, found) => {
    const said = await refusals(names((xml) => xml.replace(find, put)));
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/^edited\.xlsx in_point_rpm: /);
    expect(said[0]).toContain(found);
    expect(said[0]).toContain('takes 4 cells below each other');
    expect(said[0]).toContain('make another one from the design: coilfeed size DESIGN --out FILE.xlsx');
  });

  test('all names gone', async () => {
    const said = await refusals(
      names((xml) => xml.replace(/<definedName name="in_[^<]*<\/definedName>/g, '')),
    );
    expect(said.length).toBeGreaterThan(30);
  });

  test('cells that were moved, and a sheet that was renamed, are found by their names', async () => {
    const { readBack } = await import('./edit.ts');
    const moved = names((xml) =>
      xml.replaceAll('Inputs!', "'My inputs, 2nd'!").replace('name="Inputs"', 'name="My inputs, 2nd"'),
    );
    expect((await readBack(moved)).design).toEqual(design(stated('hill-climb-six')));
  });

  test('a workbook of another maker, and an .ods', async () => {
    const parts = unzipSync(six.bytes);
    const { 'docProps/core.xml': _, ...rest } = parts;
    expect((await refusals(zipSync(rest)))[0]).toContain('no workbook that coilfeed made');
    const ods = zipSync({ 'content.xml': new Uint8Array(), mimetype: new Uint8Array() });
    expect((await refusals(ods))[0]).toContain('takes .xlsx: save it in that format');
  });

  test('the carried design file damaged: the line is named', async () => {
    const bytes = changedPart(
      six.bytes,
      () => 'xl/sharedStrings.xml',
      (xml) => xml.replace('  stroke: 4<', '  stroke: 5<'),
    );
    const lines = stated('hill-climb-six').split('\n');
    const row = lines.indexOf('  stroke: 4') + 4;
    expect(await refusals(bytes)).toEqual([
      `edited.xlsx:Design!A${row} engine.stroke: found 5; takes 2 or 4`,
    ]);
    expect(strFromU8(unzipSync(bytes)['xl/sharedStrings.xml'] as Uint8Array)).toContain('stroke: 5');
  });
});
