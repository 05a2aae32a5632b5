/** A recorded charge on the computed one. */
import { printValue } from '../basis/print.ts';
import type { Comparison } from '../transient/measured/compare.ts';
import type { MeasuredTrace } from '../transient/measured/measure.ts';
import type { Trace } from '../transient/trace.ts';
import { straight } from './axes.ts';
import { rightLabels } from './layers.ts';
import { type Picture, picture, rows } from './picture.ts';
import { dash, LIGHT, type Theme, WIDTH } from './theme.ts';
import { envelope, type Point } from './thin.ts';
import { shortened } from './words.ts';

const HEIGHT = { currents: 300, apart: 110 };
const HEADROOM = 1.08;

/** A recording may have far more samples than the picture has pixels. */
const GROUPS = 600;

/** The picture of the first charge of a recording, computed and measured, and the difference of the two. */
export function measuredPicture(
  trace: Trace,
  measured: MeasuredTrace,
  { coil, overlay, resistance, inductance }: Comparison,
  theme: Theme = LIGHT,
): Picture {
  const { design } = trace.evaluation;
  const id = design.coils[coil]?.id ?? '';
  const point = design.points[trace.point]?.name ?? '';
  const line = (value: (at: (typeof overlay.points)[number]) => number): Point[] =>
    envelope(
      overlay.points.map((at) => ({ x: at.after * 1e3, y: value(at) })),
      GROUPS,
    );
  const lines = {
    measured: line((at) => at.measured),
    computed: line((at) => at.computed),
    apart: line((at) => at.measured - at.computed),
  };
  const all = [...lines.measured, ...lines.computed].map(({ y }) => y);
  const [least, most] = [Math.min(0, ...all), Math.max(1, ...all) * HEADROOM];
  const end = Math.max(1e-3, ...lines.computed.map(({ x }) => x));
  const far = Math.max(0.1, ...lines.apart.map(({ y }) => Math.abs(y))) * HEADROOM;
  const x = straight('x', 'Time since the begin of the charge in ms', [0, end], { tickCount: 8 });
  const bare = straight('x', '', [0, end], { tickCount: 8, labels: false, title: null });
  const current = straight('y', 'Current in A', [least, most], { tickCount: 6 });
  const last = (points: readonly Point[]): number => points.at(-1)?.y ?? 0;
  return picture(
    {
      name: 'measured',
      title: design.title,
      subtitle:
        `Recorded charge of coil ${id} on the computed one at ${shortened(point, 30)}: measured ` +
        `${printValue(measured.resistance.value, 'ohm', 'ohm')}, ${printValue(measured.inductance.value, 'H', 'mH')}, ` +
        `computed ${printValue(resistance, 'ohm', 'ohm')}, ${printValue(inductance, 'H', 'mH')}`,
      description: `The measured and the computed current of coil ${id} differ by ${printValue(overlay.apart, 'A')} (root mean square).`,
    },
    [
      {
        title: 'Current: dark what the design gives, grey what the clamp showed',
        width: WIDTH,
        height: HEIGHT.currents,
        layer: [
          {
            data: rows(lines.measured),
            mark: { type: 'line', color: theme.faint, strokeWidth: 1.4 },
            encoding: { x: bare, y: current },
          },
          {
            data: rows(lines.computed),
            mark: { type: 'line', color: theme.strong, strokeWidth: 1.6, strokeDash: dash(1) },
            encoding: { x: bare, y: current },
          },
          ...rightLabels(
            [
              { value: last(lines.measured), from: lines.measured.at(-1)?.x ?? end, text: 'measured' },
              { value: last(lines.computed), text: 'computed' },
            ],
            { least, most, height: HEIGHT.currents },
            end,
            theme,
          ),
        ],
      },
      {
        title: 'Measured less computed',
        width: WIDTH,
        height: HEIGHT.apart,
        layer: [
          {
            data: rows([{ y: 0 }]),
            mark: { type: 'rule', color: theme.quiet, strokeWidth: 1 },
            encoding: { y: { field: 'y', type: 'quantitative' } },
          },
          {
            data: rows(lines.apart),
            mark: { type: 'line', color: theme.ink, strokeWidth: 1.2 },
            encoding: { x, y: straight('y', 'Current in A', [-far, far]) },
          },
        ],
      },
    ],
    theme,
  );
}
