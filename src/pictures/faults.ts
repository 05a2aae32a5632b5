/** The strip below the time-current curves: what faults draw, and where the fuse does not protect. */
import type { Field, PositionFieldDef } from 'vega-lite/types_unstable/channeldef.js';
import { printNumber } from '../basis/print.ts';
import type { Endured, FuseCurves } from './curve-lines.ts';
import { hatched } from './hatch.ts';
import { type Layer, type Panel, rows } from './picture.ts';
import { type Theme, WIDTH } from './theme.ts';
import { shortened } from './words.ts';

/** Height of a row [px], and of the bars in it as a share of the row. */
const ROW = 34;
const BAR = 0.3;

/** A row for a driver that stays on, and one for each run; the currents along `x`. */
export function faultPanel(curves: FuseCurves, x: PositionFieldDef<Field>, theme: Theme): Panel {
  const { conductors, stuck } = curves;
  const stuckRows = stuck === null ? [] : [{ x: stuck, row: 0 }];
  const first = stuckRows.length;
  const count = first + conductors.length;
  const y: PositionFieldDef<Field> = {
    field: 'row',
    type: 'quantitative',
    title: null,
    scale: { domain: [count - 0.5, -0.5], nice: false, zero: false },
    axis: null,
  };
  const domain = (x.scale as { domain: [number, number] }).domain;
  const faults = conductors.map(({ fault }, i) => ({ x: fault[0], to: fault[1], row: first + i }));
  const bars = conductors.flatMap(({ windows }, i) =>
    windows.map(({ from, to }) => ({ x: from, to, row: first + i - BAR, low: first + i + BAR })),
  );
  const strokes = bars.flatMap(({ x: from, to, row, low }) =>
    hatched(from, to, domain, WIDTH).map((at) => ({ x: at, row, low })),
  );
  const texts = [
    ...stuckRows.map(({ x: at, row }) => ({ row, text: `driver stuck on ${printNumber(at)} A` })),
    ...conductors.map((one, i) => ({ row: first + i, text: shortOf(one) })),
  ];
  const upper = texts.filter(({ row }) => (conductors[row - first]?.windows.length ?? 0) > 0);
  const lines: { row: number; text: string; dy: number; danger: boolean }[] = texts.map((text) => ({
    ...text,
    dy: upper.includes(text) ? -8 : 0,
    danger: false,
  }));
  for (const { row } of upper)
    lines.push({ row, text: openOf(conductors[row - first] as Endured), dy: 8, danger: true });
  return {
    title: 'Currents of a fault: a short anywhere along the run; hatched: not protected',
    width: WIDTH,
    height: ROW * count,
    layer: [
      {
        data: rows(bars),
        mark: { type: 'rect', filled: false, stroke: theme.danger, strokeWidth: 1 },
        encoding: { x, x2: { field: 'to' }, y, y2: { field: 'low' } },
      },
      {
        data: rows(strokes),
        mark: { type: 'rule', color: theme.danger, strokeWidth: 0.9 },
        encoding: { x, y, y2: { field: 'low' } },
      },
      {
        data: rows(faults),
        mark: { type: 'rule', color: theme.ink, strokeWidth: 2 },
        encoding: { x, x2: { field: 'to' }, y },
      },
      {
        data: rows(
          faults.flatMap(({ x: from, to, row }) => [
            { x: from, row },
            { x: to, row },
          ]),
        ),
        mark: { type: 'tick', orient: 'vertical', color: theme.ink, thickness: 2, size: 12, opacity: 1 },
        encoding: { x, y },
      },
      {
        data: rows(stuckRows),
        mark: { type: 'point', filled: true, shape: 'diamond', size: 70, color: theme.ink, opacity: 1 },
        encoding: { x, y },
      },
      ...[false, true].flatMap((danger) =>
        [-8, 0, 8].map(
          (dy): Layer => ({
            data: rows(
              lines
                .filter((line) => line.danger === danger && line.dy === dy)
                .map(({ row, text }) => ({ x: domain[1], row, text })),
            ),
            mark: {
              type: 'text',
              align: 'left',
              baseline: 'middle',
              dx: 15,
              dy,
              color: danger ? theme.danger : theme.ink,
            },
            encoding: { x, y, text: { field: 'text', type: 'nominal' } },
          }),
        ),
      ),
    ],
  };
}

const shortOf = ({ name, fault: [from, to] }: Endured): string =>
  `${shortened(name, 26)}: ${printNumber(from)} to ${printNumber(to)} A`;

/** Windows, and what lies in them. */
function openOf({ windows }: Endured): string {
  const ranges = windows.map(({ from, to }) => `${printNumber(from)} to ${printNumber(to)} A`).join(', ');
  const causes = [
    ...(windows.some(({ stuck }) => stuck) ? ['driver stuck on'] : []),
    ...(windows.some(({ short }) => short) ? ['short'] : []),
  ];
  return `not protected ${ranges}${causes.length > 0 ? ` (${causes.join(', ')})` : ''}`;
}
