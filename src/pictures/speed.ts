/** Currents of the first feed run and spark energy over engine speed, of one design or of two. */
import type { Field, PositionFieldDef } from 'vega-lite/types_unstable/channeldef.js';
import { printNumber, printValue } from '../basis/print.ts';
import { straight } from './axes.ts';
import { clippedGround } from './ground.ts';
import { type Label, rightLabels, rule } from './layers.ts';
import { type Layer, type Panel, type Picture, picture, rows } from './picture.ts';
import type { AtSpeed, SpeedLines } from './speed-lines.ts';
import { dash, LIGHT, type Theme, WIDTH } from './theme.ts';
import type { Point } from './thin.ts';
import { shortened } from './words.ts';

const HEIGHT = { currents: 230, energy: 200 };
const HEADROOM = 1.1;

/** A limit this many times as high as all currents would press them to the ground: it is only told. */
const FAR = 3;

interface Line {
  readonly name: string;
  readonly points: readonly Point[];
  readonly strong: boolean;
}

/**
 * The picture of one sweep, or of two in one: then each label says whose line it is. `title` is that of the design when
 * it is left out.
 */
export function speedPicture(
  sets: readonly [SpeedLines] | readonly [SpeedLines, SpeedLines],
  title: string = sets[0].name,
  theme: Theme = LIGHT,
): Picture {
  const rpm = sets.flatMap(({ speeds }) => speeds.map((at) => at.rpm));
  const ends: [number, number] = [Math.min(...rpm), Math.max(...rpm)];
  // One speed alone has no width; it stands in the middle.
  if (ends[0] === ends[1]) ends.splice(0, 2, ends[0] * 0.9, ends[1] * 1.1);
  const energy = energyPanel(sets, ends, theme);
  const what = sets.length > 1 ? 'the first feed run of both' : `run ${sets[0].run}`;
  const supplies = [...new Set(sets.map(({ supply }) => `${supply.toFixed(1)} V`))].join(' and ');
  return picture(
    {
      name: 'speed',
      title,
      subtitle:
        `Over engine speed at ${supplies}: current of ${what}` +
        (energy ? ' and spark energy of one coil' : '. Energy is not known without the coil’s inductance'),
      description: `Currents${energy ? ' and energy' : ''} over engine speed. ${sets.map(told).join(' ')}`,
    },
    [currentPanel(sets, ends, energy === null, theme), ...(energy ? [energy] : [])],
    theme,
  );
}

/** The last speed in words. */
function told({ name, run, speeds, fuse, ampacity }: SpeedLines): string {
  const last = speeds.at(-1) as AtSpeed;
  const energy =
    last.delivered === null || last.stiff === null
      ? ''
      : `; ${printNumber(last.delivered)} mJ of ${printNumber(last.stiff)} mJ delivered`;
  return (
    `${name}, ${printNumber(last.rpm)} rpm: run ${run} average ${printNumber(last.average)} A, effective ` +
    `${printNumber(last.effective)} A, peak ${printNumber(last.peak)} A` +
    `${fuse === null ? '' : `, fuse ${printValue(fuse, 'A', 'A', true)}`}` +
    `${ampacity === null ? '' : `, ampacity ${printNumber(ampacity)} A`}${energy}.`
  );
}

const speedAxis = (ends: readonly [number, number], words: boolean): PositionFieldDef<Field> =>
  straight(
    'x',
    words ? 'Engine speed in rpm' : '',
    ends,
    words ? { tickCount: 8, format: 'd' } : { tickCount: 8, labels: false, title: null },
  );

const lineOf = ({ speeds }: SpeedLines, value: (at: AtSpeed) => number | null): Point[] =>
  speeds.flatMap((at) => {
    const y = value(at);
    return y === null ? [] : [{ x: at.rpm, y }];
  });

