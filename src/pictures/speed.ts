/** Currents of the first feed run and spark energy over engine speed, of one design or of two. */
import { printNumber, printValue } from '../basis/print.ts';
import {
  type Axis,
  across,
  axisOf,
  type Box,
  type Line,
  line,
  type Panel,
  type Picture,
  type Point,
} from './chart.ts';
import { NAMES } from './names.ts';
import type { AtSpeed, SpeedLines } from './speed-lines.ts';
import { shortened } from './words.ts';

const HEIGHT = { currents: 230, energy: 200, gain: 110 };

/** A limit this many times as high as all currents would press them to the ground: it is only told. */
const FAR = 3;

/** Marks along a line. */
const MARKS = 8;

type Sets = readonly [SpeedLines] | readonly [SpeedLines, SpeedLines];

/**
 * The picture of one sweep, or of two in one: then each label says whose line it is. `title` is that of the design when
 * it is left out.
 */
export function speedPicture(sets: Sets, title: string = sets[0].name): Picture {
  const rpm = sets.flatMap(({ speeds }) => speeds.map((at) => at.rpm));
  const [from, to] = [Math.min(...rpm), Math.max(...rpm)];
  // One speed alone has no width; it stands in the middle.
  const ends = from === to ? { from: from * 0.9, to: to * 1.1 } : { from, to };
  const x: Axis = { label: sets[0].axes.speed, unit: 'rpm', ...ends };
  const energy = energyPanel(sets, x);
  const gain = gainPanel(sets);
  const what = sets.length > 1 ? 'the first feed run of both' : `run ${sets[0].run}`;
  const supplies = [...new Set(sets.map(({ supply }) => `${supply.toFixed(1)} V`))].join(' and ');
  return {
    name: 'speed',
    title,
    subtitle:
      `Over engine speed at ${supplies}: current of ${what}` +
      (energy ? ' and spark energy of one coil' : '. Energy is not known without the coil’s inductance'),
    description: `Currents${energy ? ' and energy' : ''} over engine speed. ${sets.map(told).join(' ')}`,
    stacks: [
      {
        title: `Current of ${what}${energy ? ', and energy of one coil' : ''}`,
        x,
        panels: [currentPanel(sets, x), ...(energy ? [energy] : []), ...(gain ? [gain] : [])],
      },
    ],
  };
}

/** For a customer: what the weakest coil gets over engine speed, from nothing up; null when no energy is known. */
export function energyPicture(sets: Sets): Picture | null {
  const rpm = sets.flatMap(({ speeds }) => speeds.map((at) => at.rpm));
  const x: Axis = { label: sets[0].axes.speed, unit: 'rpm', from: Math.min(...rpm), to: Math.max(...rpm) };
  const lines = linesOfAll(sets, ENERGIES.slice(0, 1), 'mJ');
  if (lines.length === 0 || x.from === x.to) return null;
  const energies = lines.flatMap(({ points }) => points.map(({ y }) => y));
  const y = axisOf(sets[0].axes.energy, 'mJ', [0, ...energies]);
  const supplies = [...new Set(sets.map(({ supply }) => `${supply.toFixed(1)} V`))].join(' and ');
  return {
    name: 'energy',
    title: 'Spark energy over engine speed',
    subtitle: `Of the coil that gets least, at ${supplies}`,
    description: `Energy over engine speed. ${sets.map(told).join(' ')}`,
    stacks: [{ title: 'Spark energy', x, panels: [{ title: '', height: HEIGHT.energy, y, parts: lines }] }],
  };
}

/** The last speed in words. */
function told({ name, run, speeds, fuse, ampacity }: SpeedLines): string {
  const last = speeds.at(-1) as AtSpeed;
  const energy =
    last.delivered === null || last.stiff === null
      ? ''
      : `; ${printNumber(last.delivered)} mJ of ${printNumber(last.stiff)} mJ delivered`;
  return (
    `${name}, ${printNumber(last.rpm)} rpm: run ${run} average ${printNumber(last.average)} A, effective (RMS) ` +
    `${printNumber(last.effective)} A, peak ${printNumber(last.peak)} A` +
    `${fuse === null ? '' : `, fuse ${printValue(fuse, 'A', 'A', true)}`}` +
    `${ampacity === null ? '' : `, ampacity ${printNumber(ampacity)} A`}${energy}.`
  );
}

/** What is drawn of a sweep: key, name, and the style of its line. */
type Drawn = readonly [
  key: 'peak' | 'effective' | 'average' | 'delivered' | 'stiff',
  name: string,
  style: number,
];
const CURRENTS: readonly Drawn[] = [
  ['peak', 'peak', 1],
  ['effective', 'effective (RMS)', 0],
  ['average', 'average', 3],
];
const ENERGIES: readonly Drawn[] = [
  ['delivered', 'delivered', 0],
  ['stiff', 'stiff supply', 1],
];

/** The lines of one sweep; those without a value are left out. Of two sweeps the second one has marks. */
function linesOf(
  set: SpeedLines,
  index: number,
  two: boolean,
  drawn: readonly Drawn[],
  unit: string,
): Line[] {
  return drawn.flatMap(([key, what, style]): Line[] => {
    const points = set.speeds.flatMap((at) => (at[key] === null ? [] : [{ x: at.rpm, y: at[key] }]));
    const last = points.at(-1);
    if (last === undefined) return [];
    const name = named(what, set, two);
    const every = Math.ceil(points.length / MARKS);
    const strong = style === 0 && index === 0;
    const marks = points.filter((_, i) => i % every === Math.floor(every / 2));
    const label = `${name} ${printNumber(last.y)} ${unit}`;
    // A line of a single speed would not be seen without its mark.
    const more = { name, label, style: style + 2 * index, marks: strong && points.length > 1 ? [] : marks };
    return [line(points, strong ? 'strong' : 'plain', more)];
  });
}

