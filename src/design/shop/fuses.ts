/** What is to be chosen must be on the list of the shop, and its wire in the copy that a workbook holds. */
import { FUSE_RATINGS } from '../../data/fuse-ratings.ts';
import type { Partially } from '../draft.ts';
import type { FuseType } from '../kinds.ts';
import { listed, type Report } from '../problems.ts';
import type { DesignFile } from '../schema.ts';
import type { Shop } from './shop.ts';

const RATINGS = FUSE_RATINGS.rows.filter(({ standing }) => standing === 'listed');

const isUsual = ({ type, rating }: { type: string; rating: number }): boolean =>
  RATINGS.some((row) => row.type === type && row.rating === rating);

/** Whether a fuse of a rating of its standard may be chosen: where the shop has such ones of the type, one of these. */
export function isOffered(shop: Fuses, type: string, rating: number): boolean {
  const own = shop?.fuses?.filter((fuse) => fuse.type === type && isUsual(fuse)) ?? [];
  return isUsual({ type, rating }) && (own.length === 0 || own.some((fuse) => fuse.rating === rating));
}
type Fuses = { readonly fuses?: readonly { type: string; rating: number }[] | undefined } | null;

/** Types of which the shop has a fuse that may be chosen; null where it lists no fuses, and any may be. */
export const typesOffered = (shop: Pick<Shop, 'fuses'> | null): FuseType[] | null =>
  shop?.fuses?.length ? [...new Set(shop.fuses.filter(isUsual).map(({ type }) => type))] : null;

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
  const types = typesOffered(shop);
  if (types === null) return;
  draft.feed?.forEach((run, i) => {
    const { type, rating } = run?.fuse ?? {};
    if (rating !== 'auto' || type === undefined || type === 'unknown' || types.includes(type)) return;
    report(
      ['feed', i, 'fuse', 'type'],
      `a fuse of type ${type} to be chosen, of which the shop has none of a usual rating`,
      types.length === 0 ? 'takes a rating' : `takes ${listed(types)}, or the rating of another one`,
    );
  });
}
