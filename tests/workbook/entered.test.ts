/**
 * What a person types into the inputs of a workbook: the sheet looks at it itself, and says what the reader says that takes the
 * saved file. Expectations are those of the format of a design.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import type { At } from '../../src/basis/quantity.ts';
import type { Design } from '../../src/design/design.ts';
import { LISTS } from '../../src/design/spelled.ts';
import { readFuseType, readInsulation, readSize } from '../../src/design/spellings.ts';
import { inputValue } from '../../src/engine/cell.ts';
import { members } from '../../src/engine/places.ts';
import { spread } from '../../src/engine/spreadsheet.ts';
import { laidOut } from '../../src/findings/judged.ts';
import { JUDGED, JUDGED_COLUMNS, JUDGED_TOP } from '../../src/findings/sheet.ts';
import { QUANTITIES, type QuantityName } from '../../src/model/model.ts';
import { run } from '../../src/run.ts';
import { readSaved } from '../../src/saved/read.ts';
import { ADDED } from '../../src/writers/workbook/judged.ts';
import { show } from '../../src/writers/workbook/workbook.ts';
import { design as designOf, stated } from '../design/helpers.ts';
import { samples } from '../samples.ts';
import { changedPart, fill, readBack, sheetPart, type Typed } from '../saved/edit.ts';
import { type Book, bookOf, entryOf } from './books.ts';

type Sheets = ReturnType<typeof spread>;
type Edit = readonly [QuantityName, At, number | string | null];

/** Says of a workbook what stands on its first page. */
function pageOf(sheets: Sheets) {
  const texts: (string | number | null)[] = [];
  sheets.sheets.get('Feed')?.forEach((row, r) => {
    row.forEach((cell, c) => {
      if (cell?.formula !== undefined) texts.push(sheets.cached('Feed', r, c));
    });
  });
  return texts;
}

/** Types into the sheet, looks, and puts back what was there. */
function typing<T>(sheets: Sheets, edits: readonly Edit[], look: () => T): T {
  const was = edits.map(([name, at]) => {
    const q = QUANTITIES[name];
    if (q.kind !== 'input') throw new Error(`${name} is no input`);
    return inputValue(sheets.design, q, at);
  });
  for (const [name, at, value] of edits) sheets.set(name, at, value);
  try {
    return look();
  } finally {
    edits.forEach(([name, at], i) => {
      sheets.set(name, at, was[i] as number | string | null);
    });
  }
}

let book: Book;
let sheets: Sheets;
let design: Design;
beforeAll(async () => {
  design = designOf(stated('hill-climb-six'));
  book = await bookOf(design);
  sheets = spread(design, show);
});

test('every spelling of a size that a cell takes is one that a design file takes, for the same size', () => {
  expect(LISTS.size.filter(({ key, word }) => readSize(key) !== word)).toEqual([]);
  expect(LISTS.insulation.filter(({ key, word }) => readInsulation(key) !== word)).toEqual([]);
  expect(LISTS.fuseType.filter(({ key, word }) => readFuseType(key) !== word)).toEqual([]);
});

