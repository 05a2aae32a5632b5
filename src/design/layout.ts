/** From engine and layout to coils and firings; from a sweep to its rows. */
import type { Design, Layout } from './design.ts';
import type { Path } from './problems.ts';

export interface Firings {
  cylinders: number;
  stroke: number;
  firing_order: readonly number[];
  /** [deg], one for each of the order. */
  firing_angles: readonly number[];
}

export interface CoilAt {
  id: string;
  /** [deg], rising. */
  fires_at: number[];
}

/** Crank angle of one cycle [deg]. */
export const cycleOf = (stroke: number): number => (stroke === 4 ? 720 : 360);

/** Even firing: the cycle in equal parts [deg]. */
export const evenAngles = (cylinders: number, stroke: number): number[] =>
  Array.from({ length: cylinders }, (_, i) => (i * cycleOf(stroke)) / cylinders);

/** Angles that differ by less than this are one [deg]; written angles have one or two decimals. */
const SAME = 1e-6;

/**
 * One turn later, within the cycle of 720 deg. Where a cylinder fires there, exactly its angle: two coils that fire
 * together must not be told apart by a rounding error.
 */
const turnLater = (angle: number, angles: readonly number[]): number => {
  const later = (angle + 360) % 720;
  return angles.find((other) => Math.abs(other - later) < SAME) ?? later;
};

/** Cylinders 360 deg apart, the earlier one first; and those that have no such partner. */
export function pairsOf(firings: Firings): { pairs: CoilAt[]; alone: number[] } {
  const pairs: CoilAt[] = [];
  const alone: number[] = [];
  const { firing_order: order, firing_angles: angles } = firings;
  angles.forEach((angle, i) => {
    const partner = angles.indexOf(turnLater(angle, angles));
    if (partner < 0) alone.push(order[i] as number);
    else if (partner > i)
      pairs.push({ id: `${order[i]}+${order[partner]}`, fires_at: [angle, angles[partner] as number] });
  });
  return { pairs, alone };
}

/**
 * The coils of a design: in firing order, or in the order of the list. `firings` must have passed the checks of the
 * engine, and the layout those of the ignition.
 */
export function coilsOf(layout: Layout, firings: Firings, listedCoils: readonly CoilAt[]): CoilAt[] {
  const { firing_order: order, firing_angles: angles } = firings;
  const rising = (list: number[]): number[] => list.sort((a, b) => a - b);
  switch (layout) {
    case 'coil_per_cylinder':
      return order.map((cylinder, i) => ({ id: String(cylinder), fires_at: [angles[i] as number] }));
    case 'wasted_coil_per_cylinder':
      return order.map((cylinder, i) => {
        const own = angles[i] as number;
        return { id: String(cylinder), fires_at: rising([own, turnLater(own, angles)]) };
      });
    case 'coil_per_pair':
      return pairsOf(firings).pairs;
    case 'single_coil':
      return [{ id: '1', fires_at: [...angles] }];
    case 'listed':
      return listedCoils.map(({ id, fires_at }) => ({ id, fires_at: [...fires_at] }));
  }
}

/** Every firing, by angle, then by coil. */
export const eventsOf = (coils: readonly CoilAt[]): { coil: number; angle: number }[] =>
  coils
    .flatMap(({ fires_at }, coil) => fires_at.map((angle) => ({ coil, angle })))
    .sort((a, b) => a.angle - b.angle || a.coil - b.coil);

/** Rows of a sweep: speeds from `from` in steps, the last one not above `to`. The allowance is for rounding. */
export const rowsOf = (from: number, to: number, step: number): number =>
  Math.floor((to - from) / step + 1e-9) + 1;

/** Key of a run in the file: feed and return are lists of their own there. */
export function runKey(design: Design, run: number): Path {
  const side = design.runs[run]?.side ?? 'feed';
  const before = design.runs.findIndex((other) => other.side === side);
  return [side, run - before];
}
