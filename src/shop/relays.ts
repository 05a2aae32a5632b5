/** The relay of a run whose rating is `auto`: the first of the shop's list with which every rule of relays is kept, or at least none fails. */
import type { Design } from '../design/design.ts';
import { runKey } from '../design/layout.ts';
import { readDesign } from '../design/read.ts';
import type { ShopRelay } from '../design/shop/shop.ts';
import type { Overall } from '../findings/finding.ts';
import { overall } from '../findings/read.ts';
import type { Result } from '../findings/result.ts';
import { edited } from '../saved/apply.ts';

type Judge = (design: Design) => Result;

/** The cheapest first, then the smallest. */
const byPrice = (a: ShopRelay, b: ShopRelay): number =>
  (a.price?.amount ?? Number.POSITIVE_INFINITY) - (b.price?.amount ?? Number.POSITIVE_INFINITY) ||
  a.rating - b.rating;
const byRating = (a: ShopRelay, b: ShopRelay): number => a.rating - b.rating || byPrice(a, b);

/** The verdict on the relay of this run. */
const verdictOn = ({ findings, evaluation: { design } }: Result, run: number): Overall =>
  overall(
    findings.filter(({ rule, subject }) => rule.startsWith('relay') && subject === design.runs[run]?.name),
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
    // What a short data sheet leaves out is asked for, and no reason to take none of the shop's.
    let open: Design | null = null;
    for (const { name } of order) {
      const text = edited(now.text.toString(), [
        { key: [...key, 'rating'], value: undefined },
        { key: [...key, 'use'], value: name },
      ]);
      const read = readDesign(text, '');
      if (!read.ok) continue;
      const verdict = verdictOn(judge(read.design), run);
      if (verdict === 'unknown') open ??= read.design;
      if (verdict !== 'pass') continue;
      open = read.design;
      break;
    }
    now = open ?? now;
  }
  return now;
}
