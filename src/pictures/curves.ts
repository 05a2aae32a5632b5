/** Time-current curves of one fuse: its band, how long each conductor behind it withstands a current, and what faults draw. */
import { printValue } from '../basis/print.ts';
import {
  type Area,
  type Axis,
  across,
  type Line,
  type Look,
  line,
  type Panel,
  type Picture,
  type Point,
  type Span,
} from './chart.ts';
import {
  drawnIn,
  type FuseCurves,
  type LimitOf,
  rangesOf,
  type TimeAt,
  type Withstands,
} from './curve-lines.ts';
import { faultPanel } from './faults.ts';
import { NAMES } from './names.ts';
import { valueAt } from './read.ts';
import { shortened } from './words.ts';

const HEIGHT = 400;
/** Room around what is drawn, as a factor: of currents, and of times. */
const ROOM = { current: 1.15, time: 2 };
/** Letters of the names in a label. */
const LONGEST = 28;
/** The picture of one fuse. `title` is that of the design. */
export function curvesPicture(curves: FuseCurves, title: string): Picture {
  const { name, rating, type, conductors, left } = curves;
  const open = conductors.filter(({ windows }) => windows.length > 0);
  const omitted =
    left.length > 0
      ? `. Not compared: ${left.join(', ')}, without a size or behind fuses of different kinds`
      : '';
  const x = currentAxis(curves);
  return {
    name: 'curves',
    title,
    subtitle:
      `Time over current: the ${printValue(rating, 'A', 'A', true)} fuse in run ${name}, type ${type}, and how long ` +
      `the conductors behind it withstand a current${omitted}`,
    description:
      `Time-current curves of the fuse in run ${name}. ` +
      (open.length === 0
        ? 'It opens before any conductor behind it reaches its limit, at every current up to the largest fault.'
        : `Too slow for ${open.map((one) => `${one.name} at ${rangesOf(one.windows)}`).join('; ')}.`),
    stacks: [
      {
        title: `Fuse of run ${name} and the conductors behind it, time over current`,
        x,
        panels: [timePanel(curves, x), faultPanel(curves)],
      },
    ],
  };
}

/** From the least to the most current that is drawn. */
function currentAxis({ limits, conductors, stuck }: FuseCurves): Axis {
  const faults = conductors.flatMap(({ fault }) => [...fault]);
  const all = [
    ...limits.slice(0, 2).map(({ current }) => current),
    ...faults,
    ...(stuck === null ? [] : [stuck]),
  ];
  return {
    label: 'Current',
    unit: 'A',
    from: Math.min(...all) / ROOM.current,
    to: Math.max(...all) * ROOM.current,
    log: true,
  };
}

/** From the fastest opening to the slowest at which the fuse has to open at all. */
function timeAxis(band: readonly Span[], openLimit: number): Axis {
  const latest = band.flatMap(({ y2 }) => (Number.isFinite(y2) ? [y2] : []));
  return {
    label: 'Time',
    unit: 's',
    from: Math.min(...band.map(({ y }) => y)) / ROOM.time,
    to: Math.max(openLimit, ...latest) * ROOM.time,
    log: true,
  };
}

function timePanel(curves: FuseCurves, x: Axis): Panel {
  const { conductors, limits, openLimit } = curves;
  const band = bandOf(limits, x.to);
  const y = timeAxis(band, openLimit);
  const hatches = conductors.flatMap((one) => hatchesOf(one, curves.stuck));
  const from = (limit: LimitOf | undefined): string => printValue(limit?.current ?? null, 'A');
  const timed = isTimed(limits);
  return {
    title:
      (timed
        ? `Band: the fuse opens within these times; limits are given from ${from(limits[0])} on. Lines:`
        : `Fuse: the latest opening by its maker’s curve, given from ${from(limits[1])} on. Other lines:`) +
      ' the conductor reaches its temperature limit. Marks: currents of a short.' +
      (hatches.length > 0 ? ' Hatched: a fault draws this current, and the fuse may open too late.' : ''),
    height: HEIGHT,
    y,
    parts: [
      { kind: 'area', points: band, fill: 'tint' },
      across(x, openLimit, 'quiet', 2, `opening-time limit ${printValue(openLimit, 's', 's', true)}`),
      ...hatches,
      edge(band, 'y2', NAMES.latest, 'strong'),
      ...(timed ? [edge(band, 'y', NAMES.earliest, 'plain')] : []),
      ...distinct(conductors).map(({ names, size, one }, i) =>
        line(continued(points(one.points), x.from), 'plain', {
          name: NAMES.atLimit(names.join(', ')),
          style: i + 1,
          label: `${several(names)}, ${size}`,
          marks: conductors
            .filter((other) => names.includes(other.name))
            .flatMap((other) => faultMarks(other, y)),
        }),
      ),
    ],
  };
}

