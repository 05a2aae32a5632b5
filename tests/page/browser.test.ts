/** The page as a person uses it: in Chromium, from a file on disk. The command line says what is right. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { stateOf } from '../../src/commands/seal/seal.ts';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { DEMOS } from '../design/helpers.ts';
import { readCells } from '../peers/cells.ts';
import { useBrowser } from '../peers/chromium.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer, peer } from '../peers/peer.ts';
import { differences } from '../workbook/agree.ts';
import { demoPath } from '../workbook/books.ts';
import { answered, apart, choose, download, listenTo, open, pageOf, type, unfold, until } from './bench.ts';

describeWithPeer('chromium', 'the page', () => {
  const browser = useBrowser();

  const opened = async (design?: string, options = {}) =>
    open(browser(), await pageOf(emptyFolder(), design), options);

  /** The JSON of the command line for a text. */
  async function json(text: string) {
    const file = join(emptyFolder(), 'design.yaml');
    writeFileSync(file, text);
    const { status, out, err } = await coilfeed(['size', file, '--json']);
    if (status !== 0 && status !== 1) throw new Error(err);
    return JSON.parse(out);
  }

  const result = async (page: Page) => JSON.parse((await download(page, 'Result')).toString());

  test.each(DEMOS)('%s: the result is that of the command line, number for number', async (name) => {
    const { page, said, asked } = await opened(demoPath(name));
    expect(apart(await result(page), await json(readFileSync(demoPath(name), 'utf8')))).toEqual([]);
    // Every picture is drawn: the drop, over engine speed, over the working cycle, one charge, one set of curves.
    await expect.poll(() => page.locator('figure.chart').count()).toBe(5);
    expect(await page.locator('figure.chart path').count()).toBeGreaterThan(40);
    expect(said).toEqual([]);
    expect(asked).toEqual([]);
  });

  test('an edit sizes anew, number for number as the command line does', async () => {
    const { page, said } = await opened(demoPath('hill-climb-six'));
    const before = await result(page);
    await unfold(page);
    await type(page, 'feed_0__length', '55 in');
    await type(page, 'feed_1__ambient', '240 degF');
    await type(page, 'limits_drop', '0.3 V');
    const text = (await download(page, 'Save YAML')).toString();
    expect(text).toContain('length: 55 in');
    const now = await result(page);
    expect(apart(now, await json(text))).toEqual([]);
    const gauges = ({ runs }: { runs: { gauge: string }[] }) => runs.map(({ gauge }) => gauge);
    expect(gauges(now)).not.toEqual(gauges(before));
    // A part put in and taken out again: another shape of the design, and comments that stay.
    await page.getByRole('button', { name: 'add a point' }).click();
    await answered(page, 5);
    const more = (await download(page, 'Save YAML')).toString();
    expect(apart(await result(page), await json(more))).toEqual([]);
    expect(more).toContain('# primary, at 20 degC');
    expect(said).toEqual([]);
  });

  test('what is wrong is said at the field in the words of the command line', async () => {
    const { page } = await opened(demoPath('hill-climb-six'));
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
    // The verdict is none, the title says so, nothing is listed to buy, and what cannot be made is not offered.
    expect(await page.locator('.word').textContent()).toBe('Not current: 1 thing to mend');
    expect(await page.title()).toBe('Not current – coilfeed bench');
    expect(await page.locator('section.part-buy').textContent()).toContain('nothing is listed to buy');
    expect(await figure.textContent()).toBe(good);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    expect(await page.getByRole('button', { name: 'Workbook' }).isDisabled()).toBe(true);
    await page.keyboard.press('Escape');
    // What is wrong is held at its last value, and the rest is followed.
    expect(await page.locator('.told').first().textContent()).toContain('coil.inductance 2.4 mH');
    await unfold(page);
    await type(page, 'limits_drop', '0.45 V');
    expect(await page.locator('.big').nth(1).textContent()).toBe('0.45 V');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Control+z');
    await answered(page, 4);
    // From the list to the field.
    await page.getByRole('button', { name: /yaml:.*coil\.inductance/ }).click();
    expect(await page.evaluate('document.activeElement.id')).toBe('field-coil_inductance');
    // And in the text, where it cannot even be read.
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    await page.locator('#design-text').fill('coilfeed: 1\ntitle: [');
    await answered(page, 5);
    expect(await page.locator('.problems li').first().textContent()).toContain('YAML that cannot be read');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await until(page, `document.querySelector('.problems') === null`);
    expect(await page.locator('#design-text').inputValue()).toBe(
      readFileSync(demoPath('hill-climb-six'), 'utf8'),
    );
  });

  test('the state survives a reload, can be forgotten, and a broken one locks nobody out', async () => {
    const { page } = await opened(demoPath('pair-four'));
    await type(page, 'coil_resistance', '0.61 ohm');
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.locator('.settings select').first().selectOption('us');
    await until(page, `JSON.stringify(localStorage).includes('0.61 ohm')`);
    await page.reload();
    await answered(page);
    expect(await page.locator('#field-coil_resistance').inputValue()).toBe('0.61 ohm');
    await expect.poll(() => page.locator('.reading').textContent()).toContain('7 ft 3 in');

    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('button', { name: 'Forget what is stored here' }).click();
    await page.reload();
    await answered(page);
    expect(await page.locator('#field-coil_resistance').inputValue()).toBe('0.55 ohm');

    // Whatever stands in the storage, the page opens.
    await type(page, 'coil_resistance', '0.62 ohm');
    await until(page, `JSON.stringify(localStorage).includes('0.62 ohm')`);
    for (const broken of ['{', '{"text":7}', '{"text":"[[[","look":1}', '{"text":""}']) {
      await page.evaluate(
        `Object.keys(localStorage).forEach((key) => { localStorage[key] = ${JSON.stringify(broken)}; })`,
      );
      await page.reload();
      await answered(page);
    }
    await choose(page, 'Open', 'Demo: hill climb six');
    await until(page, `document.querySelector('.verdict h2')?.textContent.startsWith('Hill-climb')`);
    await until(page, `JSON.stringify(localStorage).includes('Hill-climb')`);

    // A start that did not come to its end is not repeated, but offered.
    await page.evaluate(
      `Object.keys(localStorage).forEach((key) => { localStorage[key + ':starting'] = '1'; })`,
    );
    await page.reload();
    await answered(page);
    expect(await page.locator('#field-coil_resistance').inputValue()).toBe('0.55 ohm');
    await page.getByRole('button', { name: 'Open the stored design anyway' }).click();
    await until(page, `document.querySelector('.verdict h2')?.textContent.startsWith('Hill-climb')`);
  });

  test('the cursor gives values by keyboard and by pointer; a snapshot stands beside', async () => {
    const { page, said } = await opened(demoPath('two-bank-v8'));
    const chart = page.getByRole('slider', { name: /^Current of run main/ });
    await chart.focus();
    await page.keyboard.press('End');
    // The last row of the sweep as the command line has it.
    const { sweep, runs } = await json(readFileSync(demoPath('two-bank-v8'), 'utf8'));
    const last = sweep.at(-1);
    const words = await chart.getAttribute('aria-valuetext');
    expect(words).toContain(`${last.rpm} rpm`);
    expect(words).toContain(`effective (RMS): ${last.main_rms_A.toFixed(1)} A`);
    expect(words).toContain(`peak: ${last.main_peak_A.toFixed(1)} A`);
    await chart.hover({ position: { x: 200, y: 100 } });
    // Three currents and two energies.
    expect(await page.locator('.legend b').count()).toBe(5);

    await page.getByRole('button', { name: /^coil ground\.1:/ }).focus();
    await expect
      .poll(() => page.locator('.reading').textContent())
      .toContain(`coil ground.1: ${runs.find(({ id }: { id: string }) => id === 'coil ground.1').gauge}`);

    const slider = page.getByRole('slider', { name: 'or speed' });
    await slider.focus();
    await page.keyboard.press('Home');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toBe('800 rpm');
    await expect
      .poll(() => page.locator('section[aria-labelledby=trace] .quiet').first().textContent())
      .toContain('800 rpm, 14.1 V');

    await page.getByRole('button', { name: 'Compare with this state' }).click();
    await type(page, 'coil_resistance', '0.42 ohm');
    const rows = page.locator('.compare tbody tr');
    expect(await rows.filter({ hasText: 'Drop, worst path' }).textContent()).toMatch(/−\d+\.\d %/);
    await expect
      .poll(() => page.locator('.legend').first().textContent())
      .toContain('snapshot: effective (RMS)');
    expect(said).toEqual([]);
  });

  test.each([
    ['light', 1280],
    ['dark', 360],
  ] as const)(
    'a number shows where it comes from, and Escape leads back to it: %s, %i px',
    async (colorScheme, width) => {
      const { page, said } = await opened(demoPath('hill-climb-six'), {
        colorScheme,
        viewport: { width, height: 800 },
      });
      const number = page.getByRole('button', { name: /^Ampacity / }).first();
      const text = await number.textContent();
      // One stop for Tab in a row of the table; the others are a press of an arrow away.
      expect(await number.getAttribute('tabindex')).toBe('-1');
      await page
        .getByRole('button', { name: /^Effective current / })
        .first()
        .focus();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Enter');
      await page.locator('.panel .tree').first().waitFor();
      const { out } = await coilfeed(['explain', demoPath('hill-climb-six'), 'ampacity', 'main']);
      const [head = '', ...formulas] = out.split('\n');
      const title = await page.locator('.panel h2').textContent();
      expect(title).toContain(`: ${text} A`);
      expect(head).toContain(title?.split(':')[0]);
      const first = formulas.find((line) => line.includes('= '))?.replace(/^[│ ]*/, '');
      expect(await page.locator('.panel .formula').first().textContent()).toBe(first);
      await page.evaluate(axe.source);
      expect(
        await page.evaluate(`axe.run().then(({ violations }) => violations.map(({ id }) => id))`),
      ).toEqual([]);
      expect(await page.evaluate(`document.querySelector('.panel').scrollWidth`)).toBeLessThanOrEqual(width);
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
      expect(await page.evaluate('document.activeElement.textContent')).toBe(text);
      expect(said).toEqual([]);
    },
  );

  test('the wiring diagram is drawn in the page', async () => {
    const { page, said, asked } = await opened(demoPath('pair-four'));
    const picture = page.locator('img.wiring');
    await picture.waitFor();
    await expect
      .poll(() => page.evaluate(`document.querySelector('img.wiring').naturalWidth`))
      .toBeGreaterThan(100);
    const svg = (await download(page, 'Save as SVG')).toString();
    expect(svg).toContain('Wiring diagram: Delivery van');
    expect(said).toEqual([]);
    expect(asked).toEqual([]);
  });

  test.skipIf(peer('soffice') === null && !process.env.CI)(
    'the workbook of an edited design is the one that LibreOffice computes [needs LibreOffice]',
    async () => {
      const folder = emptyFolder();
      const { page } = await opened(demoPath('pair-four'));
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

  test.each([
    ['light', 1280],
    ['dark', 1280],
    ['light', 360],
    ['dark', 360],
  ] as const)('axe finds nothing: %s, %i px', async (colorScheme, width) => {
    const { page } = await opened(demoPath('hill-climb-six'), {
      colorScheme,
      viewport: { width, height: 800 },
    });
    await expect.poll(() => page.locator('figure.chart').count()).toBe(5);
    const turn = (side: string) => page.getByRole('button', { name: side, exact: true }).click();
    if (width < 900) await turn('Design');
    // Everything unfolded, with findings that fail and a field that is wrong.
    await unfold(page);
    await type(page, 'limits_drop', '0.1 V');
    await page.evaluate(axe.source);
    const clean = async (state: string): Promise<void> => {
      const found = (await page.evaluate(
        `axe.run().then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => id + ': ' + html.slice(0, 200))))`,
      )) as string[];
      expect(found, state).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth'), state).toBeLessThanOrEqual(width);
    };
    if (width < 900) {
      await clean('forms');
      await turn('Answer');
    }
    await page.getByRole('button', { name: 'Compare with this state' }).click();
    await clean('fails');
    if (width < 900) await turn('Design');
    await type(page, 'coil_inductance', '2.4 kg');
    await page.locator('#field-coil_inductance').blur();
    await unfold(page);
    await clean('not current');
    if (width < 900) {
      await turn('Answer');
      await clean('not current, answer');
      await page.getByRole('button', { name: /^Design/ }).click();
    }
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    await clean('text');
  });

  test('begins with a demo when it is given no design, and opens and undoes', async () => {
    const folder = emptyFolder();
    const { page, said, asked } = await open(browser(), await pageOf(folder));
    expect(await page.locator('.verdict h2').textContent()).toBe(
      'Hill-climb straight six, dedicated coil feed',
    );
    const file = join(folder, 'mine.yaml');
    writeFileSync(file, readFileSync(demoPath('pair-four'), 'utf8').replace('Delivery van', 'My van & <b>'));
    await page.locator('input[type=file]').setInputFiles(file);
    await until(page, `document.querySelector('.verdict h2').textContent.startsWith('My van & <b>')`);
    await page.keyboard.press('Control+z');
    await until(page, `document.querySelector('.verdict h2').textContent.startsWith('Hill-climb')`);
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'x.yaml', mimeType: '', buffer: Buffer.from([0xff, 0xfe, 0]) });
    await until(page, `document.querySelector('.said').textContent.includes('not UTF-8')`);
    expect(said).toEqual([]);
    expect(asked).toEqual([]);
  });

  test('a design that closes the script or breaks the line cannot break the page', async () => {
    const folder = emptyFolder();
    const design = join(folder, 'odd.yaml');
    const title = `"</script><script>document.title='broken'</script> <!-- $& $1"`;
    writeFileSync(
      design,
      readFileSync(demoPath('pair-four'), 'utf8').replace(/title: .*/, `title: ${title}`),
    );
    const { page, said } = await open(browser(), await pageOf(folder, design));
    expect(await page.title()).toMatch(/^PASS – .*<\/script>.* – coilfeed bench$/);
    expect(await page.locator('.verdict h2').textContent()).toContain('</script><script>');
    expect(said).toEqual([]);
  });

  test('runs nothing but its own program, and asks nobody', async () => {
    const path = await pageOf(emptyFolder());
    const page = await (await browser().newContext()).newPage();
    const { asked } = listenTo(page);
    await page.goto(`file://${path}`);
    await answered(page);
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

test('the page weighs at most 700 KB compressed', async () => {
  const page = readFileSync(await pageOf(emptyFolder()));
  expect(gzipSync(page, { level: 9 }).length).toBeLessThanOrEqual(700 * 1024);
});
