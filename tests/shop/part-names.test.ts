/**
 * A part of the shop chosen by its name in a workbook: the cells come to what a design file with that name comes to, in the
 * spreadsheet engine and in LibreOffice, and so does the design that is read back.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { address, columnOf } from '../../src/basis/address.ts';
import type { At } from '../../src/basis/quantity.ts';
import type { Design } from '../../src/design/design.ts';
import { printProblem } from '../../src/design/problems.ts';
import { readDesign } from '../../src/design/read.ts';
import { withCopy } from '../../src/design/shop/copy.ts';
import { evaluate } from '../../src/engine/evaluate.ts';
import { disagreements, spread } from '../../src/engine/spreadsheet.ts';
import type { QuantityName } from '../../src/model/model.ts';
import { validations } from '../../src/writers/workbook/validation.ts';
import { show } from '../../src/writers/workbook/workbook.ts';
import { emptyFolder } from '../cli/tool.ts';
import { design as designOf } from '../design/helpers.ts';
import { byHand } from '../peers/hands.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { fill, readBack, type Typed } from '../saved/edit.ts';
import { differs, readOf } from '../saved/hands/alike.ts';
import { answerOn } from '../saved/hands/sheet.ts';
import { type Book, bookOf, entryOf } from '../workbook/books.ts';

const near = (name: string): string =>
  readFileSync(new URL(`../saved/hands/${name}`, import.meta.url), 'utf8');
const REAR = 'fuse: { type: C, rating: auto, ambient: 60 degC, from_source: 0.1 m }';

/** The V4 with a relay for each bank; the rear one has a fuse of the shop, too. `units` in which its workbook is. */
function made(units: 'metric' | 'us'): Design {
  const text = near('banks.yaml')
    .replace(REAR, 'fuse: { use: blade 15, ambient: 60 degC, from_source: 0.1 m }')
    .replace('engine:', `units: ${units}\nengine:`);
  const read = readDesign(text, 'banks.yaml', { text: near('shop.yaml'), file: 'shop.yaml' });
  if (!read.ok) throw new Error(read.problems.map(printProblem).join('\n'));
  return withCopy(read.design);
}

let design: Design;
let book: Book;
let sheets: ReturnType<typeof spread>;
beforeAll(async () => {
  design = made('metric');
  book = await bookOf(design);
  sheets = spread(design, show);
});

const [FRONT, BACK] = [{ run: 0 }, { run: 1 }];
/** The line of the design file that a name stands in, with another name. */
const other = (from: string, to: string): Design => {
  expect(design.text.toString()).toContain(from);
  return designOf(design.text.toString().replace(from, to));
};

const CHOICES: [what: string, name: QuantityName, at: At, to: string, from: string][] = [
  ...['heavy', 'bare'].map((to): (typeof CHOICES)[number] => [
    `relay ${to}`,
    'relay_part',
    FRONT,
    to,
    'use: cube, ambient',
  ]),
  // The contact resistance stands beside the name, and stays.
  ...['heavy', 'bare'].map((to): (typeof CHOICES)[number] => [
    `relay ${to} at the rear`,
    'relay_part',
    BACK,
    to,
    'use: cube, contact',
  ]),
  ...['blue', 'green'].map((to): (typeof CHOICES)[number] => [
    `coil ${to}`,
    'coil_part',
    {},
    to,
    'use: red, temperature',
  ]),
  ...['blade 10', 'blade 30', 'warm 25'].map((to): (typeof CHOICES)[number] => [
    `fuse ${to}`,
    'fuse_part',
    BACK,
    to,
    'use: blade 15, ambient',
  ]),
];

describe.each(CHOICES)('%s', (_, name, at, to, from) => {
  const wanted = (): Design => other(from, from.replace(/use: [\w ]+/, `use: ${to}`));

  test('every cell comes to what the design with that name comes to', () => {
    sheets.set(name, at, to);
    try {
      expect([...disagreements(sheets, evaluate(wanted()))]).toEqual([]);
    } finally {
      sheets.set(name, at, from.replace(/use: ([\w ]+),.*/, '$1'));
    }
  });

  test('it is read back as that design, and as one change', async () => {
    const { design: read, changed, said } = await readBack(fill(book, [name, at, to]));
    expect(said).toEqual([]);
    expect(read?.text.toString()).toBe(wanted().text.toString());
    expect(changed.map(({ now }) => now)).toEqual([to]);
  });
});

