/** Fewer points for the same line. */

import type { Point } from './chart.ts';

/**
 * Leaves out the points that lie within `apart` (in units of y) of the straight line between those that stay; the ends
 * always stay. So every point that is left is one that was computed.
 */
export function thinned<P extends Point>(points: readonly P[], apart: number): P[] {
  const stay = new Set([0, points.length - 1]);
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [from, to] = span;
    const [a, b] = [points[from], points[to]];
    if (!a || !b) continue;
    let [far, most] = [-1, apart];
    for (let i = from + 1; i < to; i++) {
      const { x, y } = points[i] as P;
      const share = b.x === a.x ? 0 : (x - a.x) / (b.x - a.x);
      const off = Math.abs(y - (a.y + share * (b.y - a.y)));
      if (off > most) [far, most] = [i, off];
    }
    if (far < 0) continue;
    stay.add(far);
    spans.push([from, far], [far, to]);
  }
  return points.filter((_, i) => stay.has(i));
}

/** The least and the largest point of each of `groups` equal parts: a noisy line keeps its look. */
export function envelope<P extends Point>(points: readonly P[], groups: number): P[] {
  if (points.length <= 2 * groups) return [...points];
  const size = points.length / groups;
  return Array.from({ length: groups }, (_, g) => {
    const part = points.slice(Math.floor(g * size), Math.floor((g + 1) * size));
    const low = part.reduce((a, b) => (b.y < a.y ? b : a));
    const high = part.reduce((a, b) => (b.y > a.y ? b : a));
    return low === high ? [low] : low.x < high.x ? [low, high] : [high, low];
  }).flat();
}
