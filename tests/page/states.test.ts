/** States that a person meets late: readings, papers, questions, parts that are not known; forced colours, reduced motion. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder } from '../cli/tool.ts';
import { demo } from '../design/helpers.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { demoPath } from '../workbook/books.ts';
import { faultsInBoth } from './axe.ts';
import { answered, answers, open, pageOf, type, unfold, until } from './bench.ts';
import { HOLD } from './hold.ts';

/** A rule that is not met, and a value. */
const OWN = `own:
  - { label: Wire in all, formula: SUM(run_length), unit: m, at_most: 1, words: The reel holds 1 m. }
  - { label: Copper, formula: copper, unit: g }
`;
/** The same feed before, as a copy. */
const BEFORE = `original:\n${(/^feed:[\s\S]*?(?=^limits:)/m.exec(demo('pair-four')) ?? [''])[0].replace(/^(?=.)/gm, '  ')}`;

describeWithPeer('chromium', 'late states of the page', () => {
  const browser = useBrowser();
  test.each([1280, 360])('axe finds nothing with readings, papers, questions: %i px', async (width) => {
    const { page } = await open(browser(), await pageOf(demoPath('pair-four')), {
      viewport: { width, height: 800 },
    });
    await page.locator('.part-readings summary').click();
    const drop = page.getByRole('textbox', { name: /^drop, main limiter, multimeter/ });
    await drop.fill('900');
    await drop.press('Enter');
    await page.locator('.causes').first().waitFor();
    expect(await faultsInBoth(page), 'readings').toEqual([]);
    await page.locator('.part-kit summary').click();
    await page.getByRole('button', { name: 'Preview of test-card.html' }).click();
    await page.locator('.preview').waitFor();
    expect(await faultsInBoth(page), 'papers').toEqual([]);
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('button', { name: /^A new feed/ }).click();
    await page.locator('#start-ohm').fill('kg');
    await page.locator('#start-henry').focus();
    expect(await page.locator('#start-wrong').textContent()).toContain('Primary resistance');
    expect(await faultsInBoth(page), 'questions').toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
  });

  test.each([1280, 360])(
    'axe finds nothing beside the feed before, with rules of the author, while an answer is awaited: %i px',
    async (width) => {
      const file = join(emptyFolder(), 'compared.yaml');
      writeFileSync(file, `${demo('pair-four')}\n${OWN}${BEFORE}`);
      const { page } = await open(browser(), await pageOf(file), { viewport: { width, height: 800 } });
      await until(page, `document.querySelector('.compare table') !== null`);
      await until(page, `document.title.startsWith('FAIL')`);
      expect(await page.locator('.compare').textContent()).toContain('Original');
      expect(await faultsInBoth(page), 'beside the feed before').toEqual([]);
      await page.evaluate(HOLD);
      await page.evaluate(`hold('design')`);
      await page.locator('.slider input').first().press('ArrowRight');
      await until(page, `document.querySelector('.verdict .mark')?.textContent === 'Working'`);
      expect(await faultsInBoth(page), 'working').toEqual([]);
      await page.evaluate('letGo()');
      await until(page, `document.title.startsWith('FAIL')`);
    },
  );

  test('a part that is not known: the verdict says so, and nothing is listed to buy', async () => {
    const { page } = await open(browser(), await pageOf(demoPath('pair-four')));
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    const area = page.locator('#design-text');
    const text = await area.inputValue();
    const before = await answers(page);
    await area.fill(text.replace(/gauge: [^,}\n]*/, 'gauge: unknown'));
    await answered(page, before + 1);
    // The feed passes with what is taken in the place of the sizes: that is no verdict on it.
    expect(await page.locator('.verdict .mark').textContent()).toBe('? unknown');
    expect(await page.title()).toMatch(/^UNKNOWN – /);
    expect(await page.locator('.verdict .problem').textContent()).toContain('not known');
    // What limits has the room that it has without these words: a line each, not a column of letters.
    const [words, limits] = (await page.evaluate(
      `['.verdict .problem', '.verdict .limits'].map((one) => document.querySelector(one).getBoundingClientRect().width)`,
    )) as [number, number];
    expect(limits).toBe(words);
    expect(await page.locator('.part-buy').textContent()).toContain('nothing is listed to buy');
    // Also without readings: what hangs on the part, and where to look.
    await page.locator('.check').waitFor();
    expect(await page.locator('.check').textContent()).toMatch(/Size of \w+: decides .* Look at: /);
    expect(await faultsInBoth(page)).toEqual([]);
    // Its workbook would say PASS of what was taken: the command makes none of it either.
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    for (const name of ['Workbook', 'Result'])
      expect(await page.getByRole('button', { name, exact: true }).isDisabled(), name).toBe(true);
  });

  test('where no size is found, the size that is no longer chosen is one', async () => {
    const { page } = await open(browser(), await pageOf(demoPath('pair-four')));
    await unfold(page);
    await type(page, 'limits_drop', '0.1 V');
    await until(page, `document.title.startsWith('FAIL')`);
    const before = await answers(page);
    await page.locator('.slider button').press('Enter');
    await answered(page, before + 1);
    expect(await page.locator('.problems').count()).toBe(0);
    expect(await page.locator('#field-feed_0__gauge').inputValue()).toMatch(/^\S+ \w+$/);
  });

  test('under forced colours steps of a share differ by stroke, kinds of a drop by fill; nothing moves', async () => {
    const { page } = await open(browser(), await pageOf(demoPath('pair-four')), {
      forcedColors: 'active',
      reducedMotion: 'reduce',
    });
    const looks = (selector: string, what: string): Promise<unknown[]> =>
      page.evaluate(
        `[...document.querySelectorAll(${JSON.stringify(selector)})].map((one) => getComputedStyle(one)[${JSON.stringify(what)}])`,
      );
    const dashes = await looks('.tones .tone', 'strokeDasharray');
    expect(dashes.length).toBe(5);
    expect(new Set(dashes).size).toBe(5);
    const fills = await looks('.kinds .spend', 'fill');
    expect(fills.length).toBeGreaterThanOrEqual(3);
    expect(new Set(fills).size).toBe(fills.length);
    expect(await page.locator('.verdict .word').textContent()).toMatch(/[✓✕?]/);
    await page.locator('.part[tabindex="0"]').focus();
    const ring = await looks('.part[tabindex="0"] .hit', 'stroke');
    expect(ring).not.toEqual(['none']);
    // A frame is 17 ms.
    expect(
      await page.evaluate(
        `document.getAnimations().filter((one) => one.effect.getTiming().duration > 17).length`,
      ),
    ).toBe(0);
    const long = await page.evaluate(`[...document.querySelectorAll('*')].filter((one) => {
      const { transitionDuration, animationDuration, scrollBehavior } = getComputedStyle(one);
      return [transitionDuration, animationDuration].some((time) => parseFloat(time) > 0.017) || scrollBehavior === 'smooth';
    }).length`);
    expect(long).toBe(0);
  });
});
