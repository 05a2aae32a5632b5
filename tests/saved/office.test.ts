/** YAML → workbook → edited → saved by LibreOffice → YAML: the same design. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import type { OfKind, Quantity } from '../../src/basis/quantity.ts';
import { withCopy } from '../../src/design/shop/copy.ts';
import { inputValue } from '../../src/engine/cell.ts';
import { members } from '../../src/engine/cells.ts';
import { QUANTITIES } from '../../src/model/model.ts';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { DEMOS, demo, design } from '../design/helpers.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { samples } from '../samples.ts';
import { type Book, bookOf, entryOf } from '../workbook/books.ts';
import { documentOf, generator } from '../workbook/random-design.ts';
import { readBack, type Typed, typed } from './edit.ts';

/** Random designs besides the demos. */
const RANDOM = samples(2);
/** LibreOffice keeps 15 digits. */
const DIGITS = 1e-14;

interface Made {
  name: string;
  text: string;
  book: Book;
  /** Entries of numbers that are changed: by address, what is typed. */
  cells: Record<string, Typed>;
}

/** Changes about a third of the numbers by some percent, to values with many digits. Angles and counts stay. */
function changes(book: Book, seed: number): Record<string, Typed> {
  const random = generator(seed + 77);
  const { grid, design: of } = book.result.evaluation;
  const cells: Record<string, Typed> = {};
  for (const [name, place] of grid.placement.entries) {
    const q: Quantity = QUANTITIES[name];
    for (const at of members(grid.axes, place.rows)) {
      const value = inputValue(of, q as OfKind<'input'>, at);
      if (
        typeof value !== 'number' ||
        value === 0 ||
        q.unit === 'deg' ||
        (q.unit === '1' && q.shown === undefined)
      )
        continue;
      // A sweep is as long as it was, and a relay closes below every supply.
      if (
        random() > 0.35 ||
        /^(sweep|relay_pull|point_supply|dwell_supply|test_|coil_T|fuse_given)/.test(name)
      )
        continue;
      cells[entryOf(book, name, at)] = value * (0.9 + 0.1 * random());
    }
  }
  return cells;
}

/** Two designs as plain values, numbers that differ by less than LibreOffice's digits taken as equal. */
function near(a: unknown, b: unknown, path = ''): string[] {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= DIGITS * Math.max(Math.abs(a), Math.abs(b)) ? [] : [`${path}: ${a} and ${b}`];
  if (typeof a !== 'object' || a === null || typeof b !== 'object' || b === null)
    return a === b ? [] : [`${path}: ${a} and ${b}`];
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].flatMap((key) =>
    key === 'text'
      ? []
      : near((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], `${path}.${key}`),
  );
}

describeWithPeer('soffice', 'a workbook that LibreOffice saved', () => {
  test('gives the same design, changed or not', async () => {
    const folder = emptyFolder();
    const texts = [
      ...DEMOS.map((name) => ({ name, text: demo(name) })),
      ...Array.from({ length: RANDOM }, (_, i) => ({
        name: `random-${i}`,
        text: JSON.stringify(documentOf(i + 40)),
      })),
    ];
    const made: Made[] = [];
    for (const [i, { name, text }] of texts.entries()) {
      const book = await bookOf(design(text));
      const cells = changes(book, i + 1);
      expect(Object.keys(cells).length).toBeGreaterThan(5);
      writeFileSync(join(folder, `${name}.xlsx`), book.bytes);
      writeFileSync(join(folder, `${name}-edited.xlsx`), typed(book.bytes, cells));
      made.push({ name, text, book, cells });
    }
    const files = made.flatMap(({ name }) => [name, `${name}-edited`]);
    const paths = await recalculate(
      files.map((name) => join(folder, `${name}.xlsx`)),
      join(folder, 'out'),
    );
    const saved = new Map(files.map((name, i) => [name, paths[i] as string]));
    for (const { name, text, book, cells } of made) {
      const [plain = '', edited = ''] = [saved.get(name), saved.get(`${name}-edited`)];
      const same = await readBack(readFileSync(plain));
      expect(same.said, name).toEqual([]);
      // Of the shop's file a workbook holds what the design uses; everything else is as it was given.
      expect(same.design, name).toEqual(withCopy(design(text)));
      expect(same.changed, name).toEqual([]);

      // The file that coilfeed wrote and the one that LibreOffice saved from it are one design.
      const here = await readBack(typed(book.bytes, cells));
      const there = await readBack(readFileSync(edited));
      expect(there.said, name).toEqual([]);
      expect(near(there.design, here.design), name).toEqual([]);
      expect(
        there.changed.map(({ cell }) => cell),
        name,
      ).toEqual(here.changed.map(({ cell }) => cell));
      expect(there.changed, name).toHaveLength(Object.keys(cells).length);
      // And what a person typed is what the design holds.
      for (const { name: entry, at } of entriesAt(book, cells)) {
        const typedIn = cells[entryOf(book, entry, at)] as number;
        const held = inputValue(there.design as never, QUANTITIES[entry] as OfKind<'input'>, at) as number;
        // LibreOffice's 15 digits, and the way into the model's unit and back to 15 digits.
        expect(Math.abs(held / typedIn - 1), `${name} ${entry}`).toBeLessThan(2e-14);
      }
      // Read once more from the text alone.
      expect(near(design(there.design?.text.toString() ?? ''), there.design), name).toEqual([]);
    }
  });

  test('the tool reads it: size, trace, design', async () => {
    const folder = emptyFolder();
    const given = design(demo('pair-four'));
    const book = await bookOf(given);
    const file = join(folder, 'book.xlsx');
    writeFileSync(file, typed(book.bytes, { [entryOf(book, 'coil_ohm_20')]: 0.7 }));
    const [saved = ''] = await recalculate([file], join(folder, 'out'));
    const yaml = join(folder, 'design.yaml');
    const written = await coilfeed(['design', saved, '--out', yaml]);
    expect(written).toMatchObject({ status: 0, out: '' });
    expect(written.err).toContain('coil.resistance: ');
    expect(written.err).toContain('→ 0.7 ohm');
    expect(parse(readFileSync(yaml, 'utf8'))).toEqual({
      ...parse(demo('pair-four')),
      shop: parse(withCopy(given).text.toString()).shop,
      coil: { ...parse(demo('pair-four')).coil, resistance: '0.7 ohm' },
    });
    const [a, b] = await Promise.all([
      coilfeed(['size', saved, '--json']),
      coilfeed(['size', yaml, '--json']),
    ]);
    expect(JSON.parse(a.out).coil).toEqual(JSON.parse(b.out).coil);
    expect(JSON.parse(a.out).coil.resistance_ohm).toBe(0.7);
    const trace = await coilfeed(['trace', saved, '--point', given.points[0]?.name ?? '']);
    expect(trace.status).toBe(0);
  });
});

function entriesAt(book: Book, cells: Record<string, Typed>) {
  const { grid } = book.result.evaluation;
  return [...grid.placement.entries]
    .flatMap(([name, place]) => members(grid.axes, place.rows).map((at) => ({ name, at })))
    .filter(({ name, at }) => entryOf(book, name, at) in cells);
}
