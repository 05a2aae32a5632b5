/** A person changes inputs in the workbook: what a spreadsheet program then computes is what coilfeed computes. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import type { At } from '../../src/basis/quantity.ts';
import type { Design } from '../../src/design/design.ts';
import { readDesign } from '../../src/design/read.ts';
import type { QuantityName } from '../../src/model/model.ts';
import { emptyFolder } from '../cli/tool.ts';
import { demo, design, stated } from '../design/helpers.ts';
import { editCell, readCells } from '../peers/cells.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { differences } from './agree.ts';
import { type Book, bookOf, copyOf, entryOf } from './books.ts';

interface Change {
  what: string;
  name: QuantityName;
  at?: At;
  /** In the unit in which a person writes it. */
  entry: number;
  /** The same in the design. */
  apply: (design: Design) => void;
}

const CHANGES: Change[] = [
  {
    what: 'a longer main run',
    name: 'wire_length',
    at: { wire: 0 },
    entry: 4.5,
    apply: (d) => {
      (d.wires[0] as Design['wires'][number]).length = 4.5;
    },
  },
  {
    what: 'a longer dwell',
    name: 'dwell_time',
    at: { dwell_row: 0 },
    entry: 6,
    apply: (d) => {
      (d.ignition.dwell[0] as Design['ignition']['dwell'][number]).dwell = 0.006;
    },
  },
  {
    what: 'a place nearly as hot as the insulation stands',
    name: 'run_ambient',
    at: { run: 1 },
    entry: 121,
    apply: (d) => {
      (d.runs[1] as Design['runs'][number]).ambient = 121;
    },
  },
  {
    what: 'a stronger coil',
    name: 'coil_ohm_20',
    entry: 0.28,
    apply: (d) => {
      d.coil.resistance = 0.28;
    },
  },
  {
    what: 'a drop that no size keeps',
    name: 'drop_limit',
    entry: 0.05,
    apply: (d) => {
      d.limits.drop = 0.05;
    },
  },
];
/** With coil and relay stated: where they are the shop's their cells hold formulas. */
const six = (): Design => design(stated('hill-climb-six'));

let before: Book;
beforeAll(async () => {
  before = await bookOf(six());
});

const changed = (change: Change): Design => {
  const design = copyOf(six());
  change.apply(design);
  return design;
};

describeWithPeer('soffice', 'a changed input', () => {
  test('gives in LibreOffice what the changed design gives here', async () => {
    const folder = emptyFolder();
    const files = CHANGES.map((change, i) => {
      const file = join(folder, `${i}.xlsx`);
      const address = entryOf(before, change.name, change.at);
      writeFileSync(file, editCell(before.bytes, 'Inputs', address, change.entry));
      return file;
    });
    const theirs = (await recalculate(files, join(folder, 'out'))).map((file) =>
      readCells(readFileSync(file)),
    );
    const gauges = new Set<string>();
    for (const [i, change] of CHANGES.entries()) {
      const ours = await bookOf(changed(change));
      // Which entries differ from those that the workbook was made with is another answer in a workbook made anew.
      const differ = differences(ours.bytes, theirs[i] ?? new Map());
      expect(
        differ.filter((text) => !/^(?:Checks!(?:D5|E\d+)|WhatIf!(?:F\d+|A34)):/.test(text)),
        change.what,
      ).toEqual([]);
      // The change is one that shows.
      expect(differences(before.bytes, theirs[i] ?? new Map()), change.what).not.toEqual([]);
      const { value } = ours.result.evaluation;
      gauges.add(
        changed(change)
          .runs.map((_, run) => value('gauge', { run }))
          .join(),
      );
    }
    // Sizes follow, so that more than one set of them was compared.
    expect(gauges.size).toBeGreaterThan(2);
  });

  // Firings of one angle no design may have; 150 degrees one may, but not in a workbook with rows for six intervals.
  test.each([
    {
      angle: 240,
      at: 2,
      says: 'takes an angle within the cycle, above that of the firing before',
      taken: false,
    },
    { angle: 150, at: 5, says: 'coilfeed size THIS.xlsx --out NEW.xlsx', taken: true },
  ])('a firing moved to $angle degrees: told on the first page, and no current stands', async (moved) => {
    const folder = emptyFolder();
    const file = join(folder, 'moved.xlsx');
    const entry = entryOf(before, 'event_angle', { event: 1 });
    writeFileSync(file, editCell(before.bytes, 'Inputs', entry, moved.angle));
    const [read = ''] = await recalculate([file], join(folder, 'out'));
    const cells = readCells(readFileSync(read));
    const texts = (sheet: string): unknown[] =>
      [...(cells.get(sheet)?.values() ?? [])].map(({ value }) => value);
    const place = `Inputs!${entryOf(before, 'event_angle', { event: moved.at })} `;
    expect(texts('Feed').filter((text) => String(text).startsWith(place))).toEqual([
      expect.stringContaining(moved.says),
    ]);
    expect(texts('Runs')).toContain('Effective current');
    expect(texts('Runs').filter((value) => typeof value === 'number')).toEqual([]);
    const angles = [0, moved.angle, 240, 360, 480, 600];
    const text = demo('hill-climb-six').replace(/(firing_order: .*)/, `$1\n  firing_angles: [${angles}]`);
    expect(readDesign(text, 'six.yaml').ok).toBe(moved.taken);
  });
});
