/** The charts of the workbook: bound to cells, readable in black and white, and still there after another program saved. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { emptyFolder } from '../cli/tool.ts';
import { DEMOS } from '../design/helpers.ts';
import { type Cells, editCell, readCells } from '../peers/cells.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { type Book, bookOf, copyOf, demoDesign, entryOf } from './books.ts';

const books = new Map<string, Book & { cells: Cells }>();
const of = (name: string) => books.get(name) as Book & { cells: Cells };
beforeAll(async () => {
  for (const name of DEMOS) {
    const book = await bookOf(demoDesign(name));
    books.set(name, { ...book, cells: readCells(book.bytes) });
  }
});

/** The XML of every chart. */
const chartsOf = (bytes: Uint8Array): string[] =>
  Object.entries(unzipSync(bytes))
    .filter(([path]) => /^xl\/charts\/chart\d+\.xml$/.test(path))
    .map(([, part]) => strFromU8(part));
const textsOf = (xml: string): string[] =>
  [...xml.matchAll(/<a:t>([^<]*)<\/a:t>/g)].map(([, text = '']) => text);
const rangesOf = (xml: string): string[] =>
  [...xml.matchAll(/<c:f>([^<]*)<\/c:f>/g)].map(([, to = '']) => to);

/** The values of a range such as `Sweep!$B$6:$B$30`. */
function valuesOf(cells: Cells, range: string): unknown[] {
  const [, sheet = '', left = '', top = '', right = left, bottom = top] =
    /^'?(\w+)'?!\$([A-Z]+)\$(\d+)(?::\$([A-Z]+)\$(\d+))?$/.exec(range) ?? [];
  const number = (letters: string): number => [...letters].reduce((n, c) => n * 26 + c.charCodeAt(0) - 64, 0);
  const letters = (n: number): string =>
    n === 0 ? '' : letters(Math.floor((n - 1) / 26)) + String.fromCharCode(65 + ((n - 1) % 26));
  const found: unknown[] = [];
  for (let row = Number(top); row <= Number(bottom); row++)
    for (let column = number(left); column <= number(right); column++)
      found.push(cells.get(sheet)?.get(`${letters(column)}${row}`)?.value ?? null);
  return found;
}

describe.each(DEMOS)('%s', (name) => {
  test('has a chart of the drop, of each fuse, of the currents and of the energy', () => {
    const titles = chartsOf(of(name).bytes).map((xml) => textsOf(xml)[0]);
    expect(titles).toEqual([
      'Share of the runs in the drop of the worst path',
      'Fuse of run “main” and the conductors behind it',
      'Current of run “main” over engine speed',
      'Energy of one coil on a stiff supply over engine speed',
    ]);
  });

  test('every point is the number of a cell', () => {
    const { bytes, cells } = of(name);
    for (const xml of chartsOf(bytes)) {
      const ranges = rangesOf(xml);
      expect(ranges.length).toBeGreaterThan(1);
      const names = [...xml.matchAll(/<c:strRef><c:f>([^<]*)<\/c:f>/g)].map(([, to = '']) => to);
      for (const range of ranges) {
        const values = valuesOf(cells, range);
        expect(values.length, range).toBeGreaterThan(0);
        const kind = names.includes(range) ? 'string' : 'number';
        expect([...new Set(values.map((value) => typeof value))], range).toEqual([kind]);
      }
    }
  });

  test('axes have titles with units, and lines differ by more than colour', () => {
    for (const xml of chartsOf(of(name).bytes)) {
      expect(
        textsOf(xml)
          .slice(1)
          .every((title) => /\[[^\]]+\]$/.test(title)),
      ).toBe(true);
      const looks = [...xml.matchAll(/<c:ser>.*?<\/c:ser>/gs)].map(([one]) =>
        [
          /<a:ln w="(\d+)"/.exec(one)?.[1],
          /<a:prstDash val="(\w+)"/.exec(one)?.[1],
          /<c:symbol val="(\w+)"/.exec(one)?.[1],
        ].join(),
      );
      expect(new Set(looks).size).toBe(looks.length);
    }
  });

  test('the curves of the fuse have logarithmic axes, and its marks lie on its line', () => {
    const { bytes, cells, result } = of(name);
    const xml = chartsOf(bytes)[1] as string;
    expect(xml.match(/<c:logBase val="10"\/>/g)).toHaveLength(2);
    const series = [...xml.matchAll(/<c:ser>.*?<\/c:ser>/gs)].map(([one]) => ({
      name: valuesOf(cells, rangesOf(one)[0] ?? '')[0],
      points: rangesOf(one)
        .slice(1)
        .map((range) => valuesOf(cells, range) as number[]),
    }));
    const e = result.evaluation;
    const [x = [], y = []] = series.find((s) => s.name === 'fuse: opens at the latest')?.points ?? [];
    expect(x.every((current, i) => i === 0 || current >= (x[i - 1] as number))).toBe(true);
    // The limits of the fuse lie on the line: the tables' own points, not computed by the curve.
    const rating = e.number('fuse_rating', { run: 0 }) as number;
    const multiples = [...Array(e.grid.axes.opening.length).keys()].map(
      (limit) => e.number('opening_current', { run: 0, opening: limit }) as number,
    );
    const slowest = multiples.map(
      (_, limit) => e.number('opening_slowest', { run: 0, opening: limit }) as number,
    );
    expect(multiples[0]).toBeCloseTo(1.1 * rating, 9);
    multiples.forEach((current, limit) => {
      const at = x.findLastIndex((one) => Math.abs(one / current - 1) < 1e-9);
      // Just above the second limit the time is the printed one; beyond the largest fault nothing is drawn.
      if (at >= 0 && limit > 1) expect(y[at]).toBeCloseTo(slowest[limit] as number, 6);
    });
    for (const mark of ['short at the far end', 'short at the near end']) {
      const [currents = [], times = []] = series.find((s) => s.name === mark)?.points ?? [];
      expect(currents.length).toBeGreaterThan(1);
      currents.forEach((current, i) => {
        // Between the two steps around it the line is straight in the logarithms.
        const at = Math.max(
          1,
          x.findIndex((one) => one >= current * (1 - 1e-12)),
        );
        const [x0, x1, y0, y1] = [x[at - 1], x[at], y[at - 1], y[at]] as [number, number, number, number];
        const share = x1 > x0 ? Math.log(current / x0) / Math.log(x1 / x0) : 1;
        // The step may hold a limit, where the line bends: a tenth of a per cent covers that.
        expect(times[i]).toBeCloseTo(Math.exp(Math.log(y0) + share * Math.log(y1 / y0)), 2);
      });
    }
  });

  test('the shares of the drop make up the whole', () => {
    const { bytes, cells, result } = of(name);
    const [, runs = '', shares = ''] = rangesOf(chartsOf(bytes)[0] as string);
    expect(valuesOf(cells, runs)).toEqual(result.evaluation.design.runs.map((run) => run.name));
    const all = valuesOf(cells, shares) as number[];
    // Percent; the rest is rounding in the fourteenth digit.
    expect(all.reduce((a, b) => a + b, 0)).toBeCloseTo(100, 9);
    expect(Math.min(...all)).toBeGreaterThanOrEqual(0);
  });
});

