/** The page in a real browser, from a file, with everything that it says and asks for written down. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { coilfeed } from '../cli/tool.ts';

/** An answer takes a second or two; a machine may be so busy that it takes a minute. Beyond this it hangs [ms]. */
export const PATIENCE = 200_000;

export interface Opened {
  readonly page: Page;
  /** What the browser's console said, and errors that nothing caught. */
  readonly said: string[];
  /** Addresses that were asked for, without the page itself and what it made in memory. */
  readonly asked: string[];
}

/** Folders of a test are emptied after it; a page stays for the next ones. */
const folder = mkdtempSync(join(tmpdir(), 'coilfeed-page-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));

/** Pages that were written, by the design inside. */
const written = new Map<string, string>();

/** The page with a design inside, written once; returns its path. */
export async function pageOf(design?: string): Promise<string> {
  const known = written.get(design ?? '');
  if (known !== undefined) return known;
  const out = join(folder, `${written.size}.html`);
  const ran = await coilfeed(['page', ...(design === undefined ? [] : [design]), '--out', out]);
  if (ran.status !== 0) throw new Error(`the page was not written: ${ran.err}`);
  written.set(design ?? '', out);
  return out;
}

/** Opens a page of this path, and waits for its first answer. */
export async function open(
  browser: Browser,
  path: string,
  options: BrowserContextOptions = {},
): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  const opened = listenTo(page);
  await page.goto(`file://${path}`);
  await answered(page);
  return opened;
}

export function listenTo(page: Page): Opened {
  const [said, asked]: [string[], string[]] = [[], []];
  page.on('console', (message) => said.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => said.push(`error: ${error.message}`));
  page.on('request', (request) => {
    if (!/^(file|blob|data):/.test(request.url())) asked.push(request.url());
  });
  return { page, said, asked };
}

/**
 * Waits until an expression holds in the page. The browser library's own way of waiting makes code from text, which the
 * page forbids.
 */
export async function until(page: Page, expression: string): Promise<void> {
  const end = Date.now() + PATIENCE;
  while (Date.now() < end) {
    // While the page is being loaded again there is nothing to ask.
    const holds = await page.evaluate(expression).catch(() => false);
    if (holds === true) return;
    await new Promise((done) => setTimeout(done, 20));
  }
  throw new Error(`never came true: ${expression}`);
}

/** Waits until the page has answered for its newest text, at least `count` times in all. */
export const answered = (page: Page, count = 1): Promise<void> =>
  until(
    page,
    `(() => { const of = document.querySelector('main')?.dataset;
      return of?.busy === 'false' && Number(of.answers) >= ${count}; })()`,
  );

/** How often the page has answered. */
export const answers = async (page: Page): Promise<number> =>
  Number(await page.locator('main').getAttribute('data-answers'));

/** Types into a field, in the place of what is there, and waits for the answer. */
export async function type(page: Page, label: string, text: string): Promise<void> {
  const before = await answers(page);
  await page.locator(`#field-${label}`).fill(text);
  await answered(page, before + 1);
}

/** What stands in the list of a button of the toolbar is pressed. */
export async function choose(page: Page, menu: string, item: string): Promise<void> {
  await page.getByRole('button', { name: menu, exact: true }).click();
  await page.getByRole('button', { name: item, exact: true }).click();
}

/** What a button puts into the downloads; those of the whole design stand in a list. */
export async function download(page: Page, button: string): Promise<Buffer> {
  if (/^(Save YAML|Workbook|Result|The shop’s file, .*)$/.test(button))
    await page.getByRole('button', { name: 'Save', exact: true }).click();
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  return readFileSync(await file.path());
}

/** The forms are there, which come some steps after the first answer. */
export const FORMS = `document.querySelector('details.section') !== null && document.querySelector('details.coming') === null`;

/** Opens everything that is folded, in the forms, too. */
export const unfold = async (page: Page): Promise<void> => {
  await until(page, FORMS);
  await page.evaluate(`document.querySelectorAll('details').forEach((one) => { one.open = true; })`);
};

/**
 * Where two results differ. Two builds of the JavaScript engine differ in the last digit of an exponential; a few of
 * them in a row stay below this share. What is near 0 is a difference of larger values.
 */
const APART = 1e-12;

export function apart(a: unknown, b: unknown, path = ''): string[] {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= APART * Math.max(1, Math.abs(a), Math.abs(b)) ? [] : [`${path}: ${a} and ${b}`];
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null)
    return a === b ? [] : [`${path}: ${a} and ${b}`];
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  return keys.flatMap((key) =>
    apart((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], `${path}.${key}`),
  );
}
