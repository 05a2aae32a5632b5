/**
 * The harness as one builds it: places, and pieces of wire between them.
 *
 *   battery + ── fuse ── relay ── splice ─┬─ coil ─┬─ ground point ── battery −
 *                          │              └─ coil ─┘
 *                    original ignition wire
 *
 * It follows from the runs of the design: a conductor begins where the nearest earlier one that carries all of its
 * coils ends. A conductor with a fuse or a relay in it is cut there.
 */
import type { Wire } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { Builder } from './builder.ts';
import type { Harness, Spot } from './places.ts';

const carriesAll = (outer: Wire, inner: Wire): boolean =>
  inner.coils.every((coil) => outer.coils.includes(coil));

/** Place of each coil when they are counted by number: 1, 2, 10; names that are no numbers keep their order. */
function ranksOf(ids: readonly string[]): number[] {
  const order = ids.map((id, i) => ({ i, number: Number.parseInt(id, 10) }));
  order.sort((a, b) =>
    Number.isNaN(a.number) || Number.isNaN(b.number) || a.number === b.number
      ? a.i - b.i
      : a.number - b.number,
  );
  const ranks: number[] = [];
  order.forEach(({ i }, rank) => {
    ranks[i] = rank;
  });
  return ranks;
}

/** Bank by bank, where runs of the feed or else of the return carry some of the coils only; within a bank by number. */
function bankedRanks({ coils, runs, wires }: Evaluation['design']): number[] {
  const numbers = ranksOf(coils.map((coil) => coil.id));
  const groups = (side: 'feed' | 'return'): Wire[] =>
    wires.filter((w) => runs[w.run]?.side === side && w.coils.length > 1 && w.coils.length < coils.length);
  const [feed, back] = [groups('feed'), groups('return')];
  const banks = feed.length > 0 ? feed : back;
  return coils.map((_, coil) => {
    const bank = banks.findIndex((w) => w.coils.includes(coil));
    return (bank < 0 ? banks.length : bank) * coils.length + (numbers[coil] as number);
  });
}

/** The harness of an evaluated design. */
export function harnessOf(e: Evaluation): Harness {
  const { design } = e;
  const b = new Builder(e);
  const feed = b.sideOf('feed');
  const back = b.sideOf('return');

  const parent = (i: number): number | undefined =>
    feed.findLast((o) => b.wire(o).run < b.wire(i).run && carriesAll(b.wire(o), b.wire(i)));
  const next = (i: number): number | undefined =>
    back.find((o) => b.wire(o).run > b.wire(i).run && carriesAll(b.wire(o), b.wire(i)));
  const parents = new Map(feed.map((i) => [i, parent(i)]));
  const nexts = new Map(back.map((i) => [i, next(i)]));

  const rank = bankedRanks(design);
  /** Run by run, and within a run by the number of the coil. */
  const inOrder = (wires: readonly number[]): number[] =>
    wires.toSorted(
      (p, q) =>
        b.wire(p).run - b.wire(q).run ||
        (rank[b.wire(p).coils[0] ?? 0] as number) - (rank[b.wire(q).coils[0] ?? 0] as number),
    );

  const plus = b.spot('plus', 'BAT+');
  const coils = new Map<number, Spot>();
  const coilSpot = (coil: number): Spot => {
    const known = coils.get(coil);
    if (known) return known;
    const made = b.spot('coil', `coil ${design.coils[coil]?.id}`, { coil });
    coils.set(coil, made);
    return made;
  };

  const feedFrom = (i: number, from: Spot): void => {
    const children = inOrder(feed.filter((o) => parents.get(o) === i));
    const direct = b.wire(i).coils.filter((coil) => children.every((o) => !b.wire(o).coils.includes(coil)));
    const [only] = direct;
    if (children.length === 0 && direct.length === 1) {
      b.lay(i, from, coilSpot(only as number));
      return;
    }
    // The place is made behind fuse and relay of the conductor, so that designations follow the current.
    const splice: Spot = b.numbered('splice', 'S', i);
    b.lay(i, from, splice);
    for (const child of children) feedFrom(child, splice);
    for (const coil of direct) b.links.push({ from: splice, to: coilSpot(coil), open: false });
  };
  for (const i of inOrder(feed.filter((o) => parents.get(o) === undefined))) feedFrom(i, plus);

  const minus = b.spot('minus', 'BAT−');
  const starts = new Map<number, Spot>();
  for (const i of back) {
    const before = back.filter((o) => nexts.get(o) === i);
    const direct = b.wire(i).coils.filter((coil) => before.every((o) => !b.wire(o).coils.includes(coil)));
    if (before.length === 0 && direct.length === 1) {
      starts.set(i, coilSpot(direct[0] as number));
      continue;
    }
    const ground = b.numbered('ground', 'G', i);
    starts.set(i, ground);
    for (const coil of direct) b.links.push({ from: coilSpot(coil), to: ground, open: false });
  }
  for (const i of inOrder(back)) {
    const after = nexts.get(i);
    b.lay(i, starts.get(i) as Spot, after === undefined ? minus : (starts.get(after) as Spot));
  }
  const returned = new Set(back.flatMap((i) => b.wire(i).coils));
  for (const [coil, spot] of coils)
    if (!returned.has(coil)) b.links.push({ from: spot, to: minus, open: true });
  return { spots: b.spots, pieces: b.pieces, links: b.links };
}
