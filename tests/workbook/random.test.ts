/** The spreadsheet program as judge of random designs: everything that the model can be made of is met somewhere. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder } from '../cli/tool.ts';
import { design } from '../design/helpers.ts';
import { recalculateInGnumeric } from '../peers/gnumeric.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { samples } from '../samples.ts';
import { differences } from './agree.ts';
import { type Book, bookOf } from './books.ts';
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

/** Each of the usual ones is of a kind that none before it was; by night they are all that the seeds make. */
const LIMIT = 30;
const lacking = new Set(KINDS);
const texts = Array.from({ length: samples(LIMIT) }, (_, i) => JSON.stringify(documentOf(i + 1))).filter(
  (text) => {
    const news = [...lacking].filter((kind) => text.includes(kind));
    for (const kind of news) lacking.delete(kind);
    return news.length > 0 || samples(1) > 1;
  },
);

test('the designs are of every kind', () => {
  expect([...lacking]).toEqual([]);
  expect(texts.length).toBeGreaterThan(3);
});

/** Writes the workbooks into a folder, has another program compute them, and compares every formula cell. */
async function compared(recompute: (files: readonly string[], out: string) => Promise<string[]>) {
  const folder = emptyFolder();
  const made: { file: string; book: Book }[] = [];
  for (const [i, text] of texts.entries()) {
    const file = join(folder, `design-${i + 1}.xlsx`);
    const book = await bookOf(design(text));
    writeFileSync(file, book.bytes);
    made.push({ file, book });
  }
  const theirs = await recompute(
    made.map(({ file }) => file),
    join(folder, 'out'),
  );
  made.forEach(({ book, file }, i) => {
    expect(differences(book.bytes, readFileSync(theirs[i] as string)), file).toEqual([]);
  });
}

describeWithPeer('soffice', 'random designs', () => {
  test('LibreOffice computes every formula of their workbooks as we do', () => compared(recalculate));
});

describeWithPeer('ssconvert', 'random designs', () => {
  test('Gnumeric computes every formula of their workbooks as we do', () => compared(recalculateInGnumeric));
});