function currentPanel(
  sets: readonly SpeedLines[],
  ends: readonly [number, number],
  words: boolean,
  theme: Theme,
): Panel {
  const two = sets.length > 1;
  const lines = sets.flatMap((set, i): Line[] => [
    { name: named('peak', set, two), points: lineOf(set, (at) => at.peak), strong: false },
    { name: named('effective', set, two), points: lineOf(set, (at) => at.effective), strong: i === 0 },
    // Of two designs the averages say nothing that the effective currents do not.
    ...(two ? [] : [{ name: 'average', points: lineOf(set, (at) => at.average), strong: false }]),
  ]);
  const highest = Math.max(...lines.flatMap(({ points }) => points.map(({ y }) => y)));
  const limits = sets.flatMap((set) =>
    [
      { what: 'fuse', value: set.fuse },
      { what: 'ampacity', value: set.ampacity },
    ].flatMap(({ what, value }) =>
      value === null
        ? []
        : [{ value, text: named(`${what} ${printValue(value, 'A', 'A', what === 'fuse')}`, set, two) }],
    ),
  );
  const near = limits.filter(({ value }) => value <= FAR * highest);
  const most = HEADROOM * Math.max(highest, ...near.map(({ value }) => value));
  const far = limits
    .filter((limit) => !near.includes(limit))
    .map(({ text }) => ({ value: most, text: `${text}, above ↑` }));
  return {
    title: `Current${near.length > 0 ? '; thin lines across: rating of the fuse and ampacity of the conductor' : ''}`,
    width: WIDTH,
    height: HEIGHT.currents,
    layer: [
      ...clippedGround(sets, ends, theme),
      ...near.map(({ value }, i) => rule(value, i % 2 === 0 ? [10, 2] : [10, 2, 2, 2], theme.danger)),
      ...plotted(
        lines,
        speedAxis(ends, words),
        straight('y', 'Current in A', [0, most], { tickCount: 6 }),
        theme,
      ),
      ...rightLabels(
        [...far, ...near, ...lines.map((line) => labelOf(line, 'A'))],
        { least: 0, most, height: HEIGHT.currents },
        ends[1],
        theme,
      ),
    ],
  };
}

/** Null when no energy is known. */
function energyPanel(
  sets: readonly SpeedLines[],
  ends: readonly [number, number],
  theme: Theme,
): Panel | null {
  const two = sets.length > 1;
  const lines = sets
    .flatMap((set, i): Line[] => [
      { name: named('delivered', set, two), points: lineOf(set, (at) => at.delivered), strong: i === 0 },
      { name: named('stiff supply', set, two), points: lineOf(set, (at) => at.stiff), strong: false },
    ])
    .filter(({ points }) => points.length > 0);
  if (lines.length === 0) return null;
  const most = HEADROOM * Math.max(1, ...lines.flatMap(({ points }) => points.map(({ y }) => y)));
  return {
    title: 'Energy of one coil: delivered behind the feed at its weakest firing, and on a stiff supply',
    width: WIDTH,
    height: HEIGHT.energy,
    layer: [
      ...clippedGround(sets, ends, theme),
      ...plotted(lines, speedAxis(ends, true), straight('y', 'Energy in mJ', [0, most]), theme),
      ...rightLabels(
        lines.map((line) => labelOf(line, 'mJ')),
        { least: 0, most, height: HEIGHT.energy },
        ends[1],
        theme,
      ),
    ],
  };
}

const named = (what: string, { name }: SpeedLines, two: boolean): string =>
  two ? `${shortened(name, 20)}: ${what}` : what;

const labelOf = ({ name, points }: Line, unit: string): Label => {
  const { x, y } = points.at(-1) as Point;
  return { value: y, from: x, text: `${name} ${printNumber(y)} ${unit}` };
};

const plotted = (
  lines: readonly Line[],
  x: PositionFieldDef<Field>,
  y: PositionFieldDef<Field>,
  theme: Theme,
): Layer[] =>
  lines.map(({ points, strong }, i) => ({
    data: rows(points),
    mark: {
      type: 'line',
      color: strong ? theme.strong : theme.ink,
      strokeWidth: strong ? 2.2 : 1.4,
      strokeDash: strong ? dash(0) : dash(i + 1),
      // A line of a single speed would not be seen.
      point: points.length === 1 && { color: strong ? theme.strong : theme.ink, filled: true },
    },
    encoding: { x, y },
  }));
