/** An answer never stands beside a design that it is not of: while the next one is worked out, and on paper. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { demoPath } from '../workbook/books.ts';
import { answered, answers, choose, open, pageOf, unfold, until } from './bench.ts';
import { HOLD } from './hold.ts';

/** What is seen of the verdict. */
const SEEN = `(() => ({
  title: document.querySelector('.verdict h2').textContent,
  word: document.querySelector('.verdict .mark').textContent,
  limits: getComputedStyle(document.querySelector('.limits') ?? document.body).visibility,
  stale: document.querySelector('.answer').classList.contains('stale'),
  buy: document.querySelector('.part-buy').textContent,
  window: document.title,
  slider: document.querySelector('.sliders').getBoundingClientRect().top,
}))()`;

interface Seen {
  readonly title: string;
  readonly word: string;
  readonly limits: string;
  readonly stale: boolean;
  readonly buy: string;
  readonly window: string;
  readonly slider: number;
}

describeWithPeer('chromium', 'an answer of before', () => {
  const browser = useBrowser();
  const seen = (page: Page): Promise<Seen> => page.evaluate(SEEN);
  const opened = async (): Promise<Page> => {
    const { page } = await open(browser(), await pageOf(demoPath('pair-four')));
    await page.evaluate(HOLD);
    await until(page, `document.querySelector('.sliders') !== null`);
    return page;
  };

  test('another file: at once nothing of the design before stands beside its name; so with undo', async () => {
    const page = await opened();
    const before = await seen(page);
    expect([before.word, before.stale]).toEqual(['✓ pass', false]);
    await page.evaluate(`hold('design')`);
    await choose(page, 'Open', 'Demo: two bank v8');
    const meanwhile = await seen(page);
    expect(meanwhile).toMatchObject({
      title: 'two-bank-v8.yaml',
      word: 'Working',
      limits: 'hidden',
      stale: true,
    });
    expect(meanwhile.buy).toContain('nothing is listed to buy');
    expect(meanwhile.window).toBe('Working – coilfeed bench');
    await page.evaluate('letGo()');
    await until(page, `document.title.startsWith('PASS')`);
    const after = await seen(page);
    expect([after.word, after.stale]).toEqual(['✓ pass', false]);
    expect(after.title).not.toBe(before.title);
    await page.evaluate(`hold('design')`);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await seen(page)).toMatchObject({ title: 'pair-four.yaml', word: 'Working', stale: true });
    await page.evaluate('letGo()');
    await until(page, `document.title.startsWith('PASS')`);
    expect((await seen(page)).title).toBe(before.title);
  });

  test('an answer that takes its time is said to be under way, and nothing moves under the hand', async () => {
    const page = await opened();
    const before = await seen(page);
    await page.evaluate(`hold('design')`);
    await page.locator('#field-coil_temperature').fill('61 degC');
    await until(page, `document.querySelector('.verdict .mark').textContent === 'Working'`);
    expect(await seen(page)).toEqual({
      ...before,
      word: 'Working',
      limits: 'hidden',
      stale: true,
      buy: expect.stringContaining('nothing is listed to buy'),
      window: 'Working – coilfeed bench',
    });
    await page.evaluate('letGo()');
    await until(page, `document.title.startsWith('PASS')`);
    expect(await seen(page)).toEqual({ ...before, buy: expect.anything() });
  });

  test('a shop’s file that is opened meanwhile: the answer that comes is not of it', async () => {
    const page = await opened();
    await page.evaluate(`hold('design')`);
    await page.locator('#field-coil_temperature').fill('61 degC');
    await until(page, `document.title.startsWith('Working')`);
    const count = await answers(page);
    const shop = { name: 'mine.yaml', mimeType: '', buffer: readFileSync(demoPath('shop')) };
    await page.locator('input[type=file]').setInputFiles(shop);
    await until(page, `document.querySelector('.said').textContent.includes('mine.yaml')`);
    await page.evaluate(`letGo(); hold('design')`);
    await until(page, `Number(document.querySelector('main').dataset.answers) > ${count}`);
    expect(await seen(page)).toMatchObject({ word: 'Working', stale: true });
    await page.evaluate('letGo()');
    await until(page, `document.title.startsWith('PASS')`);
  });

  test('what is printed meanwhile says so, and leaves out pictures of before', async () => {
    const page = await opened();
    await until(page, `document.querySelector('.part-speed figure') !== null`);
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(`document.documentElement.dataset.appendix = ''`);
    await page.evaluate(`hold('design')`);
    await page.evaluate(`(() => {
      const field = document.querySelector('#field-coil_temperature');
      field.value = '61 degC';
      field.dispatchEvent(new Event('input', { bubbles: true }));
      dispatchEvent(new Event('beforeprint'));
    })()`);
    expect(await page.locator('.notcurrent').isVisible()).toBe(true);
    await page.evaluate(`(() => { dispatchEvent(new Event('afterprint')); letGo(); hold('speed'); })()`);
    await answered(page, 2);
    await until(page, `document.querySelector('.answer.stale') === null`);
    expect(await page.locator('.notcurrent').count()).toBe(0);
    expect(await page.locator('.part-speed .leftout').isVisible()).toBe(true);
    expect(await page.locator('.part-speed figure').isVisible()).toBe(false);
    await until(page, 'held() > 0');
    await page.evaluate('letGo()');
    await until(page, `document.querySelector('.part-speed .dated') === null`);
    expect(await page.locator('.part-speed figure').isVisible()).toBe(true);
  });

  test('the button waits for what is still to be drawn', async () => {
    const page = await opened();
    await page.evaluate(
      `window.print = () => { document.body.dataset.late = document.querySelectorAll('.dated, .stale').length; }`,
    );
    await page.evaluate(`hold('curves')`);
    await page.locator('#field-coil_temperature').fill('61 degC');
    await choose(page, 'Print', 'Print one page');
    // Far below, its picture would be drawn later than it is asked for here.
    await until(page, 'held() > 0');
    expect(await page.locator('body').getAttribute('data-late')).toBe(null);
    await page.evaluate('letGo()');
    await until(page, `document.body.dataset.late === '0'`);
  });

  test('the workbook of a kit is of the design of the papers beside it, whatever is typed meanwhile', async () => {
    const page = await opened();
    await page.evaluate(`(() => {
      const post = Worker.prototype.postMessage;
      window.posted = [];
      Worker.prototype.postMessage = function (message) {
        posted.push(message);
        post.call(this, message);
      };
    })()`);
    await page.locator('.part-kit summary').click();
    await page.locator('.papers').waitFor();
    // Before the next answer is there, and before the page says that it waits for one.
    await page.evaluate(`(() => {
      hold('design');
      const field = document.querySelector('#field-coil_temperature');
      field.value = '61 degC';
      field.dispatchEvent(new Event('input', { bubbles: true }));
      [...document.querySelectorAll('.part-kit button')].find((one) => one.textContent === 'Workbook of the kit').click();
    })()`);
    await until(page, `posted.some(({ kind }) => kind === 'kitbook')`);
    const texts = await page.evaluate(
      `['papers', 'kitbook'].map((kind) => posted.findLast((one) => one.kind === kind).ask.text)`,
    );
    expect(texts).toEqual([expect.stringContaining('coilfeed: 1'), (texts as string[])[0]]);
    await page.evaluate('letGo()');
    await until(page, `document.querySelector('.part-kit .making').textContent.includes('in the downloads')`);
  });

  test('what cannot be read takes the verdicts below back, too: of readings, of what is compared', async () => {
    const page = await opened();
    await page.getByRole('button', { name: 'Compare with this state' }).click();
    await page.locator('.part-readings summary').first().click();
    const reading = page.getByRole('textbox', { name: /^drop, main limiter, multimeter/ });
    await reading.fill('14');
    await reading.press('Enter');
    const marks = `[...document.querySelectorAll('.check .mark, .compare td:nth-child(2) .mark')].map((one) => one.textContent)`;
    const verdicts = `(${marks}.length === 2 && ${marks}.every((one) => /^[✓✕?] /.test(one)))`;
    await until(page, verdicts);
    const field = page.locator('#field-coil_temperature');
    await field.fill('warm');
    await until(page, `${marks}.join() === 'Not current,Not current'`);
    // Nobody saves what is not of the text at hand.
    expect(await page.getByRole('button', { name: 'Save as SVG' }).isDisabled()).toBe(true);
    await field.fill('60 degC');
    await until(page, verdicts);
    // The lines of the state that is kept are of its own supply.
    await unfold(page);
    await page.locator('#field-sweep_supply').fill('13 V');
    await expect.poll(() => page.locator('.part-speed').textContent()).toContain('at 13.0 V and 14.0 V');
  });

  test('a reading that is being typed goes to the design at hand, not to the file that is dropped', async () => {
    const page = await opened();
    await page.locator('.part-readings summary').first().click();
    // The file takes its time to be read, as a workbook does.
    await page.evaluate(`(() => {
      const demo = JSON.parse(document.getElementById('demos').textContent).find(({ file }) => file === 'two-bank-v8.yaml');
      const event = new Event('drop', { cancelable: true });
      const file = new File([demo.text], 'other.yaml');
      const read = file.arrayBuffer.bind(file);
      file.arrayBuffer = () => new Promise((done) => { window.read = () => done(read()); });
      event.dataTransfer = { files: [file], types: ['Files'] };
      dispatchEvent(event);
    })()`);
    await page.getByRole('textbox', { name: /^drop, main limiter, multimeter/ }).fill('155');
    await page.evaluate('read()');
    await until(page, `document.querySelector('.said').textContent.includes('Opened other.yaml')`);
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    expect(await page.locator('#design-text').inputValue()).not.toContain('155 mV');
    await page.getByRole('button', { name: 'Undo' }).click();
    await until(page, `document.querySelector('#design-text').value.includes('155 mV')`);
  });
});
