/**
 * The cheapest sizes of the shelf with which every rule that a size can keep is kept. Choices are evaluated by the model, the
 * cheapest first; one that fails rules out all that are nowhere larger, since less copper never makes room.
 */
import type { Design } from '../design/design.ts';
import { areaOf } from '../design/shop/limits.ts';
import { type Evaluation, evaluate } from '../engine/evaluate.ts';
import { wirePrice } from './prices.ts';

/** Choices that are evaluated at most: some seconds. Arbitrary. */
const EVALUATED = 400;
/** Choices that are looked at. Arbitrary. */
const LOOKED_AT = 200_000;

interface Option {
  readonly size: string;
  readonly area: number;
  readonly price: number;
}

/** Runs that take one size, and what they may take, the cheapest first. */
interface Group {
  readonly runs: readonly number[];
  readonly options: readonly Option[];
}

const isSolved = (e: Evaluation): boolean => e.number('solved') === 1;

/** Null where a run has no size with a price that carries its load. */
function groupsOf(e: Evaluation): Group[] | null {
  const { design } = e;
  const leads = new Map<number, number[]>();
  for (const [run, { gauge }] of design.runs.entries()) {
    if (gauge !== 'auto') continue;
    const lead = e.number('lead', { run }) ?? run + 1;
    leads.set(lead, [...(leads.get(lead) ?? []), run]);
  }
  const groups = [...leads.values()].map((runs): Group => {
    const options = e.grid.axes.candidate.flatMap((_, candidate): Option[] => {
      const row = e.number('candidate_size', { run: runs[0] as number, candidate });
      const fits = runs.every((run) => e.number('fits_load', { run, candidate }) === 1);
      if (row === null || !fits) return [];
      const size = String(e.value('size_name', { size: row - 1 }));
      const price = runs.reduce((sum, run) => sum + priceOf(e, run, size), 0);
      return Number.isFinite(price) ? [{ size, area: areaOf(size), price }] : [];
    });
    return { runs, options: options.sort((a, b) => a.price - b.price || a.area - b.area) };
  });
  return groups.some(({ options }) => options.length === 0) ? null : groups;
}

/** What the wire of a run costs in a size; without a price more than any. */
export function priceOf(e: Evaluation, run: number, size: string): number {
  const own = e.design.runs[run];
  const each = wirePrice(e.design, size, own?.insulation ?? null);
  return each === null
    ? Number.POSITIVE_INFINITY
    : each * (e.number('run_length', { run }) ?? 0) * (own?.conductors ?? 1);
}

/** A heap by price: the least is taken out first. */
class Queue {
  private readonly items: { price: number; at: readonly number[] }[] = [];

  put(item: { price: number; at: readonly number[] }): void {
    const { items } = this;
    let i = items.push(item) - 1;
    while (i > 0) {
      const above = (i - 1) >> 1;
      if ((items[above]?.price ?? 0) <= item.price) break;
      items[i] = items[above] as (typeof items)[number];
      i = above;
    }
    items[i] = item;
  }

  take(): { price: number; at: readonly number[] } | undefined {
    const { items } = this;
    const first = items[0];
    const last = items.pop();
    if (last === undefined || items.length === 0) return first;
    let i = 0;
    for (;;) {
      const [left, right] = [2 * i + 1, 2 * i + 2];
      const least = (items[right]?.price ?? Infinity) < (items[left]?.price ?? Infinity) ? right : left;
      if ((items[least]?.price ?? Infinity) >= last.price) break;
      items[i] = items[least] as (typeof items)[number];
      i = least;
    }
    items[i] = last;
    return first;
  }
}

/** The design with its sizes held to the cheapest of the shelf; as it is where another aim is stated, or none serve. */
export function withCheapest(design: Design): Design {
  if (design.sizes.aim !== 'price' || design.shelf === null) return design;
  const own = evaluate(design);
  const groups = groupsOf(own);
  if (groups === null || groups.length === 0 || !isSolved(own)) return design;
  const pinsOf = (at: readonly number[]): (string | null)[] =>
    design.runs.map((_, run) => {
      const group = groups.findIndex(({ runs }) => runs.includes(run));
      return group < 0 ? null : (groups[group]?.options[at[group] as number]?.size ?? null);
    });
  const areas = (at: readonly number[]): number[] => at.map((i, g) => groups[g]?.options[i]?.area ?? 0);
  const price = (at: readonly number[]): number =>
    at.reduce((sum, i, g) => sum + (groups[g]?.options[i]?.price ?? 0), 0);

  const queue = new Queue();
  const seen = new Set<string>();
  const failed: number[][] = [];
  let evaluated = 0;
  const add = (at: readonly number[]): void => {
    const key = at.join();
    if (seen.has(key)) return;
    seen.add(key);
    queue.put({ price: price(at), at });
  };
  add(groups.map(() => 0));
  for (let next = queue.take(); next !== undefined; next = queue.take()) {
    if (evaluated >= EVALUATED || seen.size >= LOOKED_AT) return design;
    const { at } = next;
    const size = areas(at);
    if (!failed.some((large) => size.every((area, g) => area <= (large[g] ?? 0)))) {
      evaluated += 1;
      const pinned = { ...design, pins: pinsOf(at) };
      if (isSolved(evaluate(pinned))) return pinned;
      failed.push(size);
    }
    at.forEach((i, g) => {
      if (i + 1 < (groups[g]?.options.length ?? 0)) add(at.map((one, k) => (k === g ? one + 1 : one)));
    });
  }
  return design;
}
