/**
 * A walk through the page by what people do there, drawn at random from a seed: after each step the page says what the same
 * program says of the text and the shop's file that it has stored, or what is wrong with them.
 */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { keyText, type Path } from '../../src/design/problems.ts';
import { readDesign } from '../../src/design/read.ts';
import { readTree } from '../../src/design/tree.ts';
import { asTyped } from '../../src/page/form/written.ts';
import { idOf } from '../../src/page/place.ts';
import type { Stored } from '../../src/page/state/storage.ts';
import { run } from '../../src/run.ts';
import { fromShelf } from '../../src/shop/choose.ts';
import { toJson } from '../../src/writers/json.ts';
import { demo, SHOP } from '../design/helpers.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { samples } from '../samples.ts';
import { demoPath } from '../workbook/books.ts';
import { answered, apart, download, FORMS, open, pageOf, until } from './bench.ts';

/** What a person may type for any value; most of it is wrong at most places. */
const WORDS = [
  '',
  'abc',
  '-3',
  '0',
  '1,4',
  '55 in',
  '4 ft 7 in',
  '"',
  '{',
  '#x: y',
  'null',
  '1e9 kg',
  '12 #c',
];
const FILES: readonly (readonly [name: string, text: string])[] = [
  ['within', demo('pair-four')],
  ['returns', demo('two-bank-v8').replaceAll('\n', '\r\n')],
  ['flow', JSON.stringify(readTree(demo('hill-climb-six'), '').value)],
  ['none', 'coilfeed: 1\ntitle: ['],
  ['shop', SHOP.text],
  ['dear', SHOP.text.replaceAll('price: ', 'price: 9')],
  ['wrong', SHOP.text.replace('accuracy: 1 % + 0.1 A', 'accuracy: one')],
];
const buttons = (within: string): string =>
  `[...document.querySelectorAll('${within} button')].filter((one) => !one.disabled)`;
const SLIDERS = `[...document.querySelectorAll('.sliders input')]`;
const ENTRIES = `[...document.querySelectorAll('.sheet input[type=text]')].filter((one) => !one.disabled)`;
/** What stands in the fields of the forms, by their ids. */
const SHOWN = `Object.fromEntries([...document.querySelectorAll('.sheet :is(input, select)')].map((one) => [one.id, one.value]))`;
const STORED = `(() => {
  dispatchEvent(new Event('pagehide'));
  return JSON.parse(Object.entries(localStorage).find(([key]) => /:[0-9a-f]+$/.test(key))[1]);
})()`;

