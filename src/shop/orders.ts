/** What is missing where the shelf has no answer: sizes and fuses that would do, each tried on the whole design. */
import type { Design } from '../design/design.ts';
import type { FuseType } from '../design/kinds.ts';
import type { ShopFuse } from '../design/shop/shop.ts';
import type { Finding } from '../findings/finding.ts';
import type { Result } from '../findings/result.ts';

type Judge = (design: Design) => Result;

/** Wires and fuses to order, and whether they leave nothing open that a part of any shelf could mend. */
export interface Order {
  readonly wire: readonly { readonly size: string; readonly insulation: string }[];
  readonly fuses: readonly { readonly type: FuseType; readonly rating: number }[];
  readonly copper: number | null;
}

export interface Ordered {
  /** Fewest parts first, then least copper; empty where no part that there is would do. */
  readonly orders: readonly Order[];
  /** Shelves that were evaluated. */
  readonly tried: number;
}

/** Orders that are told. Arbitrary. */
const TOLD = 3;
const MENDED = ['size_found', 'fuse_load'];

const missing = ({ findings }: Result): Finding[] =>
  findings.filter(({ rule, verdict }) => verdict === 'fail' && MENDED.includes(rule));

const fuseOf = ({ type, rating }: Order['fuses'][number]): ShopFuse => ({
  name: `${type} ${rating}`,
  type,
  rating,
});

const stocked = (design: Design, { wire, fuses }: Pick<Order, 'wire' | 'fuses'>): Design => ({
  ...design,
  shelf: design.shelf && [...design.shelf, ...wire],
  shop: design.shop && {
    ...design.shop,
    // A shop that lists no fuses has them all.
    fuses: design.shop.fuses?.length ? [...design.shop.fuses, ...fuses.map(fuseOf)] : design.shop.fuses,
  },
});

/** Null where the design has no shelf, or nothing is missing from it. */
export function ordersFor(result: Result, judge: Judge): Ordered | null {
  const { design } = result.evaluation;
  const before = missing(result);
  const limited = design.shelf !== null || (design.shop?.fuses?.length ?? 0) > 0;
  if (!limited || before.length === 0) return null;
  const anything: Design = {
    ...design,
    shelf: null,
    pins: null,
    shop: design.shop && { ...design.shop, fuses: undefined },
  };
  const ideal = judge(anything);
  let tried = 1;
  // What no size and no fuse mends is no matter of the shelf.
  if (missing(ideal).length >= before.length) return { orders: [], tried };
  const chosen = partsOf(ideal, design);
  const worth = (order: Pick<Order, 'wire' | 'fuses'>): Order | null => {
    tried += 1;
    const found = judge(stocked(design, order));
    return missing(found).length <= missing(ideal).length
      ? { ...order, copper: found.evaluation.number('copper_total') }
      : null;
  };
  const fuses = chosen.fuses;
  const onlyFuses = fuses.length === 0 ? null : worth({ wire: [], fuses });
  if (onlyFuses !== null) return { orders: [onlyFuses], tried };
  // Each size of each insulation by itself, then all that the feed without a shelf would take.
  const singles = sizesFor(result).flatMap((wire) => {
    const order = worth({ wire: [wire], fuses });
    return order === null ? [] : [order];
  });
  const orders = singles.sort((a, b) => (a.copper ?? 0) - (b.copper ?? 0)).slice(0, TOLD);
  if (orders.length > 0) return { orders, tried };
  const all = worth(chosen);
  return { orders: all === null ? [] : [all], tried };
}

/** Wires and fuses that were chosen with every part to choose from, and are not the shop's. */
function partsOf({ evaluation: e }: Result, { shelf, shop }: Design): Pick<Order, 'wire' | 'fuses'> {
  const { runs } = e.design;
  const wire = new Map<string, Order['wire'][number]>();
  const fuses = new Map<string, Order['fuses'][number]>();
  for (const [run, { gauge, insulation, fuse }] of runs.entries()) {
    const size = String(e.value('gauge', { run }));
    if (
      gauge === 'auto' &&
      shelf?.some((one) => one.size === size && one.insulation === insulation) === false
    )
      wire.set(`${size} ${insulation}`, { size, insulation });
    const rating = e.number('fuse_rating', { run });
    if (fuse?.rating !== 'auto' || rating === null || !shop?.fuses?.length) continue;
    if (!shop.fuses.some((one) => one.type === fuse.type && one.rating === rating))
      fuses.set(`${fuse.type} ${rating}`, { type: fuse.type, rating });
  }
  return { wire: [...wire.values()], fuses: [...fuses.values()] };
}

/** Sizes between the bounds of the runs to be chosen that are not on the shelf with their insulation. */
function sizesFor({ evaluation: e }: Result): Order['wire'] {
  const { design } = e;
  const found = new Map<string, Order['wire'][number]>();
  for (const [run, { gauge, insulation }] of design.runs.entries()) {
    if (gauge !== 'auto') continue;
    for (const candidate of e.grid.axes.candidate.keys()) {
      const row = e.number('candidate_size', { run, candidate });
      if (row === null) continue;
      const size = String(e.value('size_name', { size: row - 1 }));
      const there = design.shelf?.some((one) => one.size === size && one.insulation === insulation) ?? true;
      if (!there) found.set(`${size} ${insulation}`, { size, insulation });
    }
  }
  return [...found.values()];
}
