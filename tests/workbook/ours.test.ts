/** Recognising a workbook of ours, and nothing else, whatever the bytes. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import fc from 'fast-check';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { isOurs } from '../../src/writers/workbook/workbook.ts';
import { emptyFolder } from '../cli/tool.ts';
import { cpu } from '../cpu.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { bookOf, demoDesign } from './books.ts';

let ours: Uint8Array;
beforeAll(async () => {
  ours = (await bookOf(demoDesign('pair-four'))).bytes;
});

const PROPERTIES = 'docProps/core.xml';

describe('a workbook of ours', () => {
  test('is recognised, also with a comment behind the archive', () => {
    expect(isOurs(ours)).toBe(true);
    const comment = new Uint8Array(ours.length + 5);
    comment.set(ours);
    comment.set(strToU8('words'), ours.length);
    expect(isOurs(comment)).toBe(true);
  });

  test('is recognised when its properties are stored without packing', () => {
    const properties = unzipSync(ours)[PROPERTIES] as Uint8Array;
    expect(isOurs(zipSync({ [PROPERTIES]: [properties, { level: 0 }] }))).toBe(true);
  });

  test('is not recognised without its mark', async () => {
    const book = new ExcelJS.Workbook();
    book.creator = 'coilfeed';
    book.addWorksheet('Feed');
    expect(isOurs(new Uint8Array(await book.xlsx.writeBuffer()))).toBe(false);
    expect(isOurs(zipSync({ 'xl/workbook.xml': strToU8('coilfeed-workbook/1') }))).toBe(false);
  });
});

describe('any other bytes', () => {
  test.each([
    ['nothing', new Uint8Array()],
    ['words', strToU8('coilfeed-workbook/1')],
    ['an empty archive', zipSync({})],
  ])('%s', (_, bytes) => {
    expect(isOurs(bytes)).toBe(false);
  });

  test('properties that would swell are left alone', () => {
    const huge = strToU8(`<cp:keywords>coilfeed-workbook/1</cp:keywords>${' '.repeat(50_000_000)}`);
    const bomb = zipSync({ [PROPERTIES]: huge });
    expect(isOurs(bomb)).toBe(false);
    // The directory states a size that is too small for what is packed: no more than that is unpacked.
    const lying = bomb.slice();
    const view = new DataView(lying.buffer);
    for (let at = 0; at + 30 < lying.length; at++)
      if (view.getUint32(at, true) === 0x02014b50) {
        view.setUint32(at + 24, 100, true);
        view.setUint32(at + 20, Math.min(60_000, view.getUint32(at + 20, true)), true);
      }
    expect(() => isOurs(lying)).not.toThrow();
    // To unpack all of it takes 50 MB and many times as long; half of it is still far from that, and a process that has run
    // all other tests before spends time on its memory.
    for (const one of [bomb, lying])
      expect(cpu(() => isOurs(one), 3)).toBeLessThan(cpu(() => unzipSync(bomb)) / 2);
  });

  test('cut off or spoilt anywhere: true or false, never an error', () => {
    fc.assert(
      fc.property(
        fc.nat(ours.length),
        fc.array(fc.tuple(fc.nat(400), fc.nat(255)), { maxLength: 20 }),
        (cut, spoilt) => {
          expect(typeof isOurs(ours.subarray(0, cut))).toBe('boolean');
          // The directory stands at the end: that is where a change does most.
          const bytes = ours.slice();
          for (const [at, value] of spoilt) bytes[bytes.length - 1 - at] = value;
          expect(typeof isOurs(bytes)).toBe('boolean');
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });
});

describeWithPeer('soffice', 'saved by another program', () => {
  test('it is still ours, as xlsx', async () => {
    const folder = emptyFolder();
    const file = join(folder, 'book.xlsx');
    writeFileSync(file, ours);
    const [saved = ''] = await recalculate([file], join(folder, 'out'));
    expect(isOurs(readFileSync(saved))).toBe(true);
  });
});
