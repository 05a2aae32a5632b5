/** The page as a person uses it: in Chromium, from a file on disk. The command line says what is right. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { stateOf } from '../../src/commands/seal/seal.ts';
import { readDesign } from '../../src/design/read.ts';
import { run } from '../../src/run.ts';
import { toJson } from '../../src/writers/json.ts';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { DEMOS, demo } from '../design/helpers.ts';
import { straight } from '../kit/designs.ts';
import { readCells } from '../peers/cells.ts';
import { useBrowser } from '../peers/chromium.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer, peer } from '../peers/peer.ts';
import { differences } from '../workbook/agree.ts';
import { demoPath } from '../workbook/books.ts';
import { faults, faultsInBoth } from './axe.ts';
import {
  answered,
  answers,
  apart,
  choose,
  download,
  listenTo,
  open,
  pageOf,
  type,
  unfold,
  until,
} from './bench.ts';

const SIX = demoPath('hill-climb-six');
/** The same with its coil stated, and of no shop. */
const STATED = demo('hill-climb-six')
  .replace(
    /^coil: .*$/m,
    'coil:\n  resistance: 0.42 ohm # primary, at 20 degC\n  inductance: 2.4 mH\n  driver_drop: 1.2 V',
  )
  .replace('use: power 50', 'rating: 50 A')
  .replace(/^kit:[\s\S]*/m, '');

/** Four coils in feet and degrees Fahrenheit; no demo. */
const IN_US =
  `${straight(4, '', 'Four in US units')}sweep: { from: 500 rpm, to: 5000 rpm, step: 500 rpm, supply: 14 V }\n`
    .replace('coilfeed: 1', 'coilfeed: 1\nunits: us')
    .replaceAll('50 degC', '122 degF')
    .replace('1.5 m', '5 ft');