test('the cells offer what may be chosen: not a coil with another connector, nor another fuse where a curve is laid out', () => {
  const offered = (name: QuantityName, at: At): unknown[] => {
    const cell = entryOf(book, name, at);
    const { allowed = '' } = validations(sheets.grid, design).find(({ where }) => where === cell) ?? {};
    const [, first = '', last = ''] = /^Shelf!\$A\$(\d+):\$A\$(\d+)$/.exec(String(allowed)) ?? [];
    return (sheets.sheets.get('Shelf') ?? [])
      .slice(Number(first) - 1, Number(last))
      .map(([cell]) => cell?.value);
  };
  expect(offered('coil_part', {})).toEqual(['red', 'blue', 'green']);
  expect(offered('relay_part', FRONT)).toEqual(['cube', 'heavy', 'bare']);
  expect(offered('relay_part', BACK)).toEqual(['cube', 'heavy', 'bare']);
  expect(offered('fuse_part', FRONT)).toEqual(['slow 20']);
  expect(offered('fuse_part', BACK)).toEqual(['blade 10', 'blade 15', 'blade 30', 'warm 25']);
});

/** Fuses of which one has a maker’s curve, which is laid out in the workbook: the sheet says what to do, and that is done. */
const ANEW: [what: string, at: At, from: string, to: string][] = [
  ['a fuse with a maker’s curve', BACK, 'use: blade 15, ambient', 'slow 20'],
  ['another in the place of such a fuse', FRONT, 'use: slow 20', 'blade 30'],
];
test.each(ANEW)(
  '%s is on no list; the sheet asks for a new workbook, and what is read is that fuse',
  async (_, at, from, to) => {
    const wanted = other(from, from.replace(/use: \w+ \d+/, `use: ${to}`));
    const was = from.replace(/use: (\w+ \d+).*/, '$1');
    sheets.set('fuse_part', at, to);
    expect(page()).toContain('CHECK INPUTS');
    expect(page().join('\n')).toMatch(/maker’s curve.*makes one for the change/);
    sheets.set('fuse_part', at, was);
    const { design: read, said } = await readBack(fill(book, ['fuse_part', at, to]));
    expect(said).toEqual([]);
    // Nothing of the fuse before stands beside the name: another rating would make it another fuse.
    expect(read?.text.toString()).toBe(wanted.text.toString());
  },
);

test('what is said of a list of parts says where others are, and fits the messages of a cell', () => {
  for (const name of ['coil_part', 'relay_part', 'fuse_part'] as const)
    for (const at of name === 'coil_part' ? [{}] : [FRONT, BACK]) {
      const cell = entryOf(book, name, at);
      const { prompt, error } = validations(sheets.grid, design).find(({ where }) => where === cell) ?? {};
      for (const [, text = ''] of [prompt ?? [], error ?? []]) {
        expect(text).toMatch(/name another one in the design file|makes one for the change/);
        // From memory: spreadsheet programs take 225 characters of an error, 255 of a prompt.
        expect(text.length).toBeLessThanOrEqual(225);
      }
    }
});

test('a value that is typed over stands beside the other name', async () => {
  const { design: read } = await readBack(
    fill(book, ['relay_part', FRONT, 'heavy'], ['relay_pull_in_20', FRONT, 7.9]),
  );
  expect(read?.text.toString()).toContain('relay: { use: heavy, ambient: 60 degC, pull_in: 7.9 V }');
  expect(read?.runs[0]?.relay).toMatchObject({ rating: 60, coil: 75, pull_in: 7.9 });
});

/** What stands on the first page. */
const page = (): unknown[] =>
  (sheets.sheets.get('Feed') ?? []).flatMap((row, r) =>
    row.flatMap((cell, c) => (cell?.formula === undefined ? [] : [sheets.cached('Feed', r, c)])),
  );

