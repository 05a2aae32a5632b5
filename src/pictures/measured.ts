/** A recorded charge on the computed one. */
import { printValue } from '../basis/print.ts';
import type { Comparison } from '../transient/measured/compare.ts';
import type { MeasuredTrace } from '../transient/measured/measure.ts';
import type { Trace } from '../transient/trace.ts';
import { type Axis, axisOf, line, type Picture, type Point } from './chart.ts';
import { envelope } from './thin.ts';
import { coilName } from './trace-lines.ts';
import { shortened } from './words.ts';

const HEIGHT = { currents: 300, apart: 110 };

/** A recording may have far more samples than the picture has pixels. */
const GROUPS = 600;

/** The picture of the first charge of a recording, computed and measured, and the difference of the two. */
export function measuredPicture(
  trace: Trace,
  measured: MeasuredTrace,
  { coil, overlay, resistance, inductance }: Comparison,
): Picture {
  const { design } = trace.evaluation;
  const id = design.coils[coil]?.id ?? '';
  const point = design.points[trace.point]?.name ?? '';
  const of = (value: (at: (typeof overlay.points)[number]) => number): Point[] =>
    envelope(
      overlay.points.map((at) => ({ x: at.after * 1e3, y: value(at) })),
      GROUPS,
    );
  const clamp = of((at) => at.measured);
  const computed = of((at) => at.computed);
  const apart = of((at) => at.measured - at.computed);
  const x: Axis = {
    label: 'Time since the start of the charge',
    unit: 'ms',
    from: 0,
    to: Math.max(1e-3, ...computed.map(({ x: at }) => at)),
  };
  const far = Math.max(0.1, ...apart.map(({ y }) => Math.abs(y)));
  return {
    name: 'measured',
    title: design.title,
    subtitle:
      `Recorded charge of ${coilName(id)} on the computed one at ${shortened(point, 30)}: measured ` +
      `${printValue(measured.resistance.value, 'ohm', 'ohm')}, ${printValue(measured.inductance.value, 'H', 'mH')}, ` +
      `computed ${printValue(resistance, 'ohm', 'ohm')}, ${printValue(inductance, 'H', 'mH')}`,
    description: `The measured and the computed current of ${coilName(id)} differ by ${printValue(overlay.apart, 'A')} (root mean square).`,
    stacks: [
      {
        title: `Measured and computed current of ${coilName(id)}`,
        x,
        panels: [
          {
            title: 'Current: solid what the clamp showed, dashed what the design gives',
            height: HEIGHT.currents,
            y: axisOf('Current', 'A', [0, 1, ...[...clamp, ...computed].map(({ y }) => y)]),
            parts: [
              line(clamp, 'quiet', { name: 'measured', label: 'measured' }),
              line(computed, 'strong', { name: 'computed', label: 'computed', style: 1 }),
            ],
          },
          {
            title: 'Measured less computed',
            height: HEIGHT.apart,
            y: axisOf('Current', 'A', [-far, far]),
            parts: [
              line(
                [x.from, x.to].map((at) => ({ x: at, y: 0 })),
                'quiet',
              ),
              line(apart, 'plain', { name: 'measured less computed' }),
            ],
          },
        ],
      },
    ],
  };
}
