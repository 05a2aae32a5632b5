/** Headings on paper: none stands at a foot or at the end of a column without what it heads. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { papers } from '../../src/kit/papers.ts';
import { WORDS } from '../../src/kit/words.ts';
import { emptyFolder } from '../cli/tool.ts';
import { demo } from '../design/helpers.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer, peer } from '../peers/peer.ts';
import { banked, straight } from './designs.ts';
import { jobOf } from './job.ts';
import { type Word, wordsOf } from './pdf.ts';

/** Kits of other lengths: what is delivered takes steps away, a failing design puts a notice before all. */
const DESIGNS: [string, string][] = [
  ...[1, 2, 4, 6, 8, 12, 16].map((n): [string, string] => [`${n} coils`, straight(n)]),
  ['16 in two banks, assembled', banked(16).concat('kit: { delivered: assembled, units: us }\n')],
  ['two-bank-v8', demo('two-bank-v8')],
  ['12 that fail, crimped', straight(12, '  delivered: crimped\n').replace('gauge: 6 AWG', 'gauge: 22 AWG')],
];

/** Papers of more than one page; the second one only where its length differs. */
const LONG = ['instructions.html', 'bench.html'] as const;
const BENCH = ['1 coils', '16 in two banks, assembled', 'two-bank-v8'];

/**
 * Runs in the browser: puts tiny marks at each heading, `H3.0`, and at what must stay with it, `H3.1` and
 * on: lines that explain, and the first row of a table, the first step, the first line. Gives how many each heading has.
 */
const MARK = `(() => {
  const texts = [];
  const heads = [...document.querySelectorAll('h1, h2, h3')].filter((e) => !e.closest('svg'));
  const first = (e) => {
    if (e === null) return [];
    if (e.matches('p')) return [e, ...(e.matches('.about') ? first(e.nextElementSibling) : [])];
    if (e.matches('table')) return [e.querySelector('tbody td')];
    if (e.matches('ol, ul')) return [e.querySelector('li')];
    if (e.matches('h1, h2, h3')) return [e];
    return e.querySelector('svg') ? [] : first(e.firstElementChild);
  };
  const mark = (e, text) => {
    const span = document.createElement('span');
    span.textContent = ' ' + text + ' ';
    span.style.cssText = 'font-size:2px;line-height:0';
    e.prepend(span);
  };
  // Found first: a mark is an element, too.
  const groups = heads.map((head) => [head, ...first(head.nextElementSibling)]);
  groups.forEach((group, i) => group.forEach((e, n) => mark(e, 'H' + i + '.' + n + '_')));
  return groups.map((group) => ({ text: group[0].textContent.replace(/H\\d+\\.\\d+_/g, ''), count: group.length }));
})()`;

interface Head {
  text: string;
  count: number;
}

/** Headings that are parted from what they head. */
function alone(heads: readonly Head[], words: readonly Word[]): string[] {
  const marks = new Map<string, Word>();
  for (const word of words) for (const [text] of word.text.matchAll(/H\d+\.\d+_/g)) marks.set(text, word);
  return heads.flatMap(({ text, count }, i) => {
    const own = Array.from({ length: count }, (_, n) => marks.get(`H${i}.${n}_`));
    const [head, ...rest] = own;
    if (head === undefined || rest.includes(undefined)) return [`${text}: a mark is lost`];
    // A column is at least 80 mm wide, the number of a step 6 mm.
    const parted = rest.some(
      (one) => one?.page !== head.page || one.top < head.top || Math.abs(one.left - head.left) > 40,
    );
    return parted ? [`${text}, page ${head.page}`] : [];
  });
}

describeWithPeer('chromium', 'headings on paper', () => {
  const browser = useBrowser();

  test.runIf(peer('pdftotext') !== null || process.env.CI)(
    'each stays with what it heads, on A4 and Letter [needs pdftotext]',
    async () => {
      const pdf = join(emptyFolder(), 'paper.pdf');
      const page = await browser().newPage();
      const found: string[] = [];

      for (const [name, design] of DESIGNS) {
        const all = papers(jobOf(design), WORDS);
        for (const paper of BENCH.includes(name) ? LONG : LONG.slice(0, 1)) {
          await page.setContent(all.get(paper) ?? '');
          const heads = await page.evaluate<Head[]>(MARK);
          expect(heads.filter(({ count }) => count > 1).length, `${name}, ${paper}`).toBeGreaterThan(4);
          for (const format of ['A4', 'Letter'] as const) {
            writeFileSync(pdf, await page.pdf({ format }));
            const { words } = wordsOf(pdf);
            found.push(...alone(heads, words).map((what) => `${name}, ${paper}, ${format}: ${what}`));
          }
        }
      }

      expect(found).toEqual([]);
    },
  );
});
