/** What the three kinds of users come for, by thumb on a phone: nothing is cut or out of reach on the way. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { emptyFolder } from '../cli/tool.ts';
import { straight } from '../kit/designs.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { demoPath } from '../workbook/books.ts';
import { answered, answers, type Opened, open, pageOf, until } from './bench.ts';

const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

/** What does not fit: too small for a thumb, or beyond the edge of the screen and in nothing that scrolls. */
const UNFIT = `(() => {
  const shown = [...document.querySelectorAll('body *')].filter((one) => one.checkVisibility({ visibilityProperty: true }) && one.closest('.of') === null);
  const name = (one) => one.tagName + ' ' + (one.getAttribute('aria-label') ?? one.textContent).trim().slice(0, 50);
  const small = shown
    .filter((one) => one.matches('button, select, textarea, input:not([type=file]), summary, nav a'))
    .filter((one) => one.getBoundingClientRect().height < 43.5 || one.getBoundingClientRect().width < 43.5)
    .map((one) => 'small: ' + name(one));
  const scrolls = (one) => one.closest('.links, .scroll, .preview, textarea, .skip, thead') !== null;
  const beyond = shown
    .filter((one) => !scrolls(one) && one.closest('svg') === null)
    .filter((one) => { const { left, right, width } = one.getBoundingClientRect(); return width > 0 && (left < -1 || right > 361); })
    .map((one) => 'beyond the edge: ' + name(one));
  // Letters that their own box cuts off.
  const cut = shown
    .filter((one) => one.children.length === 0 && one.textContent.trim() !== '' && !scrolls(one) && one.closest('svg, select') === null)
    .filter((one) => getComputedStyle(one).overflowX !== 'visible' && one.scrollWidth > one.clientWidth + 1)
    .map((one) => 'cut: ' + name(one));
  // The feed runs down the page, and tables stand as rows: neither scrolls, and no letters of the feed lie on others.
  const scrolled = shown
    .filter((one) => one.matches('.scroll') && one.scrollWidth > one.clientWidth)
    .map((one) => 'scrolls: ' + name(one));
  const picture = document.querySelector('.feed svg[role=application]');
  const letters = picture === null || !picture.checkVisibility() ? [] : [...picture.querySelectorAll('text')];
  const edge = picture?.getBoundingClientRect();
  const crossed = letters.flatMap((one, i) => {
    const a = one.getBoundingClientRect();
    const on = letters.slice(i + 1).filter((other) => {
      const b = other.getBoundingClientRect();
      return Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4;
    });
    return [...on.map((other) => name(one) + ' on ' + name(other)), ...(a.left < edge.left || a.right > edge.right ? ['out of the feed: ' + name(one)] : [])];
  });
  const links = [...document.querySelectorAll('.links a')].filter((one) => one.scrollWidth > one.clientWidth).map((one) => 'cut: ' + name(one));
  const wide = document.documentElement.scrollWidth > 360 || innerWidth > 360 ? ['the page scrolls sideways'] : [];
  return [...small, ...beyond, ...cut, ...scrolled, ...crossed, ...links, ...wide];
})()`;

/** Names as long as they may be. */
const LONG = `
coilfeed: 1
title: Six cylinders, the harness of the endurance car after the cooling duct was moved
engine: { cylinders: 6, stroke: 4, firing_order: [1, 5, 3, 6, 2, 4] }
ignition:
  layout: listed
  dwell: 3.0 ms
  coils:
    - { id: front left upper coil, fires_at: [0] }
    - { id: rear right upper coil number two of all, fires_at: [120] }
    - { id: "3", fires_at: [240] }
    - { id: middle right, fires_at: [360] }
    - { id: fifth-and-nearly-last-of-all-the-coils-1, fires_at: [480] }
    - { id: six, fires_at: [600] }
coil: { resistance: 0.5 ohm, inductance: 2.8 mH, driver_drop: 1.0 V }
points:
  - { name: limiter on the straight behind the pits, rpm: 6800 rpm, supply: 14.2 V }
feed:
  - { run: from the battery to the bulkhead, carries: all, length: 2.1 m, ambient: 70 degC, insulation: C, gauge: auto }
  - { run: through-the-bulkhead-and-along-the-loom1, carries: [front left upper coil, "3", fifth-and-nearly-last-of-all-the-coils-1], length: 0.5 m, ambient: 90 degC, insulation: C, gauge: auto }
  - { run: through-the-bulkhead-and-along-the-loom2, carries: [rear right upper coil number two of all, middle right, six], length: 0.9 m, ambient: 90 degC, insulation: C, gauge: auto }
  - { run: branch to each one of all of the coils, carries: each, length: { front left upper coil: 0.3 m, rear right upper coil number two of all: 0.35 m, "3": 0.4 m, middle right: 0.45 m, fifth-and-nearly-last-of-all-the-coils-1: 0.5 m, six: 0.6 m }, ambient: 90 degC, insulation: C, gauge: auto }
return:
  - { run: strap from the engine to the body, carries: all, length: 0.6 m, ambient: 80 degC, insulation: C, gauge: 4 AWG }
`;

