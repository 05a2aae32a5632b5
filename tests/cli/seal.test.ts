/** Files of ours that somebody edited: known by the digest that they carry, and never replaced without a word. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { Refusal } from '../../src/commands/files.ts';
import { plotsOf } from '../../src/commands/pictures.ts';
import { sealed, stateOf } from '../../src/commands/seal/seal.ts';
import { type Output, writeFiles } from '../../src/commands/write.ts';
import { runLaid } from '../../src/run-laid.ts';
import { openArchive } from '../../src/saved/archive.ts';
import { show, toWorkbook } from '../../src/writers/workbook/workbook.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { changedPart, sheetPart, typed } from '../saved/edit.ts';
import { type Book, bookOf, demoDesign, entryOf } from '../workbook/books.ts';
import { emptyFolder } from './tool.ts';

let book: Book;
/** A file of each kind, as the commands write them. */
const kinds = new Map<string, Uint8Array>();
const of = (name: string): Uint8Array => kinds.get(name) as Uint8Array;

beforeAll(async () => {
  book = await bookOf(demoDesign('pair-four'));
  const { files } = await plotsOf('.', book.result.evaluation);
  const picture = (ending: string): Output => files.find(({ path }) => path.endsWith(ending)) as Output;
  for (const { path, bytes } of [
    { path: 'feed.xlsx', bytes: book.bytes },
    { path: 'page.html', bytes: '<meta name="generator" content="coilfeed-page"><p>Ω</p>\n' },
    { path: 'list.csv', bytes: 'a,"b, ""c""\r\nd"\r\n1,2\r\n\r\n3,\r\n' },
    picture('.svg'),
    picture('.png'),
  ])
    kinds.set(path, await sealed(path, typeof bytes === 'string' ? strToU8(bytes) : bytes));
});

test('a file of each kind is known as it was made; a kind without a seal is not asked', async () => {
  for (const [name, bytes] of kinds) expect(await stateOf(name, bytes), name).toBe('as made');
  expect(await stateOf('design.yaml', strToU8('coilfeed: 1'))).toBe('unsealed');
});

test('another byte anywhere, a byte less or more: never as it was made', async () => {
  // Of an archive the digest covers what its parts hold, by the sums that its directory states: another program that
  // changes a part writes another sum. A spoilt byte inside a packed part is damage, and no edit.
  for (const [name, bytes] of [...kinds].filter(([name]) => name !== 'feed.xlsx'))
    await fc.assert(
      fc.asyncProperty(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), async (at, by) => {
        const other = bytes.slice();
        other[at] = (other[at] as number) ^ by;
        const states = [
          other,
          bytes.subarray(0, at),
          Buffer.concat([bytes.subarray(0, at), bytes.subarray(at - 1)]),
        ];
        // What packs a part again without changing it changes nothing that a person wrote: such a byte of an archive is
        // one of its headers or of data that no longer unpack, which a reader refuses.
        if (name === 'feed.xlsx') return;
        for (const state of states) expect(await stateOf(name, state), `${name} ${at}`).not.toBe('as made');
      }),
      { seed: 11, numRuns: 200 },
    );
});

test('what other programs read of a sealed file is what it was without the seal', () => {
  const [before, after] = [unzipSync(book.bytes), unzipSync(of('feed.xlsx'))];
  expect(Object.keys(after)).toEqual(Object.keys(before));
  const hex = (bytes: Uint8Array | undefined): string => Buffer.from(bytes ?? []).toString('hex');
  const differ = Object.keys(before).filter((name) => hex(before[name]) !== hex(after[name]));
  expect(differ).toEqual(['docProps/core.xml']);
  expect(strFromU8(after['docProps/core.xml'] as Uint8Array)).toMatch(
    /<cp:keywords>coilfeed-workbook\/2 [0-9a-f]{16}<\/cp:keywords>/,
  );
  // The archive itself, by a reader that checks every sum.
  const archive = openArchive(of('feed.xlsx'));
  if (typeof archive === 'string') throw new Error(archive);
  for (const { name, size } of archive.parts)
    expect(archive.read(name, size), name).toBeInstanceOf(Uint8Array);
  expect(strFromU8(of('list.csv'))).toMatch(
    /^a,"b, ""c""\r\nd",coilfeed [0-9a-f]{16}\r\n1,2,\r\n\r\n3,,\r\n$/,
  );
});

