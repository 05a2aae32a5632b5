/** A property of many items in one test: every item is looked at, and all that do not have it are named. */
import { expect } from 'vitest';

/** Calls `look` with every item; fails with the names of all for which it throws, or when there is no item at all. */
export function expectOfAll<T>(
  items: readonly T[],
  nameOf: (item: T) => string,
  look: (item: T, i: number) => void,
): void {
  const offenders: string[] = [];
  for (const [i, item] of items.entries())
    try {
      look(item, i);
    } catch (error) {
      offenders.push(`${nameOf(item)}: ${(error as Error).message}`);
    }
  expect(offenders).toEqual([]);
  expect(items.length, 'items looked at').toBeGreaterThan(0);
}
