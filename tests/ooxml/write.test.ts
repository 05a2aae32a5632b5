/** The writer of workbooks by itself: a few sheets that no coil has to do with, read by others. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import { strFromU8, unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import type { Book, Cell, Sheet, Style } from '../../src/ooxml/book.ts';
import { write } from '../../src/ooxml/write.ts';
import { emptyFolder } from '../cli/tool.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { schemaErrors } from '../peers/schema.ts';

const plain: Style = {
  font: { size: 10, color: 'FF000000' },
  format: 'General',
  vertical: 'center',
  horizontal: 'left',
  indent: false,
  wrap: false,
  locked: true,
};
const boxed: Style = {
  ...plain,
  font: { ...plain.font, bold: true, italic: true, mono: true },
  fill: 'FFFFF8DC',
  border: { around: { style: 'thin', color: 'FF000000' }, bottom: { style: 'medium', color: 'FF00FF00' } },
  format: '[>=100]"many";0.00',
  horizontal: 'right',
  wrap: true,
  indent: true,
  locked: false,
};

const bare: Sheet = {
  name: 'Bare',
  lines: true,
  rows: [],
  widths: [],
  frozen: [0, 0],
  conditions: [],
  validations: [],
  charts: [],
  print: {
    landscape: false,
    wide: 1,
    tall: 0,
    margins: { left: 0.5, right: 0.5, top: 0.5, bottom: 0.5, header: 0.3, footer: 0.3 },
    header: '',
    footer: '&P',
    breaks: [],
  },
};

const row = (...cells: (Cell | undefined)[]) => ({ cells, height: 15, fitted: false });
const full: Sheet = {
  ...bare,
  name: 'Full',
  tab: 'FFE0B000',
  rows: [
    row(
      { value: 'x', style: plain },
      { value: 'y', style: plain },
      { value: ' <&" ', style: boxed, span: 2 },
    ),
    row({ value: 1, style: boxed }, { value: 2, formula: 'A2*2', style: plain }),
    undefined,
    {
      ...row({ value: 3, style: boxed }, { value: '', formula: 'IF(A4<9,"",1)', style: plain }),
      fitted: true,
    },
  ],
  widths: [12, 7.5],
  frozen: [1, 1],
  conditions: [{ where: 'A2:A4', looks: [['$A2>2', { bold: true, color: 'FFFF0000', fill: 'FFEEEEEE' }]] }],
  validations: [
    { where: 'A2:A4', allowed: [-1, 9], prompt: ['Number', 'p'.repeat(300)], error: ['No', 'e'.repeat(300)] },
    { where: 'D2', allowed: 'Full!$A$1:$B$1', prompt: ['Word', 'x or y'], error: ['No', 'x or y'] },
    { where: 'B2 B4', allowed: null, prompt: ['t'.repeat(40), 'Twice "A"'] },
  ],
  charts: [
    {
      kind: 'lines',
      title: 'y & x',
      rows: [5, 20],
      columns: [0, 4],
      x: { title: 'x', format: '0', log: true },
      y: { title: 'y', format: '0', least: 0, most: 9 },
      series: [
        {
          name: 'Full!$B$1',
          x: 'Full!$A$2:$A$4',
          y: 'Full!$B$2:$B$4',
          drawn: { dash: 'dash', points: 1 },
          color: '000000',
        },
        {
          name: 'Full!$A$1',
          x: 'Full!$A$2:$A$4',
          y: 'Full!$A$2:$A$4',
          drawn: { mark: 'circle' },
          color: '000000',
        },
      ],
    },
    {
      kind: 'bars',
      title: 'bars',
      rows: [21, 30],
      columns: [0, 4],
      name: 'Full!$A$1',
      names: 'Full!$A$2:$A$4',
      values: 'Full!$B$2:$B$4',
      axis: { title: 'y', format: '0' },
    },
  ],
  print: { ...bare.print, landscape: true, wide: 2, header: '&Lone && two', breaks: [2] },
};

const book: Book = {
  title: 'a < b',
  creator: 'me',
  keywords: 'k',
  size: 10,
  sheets: [full, bare],
  names: [['some', 'Full!$A$2:$A$4']],
};

test('another reader finds the cells, the names, what may be entered and how it is printed', async () => {
  const read = new ExcelJS.Workbook();
  await read.xlsx.load(write(book) as unknown as ArrayBuffer);
  expect(read.title).toBe('a < b');
  expect(read.worksheets.map(({ name }) => name)).toEqual(['Full', 'Bare']);
  expect(read.definedNames.model).toEqual([{ name: 'some', ranges: ['Full!$A$2:$A$4'] }]);
  const sheet = read.getWorksheet('Full') as ExcelJS.Worksheet;
  const at = (address: string) => sheet.getCell(address);
  expect([at('A1').value, at('C1').value, at('A2').value]).toEqual(['x', ' <&" ', 1]);
  expect(at('B2').value).toEqual({ formula: 'A2*2', result: 2 });
  expect(at('B4').formula).toBe('IF(A4<9,"",1)');
  expect(at('D1').master.address).toBe('C1');
  expect(at('A2').numFmt).toBe('[>=100]"many";0.00');
  expect(at('A2').font).toMatchObject({ bold: true, italic: true, name: 'Courier New', size: 10 });
  expect([at('A2').protection?.locked, at('B2').protection?.locked]).toEqual([false, undefined]);
  expect(at('A3').dataValidation).toMatchObject({ type: 'decimal', formulae: [-1, 9] });
  expect(at('A3').dataValidation.prompt).toHaveLength(255);
  expect(at('A3').dataValidation.error).toHaveLength(225);
  expect(at('D2').dataValidation).toMatchObject({ type: 'list', formulae: ['Full!$A$1:$B$1'] });
  // Anything may stand there; a title has 32 characters.
  expect(at('B4').dataValidation).toMatchObject({ showInputMessage: true, prompt: 'Twice "A"' });
  expect(at('B2').dataValidation.promptTitle).toHaveLength(32);
  expect(at('B2').dataValidation.formulae ?? []).toEqual([]);
  expect(sheet.views[0]).toMatchObject({ state: 'frozen', xSplit: 1, ySplit: 1 });
  expect(sheet.pageSetup).toMatchObject({ orientation: 'landscape', paperSize: 9, fitToWidth: 2 });
  expect(sheet.pageSetup.printArea).toBe('A1:D4');
  expect(sheet.pageSetup.printTitlesRow).toBe('1:1');
  expect(sheet.headerFooter.oddHeader).toBe('&Lone && two');
  expect([sheet.getColumn(1).width, sheet.getColumn(2).width]).toEqual([12, 7.5]);
});

test('the same book gives the same bytes, whose entries have one date', () => {
  const [one, other] = [write(book), write(structuredClone(book))];
  expect(Buffer.from(one).equals(other)).toBe(true);
  // Two charts on one sheet: one drawing, and a part for each.
  const parts = Object.keys(unzipSync(one));
  expect(parts.filter((path) => /charts\/|drawings\/d/.test(path))).toEqual([
    'xl/charts/chart1.xml',
    'xl/charts/chart2.xml',
    'xl/drawings/drawing1.xml',
  ]);
  expect(strFromU8(unzipSync(one)['[Content_Types].xml'] as Uint8Array)).toContain('drawingml.chart+xml');
});

describeWithPeer('ooxml-validator', 'the schema', () => {
  test.each([
    ['takes sheets that use everything', book],
    ['takes a sheet of nothing', { ...book, sheets: [bare], names: [] }],
  ])('%s', async (_, one) => {
    const file = join(emptyFolder(), 'book.xlsx');
    writeFileSync(file, write(one));
    expect(await schemaErrors(file)).toEqual([]);
  });
});
