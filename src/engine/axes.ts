/** The axes of one design: how many members each has, how they are called, and who owns whom. */
import { AXES, type Axis } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import { SPREADS } from '../model/readings.ts';
import { TABLE_AXES } from '../model/tables.ts';
import { SAME_INTERVAL } from '../model/timing.ts';

export type Members = Readonly<Record<Axis, readonly string[]>>;

/** Members of every axis, as they are labelled. */
export function members(design: Design): Members {
  const points = design.points.map((p) => p.name);
  const sweep = Array.from({ length: design.sweep?.rows ?? 0 }, (_, i) => `sweep ${i + 1}`);
  const firings = design.events.map((e, i) => `${i + 1}: coil ${design.coils[e.coil]?.id}`);
  const own: Partial<Record<Axis, readonly string[]>> = {
    point: points,
    speed: [...points, ...sweep],
    dwell_row: design.ignition.dwell.map((_, i) => `row ${i + 1}`),
    coil: design.coils.map((c) => `coil ${c.id}`),
    event: firings,
    event2: firings,
    lag: Array.from({ length: intervals(design) }, (_, i) => `interval ${i}`),
    burst: steps(design.ignition.sparks?.count ?? 1),
    run: design.runs.map((r) => r.name),
    turn: [...design.runs.map((_, i) => `turn ${i + 1}`), 'end'],
    wire: design.wires.map((w) => w.id),
    feed: design.runs.filter((r) => r.side === 'feed').map((r) => r.name),
    spread: SPREADS,
    ...TABLE_AXES,
  };
  return Object.fromEntries(AXES.map((axis) => [axis, own[axis] ?? []])) as unknown as Members;
}

/** Distances between the charges of one burst of sparks, in steps; none where there is one spark. */
const steps = (count: number): string[] =>
  count < 2 ? [] : Array.from({ length: 2 * count - 1 }, (_, i) => `step ${i + 1 - count}`);

/** How many different intervals there are between any two firings, 0 included. */
function intervals(design: Design): number {
  const cycle = design.engine.stroke * 180;
  const shares = design.events
    .flatMap((a) => design.events.map((b) => (b.angle - a.angle + (b.angle < a.angle ? cycle : 0)) / cycle))
    .sort((a, b) => a - b);
  return shares.filter((share, i) => i === 0 || share - (shares[i - 1] as number) > SAME_INTERVAL).length;
}

/** For an owned axis: the axis that owns it. */
export interface Owner {
  readonly axis: Axis;
  /** Member and owner have the same index, so that their rows stand at a constant distance. */
  readonly same?: true;
}

/**
 * A conductor belongs to its run, a firing to its coil; a point is one of the speeds, and a feed run one of the runs,
 * the first ones each.
 */
export const OWNERS: Readonly<Partial<Record<Axis, Owner>>> = {
  wire: { axis: 'run' },
  event: { axis: 'coil' },
  event2: { axis: 'coil' },
  point: { axis: 'speed', same: true },
  feed: { axis: 'run', same: true },
};