describeWithPeer('chromium', 'the page', () => {
  const browser = useBrowser();

  const stated = (): string => {
    const file = join(emptyFolder(), 'hill-climb-six.yaml');
    writeFileSync(file, STATED);
    return file;
  };
  const opened = async (design?: string, options = {}) => open(browser(), await pageOf(design), options);
  const result = async (page: Page) => JSON.parse((await download(page, 'Result')).toString());
  const give = (page: Page, name: string, text: string | Buffer): Promise<void> =>
    page
      .locator('input[type=file]')
      .setInputFiles({ name, mimeType: '', buffer: Buffer.isBuffer(text) ? text : Buffer.from(text) });
  const titled = (page: Page, start: string): Promise<void> =>
    until(page, `document.querySelector('.verdict h2')?.textContent.startsWith(${JSON.stringify(start)})`);

  test('the result is that of the command line, number for number: each demo, and one in US units', async () => {
    const { page, said, asked } = await opened(demoPath(DEMOS[0] as string));
    const us = join(emptyFolder(), 'van.yaml');
    writeFileSync(us, IN_US);
    const designs = [
      ...DEMOS.map((name) => ({ text: demo(name), path: demoPath(name) })),
      { text: IN_US, path: us },
    ];
    for (const { text, path } of designs) {
      const before = await answers(page);
      await give(page, basename(path), text);
      await answered(page, before + 1);
      const { out } = await coilfeed(['size', path, '--json']);
      expect(apart(await result(page), JSON.parse(out)), path).toEqual([]);
      // Every picture is drawn: the drop, over engine speed, over the working cycle, one charge, one set of curves.
      await expect.poll(() => page.locator('figure.chart').count()).toBe(5);
    }
    expect(await page.locator('figure.chart path').count()).toBeGreaterThan(40);
    expect(said).toEqual([]);
    expect(asked).toEqual([]);
  });

  test('what is wrong is held back by itself, and the page says that it is not current', async () => {
    const { page } = await opened(stated());
    const figure = page.locator('.big').first();
    const good = await figure.textContent();
    await type(page, 'coil_inductance', '2.4 kg');
    const file = join(emptyFolder(), 'hill-climb-six.yaml');
    writeFileSync(file, (await download(page, 'Save YAML')).toString());
    const { status, err } = await coilfeed(['size', file]);
    expect(status).toBe(2);
    const [line = ''] = err.replace(`${file}:`, '').trim().split('\n');
    const [, words = ''] = /coil\.inductance: (.*)$/.exec(line) ?? [];
    const field = page.locator('#field-coil_inductance');
    // Said once the typing pauses, or at once when the field is left.
    await field.blur();
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('#field-coil_inductance-wrong').textContent()).toBe(words);
    expect(await page.locator('.problems li').allTextContents()).toEqual([`hill-climb-six.yaml:${line}`]);
    expect(await page.locator('.verdict .word').textContent()).toBe('Not current: 1 thing to mend');
    await until(page, `document.title === 'Not current – coilfeed bench'`);
    expect(await page.locator('.part-buy').textContent()).toContain('nothing is listed to buy');
    expect(await figure.textContent()).toBe(good);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    expect(await page.getByRole('button', { name: 'Workbook', exact: true }).isDisabled()).toBe(true);
    await page.keyboard.press('Escape');
    // Everything else is followed.
    expect(await page.locator('.verdict .told').textContent()).toContain('coil.inductance 2.4 mH');
    await unfold(page);
    await type(page, 'limits_drop', '0.45 V');
    expect(await page.locator('.big').nth(1).textContent()).toBe('0.45 V');
    // On paper in large letters, and without anything to build from.
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.notcurrent').isVisible()).toBe(true);
    expect(await page.locator('.part-buy').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    // From the list to the field.
    await page.getByRole('button', { name: /yaml:.*coil\.inductance/ }).click();
    await until(page, `document.activeElement.id === 'field-coil_inductance'`);
    // A text that cannot even be read holds nothing; another file's answer is not shown beside it.
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    let before = await answers(page);
    await page.locator('#design-text').fill('coilfeed: 1\ntitle: [');
    await answered(page, before + 1);
    expect(await page.locator('.problems li').first().textContent()).toContain('YAML that cannot be read');
    expect(await page.locator('.verdict .told').textContent()).toContain('of an earlier text');
    before = await answers(page);
    await give(page, 'other.yaml', 'coilfeed: 1\ntitle: Another\n');
    await answered(page, before + 1);
    expect(await page.locator('.verdict h2').textContent()).toBe('other.yaml');
    expect(await page.locator('.big').count()).toBe(0);
    // Undo leads back, to the file's own name as well.
    for (let i = 0; i < 4; i++) await page.getByRole('button', { name: 'Undo' }).click();
    await until(page, `document.querySelector('.problems') === null`);
    expect(await page.locator('#design-text').inputValue()).toBe(STATED);
    // Under a verdict that fails nothing is listed to buy, and what was tried is.
    await page.getByRole('button', { name: 'Forms', exact: true }).click();
    await unfold(page);
    await type(page, 'limits_drop', '0.1 V');
    await until(page, `document.title.startsWith('FAIL – ')`);
    expect(await page.locator('.part-buy').textContent()).toContain('nothing is listed to buy');
    await until(page, `document.querySelector('.remedies').ariaBusy === 'false'`);
    expect(await page.locator('.remedies').textContent()).toMatch(/What would pass.{20,}/);
  });

  test('forms write what the reader takes: units, lists, runs, by keyboard as well', async () => {
    const { page, said } = await opened(stated());
    const text = async (): Promise<string> => (await download(page, 'Save YAML')).toString();
    await unfold(page);
    await type(page, 'feed_0__length', '55 in');
    // A bare number takes the unit beside its field, and shows it once the field is left.
    await type(page, 'coil_inductance', '2.2');
    await page.keyboard.press('Tab');
    expect(await page.locator('#field-coil_inductance').inputValue()).toBe('2.2 mH');
    // Undo inside a field takes back what was typed there, and the answer follows.
    const field = page.locator('#field-coil_resistance');
    await field.focus();
    await page.keyboard.press('End');
    const before = await answers(page);
    await page.keyboard.type('0');
    await answered(page, before + 1);
    await page.keyboard.press('Control+z');
    await until(page, `document.querySelector('#field-coil_resistance').value === '0.42 ohm'`);
    // A run more stands before those that divide; its double has a name of its own.
    await page.locator('#field-feed').getByRole('button', { name: 'add a run' }).click();
    await until(page, `document.querySelectorAll('#field-feed details.member').length === 3`);
    await page.getByRole('button', { name: 'duplicate run 3' }).click();
    await until(page, `document.querySelectorAll('#field-feed details.member').length === 4`);
    await page.getByRole('button', { name: 'move down main' }).click();
    await expect
      .poll(async () =>
        (await page.locator('#field-feed details.member > summary').allTextContents()).map((name) =>
          name.split(' auto')[0]?.trim(),
        ),
      )
      .toEqual(['run 3', 'main', 'run 2', 'branch']);
    await until(page, `document.querySelector('main').dataset.busy === 'false'`);
    const now = await text();
    const read = readDesign(now, 'x');
    expect(read.ok).toBe(true);
    expect(now).toContain('length: 55 in');
    expect(now).toContain('# primary, at 20 degC');
    if (read.ok)
      expect(apart(await result(page), JSON.parse(JSON.stringify(toJson(run(read.design)))))).toEqual([]);
    // A slider is one step; the answer follows.
    const slider = page.getByRole('slider', { name: /^Length of/ });
    await slider.focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
    await until(page, `document.querySelector('main').dataset.busy === 'false'`);
    expect(await slider.getAttribute('aria-valuetext')).toBe('1.15 m');
    // From a part of the picture to its form, one stop for Tab and arrows inside.
    expect(await page.locator('.part[tabindex="0"]').count()).toBe(1);
    await page.locator('.part[tabindex="0"]').focus();
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowRight');
    await page.locator('.part.chosen.coil').waitFor();
    await page.getByRole('button', { name: 'Change it' }).click();
    await until(page, `document.activeElement.closest('#field-coil') !== null`);
    // A value that a reading has: entered in the test card, judged, explained.
    const drop = page.getByRole('textbox', { name: /^drop, main limiter, multimeter/ });
    await drop.fill('900');
    await drop.press('Enter');
    await page.locator('.part-readings .causes').first().waitFor();
    expect(await text()).toContain('meter: 900 mV');
    expect(await page.locator('.part-readings').textContent()).toMatch(/main \(|main has/);
    expect(said).toEqual([]);
  });

  test('files: dropped, beside the shop’s own, from nothing, as papers; and the state survives', async () => {
    const folder = emptyFolder();
    const { page, said, asked } = await opened();
    await titled(page, 'Hill-climb');
    const text = demo('pair-four');
    const conductor = `getComputedStyle(document.querySelector('.feed .conductor')).stroke`;
    const stroke = await page.evaluate(conductor);
    await page.evaluate(`(() => {
      window.carried = new DataTransfer();
      carried.items.add(new File([${JSON.stringify(text.replace('Delivery van', 'My van & <b>'))}], 'mine.yaml'));
      dispatchEvent(new DragEvent('dragover', { dataTransfer: carried, cancelable: true }));
    })()`);
    // The page shows that it takes the file, and nothing else of the feed.
    await until(page, `getComputedStyle(document.querySelector('main')).outlineStyle !== 'none'`);
    expect(await page.evaluate(conductor)).toBe(stroke);
    await page.evaluate(`dispatchEvent(new DragEvent('drop', { dataTransfer: carried, cancelable: true }))`);
    await titled(page, 'My van & <b>');
    await page.locator('h2#design').click();
    await page.keyboard.press('Control+z');
    await titled(page, 'Hill-climb');
    await give(page, 'x.yaml', Buffer.from([0xff, 0xfe, 0]));
    await until(page, `document.querySelector('.said').textContent.includes('not UTF-8')`);
    // The shop's file beside the design: a coil of the shelf by its name.
    await give(page, 'shop.yaml', 'coils: [{ name: strong, resistance: 0.31 ohm, inductance: 1.9 mH }]\n');
    await until(page, `document.querySelector('.said').textContent.includes('shop’s file now')`);
    const six = STATED.replace(/resistance: 0.42 ohm.*\n {2}inductance: 2.4 mH/, 'use: strong');
    await give(page, 'shelf.yaml', six);
    await until(page, `document.querySelector('#field-coil_use')?.value === 'strong'`);
    await until(page, `document.querySelector('.problems') === null`);
    expect((await result(page)).coil.inductance_H).toBeCloseTo(1.9e-3, 12);
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('button', { name: /^Put the shop/ }).click();
    // From nothing: some questions, and an answer that passes or says what does not.
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('button', { name: /^A new feed/ }).click();
    await page.locator('#start-cylinders').selectOption('6');
    await page.locator('#start-main').fill('1.8');
    await page.locator('#start-rpm').fill('9000');
    await page.getByRole('button', { name: 'Show the answer' }).click();
    await titled(page, '6 cylinders');
    // Charts go as far as the engine, and the currents are those at its highest speed.
    expect((await result(page)).sweep.at(-1).rpm).toBe(9000);
    await until(
      page,
      `document.querySelector('.part-trace select').selectedOptions[0].textContent === 'limiter, 9000 rpm'`,
    );
    expect(await page.locator('#field-feed_0__length').inputValue()).toBe('1.8 m');
    // The papers are those that the command writes, letter for letter.
    await choose(page, 'Open', 'Demo: hill climb six');
    await titled(page, 'Hill-climb');
    await page.locator('.part-kit summary').click();
    await page.locator('.papers').waitFor();
    await page.getByRole('button', { name: 'Preview of instructions.html' }).click();
    await until(page, `document.querySelector('.preview').shadowRoot.querySelector('h1') !== null`);
    const zip = unzipSync(await download(page, 'All papers as one ZIP'));
    await coilfeed(['kit', SIX, '--out', join(folder, 'kit')]);
    const names = readdirSync(join(folder, 'kit')).filter(
      (name) => !['kit.xlsx', 'prices.csv'].includes(name),
    );
    expect(Object.keys(zip).sort()).toEqual(names.sort());
    // The command seals what it writes; browser and command differ in the last bit of a sine.
    const plain = (paper: string): string =>
      paper
        .replace(/<!-- coilfeed [0-9a-f]{16} -->\n$/, '')
        .replace(/(value=")([\d.e-]+)/g, (_, before, value) => before + Number(value).toPrecision(12));
    // Of a table the seal is a column of its own.
    for (const name of names.filter((one) => !one.endsWith('.csv')))
      expect(plain(Buffer.from(zip[name] as Uint8Array).toString()), name).toBe(
        plain(readFileSync(join(folder, 'kit', name), 'utf8')),
      );
    const picture = page.locator('img.wiring');
    await picture.waitFor();
    expect((await download(page, 'Save as SVG')).toString()).toContain('Wiring diagram: Hill-climb');
    // What is kept beside, units and text come back after a reload.
    await page.getByRole('button', { name: 'Compare with this state' }).click();
    await type(page, 'coil_temperature', '61 degC');
    const rows = page.locator('.compare tbody tr');
    expect(await rows.filter({ hasText: 'Drop, worst path' }).textContent()).toMatch(/[+−]\d+\.\d %/);
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.locator('.settings select').first().selectOption('us');
    await until(page, `JSON.stringify(localStorage).includes('61 degC')`);
    await until(page, `Object.values(localStorage).some((one) => one.includes('"us"'))`);
    await page.reload();
    await answered(page);
    expect(await page.locator('#field-coil_temperature').inputValue()).toBe('61 degC');
    await expect.poll(() => page.locator('.reading').textContent()).toContain('59.1 in');
    await rows.first().waitFor();
    // Another tab of the same page stores: this one says so, and stores nothing before the person has chosen.
    const other = await page.context().newPage();
    await other.goto(page.url());
    await answered(other);
    await type(other, 'coil_temperature', '62 degC');
    await page.getByText('open in another tab').waitFor();
    await other.close();
    await page.getByRole('button', { name: 'Keep this one' }).click();
    await until(page, `JSON.stringify(localStorage).includes('61 degC')`);
    // Whatever stands in the storage, the page opens; a start that did not come to its end is offered, not repeated.
    for (const broken of ['{', '{"text":7}', '{"text":"[[[","look":1,"shop":3}', '{"text":""}']) {
      await page.evaluate(
        `Object.keys(localStorage).forEach((key) => { localStorage[key] = ${JSON.stringify(broken)}; })`,
      );
      await page.reload();
      await answered(page);
    }
    await choose(page, 'Open', 'Demo: pair four');
    await titled(page, 'Delivery van');
    await until(page, `JSON.stringify(localStorage).includes('Delivery van')`);
    await page.evaluate(
      `Object.keys(localStorage).forEach((key) => { localStorage[key + ':starting'] = '1'; })`,
    );
    await page.reload();
    await titled(page, 'Hill-climb');
    await page.getByRole('button', { name: 'Open the stored design anyway' }).click();
    await titled(page, 'Delivery van');
    // What is typed while it is offered is kept once it is forgotten.
    await until(page, `JSON.stringify(localStorage).includes('Delivery van')`);
    await page.evaluate(
      `Object.keys(localStorage).forEach((key) => { localStorage[key + ':starting'] = '1'; })`,
    );
    await page.reload();
    await titled(page, 'Hill-climb');
    await type(page, 'coil_temperature', '63 degC');
    await page.getByRole('button', { name: 'Forget it' }).click();
    await until(page, `JSON.stringify(localStorage).includes('63 degC')`);
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('button', { name: 'Forget what is stored here' }).click();
    await page.reload();
    await titled(page, 'Hill-climb');
    expect(said).toEqual([]);
    expect(asked).toEqual([]);
  });

  test('the cursor gives values by keyboard and by pointer, and a number shows where it comes from', async () => {
    const { page, said } = await opened(demoPath('two-bank-v8'));
    const chart = page.getByRole('slider', { name: /^Current of run main/ });
    await chart.focus();
    await page.keyboard.press('End');
    // The last row of the sweep as the command line has it.
    const { out } = await coilfeed(['size', demoPath('two-bank-v8'), '--json']);
    const { sweep } = JSON.parse(out);
    const last = sweep.at(-1);
    const words = await chart.getAttribute('aria-valuetext');
    expect(words).toContain(`${last.rpm} rpm`);
    expect(words).toContain(`effective (RMS): ${last.main_rms_A.toFixed(1)} A`);
    expect(words).toContain(`peak: ${last.main_peak_A.toFixed(1)} A`);
    await chart.hover({ position: { x: 200, y: 100 } });
    // Three currents and two energies.
    expect(await page.locator('.legend b').count()).toBe(5);
    const slider = page.getByRole('slider', { name: 'or speed' });
    await slider.focus();
    await page.keyboard.press('Home');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toBe('800 rpm');
    // A table of dwell moves as a whole: 2.6 ms at 14 V by a step of 0.05 ms, its other rows by the same factor, 2.65/2.6.
    const before = await answers(page);
    await page.getByRole('slider', { name: 'Dwell table, at 14 V' }).press('ArrowRight');
    await answered(page, before + 1);
    const moved = (await download(page, 'Save YAML')).toString();
    expect(moved.match(/\bdwell: [\d.]+ ms/g)?.slice(0, 5)).toEqual(
      [5.708, 4.281, 3.262, 2.65, 2.242].map((ms) => `dwell: ${ms} ms`),
    );
    await page.getByRole('button', { name: 'Undo' }).click();
    await until(page, `document.querySelector('main').dataset.busy === 'false'`);
    const number = page
      .locator('.part-currents')
      .getByRole('button', { name: /^Ampacity / })
      .first();
    const text = await number.textContent();
    // One stop for Tab in a row of the table; the others are a press of an arrow away.
    expect(await number.getAttribute('tabindex')).toBe('-1');
    await page
      .locator('.part-currents')
      .getByRole('button', { name: /^Effective current / })
      .first()
      .focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await page.locator('.panel .tree').first().waitFor();
    const told = await coilfeed(['explain', demoPath('two-bank-v8'), 'ampacity', 'main']);
    const [head = '', ...formulas] = told.out.split('\n');
    const title = await page.locator('.panel h2').textContent();
    expect(title).toContain(`: ${text} A`);
    expect(head).toContain(title?.split(':')[0]);
    const first = formulas.find((line) => line.includes('= '))?.replace(/^[│ ]*/, '');
    expect(await page.locator('.panel .formula').first().textContent()).toBe(first);
    // Further down, and back.
    await page
      .getByRole('button', { name: /^where from/ })
      .first()
      .click();
    await until(page, `document.querySelector('.panel h2').textContent !== ${JSON.stringify(title)}`);
    await page.getByRole('button', { name: 'Back' }).click();
    await expect.poll(() => page.locator('.panel h2').textContent()).toBe(title);
    await page.keyboard.press('Escape');
    await until(page, `document.querySelector('.panel') === null`);
    await expect.poll(() => page.evaluate('document.activeElement.textContent')).toBe(text);
    expect(said).toEqual([]);
  });

  test.each([1280, 360])('axe finds nothing in any state, in both schemes: %i px', async (width) => {
    const { page } = await opened(SIX, { viewport: { width, height: 800 } });
    const phone = width < 900;
    const turn = (side: RegExp): Promise<void> => page.getByRole('button', { name: side }).click();
    const clean = async (state: string, dark = true): Promise<void> => {
      expect(await (dark ? faultsInBoth(page) : faults(page)), state).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth'), state).toBeLessThanOrEqual(width);
      if (phone)
        // A thumb needs 44 px each way; links within a sentence are as tall as their line.
        expect(
          await page.evaluate(`[...document.querySelectorAll('button, select, input:not([type=file]), summary, nav a')]
            .filter((one) => one.checkVisibility())
            .map((one) => [one.getBoundingClientRect(), one])
            .filter(([box]) => box.height < 43.5)
            .map(([box, one]) => Math.round(box.height) + ' ' + one.outerHTML.slice(0, 90))`),
          state,
        ).toEqual([]);
    };
    await clean('at first');
    if (phone) await turn(/^Design/);
    await unfold(page);
    await clean('forms');
    await type(page, 'limits_drop', '0.1 V');
    if (phone) await turn(/^Answer/);
    await page.getByRole('button', { name: 'Compare with this state' }).click();
    await page.locator('.papers').waitFor();
    await clean('fails, unfolded');
    await page.locator('.big button').first().click();
    await page.locator('.panel .tree').first().waitFor();
    await clean('where a number comes from');
    await page.keyboard.press('Escape');
    if (phone) await turn(/^Design/);
    await type(page, 'coil_inductance', '2.4 kg');
    await page.locator('#field-coil_inductance').blur();
    await clean('a field that is wrong', !phone);
    if (phone) {
      await turn(/^Answer/);
      await clean('not current');
      await turn(/^Design/);
    }
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    await clean('text', false);
  });

  test.skipIf(peer('soffice') === null && !process.env.CI)(
    'the workbook of an edited design is the one that LibreOffice computes [needs LibreOffice]',
    async () => {
      const folder = emptyFolder();
      const { page } = await opened(demoPath('pair-four'));
      await unfold(page);
      await type(page, 'feed_0__length', '9 ft');
      const file = join(folder, 'page.xlsx');
      writeFileSync(file, await download(page, 'Workbook'));
      // Sealed like one that the command writes.
      expect(await stateOf(file, readFileSync(file))).toBe('as made');
      const [theirs = ''] = await recalculate([file], join(folder, 'out'));
      const ours = readCells(readFileSync(file));
      expect([...ours.values()].flatMap((sheet) => [...sheet.values()]).length).toBeGreaterThan(5000);
      expect(differences(ours, readCells(readFileSync(theirs)))).toEqual([]);
      // And it is read again, with what was typed.
      await page.locator('input[type=file]').setInputFiles(file);
      await until(page, `document.querySelector('.said').textContent.startsWith('Opened')`);
      expect(await page.locator('#field-feed_0__length').inputValue()).toBe('9 ft');
    },
  );

  test('the first screen: what limits on a line each, the figures, the feed and its sliders', async () => {
    const size = { width: 1440, height: 900 };
    const { page } = await opened(SIX, { viewport: size });
    const lines: number[] = await page.evaluate(
      `[...document.querySelectorAll('.limits li')].map((one) => one.getBoundingClientRect().height / parseFloat(getComputedStyle(one).fontSize))`,
    );
    expect(lines.length).toBeGreaterThan(0);
    // Two lines of text are more than two and a half times as high as its letters.
    for (const height of lines) expect(height).toBeLessThan(2.5);
    for (const part of ['.figures', '.slider'])
      for (const box of await page.locator(part).all()) {
        const { y, height } = (await box.boundingBox()) ?? { y: Number.NaN, height: 0 };
        expect(y + height, part).toBeLessThan(size.height);
      }
  });

  test('a design that closes the script cannot break the page, which runs nothing else and asks nobody', async () => {
    const design = join(emptyFolder(), 'odd.yaml');
    const title = `"</script><script>document.title='broken'</script> <!-- $& $1"`;
    writeFileSync(design, demo('pair-four').replace(/title: .*/, `title: ${title}`));
    const path = await pageOf(design);
    const page = await (await browser().newContext()).newPage();
    const { asked, said } = listenTo(page);
    await page.goto(`file://${path}`);
    await answered(page);
    expect(await page.title()).toMatch(/^PASS – .*<\/script>.* – coilfeed bench$/);
    expect(await page.locator('.verdict h2').textContent()).toContain('</script><script>');
    expect(said).toEqual([]);
    const tried = await page.evaluate(`(async () => {
      const out = [];
      try { await fetch('http://127.0.0.1:9/'); out.push('fetched'); } catch { out.push('no fetch'); }
      // Later, since what the test itself says in the page is not held to its policy.
      out.push(await new Promise((done) => setTimeout(() => { try { new Function('return 1')(); done('evaluated'); } catch { done('no code from text'); } })));
      const script = document.createElement('script');
      script.textContent = 'window.foreign = 1';
      document.body.append(script);
      out.push(window.foreign === 1 ? 'foreign script' : 'no foreign script');
      const image = new Image();
      out.push(await new Promise((done) => { image.onload = () => done('image'); image.onerror = () => done('no image'); image.src = 'http://127.0.0.1:9/x.png'; }));
      return out;
    })()`);
    expect(tried).toEqual(['no fetch', 'no code from text', 'no foreign script', 'no image']);
    expect(asked.filter((url) => !url.startsWith('http://127.0.0.1:9/'))).toEqual([]);
  });
});

test('the page weighs at most 700 KB compressed, and its first program is without what reads designs', async () => {
  const page = readFileSync(await pageOf());
  expect(gzipSync(page, { level: 9 }).length).toBeLessThanOrEqual(700_000);
  // The library of schemas takes as long to start as all the rest: it is the worker's.
  const program = /<script type="module">([\s\S]*?)<\/script>/.exec(page.toString())?.[1] ?? '';
  const worker = /id="part-worker">([^<]*)</.exec(page.toString())?.[1] ?? '';
  const schemas = '$ZodType';
  expect(gunzipSync(Buffer.from(worker, 'base64')).includes(schemas)).toBe(true);
  expect(program.length).toBeGreaterThan(100_000);
  expect(program.includes(schemas)).toBe(false);
});
