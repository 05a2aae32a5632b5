/** A design and the shop's file in the page: edited there, saved as YAML and as a workbook, each is the same to the command. */
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { readCells } from '../peers/cells.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { typed } from '../saved/edit.ts';
import { demoPath } from '../workbook/books.ts';
import { answered, answers, apart, download, open, pageOf, type, unfold, until } from './bench.ts';

describeWithPeer('chromium', 'the shop’s file in the page', () => {
  const browser = useBrowser();
  const give = async (page: Page, name: string, buffer: Buffer): Promise<void> => {
    const before = await answers(page);
    await page.locator('input[type=file]').setInputFiles({ name, mimeType: '', buffer });
    await answered(page, before + 1);
  };
  const result = async (page: Page) => JSON.parse((await download(page, 'Result')).toString());
  const pick = async (page: Page, field: string, value: string): Promise<void> => {
    const before = await answers(page);
    await page.locator(`#field-${field}`).selectOption(value);
    await answered(page, before + 1);
  };
  const told = async (cwd: string, file: string) => {
    const { out, err } = await coilfeed(['size', file, '--json'], { cwd });
    if (out === '') throw new Error(err);
    const { changed, ...rest } = JSON.parse(out);
    return rest;
  };

  test('edited in the page, saved as YAML and as a workbook, read by the command, opened again: one result', async () => {
    const folder = emptyFolder();
    const shop = demoPath('shop');
    copyFileSync(shop, join(folder, 'shop.yaml'));
    const { page, said } = await open(browser(), await pageOf(demoPath('hill-climb-six')));
    await give(page, 'shop.yaml', readFileSync(shop));
    // As it lies on disk: it names the shop's file.
    await give(page, 'van.yaml', readFileSync(demoPath('pair-four')));
    await until(page, `document.querySelector('.verdict h2')?.textContent.startsWith('Delivery van')`);
    await unfold(page);
    // A field that is left to the shop's relay shows what that has, and the one picked then what the other has.
    const rating = (): Promise<string | null> => page.locator('#field-feed_0__relay_rating').textContent();
    expect(await rating()).toContain('30 A');
    await pick(page, 'feed_0__relay_use', 'racer 50');
    expect(await rating()).toContain('50 A');
    expect(await page.locator('#field-feed_0__relay_pull_in').getAttribute('placeholder')).toBe('6.8 V');
    await type(page, 'feed_0__length', '2.1 m');
    await pick(page, 'sizes_aim', 'price');
    const own = await result(page);
    expect(own.shop.used).toContainEqual(expect.objectContaining({ part: 'relay', name: 'racer 50' }));
    const price = `Price of wire, fuses and relays: ${own.shop.price.total.toFixed(2)} EUR`;
    await until(page, `document.querySelector('main').textContent.includes(${JSON.stringify(price)})`);

    const yaml = await download(page, 'Save YAML');
    expect(yaml.toString()).toContain('\nshop: shop.yaml\n');
    writeFileSync(join(folder, 'saved.yaml'), yaml);
    expect(apart(own, await told(folder, 'saved.yaml'))).toEqual([]);

    const book = await download(page, 'Workbook');
    writeFileSync(join(folder, 'saved.xlsx'), book);
    const back = await told(folder, 'saved.xlsx');
    expect(apart(own, back)).toEqual([]);

    await give(page, 'saved.xlsx', book);
    expect(apart(own, await result(page))).toEqual([]);

    // Another relay by its name in the workbook, as a person types it.
    const cell = [...(readCells(book).get('Inputs') ?? [])].find(([, { value }]) => value === 'racer 50');
    const other = typed(book, { [cell?.[0] ?? '']: 'power 50' });
    writeFileSync(join(folder, 'other.xlsx'), other);
    const now = await told(folder, 'other.xlsx');
    expect(now.shop.used).toContainEqual(expect.objectContaining({ part: 'relay', name: 'power 50' }));
    await give(page, 'other.xlsx', Buffer.from(other));
    expect(apart(now, await result(page))).toEqual([]);
    expect(said).toEqual([]);
  });

  test('the shop’s file that came with a design: beside its text, saved by itself, for the design that names it', async () => {
    const { page, said } = await open(browser(), await pageOf(demoPath('two-bank-v8')));
    const verdict = (): Promise<string | null> => page.locator('.verdict').textContent();
    const shop = readFileSync(demoPath('shop'), 'utf8');
    const text = readFileSync(demoPath('two-bank-v8'), 'utf8');
    const before = apart(await result(page), await told('.', demoPath('two-bank-v8')));
    expect(before).toEqual([]);
    expect((await download(page, 'Save YAML')).toString()).toBe(text);
    expect((await download(page, 'The shop’s file, shop.yaml')).toString()).toBe(shop);

    // Another one of the same shop, with a fault: it is said of that file, which has no forms.
    await give(page, 'mine.yaml', Buffer.from(shop.replace(/pull_in: [\d.]+ V/, 'pull_in: seven')));
    expect(await verdict()).toMatch(/mine\.yaml:\d+:\d+ relays\[0\]\.pull_in: found "seven"/);
    expect(await page.locator('.problems button, .tray .problem').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Open the shop’s file …' }).count()).toBe(1);
    const put = async (name = 'mine.yaml'): Promise<void> => {
      const count = await answers(page);
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('button', { name: `Put the shop’s file ${name} away` }).click();
      await answered(page, count + 1);
    };
    await put();
    expect(await verdict()).toContain('pass');
    // A design has a key of that name, and a file of it may have that of the design.
    const other = shop.replace('accuracy: 1 % + 0.1 A', 'accuracy: one');
    await give(page, 'two-bank-v8.yaml', Buffer.from(other));
    expect(await verdict()).toMatch(/\.\/two-bank-v8\.yaml:\d+:\d+ instruments\[1\]\.accuracy: found "one"/);
    expect(await page.locator('.problems button, .tray .problem, .section .count').count()).toBe(0);
    await put('two-bank-v8.yaml');

    // It goes with the design through another one, which it says nothing of, and through a reload.
    await give(page, 'van.yaml', readFileSync(demoPath('pair-four')));
    expect(await verdict()).toContain('the shop’s file "shop.yaml", which was not given');
    await page.getByRole('button', { name: 'Undo' }).click();
    await until(page, `document.title.startsWith('PASS')`);
    await unfold(page);
    await type(page, 'feed_0__length', '1.9 m');
    await until(page, `JSON.stringify(localStorage).includes('1.9 m')`);
    await page.reload();
    await until(page, `document.title.startsWith('PASS')`);
    expect((await result(page)).shop.used.length).toBeGreaterThan(0);

    // Without the key it is the design of no shop, as for the command.
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    const count = await answers(page);
    await page.locator('#design-text').fill(text.replace('shop: shop.yaml', ''));
    await answered(page, count + 1);
    expect(await verdict()).toContain('coil.use');
    expect(said).toEqual([]);
  });
});
