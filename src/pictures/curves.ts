/** Time-current curves of one fuse: its band, how long each conductor behind it endures a current, and what faults draw. */
import type { Field, PositionFieldDef } from 'vega-lite/types_unstable/channeldef.js';
import { printNumber, printValue } from '../basis/print.ts';
import { logarithmicAxis } from './axes.ts';
import { type Band, bandOf, distinct, several } from './band.ts';
import type { Endured, FuseCurves } from './curve-lines.ts';
import { faultPanel } from './faults.ts';
import { hatched, timeAt } from './hatch.ts';
import { rightLabels } from './layers.ts';
import { type Layer, type Panel, type Picture, picture, rows } from './picture.ts';
import { dash, LIGHT, type Theme, WIDTH } from './theme.ts';

const HEIGHT = 430;

/** Room left and right of what is drawn, as a factor. */
const ROOM = 1.15;

/** The picture of one fuse. `title` is that of the design. */
export function curvesPicture(curves: FuseCurves, title: string, theme: Theme = LIGHT): Picture {
  const { name, rating, type, conductors, left } = curves;
  const amps = currentEnds(curves);
  const open = conductors.filter(({ windows }) => windows.length > 0);
  const omitted =
    left.length > 0
      ? `. Not compared: ${left.join(', ')}, without a size or behind fuses of different kinds`
      : '';
  return picture(
    {
      name: 'curves',
      title,
      subtitle:
        `Time over current: the ${printValue(rating, 'A', 'A', true)} fuse in run ${name}, type ${type}, and how long ` +
        `the conductors behind it endure${omitted}`,
      description:
        `Time-current curves of the fuse in run ${name}. ` +
        (open.length === 0
          ? 'It opens before any conductor behind it reaches its limit, at every current up to the largest fault.'
          : `Not protected: ${open.map((one) => `${one.name} ${windowsOf(one)}`).join('; ')}.`),
    },
    [timePanel(curves, amps, theme), faultPanel(curves, currentAxis(amps, true), theme)],
    theme,
  );
}

/** `27.0 to 41.0 A` */
export const windowsOf = ({ windows }: Endured): string =>
  windows.map(({ from, to }) => `${printNumber(from)} to ${printNumber(to)} A`).join(', ');

/** Currents from the least to the most that is drawn. */
function currentEnds({ gates, conductors, stuck }: FuseCurves): [number, number] {
  const faults = conductors.flatMap(({ fault }) => [...fault]);
  const least = Math.min(...gates.slice(0, 1).map(({ current }) => current), ...faults, stuck ?? Infinity);
  const most = Math.max(...gates.slice(1, 2).map(({ current }) => current), ...faults, stuck ?? 0);
  return [least / ROOM, most * ROOM];
}

const currentAxis = (ends: readonly [number, number], words: boolean): PositionFieldDef<Field> =>
  logarithmicAxis(
    'x',
    words ? 'Current in A' : '',
    ends,
    decades(...ends, [1, 2, 5]),
    words ? { format: 'd' } : { labels: false, title: null },
  );

/** The steps of each decade between two ends, both included. */
const decades = (least: number, most: number, steps: readonly number[]): number[] => {
  const first = Math.floor(Math.log10(least));
  const count = Math.ceil(Math.log10(most)) - first + 1;
  return (
    Array.from({ length: count }, (_, i) => 10 ** (first + i))
      // Steps below 1 are written as quotients, so that 0.1 is what it is.
      .flatMap((decade) => steps.map((step) => (decade < 1 ? step / Math.round(1 / decade) : step * decade)))
      .filter((value) => value >= least * (1 - 1e-9) && value <= most * (1 + 1e-9))
  );
};

/** Whole decades around all that the gates state, with some room below the fastest opening. */
function timeEnds({ gates }: FuseCurves): [number, number] {
  const times = gates.flatMap(({ fastest, slowest }) => [fastest, slowest]).filter(Number.isFinite);
  return [
    10 ** Math.floor(Math.log10(Math.min(...times) / ROOM)),
    10 ** Math.ceil(Math.log10(Math.max(...times))),
  ];
}