test('a design without a sweep, without a fuse, without a source has the charts that make sense', async () => {
  const design = copyOf(demoDesign('pair-four'));
  design.sweep = null;
  design.supply.source_resistance = null;
  for (const run of design.runs) run.fuse = null;
  const { bytes } = await bookOf(design);
  expect(chartsOf(bytes).map((xml) => textsOf(xml)[0])).toEqual([
    'Share of the runs in the drop of the worst path',
  ]);
});

describeWithPeer('soffice', 'saved by LibreOffice', () => {
  test('the charts, their cells and the defined names are still there, in both formats', async () => {
    const { bytes, result } = of('two-bank-v8');
    const folder = emptyFolder();
    const file = join(folder, 'book.xlsx');
    // A changed input, so that the cells behind the charts have other values: the length of the main run.
    const at = entryOf(of('two-bank-v8'), 'wire_length', { wire: 0 });
    writeFileSync(file, editCell(bytes, 'Inputs', at, 3.6));
    const [xlsx = ''] = await recalculate([file], join(folder, 'xlsx'));
    const [ods = ''] = await recalculate([file], join(folder, 'ods'), 'ods');

    const theirs = readFileSync(xlsx);
    const saved = chartsOf(theirs);
    // LibreOffice writes a single cell as a range from it to itself.
    const key = (xml: string): string =>
      rangesOf(xml)
        .map((to) => to.replace(/!([^:]+):\1$/, '!$1'))
        .sort()
        .join(' ');
    // LibreOffice numbers the parts in its own order.
    expect(saved.map(key).sort()).toEqual(chartsOf(bytes).map(key).sort());
    const drop =
      saved.find((xml) => textsOf(xml)[0] === 'Share of the runs in the drop of the worst path') ?? '';
    const shares = rangesOf(drop).at(-1) as string;
    const before = valuesOf(of('two-bank-v8').cells, shares) as number[];
    const now = valuesOf(readCells(theirs), shares) as number[];
    // Twice the length of the main run raises its share.
    expect(now[0]).toBeGreaterThan((before[0] as number) * 1.1);

    const parts = unzipSync(readFileSync(ods));
    const objects = Object.keys(parts).filter((path) => /^Object \d+\/content\.xml$/.test(path));
    expect(objects).toHaveLength(4);
    const content = strFromU8(parts['content.xml'] ?? new Uint8Array());
    const bound = objects.flatMap((path) =>
      [...strFromU8(parts[path] as Uint8Array).matchAll(/chart:values-cell-range-address="(\w+)\./g)].map(
        ([, sheet]) => sheet,
      ),
    );
    expect(new Set(bound)).toEqual(new Set(['Runs', 'Charted', 'Sweep']));
    const names = [...content.matchAll(/<table:named-range table:name="([^"]+)"/g)].map(([, one]) => one);
    expect(names).toEqual(expect.arrayContaining(['design_text', 'in_wire_length', 'worst_drop']));
    expect(content.match(/table:formula="of:=/g)?.length).toBe(result.evaluation.formulas);
  });
});
