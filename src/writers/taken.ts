/** What is said of a fuse of the shop that a run gets without naming one. */
import type { Taken } from '../shop/prices.ts';

export const takenText = ({ name, alike }: Pick<Taken, 'name' | 'alike'>): string =>
  `fuse “${name}”${alike > 1 ? `, the cheapest of ${alike} of its type and rating` : ''}`;
