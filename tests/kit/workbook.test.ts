/** The sheets of the kit: the same figures as the papers, formulas where the model knows them, one file each time. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Laid } from '../../src/engine/spreadsheet.ts';
import { dropLimit } from '../../src/kit/bench-drop.ts';
import { checks } from '../../src/kit/checks.ts';
import { cutList, reels } from '../../src/kit/cut.ts';
import { placesOf } from '../../src/kit/lengths.ts';
import { ruler } from '../../src/kit/sheets/cells.ts';
import { kitPages } from '../../src/kit/sheets.ts';
import { crimpKinds } from '../../src/kit/terminals.ts';
import { runLaid } from '../../src/run-laid.ts';
import { formatOf } from '../../src/writers/workbook/formats.ts';
import type { Page } from '../../src/writers/workbook/page.ts';
import { pages } from '../../src/writers/workbook/pages.ts';
import { show, toWorkbook } from '../../src/writers/workbook/workbook.ts';
import { emptyFolder } from '../cli/tool.ts';
import { demo } from '../design/helpers.ts';
import { type Cells, editCell, readCells } from '../peers/cells.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { schemaErrors } from '../peers/schema.ts';
import { differences } from '../workbook/agree.ts';
import { compared, readWorkbook } from '../workbook/exceljs.ts';
import { straight } from './designs.ts';
import { jobOf } from './job.ts';

const FULL = `  colours: { main: "=cmd()" }
  relay_at: { main: 0.5 m }
  trigger: { gauge: 18 AWG, insulation: TXL, length: 0.8 m }
  relay_ground: { gauge: 18 AWG, insulation: TXL, length: 0.3 m }
`;

interface KitBook {
  bytes: Uint8Array;
  job: ReturnType<typeof jobOf>;
  evaluation: Laid;
  more: Page[];
}

function bookOf(text: string): KitBook {
  const job = jobOf(text, false);
  const own = kitPages(job);
  const { design } = job.result.evaluation;
  const whole = runLaid(design, (grid, d) => new Map([...show(grid, d), ...own.sheets(grid)]));
  const more = own.pages(whole.evaluation);
  return { bytes: toWorkbook(whole, more), job, evaluation: whole.evaluation, more };
}

/** Rows of a sheet whose first cell is this text; each as values from column A on. */
function rowOf(cells: Cells, sheet: string, first: string): unknown[] {
  const own = cells.get(sheet) ?? new Map();
  const at = [...own].find(([address, { value }]) => /^A\d+$/.test(address) && value === first)?.[0];
  if (at === undefined) throw new Error(`no row ${first} on ${sheet}`);
  const row = at.slice(1);
  return [...'ABCDEFGHIJKLMNOP'].map((column) => own.get(`${column}${row}`)?.value ?? null);
}

test('cut lengths, reels and limits on the sheets are those of the papers', () => {
  const { bytes, job } = bookOf(straight(4, FULL));
  const cells = readCells(bytes);
  for (const { piece, cut } of cutList(job)) {
    const [, size, , , , length] = rowOf(cells, 'Cuts', piece.id);
    expect(size, piece.id).toBe(piece.gauge);
    // The sheet is in millimetres.
    expect(length, piece.id).toBeCloseTo((cut ?? Number.NaN) * 1000, 6);
  }
  const first = reels(job)[0];
  const [, , , pieces, kit, , batch] = rowOf(cells, 'Cuts', first?.reel.gauge ?? '');
  expect(pieces === first?.pieces || typeof pieces === 'string').toBe(true);
  expect([kit, batch]).toEqual(
    [first?.kit, first?.batch].map((value) => expect.closeTo(value ?? Number.NaN, 9)),
  );
  job.result.evaluation.design.wires.forEach(({ id }, wire) => {
    const limit = dropLimit(job, wire);
    // The sheet is in millivolts.
    expect(rowOf(cells, 'Record', id)[3], id).toBeCloseTo((limit ?? Number.NaN) * 1000, 6);
  });
  expect([...cells.keys()]).toEqual(expect.arrayContaining(['Parts', 'Cuts', 'Pieces', 'Labels', 'Record']));
});

test('in US units cuts are in inches and reels in feet', () => {
  const { bytes } = bookOf(straight(4, `${FULL}  units: us\n`));
  const cells = readCells(bytes);
  // 0.5 m × 1.05 + 2 × 10 mm = 545 mm; an inch has 25.4 mm.
  expect(rowOf(cells, 'Cuts', 'engine strap')[5]).toBeCloseTo(545 / 25.4, 9);
  // The one wire of its reel; a foot has 304.8 mm.
  expect(rowOf(cells, 'Cuts', '4 AWG')[4]).toBeCloseTo(545 / 304.8, 9);
});

