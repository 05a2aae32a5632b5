/** The page by keyboard alone: from focus to focus, each seen. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** As many presses of Tab as a person never makes to get from one end of the page to the other. */
const MOST = 400;

/** What has the focus: what it is, how a screen reader names it, and what is wrong with how it is seen. */
export interface Focused {
  readonly what: string;
  readonly wrong: string;
}

const FOCUSED = `(() => {
  const at = document.activeElement;
  const what = at.tagName.toLowerCase() + ' ' +
    (at.getAttribute('aria-label') ?? at.labels?.[0]?.textContent ?? at.textContent ?? '').trim().slice(0, 90);
  if (at === document.body) return { what, wrong: '' };
  const box = at.getBoundingClientRect();
  const ring = at.matches('.part') ? getComputedStyle(at.querySelector('.hit')).stroke : getComputedStyle(at).outlineStyle;
  const seen = [0.5, 0.1, 0.9].some((share) => {
    const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height * share);
    return top !== null && (at.contains(top) || top.contains(at));
  });
  const wrong = [
    ...(ring === 'none' ? ['no ring'] : []),
    // What is taller than the screen is seen in part.
    ...(seen || box.height > innerHeight / 2 ? [] : ['covered or out of sight']),
    ...(document.scrollingElement.scrollTop === 0 || innerWidth < 901 ? [] : ['the whole page was scrolled']),
  ].join(', ');
  return { what, wrong };
})()`;

export const focused = (page: Page): Promise<Focused> => page.evaluate(FOCUSED);

/** What has the focus, by name; it comes a frame after what moves it, so that one asks until it is there. */
export const held = async (page: Page): Promise<string> => (await focused(page)).what;

/** Presses a key until what matches has the focus. Whatever had it on the way was seen. */
export async function reach(page: Page, name: RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<string> {
  for (let i = 0; i < MOST; i++) {
    await page.keyboard.press(key);
    // What comes in above moves the focus for as long as it takes the page to scroll after it.
    await expect.poll(async () => (await focused(page)).wrong).toBe('');
    const what = await held(page);
    if (name.test(what)) return what;
  }
  throw new Error(`nothing that matches ${name} is reached by ${key}`);
}

export async function press(page: Page, ...keys: readonly string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key);
}

/** Types in the place of what stands in the field. */
export async function write(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
}
