/** What parts cost by the shop's file, and what a feed costs: its wire, fuses and relays. */
import { printInsulation, printSize } from '../basis/print.ts';
import type { Design } from '../design/design.ts';
import type { Kind, Price, ShopFuse, ShopRelay } from '../design/shop/shop.ts';
import { usedIn } from '../design/shop/use.ts';
import { asSold } from '../design/sold.ts';
import type { Evaluation } from '../engine/evaluate.ts';

/** A part, how many or how many metres of it, and the price of one; null where the shop states none. */
export interface Line {
  readonly what: string;
  readonly count: number;
  readonly unit: 'pcs' | 'm';
  readonly each: number | null;
}

export interface Bill {
  readonly currency: string;
  /** Of all that has a price. */
  readonly total: number;
  readonly lines: readonly Line[];
  /** What has none. */
  readonly open: readonly string[];
}

const cheapest = (prices: readonly (Price | undefined)[]): number | null => {
  const known = prices.flatMap((price) => (price === undefined ? [] : [price.amount]));
  return known.length === 0 ? null : Math.min(...known);
};

const wiresOf = ({ shop }: Design, size: string | null, insulation: string | null) =>
  (shop?.wire ?? []).filter(
    (wire) => asSold(wire.size, wire.insulation) === size && wire.insulation === insulation,
  );

/** Price of one metre of a wire. */
export const wirePrice = (design: Design, size: string | null, insulation: string | null): number | null =>
  cheapest(wiresOf(design, size, insulation).map(({ price }) => price));

/** Under which number the shop stocks a wire of that colour; null where it says none, or has it in other colours. */
export const wireStock = (
  design: Design,
  size: string | null,
  insulation: string | null,
  colour: string | null,
): string | null =>
  wiresOf(design, size, insulation).find(
    ({ stock, colours }) =>
      stock !== undefined && (colour === null || colours === undefined || colours.includes(colour)),
  )?.stock ?? null;

/** Price of a part that the design uses by its name. */
export const namedPrice = ({ shop, used }: Design, kind: Kind, name: string | null): number | null => {
  if (!used.some((one) => one.kind === kind && one.name === name)) return null;
  const parts: readonly { name: string; price?: Price | undefined }[] =
    kind === 'instruments' ? [] : (shop?.[kind] ?? []);
  return parts.find((part) => part.name === name)?.price?.amount ?? null;
};

const usedAt = (design: Design, run: number, part: 'fuse' | 'relay') => {
  const own = usedIn(design, run, part);
  // With another type or rating beside its name it is another part.
  return own === undefined || ['type', 'rating'].some((key) => own.beside.includes(key)) ? null : own.name;
};

/** The shop's fuse of a run: the one that it uses, or the cheapest of that type and rating; null where there is none. */
export function fuseOf(e: Evaluation, run: number): ShopFuse | null {
  const { design } = e;
  const own = usedAt(design, run, 'fuse');
  if (own !== null) return design.shop?.fuses?.find(({ name }) => name === own) ?? null;
  const price = (fuse: ShopFuse): number => fuse.price?.amount ?? Number.POSITIVE_INFINITY;
  return (
    fusesAlike(e, run).toSorted((a, b) => (price(a) < price(b) ? -1 : price(a) > price(b) ? 1 : 0))[0] ?? null
  );
}

/** All of the shop that have the type and the rating of the fuse of a run. */
const fusesAlike = (e: Evaluation, run: number): ShopFuse[] => {
  const [type, rating] = [e.design.runs[run]?.fuse?.type, e.number('fuse_rating', { run })];
  return (e.design.shop?.fuses ?? []).filter((fuse) => fuse.type === type && fuse.rating === rating);
};

/** The fuse of the shop that a run gets without naming one. */
export interface Taken {
  readonly run: string;
  readonly name: string;
  /** Of how many with a price, of its type and rating, this one is the cheapest; 1 where prices decide nothing. */
  readonly alike: number;
}

const priced = (fuses: readonly ShopFuse[]) => fuses.filter(({ price }) => price !== undefined);

/** None while no sizes were found: nothing is bought then. */
export const fusesTaken = (e: Evaluation): Taken[] =>
  e.design.runs.flatMap(({ name: run }, i) => {
    const fuse = usedAt(e.design, i, 'fuse') === null ? fuseOf(e, i) : null;
    return fuse === null || e.number('solved') !== 1
      ? []
      : [{ run, name: fuse.name, alike: Math.max(1, priced(fusesAlike(e, i)).length) }];
  });

/** The shop's relay of a run, where it uses one. */
export const relayOf = ({ design }: Evaluation, run: number): ShopRelay | null => {
  const own = usedAt(design, run, 'relay');
  return design.shop?.relays?.find(({ name }) => name === own) ?? null;
};

/** The name of a part where the shop has another one that is alike but for the name. */
const named = <T extends { readonly name: string }>(
  part: T | null,
  all: readonly T[] | undefined,
  alike: (one: T, other: T) => boolean,
): string =>
  part !== null && (all ?? []).filter((one) => alike(one, part)).length > 1 ? `, “${part.name}”` : '';

/** The sum of what has a price; lines of one part together. */
export function billOf(currency: string, all: readonly Line[]): Bill {
  const parts = new Map<string, Line>();
  for (const line of all) {
    // Two parts that are called alike stay two where they cost differently.
    const key = `${line.what} ${line.each}`;
    const known = parts.get(key);
    parts.set(key, known ? { ...known, count: known.count + line.count } : line);
  }
  const lines = [...parts.values()];
  return {
    currency,
    total: lines.reduce((sum, { count, each }) => sum + count * (each ?? 0), 0),
    lines,
    open: lines.flatMap(({ what, each }) => (each === null ? [what] : [])),
  };
}

/** The price of a feed; null where the shop states no prices, or no sizes were found. */
export function feedBill(e: Evaluation): Bill | null {
  const { design } = e;
  const currency = design.shop?.currency ?? null;
  if (currency === null || e.number('solved') !== 1) return null;
  const lines = design.runs.flatMap(({ insulation, conductors, fuse, relay }, run): Line[] => {
    const size = String(e.value('gauge', { run }));
    const metres = (e.number('run_length', { run }) ?? 0) * conductors;
    const wire: Line = {
      what: `${printSize(size)}, ${printInsulation(insulation)}`,
      count: metres,
      unit: 'm',
      each: wirePrice(design, size, insulation),
    };
    // A run with one conductor for each coil has as many fuses and relays.
    const count = design.wires.filter((own) => own.run === run).length;
    const amps = (name: 'fuse_rating' | 'relay_rating'): string => `${e.number(name, { run }) ?? '?'} A`;
    return [
      wire,
      ...(fuse === null
        ? []
        : [
            {
              what: `${amps('fuse_rating')} fuse, type ${fuse.type}${named(fuseOf(e, run), design.shop?.fuses, (a, b) => a.type === b.type && a.rating === b.rating)}`,
              count,
              unit: 'pcs' as const,
              each: fuseOf(e, run)?.price?.amount ?? null,
            },
          ]),
      ...(relay === null
        ? []
        : [
            {
              what: `${amps('relay_rating')} relay${named(relayOf(e, run), design.shop?.relays, (a, b) => a.rating === b.rating)}`,
              count,
              unit: 'pcs' as const,
              each: relayOf(e, run)?.price?.amount ?? null,
            },
          ]),
    ];
  });
  return billOf(currency, lines);
}

/** `23.10 EUR` */
export const money = (amount: number, currency: string): string => `${amount.toFixed(2)} ${currency}`;
