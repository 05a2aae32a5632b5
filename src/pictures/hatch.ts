/** Hatching: strokes that show a window also in black and white. */
import type { TimeAt } from './curve-lines.ts';

/** Distance of the strokes [px]. */
const STEP = 5;

/** Currents of the strokes from `from` to `to`, both included, on an axis of `width` pixels with logarithms. */
export function hatched(
  from: number,
  to: number,
  [least, most]: readonly [number, number],
  width: number,
): number[] {
  const pixels = (Math.log(to / from) / Math.log(most / least)) * width;
  const count = Math.max(1, Math.round(pixels / STEP));
  return Array.from({ length: count + 1 }, (_, i) => from * (to / from) ** (i / count));
}

/** Time of a curve at a current, straight in the logarithms; the last time goes on, and infinity up to its point. */
export function timeAt(points: readonly TimeAt[], current: number): number {
  const next = points.findIndex((point) => point.current > current);
  if (next < 0) return points.at(-1)?.time ?? Infinity;
  const [a, b] = [points[next - 1], points[next]];
  if (!a || !b) return b?.time ?? Infinity;
  if (!Number.isFinite(a.time) || b.time <= 0) return a.time;
  const share = Math.log(current / a.current) / Math.log(b.current / a.current);
  return a.time * (b.time / a.time) ** share;
}
