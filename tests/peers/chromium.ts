/** Debian's Chromium, for what only a browser can tell: where text lies, how it prints, how the page is used. */
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { needPeer } from './peer.ts';

/** One browser for the tests of a file or group, started before and closed after them. As root it runs without a sandbox. */
export function useBrowser(): () => Browser {
  let browser: Browser | undefined;
  beforeAll(async () => {
    browser = await chromium.launch({
      executablePath: needPeer('chromium'),
      args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage'],
      timeout: 0,
    });
  });
  afterAll(async () => {
    await browser?.close();
  });
  return () => browser as Browser;
}
