/** What the shop has: a change that needs anything else says that it is to be ordered. */
import type { Design, Fuse, FuseType, Relay } from '../design/design.ts';
import { fuseOfShop, relayOfShop } from '../design/normalise.ts';
import { typesOffered } from '../design/shop/fuses.ts';
import { areaOf } from '../design/shop/limits.ts';
import type { Change } from './remedy.ts';

/** What a change takes more when it has to be ordered: of two that mend, the one from the shelf is told. Arbitrary. */
const ORDERING = 10;

/** A change that needs what the shop does not have, and says so. */
export const toOrder = (change: Change): Change => ({
  ...change,
  says: (result) => `to order: ${change.says(result)}`,
  effort: change.effort + ORDERING,
});

/** Whether the terminals and the connector at the ends of a run, which the shop states, take a size. */
export function isTaken({ shop, runs }: Design, run: number, size: string): boolean {
  const largest = runs[run]?.largest ?? null;
  return shop === null || largest === null || areaOf(size) <= areaOf(largest) * (1 + 1e-9);
}

/** The shop's fuses in the place of one, with what their makers say; null where the shop lists none. */
export const fusesOf = ({ shop }: Design, now: Fuse): { name: string; fuse: Fuse }[] | null =>
  shop?.fuses?.length ? shop.fuses.map((part) => ({ name: part.name, fuse: fuseOfShop(part, now) })) : null;

/** The shop's relays in the place of one; null where the shop lists none. */
export const relaysOf = ({ shop, points }: Design, now: Relay): { name: string; relay: Relay }[] | null =>
  shop?.relays?.length
    ? shop.relays.map((part) => ({
        name: part.name,
        relay: relayOfShop(part, now, Math.max(...points.map(({ supply }) => supply))),
      }))
    : null;

/** Types of fuses that may be chosen, those of which the shop has some first; without its list all. */
export function typesOf({ shop }: Design, wanted: readonly FuseType[]): { type: FuseType; order: boolean }[] {
  const listed = typesOffered(shop) ?? wanted;
  return wanted
    .map((type) => ({ type, order: !listed.includes(type) }))
    .sort((a, b) => Number(a.order) - Number(b.order));
}
