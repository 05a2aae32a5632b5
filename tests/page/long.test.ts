/** What takes its time in the page: it tells what it is at, can be stopped by keyboard, and says what came of it. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { largest } from '../../src/build/largest.ts';
import { emptyFolder } from '../cli/tool.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { answered, answers, choose, open, pageOf, until } from './bench.ts';

/** 16 coils with 64 firings and 64 conductors, at two points and four speeds. */
const SIXTEEN = largest()
  .replace(/^ {2}- \{ name: point (?:[2-9]|\d\d),.*\n/gm, '')
  .replace('step: 10 rpm', 'step: 600 rpm');

describeWithPeer('chromium', 'long work in the page', () => {
  const browser = useBrowser();

  /** What the place of this button says, each text once, from now on. */
  const listen = (page: Page, within: string): Promise<unknown> =>
    page.evaluate(`(() => {
      const place = document.querySelector('${within} [role=status]');
      globalThis.told = [];
      new MutationObserver(() => told.at(-1) !== place.textContent && told.push(place.textContent))
        .observe(place, { subtree: true, childList: true, characterData: true });
    })()`);
  const told = (page: Page): Promise<string[]> => page.evaluate('told') as Promise<string[]>;
  const says = (page: Page, within: string, words: string): Promise<void> =>
    until(page, `document.querySelector('${within} [role=status]').textContent.includes('${words}')`);

  test('a workbook of 16 coils: its stages, stopped by keyboard, made at last; a failure is told', async () => {
    const file = join(emptyFolder(), 'sixteen.yaml');
    writeFileSync(file, SIXTEEN);
    const { page, said } = await open(browser(), await pageOf(file));
    const downloads: string[] = [];
    page.on('download', (one) => downloads.push(one.suggestedFilename()));
    await listen(page, '.toolbar');
    await choose(page, 'Save', 'Workbook');
    await says(page, '.toolbar', '3 of 4');
    // Meanwhile the numbers follow.
    const before = await answers(page);
    await page.locator('#field-coil_resistance').fill('0.52 ohm');
    await answered(page, before + 1);
    await page.getByRole('button', { name: 'Stop the workbook' }).focus();
    await page.keyboard.press('Enter');
    await says(page, '.toolbar', 'Stopped: the workbook was not made.');
    expect(await page.locator('.toolbar progress').count()).toBe(0);
    // The next press of Tab goes on from what was said.
    await until(page, `document.activeElement === document.querySelector('.toolbar [role=status]')`);
    // Once more, to its end; what it was at came in order.
    await choose(page, 'Save', 'Workbook');
    await says(page, '.toolbar', 'The workbook is in the downloads.');
    expect(downloads).toEqual(['sixteen.xlsx']);
    const stages = (await told(page)).flatMap((words) => /\d of 4/.exec(words) ?? []);
    expect(stages.slice(-4)).toEqual(['1 of 4', '2 of 4', '3 of 4', '4 of 4']);
    // A part of the page that cannot be unpacked stands for whatever fails.
    await page.evaluate(`document.getElementById('part-sheets').textContent = 'AAAA'`);
    await choose(page, 'Save', 'Workbook');
    await says(page, '.toolbar', 'The workbook could not be made');
    expect(await page.locator('.toolbar progress').count()).toBe(0);
    expect(downloads).toEqual(['sixteen.xlsx']);
    expect(said).toEqual([]);
  });

  test('papers, their workbook, what was tried: stopped and started again', async () => {
    const file = join(emptyFolder(), 'sixteen.yaml');
    writeFileSync(file, `${SIXTEEN}limits: { drop: 0.01 V }\n`);
    const { page, said } = await open(browser(), await pageOf(file));
    const remedies = page.locator('.remedies');
    await remedies.getByRole('button', { name: 'Stop' }).focus();
    await page.keyboard.press('Enter');
    await says(page, '.remedies', 'Stopped: nothing was made.');
    // The same button starts it again, and whoever pressed it is still there.
    await expect.poll(() => page.evaluate('document.activeElement.textContent')).toBe('Start again');
    await page.keyboard.press('Enter');
    await remedies.getByRole('button', { name: 'Stop' }).press('Enter');
    await says(page, '.remedies', 'Stopped: nothing was made.');
    await page.locator('.part-kit summary').click();
    await page.locator('.papers').waitFor();
    await page.getByRole('button', { name: 'Workbook of the kit' }).click();
    await page.getByRole('button', { name: 'Stop the workbook of the kit' }).press('Enter');
    await says(page, '.part-kit .making', 'Stopped: the workbook of the kit was not made.');
    expect(await page.getByRole('button', { name: 'Workbook of the kit' }).isEnabled()).toBe(true);
    // The wiring diagram of 16 coils, drawn beside.
    await page.locator('img.wiring').waitFor();
    expect(said).toEqual([]);
  });
});
