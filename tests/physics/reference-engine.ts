/**
 * The engine a second time, for tests only: when which coil fires, and how long it is charged. Nothing is shared with
 * the model or the reader. Base units: seconds, volts, degrees of crank.
 */

/** Which coil fires at which crank angle. */
export interface Firing {
  coil: number;
  angle: number;
}

export const cycleAngle = (stroke: number): number => (stroke === 4 ? 720 : 360);
export const cycleTime = (stroke: number, rpm: number): number => (stroke === 4 ? 120 : 60) / rpm;

/** Coils and their firings from the layout, as the engine is described: angles in firing order. */
export function firings(
  layout: string,
  angles: readonly number[],
  listed: readonly (readonly number[])[],
): Firing[] {
  const pair = (angle: number): number => (angle + 360) % 720;
  const coils: number[][] =
    layout === 'coil_per_cylinder'
      ? angles.map((angle) => [angle])
      : layout === 'wasted_coil_per_cylinder'
        ? angles.map((angle) => [angle, pair(angle)])
        : layout === 'coil_per_pair'
          ? angles.filter((angle) => angle < 360).map((angle) => [angle, pair(angle)])
          : layout === 'single_coil'
            ? [[...angles]]
            : listed.map((own) => [...own]);
  return coils.flatMap((own, coil) => own.map((angle) => ({ coil, angle })));
}

/** Dwell by supply: straight between rows, held at the ends; a plain number is a constant. */
export function dwellAsked(
  table: number | readonly { supply: number; dwell: number }[],
  supply: number,
): number {
  if (typeof table === 'number') return table;
  const rows = [...table].sort((a, b) => a.supply - b.supply);
  const above = rows.findIndex((row) => row.supply >= supply);
  if (above < 0) return rows.at(-1)?.dwell ?? Number.NaN;
  const [low, high] = [rows[Math.max(0, above - 1)], rows[above]];
  if (!low || !high || above === 0) return rows[0]?.dwell ?? Number.NaN;
  return low.dwell + ((high.dwell - low.dwell) * (supply - low.supply)) / (high.supply - low.supply);
}

/** Shortest time between two firings of one coil, of all coils; a coil that fires once has the whole cycle. */
export function shortestGap(events: readonly Firing[], cycleDegrees: number, cycle: number): number {
  let least = cycleDegrees;
  for (const a of events)
    for (const b of events) {
      const forward = (((b.angle - a.angle) % cycleDegrees) + cycleDegrees) % cycleDegrees;
      if (a !== b && a.coil === b.coil) least = Math.min(least, forward);
    }
  return (least / cycleDegrees) * cycle;
}
