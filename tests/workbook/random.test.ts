/** The spreadsheet program as judge of random designs: everything that the model can be made of is met somewhere. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder } from '../cli/tool.ts';
import { design } from '../design/helpers.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { differences } from './agree.ts';
import { type Book, bookOf } from './books.ts';
import { documentOf } from './random-design.ts';

const DESIGNS = 30;
/** As many files in one call as its patience allows on a busy machine. */
const AT_ONCE = 6;

const texts = Array.from({ length: DESIGNS }, (_, i) => JSON.stringify(documentOf(i + 1)));

test('the designs are of every kind', () => {
  for (const kind of [
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
  ])
    expect(
      texts.some((text) => text.includes(kind)),
      kind,
    ).toBe(true);
});

describeWithPeer('soffice', 'random designs', () => {
  test(`LibreOffice computes every formula of ${DESIGNS} workbooks as we do`, async () => {
    const folder = emptyFolder();
    const made: { file: string; book: Book }[] = [];
    for (const [i, text] of texts.entries()) {
      const file = join(folder, `design-${i + 1}.xlsx`);
      const book = await bookOf(design(text));
      writeFileSync(file, book.bytes);
      made.push({ file, book });
    }
    for (let i = 0; i < made.length; i += AT_ONCE) {
      const some = made.slice(i, i + AT_ONCE);
      const theirs = await recalculate(
        some.map(({ file }) => file),
        join(folder, 'out'),
      );
      some.forEach(({ book, file }, j) => {
        expect(differences(book.bytes, readFileSync(theirs[j] as string)), file).toEqual([]);
      });
    }
  });
});