/** What is said when a file with these bytes stands under the name that is written; it then stays as it is. */
async function met(
  name: string,
  bytes: Uint8Array,
  fresh: Uint8Array | string = book.bytes,
): Promise<string> {
  const path = join(emptyFolder(), name);
  writeFileSync(path, bytes);
  try {
    await writeFiles([{ path, bytes: fresh }], { force: false });
    return 'was replaced';
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    expect(Buffer.from(bytes).equals(readFileSync(path))).toBe(true);
    return error.message;
  }
}

describe('a workbook', () => {
  const made = (): Uint8Array => of('feed.xlsx');

  test('as it was made is replaced', async () => {
    expect(await met('feed.xlsx', made())).toBe('was replaced');
  });

  test('with an input changed: the cell, what it was and what it is', async () => {
    const cell = entryOf(book, 'coil_ohm_20');
    expect(await met('feed.xlsx', typed(made(), { [cell]: 0.7 }))).toMatch(
      new RegExp(
        `edited or saved .* since coilfeed made it: Inputs!${cell} coil\\.resistance: .* → 0\\.7 ohm\\. .*--force`,
      ),
    );
  });

  test('with a sheet added: its name', async () => {
    const more = changedPart(
      made(),
      () => 'xl/workbook.xml',
      (xml) => xml.replace('</sheets>', '<sheet name="Mine" sheetId="99" r:id="rId1"/></sheets>'),
    );
    expect(await met('feed.xlsx', more)).toContain('sheet Mine');
  });

  test('with a note on a cell', async () => {
    const parts = unzipSync(made());
    const noted = zipSync({ ...parts, 'xl/comments1.xml': strToU8('<comments/>') });
    expect(await met('feed.xlsx', noted)).toContain('notes on cells');
  });

  test('with another text in a sheet that holds no input', async () => {
    const changed = changedPart(
      made(),
      (parts) => sheetPart(parts, 'Guide'),
      (xml) => `${xml} `,
    );
    expect(await met('feed.xlsx', changed)).toMatch(/edited or saved/);
  });
});

test('a test card with readings: how many', async () => {
  const bytes = toWorkbook(runLaid(demoDesign('pair-four'), show, ['readings']));
  const names = strFromU8(unzipSync(bytes)['xl/workbook.xml'] as Uint8Array);
  const area = /<definedName name="in_measured"[^>]*>'?(\w+)'?!\$([A-Z]+)\$(\d+)/.exec(names);
  const [, sheet = '', column = '', row = ''] = area ?? [];
  const filled = changedPart(
    await sealed('card.xlsx', bytes),
    (parts) => sheetPart(parts, sheet),
    (xml) => {
      const cell = new RegExp(`<c( r="${column}${row}"[^>]*?)(/>|>.*?</c>)`, 's');
      return xml.replace(cell, '<c$1><v>12</v></c>');
    },
  );
  expect(await met('card.xlsx', filled, bytes)).toContain('a reading on the test card');
});

test('a paper that was filled in is left alone', async () => {
  const paper = (words: string): string =>
    `<!doctype html><meta name="generator" content="coilfeed-kit"><p>${words}</p>`;
  const made = strFromU8(await sealed('record.html', strToU8(paper('Built by:'))));
  expect(await met('record.html', strToU8(made), paper('new'))).toBe('was replaced');
  for (const filled of [made.replace('by:', 'by: me'), made.replace(/<!-- .*-->\n/, '')])
    expect(await met('record.html', strToU8(filled), paper('new'))).toMatch(/edited or saved/);
});

describeWithPeer('soffice', 'saved by another program', () => {
  test('a workbook counts as edited, and opens with the seal inside', async () => {
    const folder = emptyFolder();
    const file = join(folder, 'feed.xlsx');
    writeFileSync(file, of('feed.xlsx'));
    const [saved = ''] = await recalculate([file], join(folder, 'out'));
    expect(await stateOf(saved, readFileSync(saved))).toBe('edited');
  });
});
