/** The page on paper, A4 and Letter: one page, and an appendix whose pictures stand below their headings. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder } from '../cli/tool.ts';
import { demo } from '../design/helpers.ts';
import { banked, straight } from '../kit/designs.ts';
import { wordsOf } from '../kit/pdf.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer, peer } from '../peers/peer.ts';
import { open, pageOf, until } from './bench.ts';

const FORMATS = ['A4', 'Letter'] as const;
/** By coils; the widest screen has the answer beside the design, the phone has the feed down the page. */
const DESIGNS: readonly [string, string, number][] = [
  ['four', demo('pair-four'), 1440],
  ['eight in two banks', demo('two-bank-v8'), 1440],
  ['sixteen', straight(16), 360],
  ['sixteen in two banks, with a fuse each', banked(16), 1024],
  ['eight, and a design that fails', banked(8).replace('gauge: 6 AWG', 'gauge: 22 AWG'), 1440],
];
/** A heading, and what stands at the foot of the picture below it. */
const PICTURES = [
  ['Over engine speed', 'Engine speed in rpm'],
  ['In time', 'below it time in ms'],
  ['Fuse against conductor', 'Time in s'],
] as const;
/** 8 points [px], but for the last digits of a division. */
const LEAST = 10.66;

describeWithPeer('chromium', 'the page on paper', () => {
  const browser = useBrowser();

  test('one page for 4, 8 and 16 coils, in letters of 8 points and more, and from a phone', async () => {
    for (const [name, text, width] of DESIGNS) {
      const design = join(emptyFolder(), 'design.yaml');
      writeFileSync(design, text);
      const { page } = await open(browser(), await pageOf(design), { viewport: { width, height: 900 } });
      for (const format of FORMATS) {
        const pages = (await page.pdf({ format })).toString('latin1').match(/\/Type\s*\/Page\b/g);
        expect(pages, `${name}, ${format}`).toHaveLength(1);
      }
      await page.emulateMedia({ media: 'print' });
      await page.evaluate(`document.documentElement.dataset.appendix = ''`);
      const small = await page.evaluate(`const scaleOf = (at) => at == null ? 1 : Math.hypot(at.a, at.b);
        [...document.querySelectorAll('.answer *')]
        .filter((one) => one.checkVisibility() && one.closest('.of') === null)
        .filter((one) => [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== ''))
        .filter((one) => parseFloat(getComputedStyle(one).fontSize) * scaleOf(one.getScreenCTM?.()) < ${LEAST})
        .map((one) => one.outerHTML.slice(0, 80))`);
      expect(small, name).toEqual([]);
      await page.context().close();
    }
  });

  test.runIf(peer('pdftotext') !== null || process.env.CI)(
    'in the appendix no picture is parted from its heading [needs pdftotext]',
    async () => {
      const design = join(emptyFolder(), 'design.yaml');
      writeFileSync(design, demo('two-bank-v8'));
      const { page } = await open(browser(), await pageOf(design));
      await until(
        page,
        `document.querySelectorAll('.part-speed svg, .part-trace svg, .part-curves svg').length >= 3`,
      );
      await page.evaluate(`document.documentElement.dataset.appendix = ''`);
      for (const format of FORMATS) {
        const pdf = join(emptyFolder(), 'page.pdf');
        writeFileSync(pdf, await page.pdf({ format }));
        const { pages, words } = wordsOf(pdf);
        const texts = pages.map((_, i) =>
          words.flatMap((word) => (word.page === i + 1 ? [word.text] : [])).join(' '),
        );
        for (const [heading, foot] of PICTURES) {
          const [on] = texts.filter((text) => text.includes(heading));
          expect(on, `${heading}, ${format}`).toContain(foot);
        }
        // Nothing is compared, and so nothing says how.
        expect(texts.join(' ')).not.toContain('Compare');
      }
    },
  );
});
