/** The lines of the time-current curves: the corners of the fuse's band, and conductors that share a line. */
import type { Endured, GateOf, TimeAt } from './curve-lines.ts';
import { timeAt } from './hatch.ts';
import { shortened } from './words.ts';

/** Letters of the names in a label. */
const LONGEST = 28;

/** Conductors of the same size at the same place endure the same: one line, with all their names. */
export interface Line {
  readonly names: string[];
  readonly size: string;
  readonly points: readonly TimeAt[];
}

/** Names in a label: all of them, or the first and how many more. */
export const several = (names: readonly string[]): string => {
  const all = names.join(', ');
  return all.length <= LONGEST
    ? all
    : `${shortened(names[0] as string, LONGEST)}${names.length > 1 ? ` and ${names.length - 1} more` : ''}`;
};

/** The lines of some conductors, in their order. */
export function distinct(conductors: readonly Endured[]): Line[] {
  const lines: Line[] = [];
  for (const { name, size, points } of conductors) {
    const same = lines.find((line) => line.size === size && alike(line.points, points));
    if (same) same.names.push(name);
    else lines.push({ names: [name], size, points });
  }
  return lines;
}

/** Equal but for the last digits. */
const alike = (a: readonly TimeAt[], b: readonly TimeAt[]): boolean => {
  const near = (x: number, y: number): boolean => x === y || Math.abs(x - y) <= 1e-9 * Math.abs(y);
  return (
    a.length === b.length &&
    a.every(({ current, time }, i) => near(current, b[i]?.current ?? 0) && near(time, b[i]?.time ?? 0))
  );
};

/** A corner of the band: opens not before `y` and at the latest after `y2` [s] at `x` [A]. */
export interface Band {
  readonly x: number;
  readonly y: number;
  readonly y2: number;
}

/** The corners of the band up to the current `most`: at the second gate the latest opening comes from infinity. */
export function bandOf(gates: readonly GateOf[], most: number, top: number): Band[] {
  const corners = gates.flatMap(({ current, fastest, slowest }, i) => {
    const corner = { x: current, y: fastest, y2: Math.min(slowest, top) };
    const jumps = i > 0 && Number.isFinite(slowest) && !Number.isFinite(gates[i - 1]?.slowest ?? 0);
    return jumps ? [{ ...corner, y2: top }, corner] : [corner];
  });
  const within = corners.filter(({ x }) => x < most);
  const side = (key: 'fastest' | 'slowest'): readonly TimeAt[] =>
    gates.map((gate) => ({ current: gate.current, time: gate[key] }));
  return [
    ...within,
    // Behind the last gate the times stay.
    { x: most, y: timeAt(side('fastest'), most), y2: Math.min(top, timeAt(side('slowest'), most)) },
  ];
}
