/** One charge in milliseconds: the coil with the lowest supply, and what it shares with others. */
import { printNumber } from '../basis/print.ts';
import type { Trace } from '../transient/trace.ts';
import { axisOf, line, type Point, type Stack } from './chart.ts';
import { valueAt } from './read.ts';
import { type CoilLine, coilName, during, lowestFiring, type SharedLine } from './trace-lines.ts';
import { shortened } from './words.ts';

const HEIGHT = 170;

/** Currents that differ by no more than this share look like one line. */
const SAME = 0.01;

/** The charge that ends with the lowest supply at the firing. */
export function chargeStack(trace: Trace, worst: CoilLine, shared: readonly SharedLine[]): Stack {
  const milliseconds = trace.circuit.dwell * 1e3;
  const end = lowestFiring(worst).x;
  const cut = (points: readonly Point[]): Point[] => during(trace, points, end, milliseconds);
  const lines = [{ name: coilName(worst.id), points: cut(worst.current) }];
  for (const { coils, wires, points } of shared) {
    if (!coils.includes(worst.coil)) continue;
    const other = { name: trace.evaluation.design.wires[wires[0] ?? 0]?.id ?? '', points: cut(points) };
    const same = lines.find((one) => alike(one.points, other.points));
    if (same) same.name = `${same.name} = ${other.name}`;
    else lines.push(other);
  }
  const title = `The charge of ${coilName(worst.id)} from start to firing`;
  return {
    title,
    x: { label: 'Time since the start of the charge', unit: 'ms', from: 0, to: milliseconds },
    panels: [
      {
        title,
        height: HEIGHT,
        y: axisOf('Current', 'A', [0, 1, ...lines.flatMap(({ points }) => points.map(({ y }) => y))]),
        parts: lines
          .map(({ name, points }, i) =>
            line(points, i === 0 ? 'strong' : 'plain', {
              name,
              style: i,
              label: `${shortened(name, 30)} ${printNumber(points.at(-1)?.y ?? 0)} A`,
            }),
          )
          // The coil's own line lies on top.
          .reverse(),
      },
    ],
  };
}

/** Two lines that lie on each other all the way; each has points of its own, so that both are read at the other's. */
function alike(a: readonly Point[], b: readonly Point[]): boolean {
  const top = Math.max(...[...a, ...b].map(({ y }) => y));
  const on = (points: readonly Point[], other: readonly Point[]): boolean =>
    points.every(({ x, y }, i) => {
      // Where a line jumps, its value is the one after the jump.
      if (points[i + 1]?.x === x) return true;
      return Math.abs((valueAt(other, x) ?? other.at(-1)?.y ?? 0) - y) <= SAME * top;
    });
  return on(a, b) && on(b, a);
}