const REFUSED: [what: string, says: RegExp, ...edits: Edit[]][] = [
  [
    'text for amperes',
    /Inputs!C\d+ Fuse: rating.*\(main\): takes a number of 1 to 1000 A, or auto/,
    ['fuse_given', { run: 0 }, '80 A'],
  ],
  ['text for a relay', /Relay: contact rating.*takes a number/, ['relay_given', { run: 0 }, '10 A']],
  [
    'joints below none',
    /Crimps in series \(branch\): takes a whole number of 0 to 100/,
    ['run_joints', { run: 1 }, -60],
  ],
  ['half a joint', /Crimps in series/, ['run_joints', { run: 1 }, 2.5]],
  [
    'a length below nothing',
    /Length \(main\): takes a number of 0.001 to 100 m/,
    ['wire_length', { wire: 0 }, -1],
  ],
  [
    'three times the rating',
    /Largest load of a fuse|Largest continuous load of a fuse/,
    ['fuse_load_limit', {}, 300],
  ],
  ['a number as text', /Primary resistance/, ['coil_ohm_20', {}, '4.0']],
  ['a bare number for a size', /Conductor size.*takes a size of its list/, ['run_gauge', { run: 0 }, 14]],
  ['a size as bare text', /Conductor size/, ['run_gauge', { run: 0 }, '14']],
  ['a star, which a look-up would take for anything', /Conductor size/, ['run_gauge', { run: 0 }, '*']],
  ['another number of cylinders', /Cylinders: takes 6/, ['cylinders', {}, 8]],
  ['an empty length', /Length/, ['wire_length', { wire: 0 }, null]],
  ['two ways to tell of a coil', /exactly one of inductance, bench test and peak/, ['peak_alone', {}, 9]],
  [
    'a drop-out voltage above the pull-in',
    /less than the pull-in voltage/,
    ['relay_drop_out_20', { run: 0 }, 11],
  ],
  ['a main run that ends before its relay', /takes at least/, ['wire_length', { wire: 0 }, 0.01]],
  // The first word of the list behind it among the spellings.
  ['a word of another list', /Material of the insulation/, ['run_material', { run: 0 }, 'none']],
  ['no resting voltage, where a relay closes on it', /Battery voltage at rest/, ['resting', {}, null]],
  ['a further spark, of which the design has none', /how many further sparks/, ['sparks_below', {}, 900]],
];

describe('what cannot be taken', () => {
  test.each(REFUSED)(
    '%s: said on the first page with the cell, without a verdict, and by the reader',
    async (_, says, ...edits) => {
      const page = typing(sheets, edits, () => pageOf(sheets));
      expect(page).toContain('CHECK INPUTS');
      expect(page).not.toContain('PASS');
      expect(page.filter((text) => typeof text === 'string' && says.test(text))).toHaveLength(1);
      // No list to buy: no size stands on the page.
      expect(page.filter((text) => typeof text === 'string' && /^\d+ (AWG|SAE|mm²)$/.test(text))).toEqual([]);
      expect(
        (await readBack(fill(book, ...edits.map(([n, at, v]): [QuantityName, At, Typed] => [n, at, v]))))
          .design,
      ).toBeNull();
    },
  );
});

test('rows of the dwell out of order are refused by the sheet and by the reader', async () => {
  const made = designOf(stated('pair-four'));
  const edit: Edit = ['dwell_supply', { dwell_row: 1 }, 15];
  // The row after it has 14 V.
  const page = spread(made, show);
  expect(typing(page, [edit], () => String(pageOf(page)[0]))).toMatch(/Dwell table: supply .*the rows rise/);
  expect(
    (await readBack(fill(await bookOf(made), ['dwell_supply', { dwell_row: 1 }, 15]))).design,
  ).toBeNull();
});

describe('spellings', () => {
  test.each([
    ['run_gauge', '4 mm²', '4 mm2'],
    ['run_gauge', '4mm2', '4 mm2'],
    ['run_gauge', '14 AWG ', '14 AWG'],
    ['run_gauge', 'Auto', 'auto'],
    ['run_gauge', '#8', '8 AWG'],
    ['run_insulation', 'c', 'C'],
    ['relay_suppression', 'Resistor', 'resistor'],
    ['relay_suppression', 'diode zener', 'diode_zener'],
    ['fuse_type', 'sf 30', 'SF30'],
  ] as const)('%s: "%s" is %s in the workbook and to the reader', async (name, text, word) => {
    const edit: Edit = [name, { run: 0 }, text];
    const [problems, value] = typing(sheets, [edit], () => [
      pageOf(sheets).includes('CHECK INPUTS'),
      sheets.value(name, { run: 0 }),
    ]);
    expect([problems, value]).toEqual([false, word]);
    const { design: read } = await readBack(fill(book, [name, { run: 0 }, text]));
    const q = QUANTITIES[name];
    expect(q.kind === 'input' && read && inputValue(read, q, { run: 0 })).toBe(word);
  });
});