/** The lines of all sweeps; of two that lie on each other all the way only one, under both names. */
function linesOfAll(sets: readonly SpeedLines[], drawn: readonly Drawn[], unit: string): Line[] {
  const [first, second] = sets;
  if (first === undefined || second === undefined)
    return sets.flatMap((set, i) => linesOf(set, i, false, drawn, unit));
  return drawn.flatMap((one) => {
    const [a, b] = [linesOf(first, 0, true, [one], unit), linesOf(second, 1, true, [one], unit)];
    const [line, other] = [a[0], b[0]];
    if (line === undefined || other === undefined || !alike(line.points, other.points)) return [...a, ...b];
    return linesOf({ ...first, name: bothNames(first, second) }, 0, true, [one], unit);
  });
}

const bothNames = (a: SpeedLines, b: SpeedLines): string =>
  `${shortened(a.name, 9)} = ${shortened(b.name, 9)}`;

/** Lines that differ by no more than this share look like one. */
const SAME = 0.005;

const alike = (a: readonly Point[], b: readonly Point[]): boolean =>
  a.length === b.length &&
  a.every(({ x, y }, i) => b[i]?.x === x && Math.abs((b[i]?.y as number) - y) <= SAME * Math.abs(y));

/** What the second of two feeds delivers more than the first, so that lines that lie close are told apart. */
function gainPanel(sets: readonly SpeedLines[]): Panel | null {
  const [a, b] = sets;
  if (a === undefined || b === undefined) return null;
  const points = b.speeds.flatMap(({ rpm, delivered }) => {
    const before = a.speeds.find((at) => at.rpm === rpm)?.delivered ?? null;
    return delivered === null || before === null || before === 0
      ? []
      : [{ x: rpm, y: (delivered / before - 1) * 100 }];
  });
  const last = points.at(-1);
  if (last === undefined) return null;
  const name = `${shortened(b.name, 20)} against ${shortened(a.name, 20)}`;
  return {
    title: 'Energy delivered, the second feed against the first',
    height: HEIGHT.gain,
    y: axisOf('More', '%', [0, ...points.map(({ y }) => y)]),
    parts: [
      line(points, 'strong', {
        name,
        label: `${name} ${printNumber(last.y, 2)} %`,
        marks: points.length > 1 ? [] : points,
      }),
    ],
  };
}

function currentPanel(sets: readonly SpeedLines[], x: Axis): Panel {
  const two = sets.length > 1;
  // Of two designs the averages say nothing that the effective currents do not.
  const lines = linesOfAll(sets, two ? CURRENTS.slice(0, 2) : CURRENTS, 'A');
  const highest = Math.max(...lines.flatMap(({ points }) => points.map(({ y }) => y)));
  const limits = (['fuse', 'ampacity'] as const).flatMap((what) => {
    const [first, second] = sets;
    const same = first && second && first[what] === second[what];
    const own = same ? [{ ...first, name: bothNames(first, second) }] : sets;
    return own.flatMap((set) => {
      const value = set[what];
      const text = `${named(NAMES[what], set, two)} ${printValue(value, 'A', 'A', what === 'fuse')}`;
      return value === null ? [] : [{ value, text, style: what === 'fuse' ? 4 : 3 }];
    });
  });
  const near = limits.filter(({ value }) => value <= FAR * highest);
  return {
    title: `Current${near.length > 0 ? '; lines across: rating of the fuse, ampacity of the conductor' : ''}`,
    height: HEIGHT.currents,
    y: axisOf('Current', 'A', [0, highest, ...near.map(({ value }) => value)]),
    parts: [
      ...clippedGround(sets, x),
      ...limits.map((one) =>
        across(x, one.value, near.includes(one) ? 'limit' : 'plain', one.style, one.text),
      ),
      ...lines,
    ],
  };
}

/** Null when no energy is known. */
function energyPanel(sets: Sets, x: Axis): Panel | null {
  const lines = linesOfAll(sets, ENERGIES, 'mJ');
  if (lines.length === 0) return null;
  const y = axisOf(
    sets[0].axes.energy,
    'mJ',
    lines.flatMap(({ points }) => points.map((point) => point.y)),
  );
  const cut = y.from > 0 ? '; the axis does not start at 0' : '';
  return {
    title: `Energy of one coil: delivered behind the feed at its weakest firing, and on a stiff supply${cut}`,
    height: HEIGHT.energy,
    y,
    parts: [...clippedGround(sets, x), ...lines],
  };
}

const named = (what: string, { name }: SpeedLines, two: boolean): string =>
  two ? `${shortened(name, 20)}: ${what}` : what;

/** A ground where the dwell of the first design is cut short: from half way to the speed before. */
function clippedGround([set]: readonly SpeedLines[], x: Axis): Box[] {
  const speeds = set?.speeds ?? [];
  const first = speeds.findIndex(({ clipped }) => clipped);
  if (first < 0) return [];
  const [before, at] = [speeds[first - 1], speeds[first] as AtSpeed];
  const from = before ? (before.rpm + at.rpm) / 2 : x.from;
  return [{ kind: 'box', x: from, x2: x.to, fill: 'tint', text: 'dwell cut short' }];
}
