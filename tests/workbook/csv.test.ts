/** Comma-separated tables: what RFC 4180 says, and nothing that a spreadsheet program would run. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csv, csvText, fixed } from '../../src/writers/csv.ts';
import { LONGEST } from '../../src/writers/plain-text.ts';
import { emptyFolder } from '../cli/tool.ts';
import { readCells } from '../peers/cells.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';

/** A reader by the grammar of RFC 4180, section 2. */
function read(text: string): string[][] {
  const rows: string[][] = [];
  let at = 0;
  while (at < text.length) {
    const row: string[] = [];
    for (;;) {
      const [found = '', quoted, bare] = /^(?:"((?:[^"]|"")*)"|([^",\r\n]*))/.exec(text.slice(at)) ?? [];
      row.push(quoted?.replaceAll('""', '"') ?? bare ?? '');
      at += found.length;
      if (text[at] !== ',') break;
      at += 1;
    }
    if (text.slice(at, at + 2) !== '\r\n')
      throw new Error(`no end of a row at ${at}: ${text.slice(at, at + 9)}`);
    at += 2;
    rows.push(row);
  }
  return rows;
}

test('texts come back as they were; numbers are plain', () => {
  expect(
    csv([
      ['a', 'b,c', 'say "x"', 1.5, null, fixed(-0.00001, 2), ''],
      ['Straße 🚗', 2e-7, fixed(3, 1)],
    ]),
  ).toBe('a,"b,c","say ""x""",1.5,,0.00,\r\nStraße 🚗,2e-7,3.0\r\n');
  expect(() => csv([[Number.NaN]])).toThrow('cannot stand');
});

describe('what would begin a formula', () => {
  test.each([
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-1', "'-1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\t=1', "' =1"],
    ['"=1', `"'""=1"`],
    ['\u0000=1', "'=1"],
    ['\u202e=1', "'\u202e=1"],
    ['＝1', "'＝1"],
    ["=cmd|' /C x'!A0", "'=cmd|' /C x'!A0"],
    ['a\r\n=1', 'a =1'],
    ['a;=1', 'a,=1'],
    ['a; "b"', '"a; ""b"""'],
    ['a-b', 'a-b'],
  ])('%j', (text, expected) => {
    // A semicolon before a sign becomes a comma, and the comma wants quotes.
    expect(csvText(text)).toBe(expected === 'a,=1' ? '"a,=1"' : expected);
  });

  test('never stands at the begin of a cell, however the cells are parted', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.string({ unit: 'binary', maxLength: 12 }), { minLength: 1, maxLength: 4 }), {
          maxLength: 4,
        }),
        fc.array(
          fc.constantFrom('=1', ';=1', '\r\n=1', '"', ',', '\t', '+', '@', '-', ' ', '\u2028=', 'x;\u200b=1'),
        ),
        (rows, signs) => {
          const texts = rows.map((row) => row.map((text, i) => signs.slice(i).join('') + text));
          const out = csv(texts);
          const back = read(out);
          expect(back.map((row) => row.length)).toEqual(texts.map((row) => row.length));
          expect(back.flat().filter((cell) => /^\s*[=+\-@]/.test(cell))).toEqual([]);
          // As a program reads it that knows semicolons and no quotes.
          const naive = out
            .split(/\r\n|;/)
            .map((cell) => cell.replace(/^["' ]+/, (q) => (q.includes("'") ? "'" : '')));
          expect(naive.filter((cell) => /^[=+@-]/.test(cell))).toEqual([]);
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });

  test('a text longer than a cell is cut', () => {
    expect(csvText('x'.repeat(LONGEST + 9))).toHaveLength(LONGEST);
  });
});

describeWithPeer('soffice', 'a table of hostile texts', () => {
  test('has no formula in LibreOffice', async () => {
    const texts = ['=1+1', '+1+1', '-1-1', '@A1', 'a;=1+1', '\t=2', 'مرحبا', '🚗', 'x, "y"'];
    const folder = emptyFolder();
    const file = join(folder, 'table.csv');
    writeFileSync(file, csv(texts.map((text) => [text, 1])));
    const [made = ''] = await recalculate([file], join(folder, 'out'));
    const cells = [...readCells(readFileSync(made)).values()].flatMap((sheet) => [...sheet]);
    expect(cells.filter(([, { formula }]) => formula !== null)).toEqual([]);
    const words = cells.filter(([at]) => at.startsWith('A'));
    expect(words).toHaveLength(texts.length);
    expect(words.filter(([, { value }]) => typeof value !== 'string')).toEqual([]);
  });
});