test('a value that is typed over is stated by the design, beside the value and beside the verdict', () => {
  const row = sheets.grid.placement.entries.get('drop_limit')?.row ?? 0;
  const source = (): unknown => sheets.cached('Inputs', row, sheets.grid.placement.columns.value + 1);
  const before = source();
  expect(typing(sheets, [['drop_limit', {}, 1.5]], source)).toBe('As the design states');
  expect(source()).toBe(before);
  // The same beside the finding of the drop.
  const place = laidOut(sheets.grid, design).findIndex(({ rule }) => rule === 'drop');
  const cited = (): unknown => sheets.cached(JUDGED, JUDGED_TOP + place, ADDED.source);
  expect(typing(sheets, [['drop_limit', {}, 1.5]], cited)).toBe('as the design states');
});

test('a sheet that a person added is kept, and told from those of the workbook', async () => {
  const more = changedPart(
    book.bytes,
    () => 'xl/workbook.xml',
    // A second tab with the same part stands for a sheet of a person's own.
    (xml) => xml.replace('</sheets>', '<sheet name="Prices" sheetId="99" r:id="rId1"/></sheets>'),
  );
  const read = await readSaved(more, 'more.xlsx');
  expect(read.ok && [...read.design.added.keys()]).toEqual(['Prices']);
  expect(read.ok && read.behind).toEqual([]);
  const own = await readSaved(book.bytes, 'own.xlsx');
  expect(own.ok && [...own.design.added.keys()]).toEqual([]);
  expect(own.ok && own.behind).toEqual([]);
});

test('a formula over numbers and other inputs is taken for its value; one over results is refused', async () => {
  // 55 in of 25.4 mm are 1.397 m.
  const sum = await readBack(fill(book, ['wire_length', { wire: 0 }, { formula: '55*0.0254' }]));
  expect(sum.design?.wires[0]?.length).toBeCloseTo(1.397, 12);
  const nested = await readBack(fill(book, ['wire_length', { wire: 0 }, { formula: '(1+.5)/2-(-1)' }]));
  expect(nested.design?.wires[0]?.length).toBeCloseTo(1.75, 12);
  // The length of the main run is 1.5 m, the coils lie 0.45 m from it; the drop allowed is 0.5 V, in whichever name.
  const [main, drop] = [entryOf(book, 'wire_length', { wire: 0 }), entryOf(book, 'drop_limit')];
  for (const [formula, length] of [
    ['SUM(1,2)', 3],
    ['2^2', 4],
    [main, 1.5],
    [`Inputs!$${main.replace(/\d/, '$$$&')}*2`, 3],
    [`${drop}+drop_limit+in_drop_limit`, 1.5],
    // Milliohms in the cell, ohms in the name.
    ['in_joint_ohm/joint_ohm', 1000],
  ] as const) {
    const read = await readSaved(fill(book, ['wire_length', { wire: 1 }, { formula }]), 'formula.xlsx');
    if (length > 100) expect(read.ok, formula).toBe(false);
    else expect(read.ok && read.design.wires[1]?.length, formula).toBeCloseTo(length, 12);
    if (read.ok)
      expect(read.behind).toEqual([
        `Inputs!${entryOf(book, 'wire_length', { wire: 1 })}, a formula: its value is taken`,
      ]);
  }
  // The last names its own cell.
  for (const formula of ['1/0', '1+', 'worst_drop', 'Feed!I34', main])
    expect(
      (await readBack(fill(book, ['wire_length', { wire: 0 }, { formula }]))).design,
      formula,
    ).toBeNull();
});

test('a program that computes the known answer otherwise is told apart, in the workbook and when it is read', async () => {
  const { evaluation } = book.result;
  expect(evaluation.cached('Checks', 6, 3)).toBe(1);
  const other = changedPart(
    book.bytes,
    (parts) => sheetPart(parts, 'Checks'),
    (xml) => xml.replace(/(<c r="D7"[^>]*><f>[^<]*<\/f><v>)1(<\/v>)/, '$10$2'),
  );
  const read = await readSaved(other, 'other.xlsx');
  expect(read.ok && read.differs).toBe(true);
  const own = await readSaved(book.bytes, 'own.xlsx');
  expect(own.ok && own.differs).toBe(false);
});

