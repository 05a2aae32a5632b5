/** Time-current curves: each fuse of the feed with the conductors that it protects. */
import { printNumber, printSize } from '../basis/print.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { QuantityName } from '../model/model.ts';
import { protectorOf } from '../model/route.ts';

/** A point of a curve: current [A], time [s]. */
export interface TimeAt {
  readonly current: number;
  readonly time: number;
}

/**
 * A point of the fuse's standard or of its maker's curve: current [A], opens not before and at the latest after [s]; infinite
 * when it need not open. A maker's curve says nothing of the shortest time: null.
 */
export interface LimitOf {
  readonly current: number;
  readonly fastest: number | null;
  readonly slowest: number;
}

/** A window in which the conductor reaches its limit before the fuse opens [A]. */
export interface Window {
  readonly from: number;
  readonly to: number;
  /** A driver stuck on lies in it; a short along the run does. */
  readonly stuck: boolean;
  readonly short: boolean;
}

/** A feed run behind a fuse. */
export interface Withstands {
  readonly run: number;
  readonly name: string;
  readonly size: string;
  /** How long it withstands a current; infinite at the first, up to which it withstands them continuously. */
  readonly points: readonly TimeAt[];
  /** Latest opening of the fuse at the same currents; infinite where it need not open. */
  readonly slowest: readonly TimeAt[];
  /** Currents of a short at the far end and at the near end [A]. */
  readonly fault: readonly [number, number];
  readonly windows: readonly Window[];
}

export interface FuseCurves {
  /** Index and name of the run that has the fuse. */
  readonly run: number;
  readonly name: string;
  /** [A] */
  readonly rating: number;
  readonly type: string;
  readonly limits: readonly LimitOf[];
  readonly conductors: readonly Withstands[];
  /** Feed runs behind this fuse that cannot be compared with it: their fuses are of different kinds. */
  readonly left: readonly string[];
  /** Current of one coil whose driver stays on [A]. */
  readonly stuck: number | null;
  /** Longest time until the fuse opens on a short [s]. */
  readonly openLimit: number;
}

/** One set for each run that has a fuse; null with the reason when nothing can be drawn. */
export function fuseCurves(e: Evaluation): { curves: FuseCurves[] } | { curves: null; why: string } {
  const { design } = e;
  const fused = design.runs.flatMap((run, i) => (run.fuse && run.side === 'feed' ? [i] : []));
  if (fused.length === 0) return { curves: null, why: 'No run of the feed has a fuse.' };
  if (e.number('source_ohm') === null)
    return {
      curves: null,
      why: 'Without supply.source_resistance no fault current is known.',
    };
  const curves = fused.map((run) => curvesOf(e, run)).filter(({ conductors }) => conductors.length > 0);
  if (curves.length === 0) return { curves: null, why: 'No conductor can be compared with its fuse.' };
  return { curves };
}

function curvesOf(e: Evaluation, fused: number): FuseCurves {
  const { design } = e;
  const behind = design.runs.flatMap((run, i) =>
    run.side === 'feed' &&
    design.wires.some((wire, w) => wire.run === i && design.wires[protectorOf(w, design)]?.run === fused)
      ? [i]
      : [],
  );
  const compared = behind.filter(
    (run) => e.number('mixed', { run }) === 0 && e.number('sweep_high', { feed: run }) !== null,
  );
  return {
    run: fused,
    name: design.runs[fused]?.name ?? '',
    rating: e.number('fuse_rating', { run: fused }) ?? 0,
    type: design.runs[fused]?.fuse?.type ?? '',
    limits: limitsOf(e, fused),
    conductors: compared.map((run) => withstoodBy(e, run)),
    left: behind.filter((run) => !compared.includes(run)).map((run) => design.runs[run]?.name ?? ''),
    stuck: e.number('stuck_most'),
    openLimit: e.number('open_limit') ?? 0,
  };
}

function limitsOf(e: Evaluation, run: number): LimitOf[] {
  return e.grid.axes.opening.flatMap((_, limit) => {
    const [current, fastest, slowest] = (
      ['opening_current', 'opening_fastest', 'opening_slowest'] as const
    ).map((name) => e.number(name, { run, opening: limit }));
    if (current == null || slowest == null) return [];
    return [{ current, fastest: fastest ?? null, slowest: unending(e, slowest) }];
  });
}

function withstoodBy(e: Evaluation, feed: number): Withstands {
  const steps = e.grid.axes.grid.map((_, grid) => {
    const at = (name: QuantityName): number => e.number(name, { feed, grid }) ?? 0;
    return {
      current: at('curve_current'),
      wire: at('curve_withstood'),
      slowest: unending(e, at('curve_slowest')),
    };
  });
  const limited = steps.filter(({ wire }) => Number.isFinite(unending(e, wire)));
  const points = limited.map(({ current, wire }) => ({ current, time: wire }));
  // Up to this current the conductor never reaches a limit: its line comes from infinity here.
  const begins = e.number('overload_starts', { run: feed });
  const windows = e.grid.axes.window.flatMap((_, window) => {
    const at = { feed, window };
    const [from, to] = [e.number('window_from', at), e.number('window_to', at)];
    if (from === null || to === null) return [];
    const flag = (name: QuantityName): boolean => e.number(name, at) === 1;
    return [{ from, to, stuck: flag('window_stuck'), short: flag('window_short') }];
  });
  return {
    run: feed,
    name: e.design.runs[feed]?.name ?? '',
    size: `${e.number('undone', { run: feed }) === 1 ? 'no size found, here ' : ''}${printSize(String(e.value('gauge', { run: feed }) ?? ''))}`,
    points:
      limited.length < steps.length && begins !== null
        ? [{ current: begins, time: Infinity }, ...points]
        : points,
    slowest: limited.map(({ current, slowest }) => ({ current, time: slowest })),
    fault: [e.number('end_fault', { run: feed }) ?? 0, e.number('start_fault', { run: feed }) ?? 0],
    windows,
  };
}

/** What stands for a time without end is infinite here. */
const unending = (e: Evaluation, time: number): number =>
  time >= (e.number('no_end') ?? Infinity) ? Infinity : time;

/** `27.0 to 41.0 A` */
export const rangesOf = (windows: readonly Window[]): string =>
  windows.map(({ from, to }) => `${printNumber(from)} to ${printNumber(to)} A`).join(', ');

/** How far from the current of a driver that stays on its window is hatched, as a share. */
const BESIDE = 0.03;

/** Where a fault draws a current of a window: a short between its ends, a driver stuck on close to its one current. */
export function drawnIn(
  { windows, fault }: Withstands,
  stuckOn: number | null,
): (readonly [number, number])[] {
  return windows.flatMap(({ from, to, stuck, short }) => [
    ...(short ? [[Math.max(from, fault[0]), Math.min(to, fault[1])] as const] : []),
    ...(stuck && stuckOn !== null
      ? [[Math.max(from, stuckOn * (1 - BESIDE)), Math.min(to, stuckOn * (1 + BESIDE))] as const]
      : []),
  ]);
}
