/** What is printed when a person prints all that is in sight: pages as LibreOffice makes them, on both papers. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { runLaid } from '../../src/run-laid.ts';
import { show, toWorkbook } from '../../src/writers/workbook/workbook.ts';
import { emptyFolder } from '../cli/tool.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer, needPeer } from '../peers/peer.ts';
import { bookOf, demoDesign } from './books.ts';

/** It tells sizes in whole points of what is enlarged so many times, which it does three times at most. */
const ZOOM = 3;
/** For up to eight coils. */
const MOST = 12;
/**
 * In what most of a page is set [pt]: newspapers set small print in 6 to 7. Twelve pages hold no more for eight coils and eight
 * runs: at 7.5 pt the inputs alone take 2.4 pages.
 */
const LETTERS = 6.3;
/** Codes of the format. */
const PAPERS = { A4: 9, Letter: 1 } as const;

function onPaper(bytes: Uint8Array, code: number): Uint8Array {
  const parts = unzipSync(bytes);
  return zipSync(
    Object.fromEntries(
      Object.entries(parts).map(([name, part]) => [
        name,
        /worksheets\/sheet/.test(name)
          ? strToU8(strFromU8(part).replace(/paperSize="\d+"/, `paperSize="${code}"`))
          : part,
      ]),
    ),
  );
}

/** The size in which most letters of each page are set [pt]. */
function lettersOf(pdf: string): number[] {
  const { stdout } = spawnSync(
    join(dirname(needPeer('pdftotext')), 'pdftohtml'),
    ['-xml', '-i', '-stdout', '-zoom', `${ZOOM}`, pdf],
    {
      encoding: 'utf8',
    },
  );
  const sizes = new Map(
    [...stdout.matchAll(/<fontspec id="(\d+)" size="(\d+)"/g)].map(([, id, size]) => [
      id,
      Number(size) / ZOOM,
    ]),
  );
  return stdout
    .split('<page ')
    .slice(1)
    .map((page) => {
      const letters = new Map<number, number>();
      for (const [, font, text = ''] of page.matchAll(/<text [^>]*font="(\d+)">(.*?)<\/text>/g)) {
        const size = sizes.get(font) ?? 0;
        letters.set(size, (letters.get(size) ?? 0) + text.replace(/<[^>]*>/g, '').length);
      }
      return [...letters].reduce((most, one) => (one[1] > most[1] ? one : most))[0];
    });
}

describeWithPeer('soffice', 'printing', () => {
  describeWithPeer('pdftotext', 'everything in sight', () => {
    test.each(['pair-four', 'hill-climb-six', 'two-bank-v8'])(
      '%s: at most twelve pages on A4 and on Letter',
      async (name) => {
        const folder = emptyFolder();
        const of = demoDesign(name);
        const books = {
          size: (await bookOf(of)).bytes,
          // With the card of the readings, and the tolerances among the inputs.
          check: await toWorkbook(runLaid(of, show, ['readings'])),
        };
        const files = Object.entries(books).flatMap(([command, bytes]) =>
          Object.entries(PAPERS).map(([paper, code]) => {
            const file = join(folder, `${command}-${paper}.xlsx`);
            writeFileSync(file, onPaper(bytes, code));
            return file;
          }),
        );
        const heights = [842, 792, 842, 792];
        for (const [i, pdf] of (await recalculate(files, join(folder, 'pdf'), 'pdf')).entries()) {
          const { stdout } = spawnSync(needPeer('pdftotext'), ['-bbox', pdf, '-'], { encoding: 'utf8' });
          const pages = [...stdout.matchAll(/<page width="([\d.]+)" height="([\d.]+)">/g)];
          expect(pages.length, pdf).toBeGreaterThan(7);
          expect(pages.length, pdf).toBeLessThanOrEqual(MOST);
          // It is the paper that was asked for, upright or lying.
          for (const [, width, height] of pages)
            expect(Math.abs(Math.max(Number(width), Number(height)) - (heights[i] as number))).toBeLessThan(
              2,
            );
          expect(Math.min(...lettersOf(pdf)), pdf).toBeGreaterThanOrEqual(LETTERS);
          // Nothing stands beyond the edge.
          const beyond = stdout.split('<page ').flatMap((page) => {
            const width = Number(/width="([\d.]+)"/.exec(page)?.[1]);
            return [...page.matchAll(/xMax="([\d.]+)"[^>]*>([^<]*)</g)].flatMap(([, x, word]) =>
              Number(x) > width ? [word] : [],
            );
          });
          expect(beyond, pdf).toEqual([]);
        }
      },
    );
  });
});
