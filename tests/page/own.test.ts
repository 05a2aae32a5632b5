/** Values and rules of the author’s own in the page: the verdict is that of the command, and open until they are evaluated. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { demo } from '../design/helpers.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { demoPath } from '../workbook/books.ts';
import { apart, choose, download, open, pageOf, until } from './bench.ts';
import { HOLD } from './hold.ts';

const RULE = `own:
  - { label: Wire in all, formula: SUM(run_length), unit: m, at_most: 1, words: The reel holds 1 m. }
  - { label: Copper, formula: copper, unit: g }
`;

describeWithPeer('chromium', 'rules of the author in the page', () => {
  const browser = useBrowser();
  const word = (page: Page): Promise<string | null> => page.locator('.verdict .word').textContent();
  const write = async (page: Page, from: string, to: string): Promise<void> => {
    const area = page.locator('#design-text');
    const text = await area.inputValue();
    expect(text).toContain(from);
    await area.fill(text.replace(from, to));
  };

  test('it fails where only such a rule is not met, as the command has it, and says so as long as it is not known', async () => {
    const file = join(emptyFolder(), 'ruled.yaml');
    writeFileSync(file, `${demo('pair-four')}\n${RULE}`);
    const { page, said } = await open(browser(), await pageOf(file));
    await until(page, `document.title.startsWith('FAIL')`);
    expect(await word(page)).toContain('1 of the author’s own rules fails');
    expect(await page.locator('.limits').textContent()).toContain('Wire in all');
    expect(await page.locator('.part-buy').textContent()).toContain('nothing is listed to buy');
    expect(await page.locator('.part-findings').textContent()).toContain('The reel holds 1 m.');
    const printed = JSON.parse((await coilfeed(['size', file, '--json'])).out);
    expect(printed.verdict).toBe('fail');
    const saved = JSON.parse((await download(page, 'Result')).toString());
    expect(apart(saved.own, printed.own)).toEqual([]);
    expect(saved.verdict).toBe('fail');
    // Not yet evaluated for what the design is now.
    await page.evaluate(HOLD);
    await page.evaluate(`hold('own')`);
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    await write(page, 'at_most: 1,', 'at_most: 100,');
    await until(page, 'held() > 0');
    expect(await word(page)).toMatch(/^Working.*are being worked out/);
    expect(await page.title()).toMatch(/^Working/);
    expect(await page.locator('.part-buy').textContent()).toContain('still being worked out');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    expect(await page.getByRole('button', { name: 'Result', exact: true }).isDisabled()).toBe(true);
    await page.keyboard.press('Escape');
    await page.evaluate('letGo()');
    await until(page, `document.title.startsWith('PASS')`);
    expect(await page.locator('.part-buy table').count()).toBe(1);
    // The state before stands beside it with the verdict that it has with the rule.
    await page.getByRole('button', { name: 'Compare with this state' }).click();
    await write(page, 'at_most: 100,', 'at_most: 1,');
    await until(page, `document.title.startsWith('FAIL')`);
    expect(await page.locator('.compare tbody tr').first().textContent()).toMatch(/fail.*pass.*another/);
    expect(said).toEqual([]);
  });

  test('what cannot be taken is refused in the words of the command, with its place', async () => {
    const file = join(emptyFolder(), 'odd.yaml');
    writeFileSync(file, `${demo('pair-four')}\n${RULE.replace('formula: copper,', 'formula: coper*2,')}`);
    const { status, err } = await coilfeed(['size', file]);
    expect(status).toBe(2);
    const { page } = await open(browser(), await pageOf(demoPath('pair-four')));
    await page.locator('input[type=file]').setInputFiles(file);
    await until(page, `document.querySelector('.problems li') !== null`);
    const told = (await page.locator('.problems li').textContent()) ?? '';
    expect(told).toContain('own[1].formula');
    expect(err.replace(/\s+/g, ' ')).toContain(told.replace(/\s+/g, ' ').trim());
    expect(await word(page)).toContain('1 thing to mend');
    await choose(page, 'Open', 'Demo: pair four');
    await until(page, `document.title.startsWith('PASS')`);
  });
});
