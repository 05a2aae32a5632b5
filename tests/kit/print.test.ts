/** The papers on paper, A4 and Letter: nothing is cut, split, clipped or left out. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { papers } from '../../src/kit/papers.ts';
import { WORDS } from '../../src/kit/words.ts';
import { emptyFolder } from '../cli/tool.ts';
import { demo } from '../design/helpers.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer, peer } from '../peers/peer.ts';
import { banked, PAPERS, shop, straight } from './designs.ts';
import { jobOf } from './job.ts';
import { wordsOf } from './pdf.ts';

/** Papers of any length; the marks make rows taller, which a page that must hold all of them would not take. */
const LONG = PAPERS.filter((paper) => paper !== 'build-record.html' && paper !== 'test-card.html');
/** Width and height [mm]. */
const FORMATS = { A4: [210, 297], Letter: [215.9, 279.4] } as const;

const DESIGNS: [string, string][] = [
  ['the straight six', demo('hill-climb-six')],
  ['sixteen coils in two banks', banked(16)],
  [
    'long names and a design that fails',
    straight(12)
      .replace('gauge: 6 AWG', 'gauge: 22 AWG')
      .replaceAll('run: drop', 'run: Wmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmm')
      .replaceAll('run: coil ground', 'run: the longest name that a person may giv'),
  ],
];

/** Runs in the browser: puts a mark at the begin and the end of every cell and line, `0a` and `0z`, and counts them. */
const MARK = `(() => {
  const all = [...document.querySelectorAll('td, th, li, .label, .photo')].filter((e) => !e.closest('svg'));
  all.forEach((e, i) => {
    const mark = (letter) => {
      const span = document.createElement('span');
      span.textContent = ' Q' + i + letter + ' ';
      span.style.cssText = 'font-size:2px;line-height:0';
      return span;
    };
    e.prepend(mark('a'));
    e.append(mark('z'));
  });
  return { count: all.length, rows: [...document.querySelectorAll('tbody tr')].map((tr) =>
    [...tr.children].map((cell) => all.indexOf(cell))) };
})()`;

/** Runs in the browser: what is wider than its place. */
const WIDER = `(() => {
  const wide = document.documentElement.clientWidth;
  return [...document.querySelectorAll('body *')].filter((e) => {
    if (e.closest('svg')) return false;
    const box = e.getBoundingClientRect();
    return box.right > wide + 0.6 || (e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 && e.matches('td, th, div, p'));
  }).map((e) => e.tagName + ': ' + e.textContent.slice(0, 60));
})()`;

/** Runs in the browser: the smallest text, and its size [pt]. A pixel is three quarters of a point. */
const SMALLEST = `(() => {
  const sizes = [...document.querySelectorAll('body *')]
    .filter((e) => [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim() !== '') && !e.matches('style, title'))
    .map((e) => {
      const size = Number.parseFloat(getComputedStyle(e).fontSize) * 0.75;
      return [e.textContent.slice(0, 40), e.matches('svg text') ? size * e.getScreenCTM().a : size];
    });
  return sizes.reduce((a, b) => (b[1] < a[1] ? b : a));
})()`;

