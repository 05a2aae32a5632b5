/** What is to be chosen must be on the list of the shop. */
import type { Partially } from '../draft.ts';
import { listed, type Report } from '../problems.ts';
import type { DesignFile } from '../schema.ts';
import type { Shop } from './shop.ts';

/** The least price takes prices; a fuse that is to be chosen must be of a type that the shop has. */
export function checkListed(draft: Partially<DesignFile>, shop: Shop | null, report: Report): void {
  if (draft.sizes?.aim === 'price' && !shop?.wire?.some(({ price }) => price !== undefined))
    report(
      ['sizes', 'aim'],
      'the least price, without the price of any wire',
      'takes copper, or a shop’s file that lists wire with its price',
    );
  const types = [...new Set(shop?.fuses?.map(({ type }) => type))];
  if (types.length === 0) return;
  draft.feed?.forEach((run, i) => {
    const { type, rating } = run?.fuse ?? {};
    if (rating !== 'auto' || type === undefined || type === 'unknown' || types.includes(type)) return;
    report(
      ['feed', i, 'fuse', 'type'],
      `a fuse of type ${type} to be chosen, of which the shop has none`,
      `takes ${listed(types)}, or the rating of another one`,
    );
  });
}
