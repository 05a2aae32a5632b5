/**
 * Three spreadsheet programs as judges of random designs: everything that the model can be made of is met somewhere. The books
 * hold the model and the checks of its inputs; verdicts and pages are judged with the demos.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { printProblem } from '../../src/design/problems.ts';
import { readDesign } from '../../src/design/read.ts';
import type { Laid } from '../../src/engine/spreadsheet.ts';
import { JUDGED } from '../../src/findings/sheet.ts';
import { runLaid } from '../../src/run-laid.ts';
import { emptyFolder } from '../cli/tool.ts';
import { recalculateInGnumeric } from '../peers/gnumeric.ts';
import { judge } from '../peers/ironcalc.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { samples } from '../samples.ts';
import { differencesFrom } from './agree.ts';
import { modelBook } from './books.ts';
import { documentOf } from './random-design.ts';

const KINDS = [
  '"wasted_coil_per_cylinder"',
  '"coil_per_pair"',
  '"single_coil"',
  '"firing_angles"',
  '"stroke":2',
  '"inductance"',
  '"test_point"',
  '"coil":{"resistance"',
  '"peak"',
  '"current_limit"',
  '"relay"',
  '"fuse"',
  '"sweep"',
  '"series":"SAE"',
  '"series":"mm2"',
  '"source_resistance"',
];

const COUNT = samples(30);
/** What a driver cannot do at a peak that was drawn is the only reason for which a draw is refused; the next one takes its place. */
const made: { text: string; evaluation: Laid }[] = [];

/** Without the verdicts, which name sheets of the pages. */
const modelOf = (e: Laid): Laid => ({
  ...e,
  sheets: new Map([...e.sheets].filter(([name]) => name !== JUDGED)),
});

beforeAll(() => {
  for (let seed = 1; made.length < COUNT; seed++) {
    const text = JSON.stringify(documentOf(seed));
    const read = readDesign(text, `design-${seed}`);
    if (read.ok) made.push({ text, evaluation: modelOf(runLaid(read.design).evaluation) });
    else expect(read.problems.map(printProblem).join('\n')).toMatch(/^\S+ coil\.peak: [^\n]*$/);
  }
});

describe('random designs', () => {
  test('are of every kind', () => {
    expect(KINDS.filter((kind) => !made.some(({ text }) => text.includes(kind)))).toEqual([]);
  });

  test('IronCalc computes every formula of the model as we do', () => {
    let count = 0;
    const differ = made.flatMap(({ evaluation }, i) => {
      const model = evaluation.grid.placement.sheets;
      const wanted = (sheet: string): boolean => (i % EACH === 0 ? model.has(sheet) : SIZES.includes(sheet));
      return [...judge(evaluation, wanted)].flatMap(([sheet, { formulas, differ }]) => {
        count += formulas;
        return differ.map((line) => `${i}: ${sheet} ${line}`);
      });
    });
    expect(differ).toEqual([]);
    expect(count).toBeGreaterThan(COUNT * 1000);
  });
});

/** It takes a second for the sheets of a model: of most designs it gets those with the sizes, of every so many all. */
const SIZES = ['FeedRuns', 'Conductors', 'Sizes', 'Turns', 'Values'];
const EACH = 10;

/** Writes the books, has another program compute them, and compares every formula cell, sizes among them. */
async function compared(recompute: (files: readonly string[], out: string) => Promise<string[]>) {
  const folder = emptyFolder();
  const files = made.map(({ evaluation }, i) => {
    const file = join(folder, `design-${i}.xlsx`);
    writeFileSync(file, modelBook(evaluation));
    return file;
  });
  const theirs = await recompute(files, join(folder, 'out'));
  made.forEach(({ evaluation }, i) => {
    expect(differencesFrom(evaluation, readFileSync(theirs[i] as string)), files[i]).toEqual([]);
  });
}

describeWithPeer('soffice', 'random designs', () => {
  test('LibreOffice computes every formula of their models as we do', () => compared(recalculate));
});

describeWithPeer('ssconvert', 'random designs', () => {
  test('Gnumeric computes every formula of their models as we do', () => compared(recalculateInGnumeric));
});
