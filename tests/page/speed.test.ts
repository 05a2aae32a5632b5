/** How quick the page is in Chromium, against an empty program of Node in the same run: no clock is held against it. */
import { expect, test } from 'vitest';
import { pageSpeed } from '../../src/build/page-speed.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { demoPath } from '../workbook/books.ts';
import { pageOf } from './bench.ts';

/**
 * A second and 50 ms, where `node -e 0` takes 40 ms of the processor; other programs beside, which take cache and half a
 * core, weigh on a single task more than on the whole: it may be twice as long.
 */
const [SECOND, BLINK] = [25, 2 * 1.25];

describeWithPeer('chromium', 'the page is quick', () => {
  const browser = useBrowser();

  test('the first answer within a second, no task and no answer to a slider beyond 50 ms', async () => {
    const { bare, first, longest, sliders } = await pageSpeed(
      browser(),
      await pageOf(demoPath('two-bank-v8')),
    );
    expect(first / bare).toBeLessThan(SECOND);
    // Bounds from below: what was not measured would be quick.
    expect(first / bare).toBeGreaterThan(1);
    expect(Object.keys(sliders)).toHaveLength(4);
    const slow = [
      ...Object.entries(longest),
      ...Object.entries(sliders).map(([name, { work }]) => [name, work] as const),
    ]
      .filter(([, time]) => !(time / bare < BLINK && time > 0))
      .map(([name, time]) => `${name}: ${(time / bare).toFixed(2)} times node -e 0`);
    expect(slow).toEqual([]);
  });
});