test('first pieces and crimps on the sheet are those of the bench sheet, once for the batch', () => {
  const { bytes, job } = bookOf(straight(4, FULL));
  const cells = readCells(bytes);
  const [, size, insulation, , count, , height, , own, ul, mil] = rowOf(
    cells,
    'Pieces',
    'T2: terminal of the fuse holder',
  );
  expect([size, insulation, count, height, own]).toEqual(['6 AWG', 'C', 2, null, null]);
  // UL 486A has 100 lbf for 6 AWG, MIL-T-7928 300 lbf; 1 lbf is 4.4482 N.
  expect([ul, mil]).toEqual([expect.closeTo(444.82, 2), expect.closeTo(1334.47, 2)]);
  for (const { code, what } of crimpKinds(job))
    expect(rowOf(cells, 'Pieces', `${code}: ${what}`)[4], code).toBeGreaterThan(0);
  for (const { first } of checks(job)) {
    const row = rowOf(cells, 'Pieces', first.piece.id);
    expect(row[4], first.piece.id).toBeCloseTo((first.cut ?? Number.NaN) * 1000, 6);
    // Cut to 5 mm, stripped to 0.5 mm: the defaults.
    expect([row[5], row[8]]).toEqual([5, 0.5]);
  }
});

test.each(['metric', 'us', 'both'] as const)(
  'sheet and table for machines show the same decimals, %s',
  (units) => {
    const job = jobOf(straight(1, `  units: ${units}\n`), false);
    for (const form of ['piece', 'small', 'height', 'reel'] as const) {
      const { places } = placesOf(form, units === 'us' ? 'us' : 'metric');
      expect(formatOf(ruler(job, form).shown), form).toBe(places === 0 ? '0' : `0.${'0'.repeat(places)}`);
    }
  },
);

test('a test current that a wire may not carry leaves its limit open on the sheet as on the paper', () => {
  const { bytes, job } = bookOf(straight(4, '  test_current: 90 A\n'));
  const cells = readCells(bytes);
  expect(dropLimit(job, 0)).toBeNull();
  job.result.evaluation.design.wires.forEach(({ id }, wire) => {
    const limit = dropLimit(job, wire);
    const cell = rowOf(cells, 'Record', id)[3];
    if (limit === null) expect(cell, id).not.toBeTypeOf('number');
    else expect(cell, id).toBeCloseTo(limit * 1000, 6);
  });
});

test('the sheets hold formulas where the model knows the value', () => {
  const cells = readCells(bookOf(straight(4, FULL)).bytes);
  const formulas = [...(cells.get('Cuts') ?? [])].filter(([, { formula }]) => formula !== null);
  expect(formulas.length).toBeGreaterThan(40);
});

test('another reader finds every cell as it was laid out', async () => {
  const { bytes, evaluation, more } = bookOf(straight(4, FULL));
  const read = await readWorkbook(bytes);
  const { formulas, wrong } = compared(read, evaluation, pages(evaluation, more));
  expect(wrong.slice(0, 5)).toEqual([]);
  expect(formulas).toBe(evaluation.formulas);
});

test('the same job gives the same bytes', () => {
  const [one, two] = [bookOf(straight(2)), bookOf(straight(2))];
  expect(Buffer.from(one.bytes).equals(Buffer.from(two.bytes))).toBe(true);
});

describeWithPeer('soffice', 'the sheets of the kit elsewhere', () => {
  test('another program makes the same of every formula', async () => {
    const folder = emptyFolder();
    const file = join(folder, 'kit.xlsx');
    const { bytes } = bookOf(demo('two-bank-v8'));
    writeFileSync(file, bytes);
    const [again = ''] = await recalculate([file], join(folder, 'out'));
    const { readFileSync } = await import('node:fs');
    expect(differences(bytes, readFileSync(again)).slice(0, 5)).toEqual([]);
  });

  test('a longer wire is cut longer, and a design that then fails says so', async () => {
    const folder = emptyFolder();
    const file = join(folder, 'kit.xlsx');
    // A length of the engine strap that no other input has.
    const { bytes } = bookOf(straight(4, FULL).replace('length: 0.5 m', 'length: 0.777 m'));
    const inputs = readCells(bytes).get('Inputs') ?? new Map();
    const at = [...inputs].filter(([, { value }]) => value === 0.777).map(([address]) => address);
    expect(at).toHaveLength(1);
    let changed = bytes;
    for (const address of at) changed = editCell(changed, 'Inputs', address, 90);
    writeFileSync(file, changed);
    const [again = ''] = await recalculate([file], join(folder, 'out'));
    const { readFileSync } = await import('node:fs');
    const cells = readCells(readFileSync(again));
    // 90 m × 1.05 + 2 × 0.01 m = 94.52 m; its 73 mΩ and more than 8 A pass the limit of 0.5 V.
    expect(rowOf(cells, 'Cuts', 'engine strap')[5]).toBeCloseTo(94_520, 3);
    const loud = [...(cells.get('Cuts') ?? [])].map(([, { value }]) => value);
    expect(loud).toContain('NOT RELEASED FOR BUILDING: see Findings');
  });
});

describeWithPeer('ooxml-validator', 'the file of the kit', () => {
  test('is sound by the schema', async () => {
    const file = join(emptyFolder(), 'kit.xlsx');
    writeFileSync(file, bookOf(straight(4, FULL)).bytes);
    expect(await schemaErrors(file)).toEqual([]);
  });
});