const REFUSED: [what: string, ...edits: [QuantityName, At, string | number | null][]][] = [
  ['a name that there is not', ['relay_part', FRONT, 'cuba']],
  ['a star, which a look-up would take for any', ['relay_part', FRONT, '*']],
  ['no name', ['relay_part', FRONT, null]],
  ['no coil', ['coil_part', {}, null]],
  [
    'a value emptied that the other part has',
    ['relay_part', FRONT, 'heavy'],
    ['relay_make_limit', FRONT, null],
  ],
  [
    'another rating than the contact currents are of',
    ['relay_part', FRONT, 'heavy'],
    ['relay_given', FRONT, 70],
  ],
  [
    'another rating than the fuse by temperature has',
    ['fuse_part', BACK, 'warm 25'],
    ['fuse_given', BACK, 20],
  ],
];

describe('what cannot be taken the sheet says', () => {
  test.each(REFUSED)('%s', (_, ...edits) => {
    const was: Readonly<Partial<Record<QuantityName, string>>> = {
      relay_part: 'cube',
      coil_part: 'red',
      fuse_part: 'blade 15',
    };
    const kept = edits.map(([name, at]) => {
      const [row, column] = (({ row, column }) => [row, column + (at.run ?? 0)])(
        sheets.grid.placement.entries.get(name) as never,
      ) as [number, number];
      return sheets.cached('Inputs', row, column);
    });
    for (const [name, at, value] of edits) sheets.set(name, at, value);
    const said = page();
    edits.forEach(([name, at], i) => {
      sheets.set(name, at, was[name] ?? kept[i] ?? null);
    });
    expect(said).toContain('CHECK INPUTS');
    expect(said.filter((text) => /^Inputs!C\d+|^Inputs!D\d+/.test(String(text)))).toHaveLength(1);
  });
});

describe('and so does the reader', () => {
  test.each(REFUSED.slice(0, 5))('%s', async (_, ...edits) => {
    const { design: read, said } = await readBack(fill(book, ...edits));
    expect(read).toBeNull();
    expect(said).toHaveLength(1);
  });
});

test('a formula of a person’s own over the shelf is worked out, not taken for ours', async () => {
  const cell = entryOf(book, 'relay_pull_in_20', FRONT);
  const formula =
    sheets.sheets.get('Inputs')?.[Number(cell.slice(1)) - 1]?.[columnOf(cell.slice(0, 1))]?.formula ?? '';
  expect(formula).toContain('Shelf!');
  const half: Typed = { formula: `(${formula})/2+${address(0, 0, false, false)[0]}1*0` };
  const { said } = await readBack(fill(book, ['relay_pull_in_20', FRONT, half]));
  // The title of the sheet, which is no number.
  expect(said.join()).toContain('relay.pull_in');
  const { design: read } = await readBack(
    fill(book, ['relay_part', FRONT, 'heavy'], ['relay_pull_in_20', FRONT, { formula: `${formula}+0.5` }]),
  );
  expect(read?.runs[0]?.relay?.pull_in).toBeCloseTo(8, 12);
});

test('in US units as in metric ones', async () => {
  const us = made('us');
  const { design: read } = await readBack(
    fill(await bookOf(us), ['relay_part', FRONT, 'heavy'], ['fuse_part', BACK, 'warm 25']),
  );
  const { runs } = designOf(
    us.text
      .toString()
      .replace('use: cube, ambient', 'use: heavy, ambient')
      .replace('use: blade 15', 'use: warm 25'),
  );
  expect(read?.runs).toEqual(runs);
});

describeWithPeer('soffice', 'chosen in LibreOffice', () => {
  test('it shows what the commands make of the file that it saves', async () => {
    const folder = emptyFolder();
    const file = join(folder, 'banks.xlsx');
    writeFileSync(file, book.bytes);
    const edits = CHOICES.map(([what, name, at, to], i) => ({
      what,
      steps: [['text', 'Inputs', entryOf(book, name, at), to] as const],
      save: join(folder, `${i}.xlsx`),
    }));
    const [looks] = await byHand([{ file, edits }]);
    const wrong: string[] = [];
    for (const [i, { what, save }] of edits.entries()) {
      const look = looks?.[i];
      if (look === undefined) throw new Error(`LibreOffice ended before ${what}`);
      const read = await readOf(readFileSync(save));
      const found =
        look.refused ??
        differs(answerOn(look.rows, look.runs), read) ??
        (read.changed === 1 ? null : `${read.changed} changes`);
      if (found !== null) wrong.push(`${what}: ${found}`);
    }
    expect(wrong).toEqual([]);
  });
});
