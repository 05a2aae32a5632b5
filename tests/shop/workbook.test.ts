/** The workbook of a design that uses a shop's file: what it holds of the shelf, what its cells offer, what is read back. */
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import type { At } from '../../src/basis/quantity.ts';
import type { Design } from '../../src/design/design.ts';
import { withCopy } from '../../src/design/shop/copy.ts';
import { inputValue } from '../../src/engine/cell.ts';
import { spread } from '../../src/engine/spreadsheet.ts';
import { QUANTITIES, type QuantityName } from '../../src/model/model.ts';
import { run } from '../../src/run.ts';
import { feedBill } from '../../src/shop/prices.ts';
import { choicesPage } from '../../src/writers/workbook/choices-sheet.ts';
import { validations } from '../../src/writers/workbook/validation.ts';
import { show } from '../../src/writers/workbook/workbook.ts';
import { demo, design as designOf } from '../design/helpers.ts';
import { fill, readBack } from '../saved/edit.ts';
import { type Book, bookOf, entryOf } from '../workbook/books.ts';

const DEMOS = ['hill-climb-six', 'pair-four', 'two-bank-v8'] as const;
const outcome = (design: Design) => {
  const result = run(design);
  const e = result.evaluation;
  return {
    verdict: result.verdict,
    gauges: design.runs.map((_, run) => e.value('gauge', { run })),
    fuses: design.runs.map((_, run) => e.value('fuse_rating', { run })),
    bill: feedBill(e),
  };
};

describe.each(DEMOS)('%s', (name) => {
  const design = designOf(demo(name));
  const copy = withCopy(design);

  test('the copy holds what the design uses, and what may be chosen in its place', () => {
    const { shop } = parse(copy.text.toString());
    const names = (kind: string): string[] => (shop[kind] ?? []).map((one: { name: string }) => one.name);
    const used = (kind: string): string[] =>
      [...new Set(design.used.flatMap((one) => (one.kind === kind ? [one.name] : [])))].sort();
    for (const kind of ['terminals', 'splices']) expect(names(kind).sort()).toEqual(used(kind));
    // Another relay may be chosen; another coil of the demo's shop has a connector for another wire.
    expect(names('coils')).toEqual(used('coils'));
    expect(names('relays')).toEqual(['power 50', 'racer 50', 'van 30']);
    const insulations = [...new Set(design.runs.map(({ insulation }) => insulation))];
    const series = design.sizes.series;
    const wire: { size: string; insulation: string }[] = shop.wire;
    expect(wire.length).toBeGreaterThan(5);
    expect(shop.insulations).toEqual(insulations);
    // But for the first of the shelf, from which a design has its series: 18 AWG, C.
    expect(wire.slice(1).filter(({ insulation }) => !insulations.includes(insulation))).toEqual([]);
    expect(series).toBe(copy.sizes.series);
    const types = new Set(design.runs.flatMap(({ fuse }) => (fuse ? [fuse.type] : [])));
    expect(new Set(shop.fuses.map(({ type }: { type: string }) => type))).toEqual(types);
    expect(shop.shop.name).toBe('Example Ignition Works');
  });

  test('the same feed at the same price comes of it, and a copy of it is itself', () => {
    expect(outcome(copy)).toEqual(outcome(design));
    expect(withCopy(copy).text.toString()).toBe(copy.text.toString());
    expect(designOf(copy.text.toString()).runs).toEqual(design.runs);
  });
});

test('without a shop’s file a design is its own copy', () => {
  const { shop, ...rest } = parse(demo('hill-climb-six'));
  expect(shop).toBeDefined();
  const bare = designOf(
    JSON.stringify({
      ...rest,
      kit: undefined,
      coil: { resistance: '0.42 ohm', inductance: '2.4 mH' },
      feed: rest.feed.map((own: object) => ({ ...own, relay: undefined })),
      instruments: undefined,
    }),
  );
  expect(withCopy(bare)).toBe(bare);
});

let book: Book;
let sheets: ReturnType<typeof spread>;
let design: Design;
beforeAll(async () => {
  design = withCopy(designOf(demo('hill-climb-six')));
  book = await bookOf(designOf(demo('hill-climb-six')));
  sheets = spread(design, show);
});

