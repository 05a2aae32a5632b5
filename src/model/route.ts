/** Which way the current takes: the runs before a conductor, and the fuse that protects it. */
import type { Layout } from '../basis/quantity.ts';

/** Conductors of earlier feed runs that carry all the coils of conductor `wire`, from the battery outward. */
export function before(wire: number, layout: Layout): number[] {
  const own = layout.wires[wire];
  if (own === undefined || layout.runs[own.run]?.side !== 'feed') return [];
  return layout.wires.flatMap((other, i) =>
    other.run < own.run && own.coils.every((coil) => other.coils.includes(coil)) ? [i] : [],
  );
}

/** The conductor whose fuse protects `wire`: itself, or the nearest before it; −1 when there is none. */
export function protectorOf(wire: number, layout: Layout): number {
  const has = (i: number): boolean => Boolean(layout.runs[layout.wires[i]?.run ?? -1]?.fuse);
  if (layout.runs[layout.wires[wire]?.run ?? -1]?.side !== 'feed') return -1;
  return has(wire) ? wire : (before(wire, layout).findLast(has) ?? -1);
}

/** Number of the run whose fuse protects `wire` by a curve of its own, from 1; 0 for none or by the limits of its type. */
export function curveOf(wire: number, layout: Layout): number {
  const run = layout.wires[protectorOf(wire, layout)]?.run ?? -1;
  return layout.runs[run]?.fuse?.curve ? run + 1 : 0;
}

/** The conductor of run `run` between the battery and `wire`, or `wire` itself; −1 when there is none. */
export function conductorIn(run: number, wire: number, layout: Layout): number {
  return layout.wires[wire]?.run === run
    ? wire
    : (before(wire, layout).find((other) => layout.wires[other]?.run === run) ?? -1);
}

/** Conductors of a run: how many coils each carries, all coils, and their mean length. */
function madeOf(run: number, layout: Layout) {
  const own = layout.wires.filter((wire) => wire.run === run);
  return {
    coils: new Set(own.flatMap((wire) => wire.coils)),
    each: own[0]?.coils.length ?? 0,
    count: own.length,
    length: own.reduce((sum, wire) => sum + wire.length, 0) / Math.max(1, own.length),
  };
}

/**
 * Runs whose lengths differ by less than a third of the longer one are made alike. Arbitrary. The edge itself is out, and clear
 * of rounding: a workbook compares the lengths, too.
 */
export const A_THIRD = 1 / 3 - 1e-9;

/** Side by side, of one side of the feed, with as many coils, one insulation, and lengths within a third: two banks. */
function madeAlike(a: number, b: number, layout: Layout): boolean {
  const [one, other] = [layout.runs[a], layout.runs[b]];
  if (one?.side !== other?.side || one?.insulation !== other?.insulation) return false;
  const [x, y] = [madeOf(a, layout), madeOf(b, layout)];
  return sideBySide(x, y) && Math.abs(x.length - y.length) <= A_THIRD * Math.max(x.length, y.length);
}

type Made = ReturnType<typeof madeOf>;
const sideBySide = (x: Made, y: Made): boolean =>
  x.each === y.each && x.count === y.count && [...x.coils].every((coil) => !y.coils.has(coil));

/** Whether two runs are made alike but for insulation and lengths, and neither says whose size it takes. */
export function couldBeAlike(a: number, b: number, layout: Layout): boolean {
  const [one, other] = [layout.runs[a], layout.runs[b]];
  return (
    one?.side === other?.side &&
    one?.like === null &&
    other?.like === null &&
    sideBySide(madeOf(a, layout), madeOf(b, layout))
  );
}

/** Index of the first of the runs that take one size with `run`: as the design says, else those made alike. */
export function leaderOf(run: number, layout: Layout): number {
  const { runs } = layout;
  const leaders: number[] = [];
  for (const [i, own] of runs.entries()) {
    const named = runs.findIndex((other) => other.name === own.like);
    // What names a run further on is named by it in turn: the earlier one leads.
    const back = runs.findIndex((other, j) => j < i && other.like === own.name);
    const fits = (j: number): boolean =>
      own.gauge === 'auto' && runs[j]?.gauge === 'auto' && own.like === null && runs[j]?.like === null;
    const alike = runs.findIndex((_, j) => j < i && leaders[j] === j && fits(j) && madeAlike(i, j, layout));
    const other = named >= 0 && named < i ? named : back >= 0 ? back : alike;
    leaders.push(
      other >= 0 && own.gauge === 'auto' && runs[other]?.gauge === 'auto' ? (leaders[other] as number) : i,
    );
  }
  return leaders[run] ?? run;
}

/** Coils that leave the conductor before `run` by themselves, where `run` carries several of their neighbours together. */
export function bypassing(run: number, layout: Layout): number {
  const side = layout.runs[run]?.side;
  const own = layout.wires.filter((wire) => wire.run === run);
  const only = own[0];
  if (own.length !== 1 || only === undefined || only.coils.length < 2) return 0;
  // The return is walked from the battery, too.
  const walk = layout.wires.filter((wire) => layout.runs[wire.run]?.side === side);
  const order = side === 'feed' ? walk : walk.toReversed();
  const path = (coil: number) => order.filter((wire) => wire.coils.includes(coil));
  const head = path(only.coils[0] as number);
  const depth = head.indexOf(only);
  const root = head[depth - 1];
  return layout.coils.filter((_, coil) => {
    const other = path(coil);
    const next = other[depth];
    return (
      !only.coils.includes(coil) &&
      other[depth - 1] === root &&
      (next === undefined || next.coils.length === 1)
    );
  }).length;
}
