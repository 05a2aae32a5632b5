/** The workbooks of the demos: valid, complete, in order, and the same wherever they are made. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { archive } from '../../src/saved/seal/archive.ts';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { DEMOS } from '../design/helpers.ts';
import { type Cells, readCells } from '../peers/cells.ts';
import { recalculateInGnumeric } from '../peers/gnumeric.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { schemaErrors } from '../peers/schema.ts';
import { differences } from './agree.ts';
import { type Book, bookOf, demoDesign, demoPath } from './books.ts';

const books = new Map<string, Book & { cells: Cells }>();
const of = (name: string) => books.get(name) as Book & { cells: Cells };

beforeAll(async () => {
  for (const name of DEMOS) {
    const book = await bookOf(demoDesign(name));
    books.set(name, { ...book, cells: readCells(book.bytes) });
  }
});

/** Defined names of a workbook and what they stand for, as they are written in the file. */
function namesOf(bytes: Uint8Array): Map<string, string> {
  const xml = strFromU8(unzipSync(bytes)['xl/workbook.xml'] ?? new Uint8Array());
  return new Map(
    [...xml.matchAll(/<definedName name="([^"]+)"[^>]*>([^<]*)<\/definedName>/g)].map(
      ([, name = '', to = '']) => [name, to],
    ),
  );
}

describe.each(DEMOS)('%s', (name) => {
  test('the sheets stand in the order in which a person asks', () => {
    const sheets = [...of(name).cells.keys()];
    const read = ['Feed', 'Inputs', 'WhatIf', 'Runs', 'Sweep', 'Findings', 'Sources', 'Own', 'Guide'];
    expect(sheets.slice(0, read.length)).toEqual(read);
    // A name with anything else would need quotes in formulas.
    expect(sheets.filter((sheet) => !/^[A-Za-z]+$/.test(sheet))).toEqual([]);
  });

  test('every formula has a stored result that is no error', () => {
    const cells = [...of(name).cells].flatMap(([sheet, own]) =>
      [...own].map(([address, cell]) => ({ at: `${sheet}!${address}`, ...cell })),
    );
    const formulas = cells.filter((cell) => cell.formula !== null);
    expect(formulas.length).toBe(of(name).result.evaluation.formulas);
    expect(formulas.filter(({ value }) => typeof value !== 'number' && typeof value !== 'string')).toEqual(
      [],
    );
  });

  test('every name that a formula uses is defined, and every defined name stands for cells that are there', () => {
    const { bytes, cells } = of(name);
    const names = namesOf(bytes);
    const lower = new Set([...names.keys()].map((n) => n.toLowerCase()));
    expect(lower.size).toBe(names.size);
    const used = new Set<string>();
    for (const own of cells.values())
      for (const { formula } of own.values()) {
        // Without texts, numbers and addresses; a name before a bracket is a function, before an exclamation mark a sheet.
        const rest = (formula ?? '')
          .replace(/"[^"]*"/g, '')
          .replace(/\$?[A-Z]{1,3}\$?\d+/g, '')
          .replace(/\b\d+(?:\.\d+)?(?:e-?\d+)?/g, '');
        for (const [word = ''] of rest.matchAll(/[A-Za-z_][A-Za-z0-9_.]*(?![A-Za-z0-9_.]*[(!])/g))
          used.add(word);
      }
    const unknown = [...used].filter((word) => !lower.has(word.toLowerCase()));
    expect(unknown).toEqual([]);
    expect(used.size).toBeGreaterThan(10);
    // Names that begin so are the format's own: what is printed, and which rows on every page.
    const own = [...names].filter(([name]) => !name.startsWith('_xlnm.'));
    const lost = own.filter(([, to]) => {
      const [, sheet = '', first = ''] = /^(\w+)!\$([A-Z]+\$\d+)/.exec(to) ?? [];
      return !cells.get(sheet)?.has(first.replace('$', ''));
    });
    expect(lost).toEqual([]);
  });

  test('the first page says what the terminal says', () => {
    const { cells, result } = of(name);
    const words = [...(cells.get('Feed')?.values() ?? [])].map((cell) => cell.value);
    expect(words).toContain(result.evaluation.design.title);
    expect(words).toContain(result.verdict.toUpperCase());
    const column = (letter: string) =>
      result.findings.map((_, i) => cells.get('Findings')?.get(`${letter}${i + 5}`)?.value);
    expect(column('B')).toEqual(result.findings.map((f) => f.subject));
    expect(column('A').map((word) => String(word).toLowerCase().split(',')[0])).toEqual(
      result.findings.map((f) => f.verdict),
    );
  });
});

test('the same design gives the same bytes in every time zone and language', async () => {
  const folder = emptyFolder();
  const made: Buffer[] = [];
  for (const [TZ, LANG] of [
    ['Pacific/Kiritimati', 'de_DE.UTF-8'],
    ['America/St_Johns', 'C'],
  ] as const) {
    const out = join(folder, `${LANG}.xlsx`);
    const ran = await coilfeed(['size', demoPath('pair-four'), '--out', out], {
      env: { TZ, LANG, LC_ALL: LANG },
    });
    expect(ran.err).toBe('');
    made.push(readFileSync(out));
  }
  expect(made[0]?.equals(made[1] as Buffer)).toBe(true);
  // As the command seals what the writer makes.
  expect(made[0]?.equals(await archive.seal(of('pair-four').bytes))).toBe(true);
});

describeWithPeer('ooxml-validator', 'the schema', () => {
  test.each(DEMOS)('%s has no error', async (name) => {
    const file = join(emptyFolder(), 'book.xlsx');
    writeFileSync(file, of(name).bytes);
    expect(await schemaErrors(file)).toEqual([]);
  });
});

/** The demos as files. */
function written(): string[] {
  const folder = emptyFolder();
  return DEMOS.map((name) => {
    const file = join(folder, `${name}.xlsx`);
    writeFileSync(file, of(name).bytes);
    return file;
  });
}

describeWithPeer('ssconvert', 'the demos', () => {
  test('Gnumeric computes every formula as we do', async () => {
    const theirs = await recalculateInGnumeric(written(), join(emptyFolder(), 'out'));
    DEMOS.forEach((name, i) => {
      expect(differences(of(name).cells, readFileSync(theirs[i] as string)), name).toEqual([]);
    });
  });
});

describeWithPeer('soffice', 'the demos', () => {
  test('LibreOffice computes every formula as we do', async () => {
    const theirs = await recalculate(written(), join(emptyFolder(), 'out'));
    DEMOS.forEach((name, i) => {
      // Fourteen digits are kept here and fifteen there; the rest of the room is for sums in another order.
      expect(differences(of(name).cells, readFileSync(theirs[i] as string)), name).toEqual([]);
    });
  });
});