test('the cells offer what the shop has: sizes of the insulation, ratings of the type', () => {
  const page = choicesPage(design);
  const listAt = (where: string): unknown[] => {
    const rule = validations(sheets.grid, design).find((one) => one.where === where);
    const [, letter = ''] = /^Choices!\$([A-Z]+)\$/.exec(String(rule?.allowed)) ?? [];
    const column = [...letter].reduce((sum, sign) => sum * 26 + sign.charCodeAt(0) - 64, 0) - 1;
    const last = Number(/(\d+)$/.exec(String(rule?.allowed))?.[1]);
    return page.cells.slice(4, last).map((row) => row[column]?.value);
  };
  const cell = (name: QuantityName, at: At): string => entryOf(book, name, at);
  // The wire of class C on the shelf of the demo, by AWG and by mm².
  expect(listAt(cell('run_gauge', { run: 0 }))).toEqual([
    'auto',
    ...['18', '16', '14', '12', '10', '8', '6', '4', '2'].map((size) => `${size} AWG`),
    ...['0.75', '1', '1.5', '2.5', '4', '6', '10', '16', '25'].map((size) => `${size} mm2`),
  ]);
  expect(listAt(cell('fuse_given', { run: 0 }))).toEqual(['auto', 20, 30, 40, 50, 60]);
});

type Edit = readonly [QuantityName, At, number | string];

const EDITS: [what: string, taken: boolean, ...edits: Edit[]][] = [
  ['a size of the shelf', true, ['run_gauge', { run: 0 }, '10 AWG']],
  ['a size of the shelf in mm²', true, ['run_gauge', { run: 1 }, '2.5 mm2']],
  ['a longer run, which takes a larger size of the shelf', true, ['wire_length', { wire: 0 }, 2]],
  ['a hotter place', true, ['run_ambient', { run: 0 }, 85]],
  ['a rating of the shop', true, ['fuse_given', { run: 0 }, 30]],
  ['a rating that it does not have, stated', true, ['fuse_given', { run: 0 }, 35]],
  ['a type beside its rating', true, ['fuse_type', { run: 0 }, 'C'], ['fuse_given', { run: 0 }, 30]],
  ['another drop of the driver than the coil of the shop has', true, ['driver_drop', {}, 1.5]],
  ['another rating than the relay of the shop has', true, ['relay_given', { run: 0 }, 70]],
  ['an insulation whose wire was left out', false, ['run_insulation', { run: 0 }, 'TXL']],
  ['a fuse to choose of a type that was left out', false, ['fuse_type', { run: 0 }, 'C']],
];

/** What stands on the first page. */
const pageOf = () =>
  (sheets.sheets.get('Feed') ?? []).flatMap((row, r) =>
    row.flatMap((cell, c) => (cell?.formula === undefined ? [] : [sheets.cached('Feed', r, c)])),
  );

describe('what is typed is judged alike by the sheet and by the reader, or refused by both', () => {
  test.each(EDITS)('%s', async (_, taken, ...edits) => {
    const was = edits.map(([name, at]) => {
      const q = QUANTITIES[name];
      return q.kind === 'input' ? inputValue(design, q, at) : null;
    });
    for (const [name, at, value] of edits) sheets.set(name, at, value);
    const page = pageOf();
    const there = page.includes('CHECK INPUTS')
      ? null
      : design.runs.flatMap((_, run) => [
          sheets.value('gauge', { run }),
          sheets.value('fuse_rating', { run }),
        ]);
    const solved = sheets.value('solved', {});
    edits.forEach(([name, at], i) => {
      sheets.set(name, at, was[i] ?? null);
    });
    const { design: read } = await readBack(
      fill(book, ...edits.map(([n, a, v]): [QuantityName, At, string | number] => [n, a, v])),
    );
    expect([there !== null, read !== null]).toEqual([taken, taken]);
    if (read === null) return;
    const e = run(read).evaluation;
    expect(there).toEqual(
      read.runs.flatMap((_, run) => [e.value('gauge', { run }), e.value('fuse_rating', { run })]),
    );
    expect(solved).toBe(e.value('solved', {}));
  });
});

test('a relay to choose needs a new workbook, and the reader takes it from the copy', async () => {
  sheets.set('relay_given', { run: 0 }, 'auto');
  const said = pageOf().join(' ');
  sheets.set('relay_given', { run: 0 }, 50);
  expect(said).toContain(
    'which relay of the shop serves is found anew; “coilfeed size THIS.xlsx --out NEW.xlsx”',
  );
  const { design: read } = await readBack(fill(book, ['relay_given', { run: 0 }, 'auto']));
  expect(read?.runs[0]?.relay?.rating).toBe('auto');
});