describeWithPeer('chromium', 'on paper', () => {
  const browser = useBrowser();

  test.runIf(peer('pdftotext') !== null || process.env.CI)(
    'no row is split, no line is lost, nothing is wider than the page [needs pdftotext]',
    async () => {
      const folder = emptyFolder();
      const page = await browser().newPage();

      for (const [name, design] of DESIGNS) {
        const job = jobOf(design);
        const all = papers(job, WORDS);
        for (const paper of LONG)
          for (const [format, [width, height]] of Object.entries(FORMATS)) {
            const where = `${name}, ${paper}, ${format}`;
            await page.setContent(all.get(paper) ?? '');
            const { count, rows } = await page.evaluate<{ count: number; rows: number[][] }>(MARK);
            const pdf = join(folder, 'paper.pdf');
            writeFileSync(pdf, await page.pdf({ format: format as 'A4' | 'Letter' }));
            const { pages, words } = wordsOf(pdf);
            // A point is 0.35 mm; the printer's driver rounds to it.
            for (const [w, h] of pages)
              expect([Math.min(w, h), Math.max(w, h)], where).toEqual([
                expect.closeTo(width, 0),
                expect.closeTo(height, 0),
              ]);
            const marks = new Map(
              words.filter(({ text }) => /^Q\d+[az]$/.test(text)).map((word) => [word.text.slice(1), word]),
            );
            const lost = Array.from({ length: count }, (_, i) => [`${i}a`, `${i}z`])
              .flat()
              .filter((mark) => !marks.has(mark));
            expect(lost, where).toEqual([]);
            const split = rows.filter(
              (cells) =>
                new Set(cells.flatMap((i) => [marks.get(`${i}a`)?.page, marks.get(`${i}z`)?.page])).size > 1,
            );
            expect(split, where).toEqual([]);
            const outside = words.filter((word) => {
              const [w, h] = pages[word.page - 1] ?? [0, 0];
              // Running head and foot stand in the margins; a printer takes some 4 mm for itself.
              return word.left < 9 || word.right > w - 9 || word.top < 4 || word.bottom > h - 4;
            });
            expect(
              outside.map(({ text }) => text),
              where,
            ).toEqual([]);
            if (paper === 'instructions.html')
              expect(
                pages.filter(([w, h]) => w > h),
                where,
              ).toHaveLength(1);
            pages.forEach((_, i) => {
              const own = words.filter((word) => word.page === i + 1);
              const foot = own
                .filter(({ bottom }) => bottom > (pages[i]?.[1] ?? 0) - 12)
                .map(({ text }) => text);
              expect(foot.join(' '), where).toContain(`page ${i + 1} of ${pages.length}`);
              if (!job.result.findings.every(({ verdict }) => verdict !== 'fail'))
                expect(own.map(({ text }) => text).join(' '), where).toContain('NOT RELEASED');
            });
          }
      }
    },
  );

  test.runIf(peer('pdftotext') !== null || process.env.CI)(
    'the build record takes one page for each serial number [needs pdftotext]',
    async () => {
      // The most conductors that a design may have, with names as long as they may be.
      const most = straight(16)
        .replace(
          '  - { run: drop',
          '  - { run: lead, carries: each, length: 0.3 m, ambient: 60 degC, insulation: C, gauge: 14 AWG }\n  - { run: drop',
        )
        .replaceAll('run: drop', 'run: the longest name that a person may giv')
        .replace('gauge: 6 AWG', 'gauge: 22 AWG');
      const pdf = join(emptyFolder(), 'record.pdf');
      const page = await browser().newPage();

      // The conditions of a warranty must not take a page of their own.
      const warranted = `${straight(2)}${shop('Two years on crimps that were not altered. '.repeat(5))}`;
      for (const [name, design] of [
        ...DESIGNS,
        ['fifty conductors', most] as const,
        ['a warranty', warranted] as const,
      ]) {
        const job = jobOf(design);
        await page.setContent(papers(job, WORDS).get('build-record.html') ?? '');
        for (const format of ['A4', 'Letter'] as const) {
          writeFileSync(pdf, await page.pdf({ format }));
          const { pages, words } = wordsOf(pdf);
          expect(pages, `${name}, ${format}`).toHaveLength(job.serials.length);
          job.serials.forEach((serial, i) => {
            const own = words.filter((word) => word.page === i + 1).map(({ text }) => text);
            for (const word of [serial, 'Packed', 'Tested', 'Photo', 'number'])
              expect(own, `${name}, ${format}`).toContain(word);
          });
          expect(
            words.filter(({ bottom, page: i }) => bottom > (pages[i - 1]?.[1] ?? 0) - 4),
            `${name}, ${format}`,
          ).toEqual([]);
        }
      }
    },
  );

  test.runIf(peer('pdftotext') !== null || process.env.CI)(
    'the test card is one page, and instructions for eight coils are six [needs pdftotext]',
    async () => {
      const pdf = join(emptyFolder(), 'paper.pdf');
      const page = await browser().newPage();

      for (const [name, design] of [
        ...[1, 2, 4, 6, 8, 12, 16].map((n) => [`${n} coils`, straight(n)] as const),
        ['sixteen in two banks', banked(16)] as const,
        ['two-bank-v8', demo('two-bank-v8')] as const,
      ])
        for (const format of ['A4', 'Letter'] as const) {
          const all = papers(jobOf(design), WORDS);
          await page.setContent(all.get('test-card.html') ?? '');
          writeFileSync(pdf, await page.pdf({ format }));
          expect(wordsOf(pdf).pages, `${name}, ${format}`).toHaveLength(1);
          if (name !== 'two-bank-v8' || format !== 'A4') continue;
          await page.setContent(all.get('instructions.html') ?? '');
          writeFileSync(pdf, await page.pdf({ format }));
          expect(wordsOf(pdf).pages.length, `${name}, ${format}`).toBeLessThanOrEqual(6);
        }
    },
  );

  test('letters are at least 8 points on paper, those of the drawings too', async () => {
    const page = await browser().newPage();
    await page.emulateMedia({ media: 'print' });
    const small: string[] = [];
    for (const [name, design] of [
      ...[1, 8, 16].map((n) => [`${n} coils`, straight(n)] as const),
      ['sixteen in two banks', banked(16)] as const,
      ['sixteen assembled', straight(16, '  delivered: assembled\n')] as const,
      ['two-bank-v8', demo('two-bank-v8')] as const,
    ]) {
      const all = papers(jobOf(design), WORDS);
      for (const paper of PAPERS) {
        await page.setContent(all.get(paper) ?? '');
        for (const [format, [, height]] of Object.entries(FORMATS)) {
          // A drawing has a page of its own, lying, with margins of 10 mm.
          await page.setViewportSize({ width: Math.floor(((height - 20) / 25.4) * 96), height: 900 });
          const [text, least] = await page.evaluate<[string, number]>(SMALLEST);
          // A hundredth of a point for what a browser rounds.
          if (least < 8 - 0.01) small.push(`${name}, ${paper}, ${format}: ${text}, ${least.toFixed(2)} pt`);
        }
      }
    }
    expect(small).toEqual([]);
  });

  test('nothing is wider than its place', async () => {
    const page = await browser().newPage();

    await page.emulateMedia({ media: 'print' });
    for (const [name, design] of DESIGNS) {
      const all = papers(jobOf(design), WORDS);
      for (const paper of PAPERS)
        for (const [format, [width, height]] of Object.entries(FORMATS)) {
          // The width between the margins of the paper, at 96 pixels to the inch.
          const [across, margins] =
            paper === 'bench.html' ? [height, 22] : [width, paper === 'build-record.html' ? 20 : 24];
          await page.setViewportSize({ width: Math.floor(((across - margins) / 25.4) * 96), height: 900 });
          await page.setContent(all.get(paper) ?? '');
          expect(await page.evaluate<string[]>(WIDER), `${name}, ${paper}, ${format}`).toEqual([]);
        }
    }
  });
});