/** Numbers that are the same every time. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_103_515_245 + 12_345) & 0x7fffffff;
    return state / 0x7fffffff;
  };
}

const WORDS = [
  'auto',
  'Auto ',
  '4mm2',
  '14 AWG ',
  '16 sae',
  'c',
  'E',
  'Resistor',
  'TXL',
  'While Cranking',
  '14',
  'x',
  '80 A',
  '4.0',
  '*',
  'none',
];

/** What a person might leave in a cell that held this. */
function typo(was: number | string | null, next: () => number): number | string | null {
  const pick = <T>(all: readonly T[]): T => all[Math.floor(next() * all.length)] as T;
  const kind = next();
  if (kind < 0.12) return null;
  if (kind < 0.25) return pick(WORDS);
  if (typeof was === 'string')
    return pick(['auto', '10 AWG', '2.5 mm2', 'A', 'F', '8 SAE', 'diode', '14awg', 'GXL', 'SF30']);
  if (was === null) return pick([1, 12, 20, 0.5, 100]);
  return kind < 0.55
    ? was * pick([1.1, 0.9, 1.01])
    : kind < 0.7
      ? was * pick([3, 0.2, 10])
      : kind < 0.8
        ? -was
        : was + pick([-1, 1]);
}

const SIXTY = 60;

test.each(['hill-climb-six', 'pair-four', 'two-bank-v8'] as const)(
  '%s: seeded edits are judged alike by the sheet and by the reader, or refused by both',
  async (name) => {
    const made = designOf(stated(name));
    const [own, cells] = [await bookOf(made), spread(made, show)];
    const entries = [...cells.grid.placement.entries].flatMap(([entry, place]) =>
      members(cells.grid.axes, place.rows).map((at) => ({ entry, at })),
    );
    const next = random(name.length);
    const wrong: string[] = [];
    let judged = 0;
    for (let i = 0; i < samples(SIXTY / 3); i++) {
      const { entry, at } = entries[Math.floor(next() * entries.length)] as (typeof entries)[number];
      const q = QUANTITIES[entry];
      const was = q.kind === 'input' ? inputValue(made, q, at) : null;
      const value = typo(was, next);
      if (value === was) continue;
      const there = typing(cells, [[entry, at, value]], () => verdictOf(cells));
      const { design: read, said } = await readBack(fill(own, [entry, at, value]));
      const here = read === null ? null : resultOf(read);
      if (here !== null) judged += 1;
      // A change that needs another layout of the workbook is refused by the sheet, which says how to get one.
      if (there.said.includes('--out NEW.xlsx')) continue;
      if (there.verdict !== here)
        wrong.push(
          `${entry} ${JSON.stringify(at)} ${was} → ${value}: ${there.verdict ?? there.said}; ${here ?? said.join()}`,
        );
    }
    expect(wrong).toEqual([]);
    expect(judged).toBeGreaterThan(0);
  },
);

/** Verdicts counted, and sizes; null where an input cannot be taken. */
function verdictOf(cells: Sheets): { verdict: string | null; said: string } {
  const page = pageOf(cells);
  const said = String(page[0] ?? '');
  if (page.includes('CHECK INPUTS')) return { verdict: null, said };
  const counts = { fail: 0, unknown: 0, advice: 0, pass: 0 };
  cells.sheets
    .get(JUDGED)
    ?.slice(JUDGED_TOP)
    .forEach((_, i) => {
      const word = cells.cached(JUDGED, JUDGED_TOP + i, JUDGED_COLUMNS.verdict);
      if (word !== null) counts[word as keyof typeof counts] += 1;
    });
  return {
    verdict: said_(
      counts,
      cells.design.runs.map((_, r) => String(cells.value('gauge', { run: r }))),
    ),
    said,
  };
}

function resultOf(read: Design): string {
  const result = run(read);
  const counts = { fail: 0, unknown: 0, advice: 0, pass: 0 };
  for (const { verdict } of result.findings) counts[verdict] += 1;
  return said_(
    counts,
    read.runs.map((_, r) => String(result.evaluation.value('gauge', { run: r }))),
  );
}

const said_ = (counts: Readonly<Record<string, number>>, sizes: readonly string[]): string =>
  `${JSON.stringify(counts)} ${sizes.join()}`;
