/** One charge in milliseconds: the coil with the lowest supply, and what it shares with others. */
import { printNumber } from '../basis/print.ts';
import type { Trace } from '../transient/trace.ts';
import { straight } from './axes.ts';
import { rightLabels } from './layers.ts';
import { type Layer, type Panel, rows } from './picture.ts';
import { dash, type Theme, WIDTH } from './theme.ts';
import { type CoilLine, during, lowestFiring, type SharedLine } from './trace-lines.ts';
import { shortened } from './words.ts';

const HEIGHT = 170;

/** Currents that differ by no more than this share look like one line. */
const SAME = 0.01;

/** The charge that ends with the lowest supply at the firing. */
export function chargePanel(
  trace: Trace,
  worst: CoilLine,
  shared: readonly SharedLine[],
  theme: Theme,
): Panel {
  const milliseconds = trace.circuit.dwell * 1e3;
  const fires = lowestFiring(worst);
  const own = {
    name: `coil ${worst.id}`,
    points: during(trace, worst.current, fires.x, milliseconds),
  };
  const others = shared
    .filter(({ coils }) => coils.includes(worst.coil))
    .map(({ wires: [first = 0], points }) => ({
      name: trace.evaluation.design.wires[first]?.id ?? '',
      points: during(trace, points, fires.x, milliseconds),
    }));
  const lines: { name: string; points: typeof own.points }[] = [own];
  for (const other of others) {
    const same = lines.find(({ points }) => alike(points, other.points));
    if (same) same.name = `${same.name} = ${other.name}`;
    else lines.push({ ...other });
  }
  const top = Math.max(1, ...lines.flatMap(({ points }) => points.map(({ y }) => y))) * 1.08;
  const labels = lines.map(({ name, points }) => ({
    value: points.at(-1)?.y ?? 0,
    text: `${shortened(name, 30)}: ${printNumber(points.at(-1)?.y ?? 0)} A`,
  }));
  const x = straight('x', 'Time since the begin of the charge in ms', [0, milliseconds], { tickCount: 8 });
  const y = straight('y', 'Current in A', [0, top]);
  return {
    title: `The charge of coil ${worst.id} from begin to firing`,
    width: WIDTH,
    height: HEIGHT,
    layer: [
      // The coil's own line lies on top.
      ...lines
        .map(
          ({ points }, i): Layer => ({
            data: rows(points),
            mark: {
              type: 'line',
              color: i === 0 ? theme.strong : theme.ink,
              strokeWidth: i === 0 ? 2 : 1.3,
              strokeDash: dash(i),
            },
            encoding: { x, y },
          }),
        )
        .reverse(),
      ...rightLabels(labels, { least: 0, most: top, height: HEIGHT }, milliseconds, theme),
    ],
  };
}

/** Two lines that lie on each other all the way; each has points of its own, so that both are read at the other's. */
function alike(a: readonly { x: number; y: number }[], b: readonly { x: number; y: number }[]): boolean {
  const top = Math.max(...a.map(({ y }) => y), ...b.map(({ y }) => y));
  const at = (line: typeof a, x: number): number => {
    const next = line.findIndex((p) => p.x >= x);
    const [before, after] = [line[next - 1], line[next]];
    if (!after) return line.at(-1)?.y ?? 0;
    if (!before || after.x === before.x) return after.y;
    return before.y + ((x - before.x) / (after.x - before.x)) * (after.y - before.y);
  };
  return (
    a.every(({ x, y }) => Math.abs(at(b, x) - y) <= SAME * top) &&
    b.every(({ x, y }) => Math.abs(at(a, x) - y) <= SAME * top)
  );
}