/** Values of a design by their places; a list of plain values is one. */
function leaves(value: unknown, path: Path = []): [Path, unknown][] {
  const flat = Array.isArray(value) && value.every((one) => typeof one !== 'object');
  if (typeof value !== 'object' || value === null || flat) return [[path, value]];
  return Object.entries(value).flatMap(([key, inner]) =>
    leaves(inner, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}

describeWithPeer('chromium', 'a walk through the page', () => {
  const browser = useBrowser();

  test('whatever is done, it says what the command line says of the text at hand', async () => {
    const { page, said } = await open(browser(), await pageOf(demoPath('two-bank-v8')));
    let seed = 20_311;
    /** Lehmer's generator: the same walk in every run. */
    const random = (to: number): number => {
      seed = (seed * 48_271) % 2_147_483_647;
      return Math.floor((seed / 2_147_483_647) * to);
    };
    const pick = <T>(list: readonly T[]): T => list[random(list.length)] as T;
    const stored = (): Promise<Stored> => page.evaluate(STORED);
    /** One of what an expression finds, and what is done to it. */
    const act = (all: string, what: string): Promise<unknown> =>
      page.evaluate(
        `(() => { const all = ${all}; const one = all[${random(1e6)} % all.length]; ${what} })()`,
      );
    const toolbar = (name: string): Promise<unknown> =>
      act(`${buttons('.toolbar')}.filter((one) => one.textContent === '${name}')`, 'one?.click()');
    const listed = async (start: string): Promise<void> => {
      await toolbar('Open');
      await act(
        `${buttons('.items')}.filter((one) => one.textContent.startsWith('${start}'))`,
        'one?.click()',
      );
    };
    let count = 0;
    const give = async ([stem, text]: readonly [string, string]): Promise<void> => {
      const name = `${stem}-${++count}.yaml`;
      await page.locator('input[type=file]').setInputFiles({ name, mimeType: '', buffer: Buffer.from(text) });
      await until(page, `document.querySelector('.said').textContent.includes('${name}')`);
    };
    const enter = async (value: string): Promise<unknown> =>
      act(
        ENTRIES,
        `one?.focus();
        if (one) one.value = ${JSON.stringify(value)} || one.value.replace(/\\d+(\\.\\d+)?/, (n) => (n * 1.3).toFixed(2));
        one?.dispatchEvent(new Event('input', { bubbles: true }));
        one?.blur();`,
      );
    const ACTS: readonly (() => Promise<unknown>)[] = [
      () => enter(''),
      () => enter(''),
      () => enter(''),
      () => enter(pick(WORDS)),
      () =>
        act(
          SLIDERS,
          `for (const type of ['input', 'change']) {
        if (one) one.value = String(Number(one.min) + ${random(100) / 100} * (one.max - one.min));
        one?.dispatchEvent(new Event(type, { bubbles: true }));
      }`,
        ),
      () => act(buttons('.sheet .buttons'), 'one?.click()'),
      () => act(buttons('.sheet'), 'one?.click()'),
      () => toolbar('Undo'),
      () => toolbar('Undo'),
      () => toolbar('Redo'),
      () => give(pick(FILES)),
      () => give(pick(FILES)),
      () => listed('Demo'),
      () => listed('Put'),
      () => listed('Put'),
      () => page.reload(),
    ];
    /** At rest, with all that is folded open. */
    const rest = async (): Promise<void> => {
      await answered(page);
      await until(page, `!document.title.startsWith('Working') && ${FORMS}`);
      await page.evaluate(
        `document.querySelectorAll('.sheet details').forEach((one) => { one.open = true; })`,
      );
    };
    await rest();
    await enter('');
    for (let step = 0; step < samples(60); step++) {
      await pick(ACTS)();
      await rest();
      expect(said, `step ${step}`).toEqual([]);
      await hold(page, await stored(), step);
    }
    // All the way back and again, letter by letter.
    const end = await stored();
    await page.evaluate(`(async () => {
      const [undo, redo] = ['Undo', 'Redo'].map((name) =>
        [...document.querySelectorAll('.toolbar button')].find((one) => one.textContent === name));
      let steps = 0;
      const press = (one) => { one.click(); return new Promise((done) => setTimeout(done)); };
      for (; !undo.disabled; steps++) await press(undo);
      for (; steps > 0; steps--) await press(redo);
    })()`);
    await rest();
    expect(await stored()).toEqual(end);
    await hold(page, end, -1);
    expect(said).toEqual([]);
  });

  /** The page says what the program says of what is stored. */
  async function hold(page: Page, { text, file, came, shop }: Stored, step: number): Promise<void> {
    const what = `step ${step}, ${file}`;
    const read = readDesign(text, file, shop ?? came ?? undefined);
    if (read.ok) {
      const { verdict, title, ...json } = JSON.parse(
        JSON.stringify(toJson(run(fromShelf(read.design, run)))),
      );
      expect(await page.title(), what).toBe(`${verdict.toUpperCase()} – ${title} – coilfeed bench`);
      const saved = JSON.parse((await download(page, 'Result')).toString());
      expect(apart(saved, { ...json, verdict, title }), what).toEqual([]);
    } else {
      expect(await page.title(), what).toBe('Not current – coilfeed bench');
      expect(await page.locator('.part-buy td').count(), what).toBe(0);
      const told = read.problems.map(
        (p) => `${p.file}:${p.line}:${p.column} ${p.key}: ${p.found}; ${p.taken}`,
      );
      const listed = await page.locator('.problems li').allTextContents();
      expect(listed.sort().slice(0, 100), what).toEqual(told.sort().slice(0, 100));
    }
    const tree = readTree(text, file);
    if (!tree.sound) return;
    const shown = (await page.evaluate(SHOWN)) as Record<string, string>;
    const other = leaves(tree.value).filter(
      ([path, value]) => (shown[idOf(path)] ?? asTyped(value)) !== asTyped(value),
    );
    expect(
      other.map(([path]) => keyText(path)),
      what,
    ).toEqual([]);
  }
});
