/** What is to be chosen must be on the list of the shop, and its wire in the copy that a workbook holds. */
import type { Partially } from '../draft.ts';
import { listed, type Report } from '../problems.ts';
import type { DesignFile } from '../schema.ts';
import type { Shop } from './shop.ts';

/** Of an insulation that was left out of a copy of a shop's file: what is found, and what is taken. */
const noWire = (insulation: string, there: readonly string[]): [string, string] => [
  `${insulation}, whose wire on the shelf was left out of this copy of the shop’s file`,
  `takes ${listed(there)}, or the shop’s file itself beside the design`,
];

/** The least price takes prices; a fuse that is to be chosen must be of a type that the shop has. */
export function checkListed(draft: Partially<DesignFile>, shop: Shop | null, report: Report): void {
  if (draft.sizes?.aim === 'price' && !shop?.wire?.some(({ price }) => price !== undefined))
    report(
      ['sizes', 'aim'],
      'the least price, without the price of any wire',
      'takes copper, or a shop’s file that lists wire with its price',
    );
  for (const side of ['feed', 'return'] as const)
    draft[side]?.forEach((run, i) => {
      if (run?.insulation !== undefined && shop?.insulations?.includes(run.insulation) === false)
        report([side, i, 'insulation'], ...noWire(run.insulation, shop.insulations));
    });
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
