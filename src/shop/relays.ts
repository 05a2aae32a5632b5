/** The relay of a run whose rating is `auto`: the first of the shop's list with which every rule of relays is kept. */
import type { Design } from '../design/design.ts';
import { runKey } from '../design/layout.ts';
import { readDesign } from '../design/read.ts';
import type { ShopRelay } from '../design/shop/shop.ts';
import type { Result } from '../findings/result.ts';
import { edited } from '../saved/apply.ts';

type Judge = (design: Design) => Result;

/** The cheapest first, then the smallest. */
const byPrice = (a: ShopRelay, b: ShopRelay): number =>
  (a.price?.amount ?? Number.POSITIVE_INFINITY) - (b.price?.amount ?? Number.POSITIVE_INFINITY) ||
  a.rating - b.rating;
const byRating = (a: ShopRelay, b: ShopRelay): number => a.rating - b.rating || byPrice(a, b);

/** Whether something of the relay of this run fails or is not known. */
const wrong = ({ findings, evaluation: { design } }: Result, run: number): boolean =>
  findings.some(
    ({ rule, subject, verdict }) =>
      rule.startsWith('relay') &&
      subject === design.runs[run]?.name &&
      (verdict === 'fail' || verdict === 'unknown'),
  );

/** The design with relays of the shop in the place of those to be chosen; where none serves it stays as it is. */
export function withRelays(design: Design, judge: Judge): Design {
  const relays = design.shop?.relays ?? [];
  if (relays.length === 0) return design;
  const order = [...relays].sort(design.sizes.aim === 'price' ? byPrice : byRating);
  let now = design;
  for (const [run, { relay }] of design.runs.entries()) {
    if (relay?.rating !== 'auto' || design.unknowns.some((one) => one.kind === 'relay' && one.run === run))
      continue;
    const key = [...runKey(design, run), 'relay'];
    for (const { name } of order) {
      const text = edited(now.text, [
        { key: [...key, 'rating'], value: undefined },
        { key: [...key, 'use'], value: name },
      ]);
      const read = readDesign(text, '');
      if (!read.ok || wrong(judge(read.design), run)) continue;
      now = read.design;
      break;
    }
  }
  return now;
}