function timePanel(curves: FuseCurves, amps: readonly [number, number], theme: Theme): Panel {
  const { conductors, openLimit } = curves;
  const ends = timeEnds(curves);
  const [, most] = amps;
  const x = currentAxis(amps, false);
  const y = logarithmicAxis('y', 'Time in s', ends, decades(...ends, [1]), {
    labelExpr: "replace(format(datum.value, datum.value < 1 ? '.2~f' : ',d'), /,/g, '\u202f')",
  });
  const band = bandOf(curves.gates, most, ends[1]);
  const edge = band.at(-1) as Band;
  const lines = distinct(conductors);
  const seen = (time: number): number => Math.min(ends[1], Math.max(ends[0], time));
  const labels = [
    { value: edge.y2, text: 'fuse: opens at the latest' },
    { value: edge.y, text: 'fuse: not before' },
    { value: openLimit, text: `longest for a short, ${printValue(openLimit, 's', 's', true)}` },
    ...lines.map(({ names, size, points }) => {
      const last = points.at(-1);
      return {
        value: last?.time ?? ends[1],
        from: last?.current ?? most,
        text: `${several(names)}, ${size}`,
      };
    }),
  ];
  return {
    title: [
      'Band: between these times the fuse opens. Lines: the conductor reaches its limit; dots: at the currents of a short.',
      'Hatched: the conductor reaches its limit before the fuse has to open.',
    ],
    width: WIDTH,
    height: HEIGHT,
    layer: [
      {
        data: rows(band),
        mark: { type: 'area', color: theme.tint, clip: true },
        encoding: { x, y: { ...y, stack: null }, y2: { field: 'y2' } },
      },
      ...(['y2', 'y'] as const).map(
        (edgeOf): Layer => ({
          data: rows(band.map((at) => ({ x: at.x, y: at[edgeOf] }))),
          mark: { type: 'line', color: theme.strong, strokeWidth: edgeOf === 'y2' ? 2.2 : 1, clip: true },
          encoding: { x, y },
        }),
      ),
      {
        data: rows([{ y: openLimit }]),
        mark: { type: 'rule', color: theme.quiet, strokeDash: [2, 3], strokeWidth: 1 },
        encoding: { y },
      },
      ...conductors.map((one) => hatchLayer(one, amps, ends, theme)),
      ...lines.map(
        ({ points }, i): Layer => ({
          data: rows(points.map(({ current, time }) => ({ x: current, y: seen(time) }))),
          mark: { type: 'line', color: theme.ink, strokeWidth: 1.6, strokeDash: dash(i), clip: true },
          encoding: { x, y },
        }),
      ),
      {
        data: rows(
          conductors.flatMap(({ fault, points }) =>
            fault.map((current) => ({ x: current, y: seen(timeAt(points, current)) })),
          ),
        ),
        mark: { type: 'point', filled: true, size: 36, color: theme.ink, opacity: 1 },
        encoding: { x, y },
      },
      ...rightLabels(labels, { least: ends[0], most: ends[1], height: HEIGHT, log: true }, most, theme),
    ],
  };
}

/** Upright strokes between the conductor's line and the latest opening, in the windows. */
function hatchLayer(
  { windows, points, slowest }: Endured,
  amps: readonly [number, number],
  [least, top]: readonly [number, number],
  theme: Theme,
): Layer {
  const strokes = windows.flatMap(({ from, to }) =>
    hatched(from, to, amps, WIDTH).map((x) => ({
      x,
      y: Math.min(top, Math.max(least, timeAt(points, x))),
      y2: Math.min(top, Math.max(least, timeAt(slowest, x))),
    })),
  );
  return {
    data: rows(strokes),
    mark: { type: 'rule', color: theme.danger, strokeWidth: 0.9, clip: true },
    encoding: {
      x: { field: 'x', type: 'quantitative' },
      y: { field: 'y', type: 'quantitative' },
      y2: { field: 'y2' },
    },
  };
}