const edge = (band: readonly Span[], key: 'y' | 'y2', name: string, look: Look): Line =>
  line(
    band.map((at) => ({ x: at.x, y: at[key] })),
    look,
    { name, label: name },
  );

const points = (times: readonly TimeAt[]): Point[] =>
  times.map(({ current, time }) => ({ x: current, y: time }));

/** A curve that comes from infinity is infinite all the way before. */
const continued = (curve: readonly Point[], from: number): readonly Point[] =>
  curve[0]?.y === Infinity ? [{ x: from, y: Infinity }, ...curve] : curve;

/** Time of a curve at a current, straight in the logarithms; infinite before it, and the last one behind it. */
const timeAt = (times: readonly TimeAt[], current: number): number =>
  valueAt(points(times), Math.min(current, times.at(-1)?.current ?? 0), LOGARITHMS) ?? Infinity;
const LOGARITHMS = { x: { log: true }, y: { log: true } } as const;

const faultMarks = ({ fault, points: times }: Withstands, y: Axis): Point[] =>
  fault.map((current) => ({ x: current, y: timeAt(times, current) })).filter(({ y: time }) => time <= y.to);

/** Between the conductor's line and the latest opening, where a fault draws the current. */
const hatchesOf = (one: Withstands, stuck: number | null): Area[] =>
  drawnIn(one, stuck).map(([from, to]) => ({
    kind: 'area',
    fill: 'hatch',
    points: [from, ...one.points.map(({ current }) => current).filter((at) => at > from && at < to), to].map(
      (at) => ({
        x: at,
        y: timeAt(one.points, at),
        y2: timeAt(one.slowest, at),
      }),
    ),
  }));

/** Whether anything is known of the shortest times. */
const isTimed = (limits: readonly LimitOf[]): boolean => limits.every(({ fastest }) => fastest !== null);

/**
 * The corners of the band up to the current `most`: opens not before `y` and at the latest after `y2` [s] at `x` [A]. Without
 * shortest times it has no height.
 */
export function bandOf(given: readonly LimitOf[], most: number): Span[] {
  const limits = given.map((limit) => ({ ...limit, fastest: limit.fastest ?? limit.slowest }));
  const corners = limits.flatMap(({ current, fastest, slowest }, i) => {
    const corner = { x: current, y: fastest, y2: slowest };
    // Just below the first current at which it has to open it need not.
    const jumps = i > 0 && Number.isFinite(slowest) && !Number.isFinite(limits[i - 1]?.slowest ?? 0);
    return jumps ? [{ ...corner, y2: Infinity }, corner] : [corner];
  });
  const end = (key: 'fastest' | 'slowest'): number =>
    timeAt(
      limits.map((limit) => ({ current: limit.current, time: limit[key] })),
      most,
    );
  return [...corners.filter(({ x }) => x < most), { x: most, y: end('fastest'), y2: end('slowest') }];
}

/** Conductors of the same size at the same place withstand the same: one line, with all their names. */
function distinct(conductors: readonly Withstands[]) {
  const lines: { names: string[]; size: string; one: Withstands }[] = [];
  for (const one of conductors) {
    const same = lines.find(({ size, one: other }) => size === one.size && alike(other.points, one.points));
    if (same) same.names.push(one.name);
    else lines.push({ names: [one.name], size: one.size, one });
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

/** Names in a label: all of them, or the first and how many more. */
const several = (names: readonly string[]): string => {
  const all = names.join(', ');
  return all.length <= LONGEST
    ? all
    : `${shortened(names[0] as string, LONGEST)}${names.length > 1 ? ` and ${names.length - 1} more` : ''}`;
};
