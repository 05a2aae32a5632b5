/** The currents of the coils, each named where it fires. */
import { printNumber } from '../basis/print.ts';
import type { Trace } from '../transient/trace.ts';
import { angleAxis, straight } from './axes.ts';
import { rightLabels, rule } from './layers.ts';
import { type Panel, rows } from './picture.ts';
import { LETTERS, type Theme, WIDTH } from './theme.ts';
import type { CoilLine } from './trace-lines.ts';
import { roughWidth } from './words.ts';

const HEIGHT = 150;

/** Room above the highest line for the names, share of the axis. */
const NAMES = 1.2;

/** A limit is shown that lies less than this many times as high as the currents. */
const NEAR = 1.25;

/** The panel; the line of `worst` is dark. */
export function coilPanel(trace: Trace, lines: readonly CoilLine[], worst: CoilLine, theme: Theme): Panel {
  const { limit, dwell } = trace.circuit;
  const highest = Math.max(1, ...lines.flatMap(({ firings }) => firings.map(({ current }) => current)));
  const limited = Number.isFinite(limit) && limit <= highest * NEAR;
  const top = (limited ? Math.max(limit, highest) : highest) * NAMES;
  const { values: labels, all } = firingLabels(trace, lines, worst);
  const named = all ? 'named where each fires' : 'without names for want of room';
  const x = angleAxis(trace.circuit, false);
  const y = straight('y', 'Current in A', [0, top]);
  return {
    title:
      lines.length === 1
        ? `Coil ${worst.id}`
        : `${lines.length < trace.coils.length ? 'Some coils' : 'Each coil'}, ${named}; dark: coil ${worst.id}, the lowest supply at a firing`,
    width: WIDTH,
    height: HEIGHT,
    layer: [
      {
        data: rows(
          lines
            .filter((line) => line !== worst)
            .flatMap(({ id, current }) => current.map((p) => ({ ...p, id }))),
        ),
        mark: { type: 'line', color: theme.faint, strokeWidth: 1.2 },
        encoding: { x, y, detail: { field: 'id', type: 'nominal' } },
      },
      {
        data: rows(worst.current),
        mark: { type: 'line', color: theme.strong, strokeWidth: 2 },
        encoding: { x, y },
      },
      ...(limited ? [rule(limit, [2, 2], theme.danger)] : []),
      ...(limited
        ? rightLabels(
            [{ value: limit, text: `limit ${printNumber(limit)} A` }],
            { least: 0, most: top, height: HEIGHT },
            trace.circuit.cycleAngle,
            theme,
          )
        : []),
      {
        data: rows(dwell > 0 ? labels : []),
        mark: { type: 'text', baseline: 'top', dy: 4 },
        encoding: {
          x,
          y: { value: 0 },
          text: { field: 'text', type: 'nominal' },
          color: { condition: { test: 'datum.worst', value: theme.strong }, value: theme.quiet },
        },
      },
    ],
  };
}

/** Names of the coils at their firings; only the worst one where they would run into each other. */
function firingLabels(trace: Trace, lines: readonly CoilLine[], worst: CoilLine) {
  const byAngle = new Map<number, { x: number; text: string; worst: boolean }>();
  for (const line of lines)
    for (const { x } of line.firings) {
      const there = byAngle.get(x);
      byAngle.set(x, {
        x,
        text: there ? `${there.text}, ${line.id}` : line.id,
        worst: line === worst || there?.worst === true,
      });
    }
  const labels = [...byAngle.values()].sort((a, b) => a.x - b.x);
  const pixels = WIDTH / trace.circuit.cycleAngle;
  const half = ({ text }: { text: string }): number => roughWidth(text, LETTERS.label) / 2;
  const fit = labels.every((label, i) => {
    const next = labels[i + 1];
    return next === undefined || (next.x - label.x) * pixels > half(label) + half(next);
  });
  return { values: fit ? labels : [], all: fit };
}
