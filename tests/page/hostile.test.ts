/** What a browser refuses and what people open by mistake: the page goes on with what it has, and says what it could not use. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { emptyFolder } from '../cli/tool.ts';
import { demo } from '../design/helpers.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { answered, listenTo, open, pageOf, type, until } from './bench.ts';

/** What the browser does with storage, put in its place before the page starts. */
const STORAGES: [name: string, broken: string, keeps?: boolean][] = [
  [
    'asking for it is refused',
    `Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('denied', 'SecurityError'); } })`,
  ],
  ['none', `Object.defineProperty(window, 'localStorage', { get: () => null })`],
  ['full', `Storage.prototype.setItem = () => { throw new DOMException('no room', 'QuotaExceededError'); }`],
  [
    'reading is refused',
    `Storage.prototype.getItem = () => { throw new DOMException('denied', 'SecurityError'); }`,
    true,
  ],
];

describeWithPeer('chromium', 'the page and what it cannot use', () => {
  const browser = useBrowser();

  test.each(STORAGES)('storage: %s', async (_, broken, keeps = false) => {
    const context = await browser().newContext();
    const page = await context.newPage();
    const { said } = listenTo(page);
    await page.addInitScript(broken);
    await page.goto(`file://${await pageOf()}`);
    await answered(page);
    await type(page, 'coil_temperature', '61 degC');
    await page.getByRole('button', { name: 'Undo' }).click();
    await until(page, `document.querySelector('#field-coil_temperature').value !== '61 degC'`);
    // Where nothing is kept it is said once, and goes when it was read.
    const banner = page.locator('.banner', { hasText: 'does not keep the design' });
    if (keeps) await until(page, `Object.keys(localStorage).length > 0`);
    else {
      await banner.waitFor();
      await banner.getByRole('button').click();
      await type(page, 'coil_temperature', '62 degC');
    }
    expect(await banner.count()).toBe(0);
    expect(said).toEqual([]);
    await context.close();
  });

  test('files that are no design: each is told by its name, and the design at hand stays', async () => {
    const folder = emptyFolder();
    const { page, said } = await open(browser(), await pageOf());
    const title = await page.locator('.verdict h2').textContent();
    const text = demo('pair-four');
    const latin = Buffer.from(text.replace('Delivery van', 'Lieferwagen für Öl'), 'latin1');
    const files: [string, string | Buffer, RegExp][] = [
      ['huge.yaml', Buffer.alloc(50 * 1024 * 1024 + 1, 'a'), /“huge\.yaml” is too large/],
      ['huge.xlsx', Buffer.alloc(65 * 1024 * 1024, 'a'), /“huge\.xlsx” is too large/],
      ['utf16.yaml', Buffer.from(`\ufeff${text}`, 'utf16le'), /“utf16\.yaml” is not UTF-8/],
      ['latin.yaml', latin, /“latin\.yaml” is not UTF-8/],
      [
        'picture.yaml',
        Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex'),
        /“picture\.yaml” is not UTF-8/,
      ],
      ['noise.xlsx', Buffer.from('no archive at all'), /“noise\.xlsx” cannot be used/],
      ['cut.xlsx', Buffer.from('504b03041400000008', 'hex'), /“cut\.xlsx” cannot be used/],
    ];
    for (const [name, bytes, words] of files) {
      const path = join(folder, name);
      writeFileSync(path, bytes);
      await page.locator('input[type=file]').setInputFiles(path);
      await expect.poll(() => page.locator('.said').first().textContent()).toMatch(words);
      expect(await page.locator('.verdict h2').textContent(), name).toBe(title);
    }
    // A folder is dropped as a file that cannot be read.
    await dropUnreadable(page, 'folder');
    await expect.poll(() => page.locator('.said').first().textContent()).toMatch(/“folder” cannot be read/);
    // Text that is no design is opened, as any text: what is wrong is told, and undo leads back.
    for (const [name, odd] of [
      ['nothing.yaml', ''],
      ['zeros.yaml', '\0\0\0'],
      ['letter.yaml', 'Dear all,\nplease find the drawing attached.\n'],
    ]) {
      const path = join(folder, name as string);
      writeFileSync(path, odd as string);
      await page.locator('input[type=file]').setInputFiles(path);
      await until(page, `document.querySelector('.verdict h2').textContent === '${name}'`);
      // The name stands there before the answer does.
      await expect
        .poll(() => page.locator('.problems li').count(), { message: String(name) })
        .toBeGreaterThan(0);
      await page.getByRole('button', { name: 'Undo' }).click();
      await until(page, `document.querySelector('.verdict h2').textContent === ${JSON.stringify(title)}`);
    }
    expect(said).toEqual([]);
  });
});

/** As Chromium hands over a folder: it has a name, and reading it fails. */
const dropUnreadable = (page: Page, name: string): Promise<unknown> =>
  page.evaluate(`(() => {
    const file = new File(['x'], '${name}');
    file.arrayBuffer = () => Promise.reject(new DOMException('could not be found', 'NotFoundError'));
    const event = new Event('drop', { cancelable: true });
    event.dataTransfer = { files: [file], types: ['Files'] };
    dispatchEvent(event);
  })()`);
