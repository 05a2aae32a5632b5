/**
 * The cheapest sizes of the shelf with which every rule that a size can keep is kept. Choices are evaluated by the model, the
 * cheapest first. One that is too thin rules out all that are nowhere larger: so its sizes are made as large as they may be and
 * still too thin, and the search goes on beyond them. One that fails by a driver that stays on alone rules out itself: there a
 * thicker wire elsewhere lets a larger current through.
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

/** Whether a rule is broken that more copper helps to keep, wherever it is: all but that of a driver that stays on. */
function isThin(e: Evaluation): boolean {
  const { turn, candidate } = e.grid.axes;
  return turn.some(
    (_, t) =>
      e.number('turn_auto', { turn: t }) === 1 &&
      !candidate.some((_, c) => RULES.every((rule) => e.number(rule, { turn: t, candidate: c }) === 1)),
  );
}
const RULES = ['keeps_own', 'keeps_drop', 'keeps_shorts'] as const;

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
  const held = (sizes: readonly Option[]): Design => ({
    ...design,
    pins: design.runs.map(
      (_, run) => sizes[groups.findIndex(({ runs }) => runs.includes(run))]?.size ?? null,
    ),
  });
  let evaluated = 0;
  const judged = (sizes: readonly Option[]): 'serves' | 'thin' | 'fails' => {
    evaluated += 1;
    const e = evaluate(held(sizes));
    return isSolved(e) ? 'serves' : isThin(e) ? 'thin' : 'fails';
  };
  const rising = groups.map(({ options }) => options.toSorted((a, b) => a.area - b.area));
  const thickest = rising.map((options) => options.at(-1) as Option);
  /** Sizes that are too thin, with the size of one group as large as it may be and they still are. */
  const grown = (sizes: readonly Option[], g: number): Option[] => {
    const options = (rising[g] as Option[]).filter(({ area }) => area > (sizes[g] as Option).area);
    let [thin, other] = [-1, options.length];
    while (other - thin > 1) {
      // First whether any size of the group helps: often none does.
      const next = other === options.length ? other - 1 : (thin + other) >> 1;
      if (judged(sizes.with(g, options[next] as Option)) === 'thin') thin = next;
      else other = next;
    }
    return thin < 0 ? [...sizes] : sizes.with(g, options[thin] as Option);
  };

  if (judged(thickest) === 'thin') return design;
  /** Areas that are too thin together, in each group. */
  const thin: number[][] = [];
  for (const [g, options] of rising.entries()) {
    const beside = thickest.with(g, options[0] as Option);
    if (judged(beside) === 'thin') thin.push(grown(beside, g).map(({ area }) => area));
  }
  const queue = new Queue();
  const seen = new Set<string>();
  const add = (at: readonly number[]): void => {
    const key = at.join();
    if (seen.has(key)) return;
    seen.add(key);
    queue.put({ price: at.reduce((sum, i, g) => sum + (groups[g]?.options[i]?.price ?? 0), 0), at });
  };
  add(groups.map(() => 0));
  for (let next = queue.take(); next !== undefined; next = queue.take()) {
    if (evaluated >= EVALUATED || seen.size >= LOOKED_AT) return design;
    const { at } = next;
    const sizes = at.map((i, g) => groups[g]?.options[i] as Option);
    let known = thin.find((areas) => sizes.every(({ area }, g) => area <= (areas[g] as number)));
    if (known === undefined) {
      const found = judged(sizes);
      if (found === 'serves') return held(sizes);
      if (found === 'thin') {
        known = groups.reduce((now, _, g) => grown(now, g), sizes).map(({ area }) => area);
        thin.push(known);
      }
    }
    // Whatever serves is thicker than what is too thin somewhere, or another one than what fails by itself.
    groups.forEach(({ options }, g) => {
      const i = options.findIndex(
        ({ area }, k) => k > (at[g] as number) && (known === undefined || area > (known[g] as number)),
      );
      if (i >= 0) add([...at].with(g, i));
    });
  }
  return design;
}
