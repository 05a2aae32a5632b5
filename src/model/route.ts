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
