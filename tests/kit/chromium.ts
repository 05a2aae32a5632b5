/** A page of Debian's Chromium, for what only a browser can tell: where text lies, and how it prints. */
import { type Browser, chromium, type Page } from 'playwright-core';
import { needPeer } from '../peers/peer.ts';

/** Opens a browser, hands a page to `look`, and closes it whatever happens. */
export async function inBrowser<T>(look: (page: Page) => Promise<T>): Promise<T> {
  const browser: Browser = await chromium.launch({
    executablePath: needPeer('chromium'),
    args: ['--no-sandbox', '--disable-gpu'],
  });
  try {
    return await look(await browser.newPage());
  } finally {
    await browser.close();
  }
}
