/** What the three kinds of users come for, from start to end by keyboard alone, in Chromium from a file on disk. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { demoPath } from '../workbook/books.ts';
import { answered, answers, open, pageOf, until } from './bench.ts';
import { held, press, reach, write } from './keyboard.ts';

describeWithPeer('chromium', 'three jobs by keyboard', () => {
  const browser = useBrowser();
  const opened = async () => {
    const found = await open(browser(), await pageOf());
    // From the start on, or the first question for a file can be asked before anybody listens.
    found.page.on('filechooser', () => {});
    return found;
  };

  /** What is done, and the answer to it. */
  const after = async (page: Page, act: () => Promise<void>): Promise<void> => {
    const before = await answers(page);
    await act();
    await answered(page, before + 1);
  };
  const downloaded = async (page: Page): Promise<Buffer> => {
    const [file] = await Promise.all([page.waitForEvent('download'), press(page, 'Enter')]);
    return readFileSync(await file.path());
  };
  const text = async (page: Page): Promise<string> => {
    await reach(page, /^button Save$/, 'Shift+Tab');
    await press(page, 'Enter');
    await reach(page, /^button Save YAML/);
    return (await downloaded(page)).toString();
  };
  /** Opens files by the keyboard; the browser's own dialogue is not part of the page. */
  const choose = async (page: Page, files: readonly string[]): Promise<void> => {
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'Enter')]);
    await chooser.setFiles([...files]);
  };

  test('a technician: from a few questions to a feed that passes, why a number is so, the workbook', async () => {
    const { page, said } = await opened();
    await reach(page, /^button New feed/);
    await press(page, 'Enter');
    await expect.poll(() => held(page)).toMatch(/^select Cylinders/);
    await page.keyboard.type('6');
    await reach(page, /^input Battery to the coils/);
    await write(page, '2.2');
    await reach(page, /^input Coil to the ground/);
    await write(page, '14 kg');
    await press(page, 'Enter');
    // What is wrong is said below, and has the focus; the dialogue stays.
    expect(await page.locator('#start-wrong').textContent()).toContain(
      'Coil to the ground on the engine: takes',
    );
    await expect.poll(() => held(page)).toMatch(/^input Coil to the ground/);
    await write(page, '14 in');
    await after(page, () => press(page, 'Enter'));
    expect(await page.locator('.verdict .word').textContent()).toContain('pass');
    await expect.poll(() => page.evaluate('document.activeElement.id')).toBe('answer');
    // To the form of the main wire, by its picture.
    await reach(page, /^g main: /);
    // The whole picture is one stop.
    expect(await reach(page, /^/)).not.toMatch(/^g /);
    await reach(page, /^button Change it/);
    await press(page, 'Enter');
    await until(page, `document.activeElement.closest('#field-feed_0_') !== null`);
    await reach(page, /^input Length, m/);
    await after(page, () => write(page, '3'));
    await press(page, 'Tab');
    // A bare number has taken the unit of its field, and shows it.
    expect(await page.locator('#field-feed_0__length').inputValue()).toBe('3 m');
    await reach(page, /^button Drop, worst path /);
    const drop = await page.evaluate('document.activeElement.textContent');
    await press(page, 'Enter');
    await page.locator('.panel .tree').first().waitFor();
    expect(await page.locator('.panel h2').textContent()).toContain(`: ${drop}`);
    await press(page, 'Escape');
    await expect.poll(() => held(page)).toContain('Drop, worst path');
    await reach(page, /^button Save$/, 'Shift+Tab');
    await press(page, 'Enter');
    await reach(page, /^button Workbook/);
    const file = join(emptyFolder(), 'new.xlsx');
    writeFileSync(file, await downloaded(page));
    const { status, out } = await coilfeed(['size', file, '--json']);
    expect(status).toBe(0);
    const { runs, verdict } = JSON.parse(out);
    expect(verdict).toBe('pass');
    expect(runs[0].length_m).toBe(3);
    await expect.poll(() => held(page)).toBe('button Save');
    // The result was announced in words.
    await until(
      page,
      `document.querySelector('[aria-label="Result"]').textContent.startsWith('pass: drop ')`,
    );
    expect(said).toEqual([]);
  });

  test('a tuner: a design with its shop’s file, a reading, what explains it, what was there before', async () => {
    const { page, said } = await opened();
    await reach(page, /^button Open a file/);
    await choose(page, [demoPath('two-bank-v8')]);
    // Without the shop's file there is no answer, and the way to it stands beside what is missing.
    await until(page, `document.querySelector('.verdict h2').textContent === 'two-bank-v8.yaml'`);
    await reach(page, /^button Open the shop/);
    await choose(page, [demoPath('shop')]);
    await until(page, `document.querySelector('.verdict .word')?.textContent.includes('pass')`);
    // The button is gone; one goes on from the answer.
    await until(page, `document.activeElement.id === 'answer'`);
    await reach(page, /^a Readings/);
    await press(page, 'Enter');
    await reach(page, /^summary What to measure/);
    await press(page, 'Enter');
    await page.locator('.entry').first().waitFor();
    await reach(page, /^input drop, main limiter, multimeter/);
    const top = `document.activeElement.getBoundingClientRect().top`;
    const before = (await page.evaluate(top)) as number;
    await page.keyboard.type('900');
    await after(page, () => press(page, 'Enter'));
    await page.locator('.part-readings .causes').first().waitFor();
    // What came in above has moved nothing under the hands: a pixel for rounding, and what the reading itself is wider.
    await new Promise((done) => setTimeout(done, 200));
    expect(Math.abs(((await page.evaluate(top)) as number) - before)).toBeLessThan(12);
    const told = await page.locator('.check').textContent();
    expect(told).toMatch(/\d+ %.*main/);
    expect(told).toContain('What to measure next');
    // A reading that cannot be is marked, and said below the card.
    await reach(page, /^input drop, left trunk limiter, multimeter/);
    await page.keyboard.type('9 kg');
    await after(page, () => press(page, 'Enter'));
    await until(page, `document.activeElement.getAttribute('aria-invalid') === 'true'`);
    expect(await page.locator('.card-help p.problem').textContent()).toContain('"9 kg"');
    await after(page, async () => {
      await press(page, 'Control+a', 'Delete', 'Enter');
    });
    // The feed that this one replaces starts as a copy.
    await reach(page, /^summary The feed that this one replaces/, 'Shift+Tab');
    await press(page, 'Enter');
    await reach(page, /^button add it/);
    await after(page, () => press(page, 'Enter'));
    await expect.poll(() => held(page)).toMatch(/^summary The feed that this one replaces/);
    await reach(page, /^summary main/);
    await press(page, 'Enter');
    await reach(page, /^input Length, m/);
    await after(page, () => write(page, '4'));
    await reach(page, /^a Compare/);
    await press(page, 'Enter');
    await page.locator('.compare table').first().waitFor();
    expect(await page.locator('.compare').textContent()).toContain('original');
    const saved = await text(page);
    expect(saved).toContain('meter: 900 mV');
    expect(saved).not.toContain('kg');
    expect(said).toEqual([]);
  });

  test('a kit writer: names and counts by form, papers read and saved, one page to print', async () => {
    const page = (await open(browser(), await pageOf(demoPath('pair-four')))).page;
    await reach(page, /^summary Papers of the kit/);
    await press(page, 'Enter');
    await reach(page, /^button add kit/);
    await after(page, () => press(page, 'Enter'));
    await expect.poll(() => held(page)).toMatch(/^summary Papers of the kit/);
    await reach(page, /^button add parts/);
    await after(page, () => press(page, 'Enter'));
    await expect.poll(() => held(page)).toMatch(/^input Fuse/);
    await after(page, () => write(page, 'Blade fuse, red bag'));
    await reach(page, /^button add spares/, 'Shift+Tab');
    await after(page, () => press(page, 'Enter'));
    await expect.poll(() => held(page)).toMatch(/^input Fuse/);
    await after(page, () => write(page, '3'));
    await reach(page, /^a Kit/);
    await press(page, 'Enter');
    await reach(page, /^summary Instructions/);
    await press(page, 'Enter');
    await reach(page, /^input Kits made at a time/);
    await page.keyboard.type('2');
    await reach(page, /^input Serial numbers/);
    await page.keyboard.type('A7-A9');
    await press(page, 'Tab');
    // Two kits and three numbers do not go together.
    await until(
      page,
      `document.querySelector('.part-kit .problem')?.textContent.includes('they must agree')`,
    );
    await reach(page, /^input Serial numbers/, 'Shift+Tab');
    await write(page, 'A7-A8');
    await press(page, 'Enter');
    await page.locator('.papers').waitFor();
    await reach(page, /^button Preview of build-record.html/);
    await press(page, 'Enter');
    await until(page, `document.querySelector('.preview')?.shadowRoot.textContent.includes('A8')`);
    // What is read lies right behind its button.
    await reach(page, /^section Preview of build-record.html/);
    await reach(page, /^button All papers as one ZIP/, 'Shift+Tab');
    const papers = unzipSync(await downloaded(page));
    const parts = strFromU8(papers['parts.csv'] as Uint8Array);
    expect(parts).toContain('Blade fuse, red bag');
    // One fuse and three spare ones, for one kit and for two.
    expect(parts.split('\n').find((line) => line.includes('red bag'))).toMatch(/\b4\b.*\b8\b/);
    await page.evaluate(
      `window.print = () => { document.body.dataset.printed = 'appendix' in document.documentElement.dataset; }`,
    );
    await reach(page, /^button Print$/, 'Shift+Tab');
    await press(page, 'Enter');
    await reach(page, /^button Print one page/);
    await press(page, 'Enter');
    // When all is drawn.
    await until(page, `document.body.dataset.printed === 'false'`);
  });
});
