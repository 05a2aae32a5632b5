/** How the workbook lies on screen and paper, as another program sees it. */
import { strFromU8, unzipSync } from 'fflate';
import { beforeAll, expect, test } from 'vitest';
import { type Seen, seen } from '../peers/openpyxl.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { type Book, bookOf, demoDesign } from './books.ts';

const SHOWN = ['Feed', 'Inputs', 'WhatIf', 'Runs', 'Sweep', 'Findings', 'Sources', 'Own', 'Guide'];

describeWithPeer('python3-openpyxl', 'the workbook of the straight six', () => {
  let book: Book;
  let found: Seen;
  beforeAll(async () => {
    book = await bookOf({ ...demoDesign('hill-climb-six'), date: '2031-05-28' });
    found = await seen(book.bytes);
  });

  test('what is read comes first, the workings behind it', () => {
    expect(found.sheets.slice(0, SHOWN.length)).toEqual(SHOWN);
    expect(found.sheets.length).toBeGreaterThan(30);
  });

  test('every sheet is locked without a password; inputs alone are open', () => {
    expect(Object.values(found.locked).every(Boolean)).toBe(true);
    const { placement, axes } = book.result.evaluation.grid;
    const count = (rows: readonly (keyof typeof axes)[]): number =>
      rows.reduce((n, axis) => n * axes[axis].length, 1);
    const entries = [...placement.entries.values()].reduce((sum, { rows }) => sum + count(rows), 0);
    // A return run takes neither fuse nor relay.
    const { runs } = book.result.evaluation.design;
    const devices = [...placement.entries.keys()].filter((name) => /^(?:fuse|relay)_|^melting$/.test(name));
    const closed =
      devices.filter((name) => !/^fuse_load_limit$/.test(name)).length *
      runs.filter(({ side }) => side === 'return').length;
    // A note beside each row.
    const notes = placement.blocks
      .filter(({ kind }) => kind === 'inputs')
      .reduce(
        (sum, { form, rows, quantities }) => sum + (form === 'entries' ? count(rows) : quantities.length),
        0,
      );
    // Of the names of the shop's parts in feed runs that of the one relay which the design uses.
    const names = 2 * runs.filter(({ side }) => side === 'feed').length - 1;
    expect(found.unlocked).toBe(entries - closed - names + notes);
  });

  test('every input has its validation, with a message before and after', () => {
    const { entries } = book.result.evaluation.grid.placement;
    // Where the shop has other things for each run an input has one for each.
    expect(found.validations.length).toBeGreaterThanOrEqual(entries.size);
    expect(found.validations.filter(({ prompt }) => prompt === '')).toEqual([]);
    const lists = found.validations.filter(({ type }) => type === 'list');
    expect(lists.length).toBeGreaterThanOrEqual(9);
    expect(
      lists.every(({ formula }) =>
        /^Choices!\$[A-Z]\$5:\$[A-Z]\$\d+$|^Shelf!\$A\$\d+:\$A\$\d+$/.test(formula),
      ),
    ).toBe(true);
    expect(found.validations.every(({ type }) => type === 'list' || type === 'decimal')).toBe(true);
  });

  test('every sheet in sight has a print area, repeated headings, title above, version, date and page of pages below', () => {
    for (const name of SHOWN) {
      const { area, titles, paper, header, footer } = found.printed[name] as Seen['printed'][string];
      expect(area, name).toMatch(/\$A\$1:\$[A-Z]+\$\d+/);
      expect(titles, name).toMatch(/^\$?\d+:\$?\d+$/);
      expect(paper).toBe('9');
      expect(header).toContain('Hill-climb straight six, dedicated coil feed');
      expect(footer).toMatch(/coilfeed \d+\.\d+\.\d+, design of 2031-05-28/);
      expect(footer).toMatch(/page &P of &N|page &\[Page\] of &\[Pages\]/);
      expect(found.frozen[name], name).toMatch(/^[A-Z]+[2-9]/);
    }
  });

  test('names and charts are seen', () => {
    expect(found.names).toEqual(expect.arrayContaining(['worst_drop', 'in_wire_length', 'design_text']));
    expect(found.charts).toMatchObject({ Runs: 2, Sweep: 2, Feed: 0 });
  });
});

test('a design that gives no day says so', async () => {
  const { bytes } = await bookOf(demoDesign('pair-four'));
  const sheet = strFromU8(unzipSync(bytes)['xl/worksheets/sheet1.xml'] ?? new Uint8Array());
  expect(sheet).toContain('design without a date');
});