describeWithPeer('chromium', 'three jobs by thumb', () => {
  const browser = useBrowser();
  const fits = async (page: Page, state: string): Promise<void> =>
    expect(await page.evaluate(UNFIT), state).toEqual([]);
  const button = (page: Page, name: string | RegExp): Locator =>
    page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });
  const after = async (page: Page, act: () => Promise<void>): Promise<void> => {
    const before = await answers(page);
    await act();
    await answered(page, before + 1);
  };
  const turn = (page: Page, side: 'Design' | 'Answer'): Promise<void> =>
    page.locator('.turn button', { hasText: side }).tap();
  const saved = async (page: Page, of: Locator): Promise<Buffer> => {
    const [file] = await Promise.all([page.waitForEvent('download'), of.tap()]);
    return readFileSync(await file.path());
  };
  const opened = async (design?: string): Promise<Opened> => open(browser(), await pageOf(design), PHONE);

  test('a technician: a few questions, the answer, one length changed, why a number is so', async () => {
    const { page, said } = await opened();
    await fits(page, 'at first');
    await button(page, 'New feed').tap();
    await page.locator('#start-cylinders').selectOption('6');
    await page.locator('#start-main').fill('2.2');
    await page.locator('#start-ground').fill('14 kg');
    await fits(page, 'questions');
    await button(page, 'Show the answer').tap();
    expect(await page.locator('#start-wrong').textContent()).toContain(
      'Coil to the ground on the engine: takes',
    );
    await fits(page, 'questions, one wrong');
    await page.locator('#start-ground').fill('14 in');
    await after(page, () => button(page, 'Show the answer').tap());
    await until(page, `document.title.startsWith('PASS – 6 cylinders')`);
    // The answer is what is seen, the design is behind the switch.
    expect(await page.locator('.answer').isVisible()).toBe(true);
    expect(await page.locator('.design').isVisible()).toBe(false);
    await fits(page, 'the answer');
    await page.locator('.feed .part.wire').first().tap();
    await until(page, `document.querySelector('.card .reading').textContent.includes('main')`);
    await button(page, 'Change it').scrollIntoViewIfNeeded();
    const place = await page.evaluate('scrollY');
    await button(page, 'Change it').tap();
    await until(page, `document.activeElement.closest('#field-feed_0_') !== null`);
    expect(await page.locator('.answer').isVisible()).toBe(false);
    // Each side stays where it was.
    const form = await page.evaluate('scrollY');
    await turn(page, 'Answer');
    expect(await page.evaluate('scrollY')).toBe(place);
    await turn(page, 'Design');
    expect(await page.evaluate('scrollY')).toBe(form);
    await after(page, () => page.locator('#field-feed_0__length').fill('3'));
    await fits(page, 'the form of the main wire');
    await turn(page, 'Answer');
    await page.locator('.big button').first().tap();
    await page.locator('.panel .tree').first().waitFor();
    await fits(page, 'where a number comes from');
    await button(page, 'Close').tap();
    await button(page, 'Save').tap();
    await fits(page, 'the list of what can be saved');
    expect((await saved(page, button(page, 'Save YAML'))).toString()).toMatch(/length: 3 m/);
    expect(said).toEqual([]);
  });

  test('a tuner: a design with its shop’s file, a reading, its causes, what was there before', async () => {
    const { page, said } = await opened();
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      button(page, 'Open a file').tap(),
    ]);
    await chooser.setFiles([demoPath('two-bank-v8'), demoPath('shop')]);
    await until(page, `document.title.startsWith('PASS – ')`);
    // What was said lies over the answer, until something is pressed.
    await until(page, `document.querySelector('.said').textContent.startsWith('Opened')`);
    await page.locator('.links a', { hasText: 'Readings' }).tap();
    await until(page, `document.querySelector('.said').textContent === ''`);
    await page.locator('.part-readings summary').first().tap();
    const drop = page.getByRole('textbox', { name: /^drop, main limiter, multimeter/ });
    await drop.tap();
    // The keyboard comes up: what is typed in stays above what stands at the foot of the screen.
    await page.setViewportSize({ width: 360, height: 400 });
    const covered = `document.activeElement.getBoundingClientRect().bottom > document.querySelector('.card-help').getBoundingClientRect().top`;
    await until(page, `innerHeight === 400 && !(${covered})`);
    await drop.fill('900');
    await after(page, () => drop.press('Enter'));
    await page.setViewportSize(PHONE.viewport);
    await page.locator('.part-readings .causes').first().waitFor();
    await fits(page, 'causes of a reading');
    expect(await page.locator('.check').textContent()).toMatch(/\d+ %.*main/);
    await turn(page, 'Design');
    await page.locator('summary', { hasText: 'The feed that this one replaces' }).tap();
    await after(page, () => button(page, /^add it/).tap());
    await fits(page, 'the feed before, by form');
    await turn(page, 'Answer');
    await page.locator('.links a', { hasText: 'Compare' }).tap();
    await page.locator('.compare table').first().waitFor();
    await fits(page, 'beside the feed before');
    expect(said).toEqual([]);
  });

  test('names of forty letters fit everywhere, and so do labels on close wires', async () => {
    for (const [name, text] of [
      ['long names', LONG],
      [
        'thin wires, and a main wire that is too hot for any current',
        straight(4)
          .replaceAll('60 degC, insulation: C, gauge: auto', '90 degC, insulation: A, gauge: 20 AWG')
          .replace(/50 degC\n {4}insulation: C/, '85 degC\n    insulation: A'),
      ],
    ] as const) {
      const design = join(emptyFolder(), 'design.yaml');
      writeFileSync(design, text);
      const { page, said } = await opened(design);
      await page.locator('.part-trace svg').first().waitFor();
      await page.evaluate(`document.querySelectorAll('details').forEach((one) => { one.open = true; })`);
      await until(page, `document.querySelector('.facts .origin') !== null`);
      for (const mode of ['Load', 'Drop', 'Temperature', 'Energy']) {
        await page.locator('.part-feed .switch button', { hasText: mode }).tap();
        await until(
          page,
          `document.querySelector('.part-feed [aria-pressed=true]').textContent === '${mode}'`,
        );
        await fits(page, `${name}: ${mode}`);
      }
      // A figure of a word stands on one line.
      const broken = `[...document.querySelectorAll('.facts .origin')].filter((one) => one.textContent.length < 10 && one.getBoundingClientRect().height > 46).length`;
      expect(await page.evaluate(broken), name).toBe(0);
      expect(said).toEqual([]);
      await page.context().close();
    }
  });

  test('a kit writer: names by form, papers read and saved, one page to print', async () => {
    const { page, said } = await opened(demoPath('pair-four'));
    await turn(page, 'Design');
    await page.locator('summary', { hasText: 'Papers of the kit' }).tap();
    await after(page, () => button(page, 'add kit').tap());
    await after(page, () => button(page, /^add parts/).tap());
    await after(page, () => page.locator('#field-kit_parts_fuse').fill('Blade fuse, red bag'));
    await fits(page, 'the kit, by form');
    await turn(page, 'Answer');
    await page.locator('.links a', { hasText: 'Kit' }).tap();
    await page.locator('.part-kit summary').tap();
    await page.getByRole('textbox', { name: /^Kits made at a time/ }).fill('2');
    await page.getByRole('textbox', { name: /^Serial numbers/ }).fill('A7-A8');
    await page.locator('.part-kit h3').tap();
    await page.locator('.papers').waitFor();
    await button(page, 'Preview of build-record.html').tap();
    await until(page, `document.querySelector('.preview')?.shadowRoot?.textContent.includes('A8') === true`);
    await fits(page, 'a paper of the kit');
    const papers = unzipSync(await saved(page, button(page, 'All papers as one ZIP')));
    expect(strFromU8(papers['parts.csv'] as Uint8Array)).toContain('Blade fuse, red bag');
    await page.evaluate(`window.print = () => { document.body.dataset.printed = 'yes'; }`);
    await button(page, 'More').tap();
    await fits(page, 'the list of what else there is');
    await button(page, 'Print one page').tap();
    await until(page, `document.body.dataset.printed === 'yes'`);
    expect(said).toEqual([]);
  });
});
