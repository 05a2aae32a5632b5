/** A study as a picture: lines over one input, or a map over two, with what fails hatched. */
import { bisectRight, ticks } from 'd3-array';
import { inUnit } from '../basis/shown.ts';
import { printUnit } from '../basis/units.ts';
import type { Row, Shown, Study } from '../study/study.ts';
import type { Vary } from '../study/values.ts';
import {
  type Axis,
  axisOf,
  type Box,
  type Line,
  type Look,
  line,
  type Panel,
  type Part,
  type Picture,
} from './chart.ts';

/** Height of a plot of lines, of a row of a map, and of a map at most [px]. */
const LINES = 170;
const ROW = 24;
const TALLEST = 460;
/** Quantities that are drawn, and columns of a map that have room for a value each. */
const MOST_PANELS = 8;
const MOST_TEXTS = 14;
/** Ranges into which a map divides values for which there is no room. */
const LEVELS = 6;
/** One of so many cells is too few for a word. Arbitrary. */
const FEW = 200;
/** So many times as many pieces of line as the map has columns and rows are too many to be read. Arbitrary. */
const THICKET = 3;
/** Marks along a line, so that the points are seen. */
const MOST_MARKS = 40;

const fails = (row: Row | undefined): boolean => row?.verdict === 'fail';

/** The picture of a study over one input or two. */
export function studyPicture(study: Study): Picture {
  const { design, vary } = study;
  const [first, second] = vary as [Vary, Vary?];
  const over = second === undefined ? first.path : `${first.path} and ${second.path}`;
  const failing = study.rows.filter(fails).length;
  const panels = second === undefined ? linePanels(study, first) : mapPanels(study, first, second);
  return {
    name: 'study',
    title: design.title,
    subtitle: `Over ${over}; hatched: fails${second === undefined ? '' : '; blank: unknown, or no such design; a strong line is where the verdict turns'}`,
    description: `${study.shown.map(({ label }) => label).join(', ')} over ${over}: ${study.rows.length} points, of which ${failing} fail.`,
    stacks: [{ title: `Over ${over}`, x: axisFor(first, second !== undefined), panels }],
  };
}

/** An axis with the scale of the values where they have one and lie on a line, else with their names. */
function axisFor({ path, values, scale }: Vary, cells: boolean): Axis {
  if (scale !== null && !cells) {
    const [from, to] = [scale.numbers[0] as number, scale.numbers.at(-1) as number];
    return { label: path, unit: scale.unit, from, to };
  }
  const edge = cells || values.length === 1 ? 0.5 : 0.2;
  return {
    label: path,
    unit: '',
    from: -edge,
    to: values.length - 1 + edge,
    ticks: values.map((_, i) => i),
    names: values,
  };
}

function linePanels({ shown, rows }: Study, vary: Vary): Panel[] {
  const xs = vary.scale?.numbers ?? vary.values.map((_, i) => i);
  const bands = bandsOf(rows.map(fails), xs);
  const turns = shown.flatMap((one, i): Part[][] => (one.steps ? [stepsOf(one, i, rows, xs)] : []));
  const panels = shown.flatMap((one, i): Panel[] => {
    if (one.steps) return [];
    const points = rows.flatMap(({ found }, k) => {
      const value = found[i];
      return typeof value === 'number' ? [{ x: xs[k] as number, y: inUnit(value, one.from, one.as) }] : [];
    });
    if (points.length === 0) return [];
    const drawn: Line = line(points, 'strong', {
      name: one.label,
      marks: points.length <= MOST_MARKS ? points : [],
    });
    return [
      panelOf(
        one,
        points.map(({ y }) => y),
        [...bands, drawn],
      ),
    ];
  });
  const stepped = turns.map(
    (names, i): Panel => ({
      title: `${shown.filter(({ steps }) => steps)[i]?.label}`,
      height: ROW,
      y: { label: '', unit: '', from: 0, to: 1 },
      parts: names,
    }),
  );
  return [...panels, ...stepped].slice(0, MOST_PANELS);
}

const panelOf = (one: Shown, values: readonly number[], parts: readonly Part[]): Panel => ({
  title: one.label,
  height: LINES,
  y: axisOf(one.label, one.as === '1' ? '' : printUnit(one.as), values),
  parts,
});

/** Half way between a point and the one before it; beyond the picture at its ends. */
function edgeOf(xs: readonly number[], i: number): number {
  const [a, b] = [xs[i - 1], xs[i]];
  return a === undefined ? (b as number) - FAR : b === undefined ? a + FAR : (a + b) / 2;
}
const FAR = 1e9;

/** Where points fail: from half way to the point before to half way to the next. */
function bandsOf(failing: readonly boolean[], xs: readonly number[]): Box[] {
  return failing.flatMap((failed, i): Box[] => {
    if (!failed || failing[i - 1] === true) return [];
    const next = failing.indexOf(false, i);
    return [{ kind: 'box', x: edgeOf(xs, i), x2: edgeOf(xs, next < 0 ? xs.length : next), fill: 'hatch' }];
  });
}

/** Steps side by side, the name of each in its middle. */
function stepsOf(one: Shown, i: number, rows: readonly Row[], xs: readonly number[]): Part[] {
  const boxes: Box[] = [];
  const names: { x: number; text: string; strong: boolean }[] = [];
  let start = 0;
  rows.forEach(({ texts }, k) => {
    if (k + 1 < rows.length && rows[k + 1]?.texts[i] === texts[i]) return;
    const [x, x2] = [edgeOf(xs, start), edgeOf(xs, k + 1)];
    boxes.push({ kind: 'box', x, x2, fill: 'none', edge: 'quiet' });
    const middle = (Math.max(x, xs[0] as number) + Math.min(x2, xs.at(-1) as number)) / 2;
    names.push({ x: middle, text: `${texts[i]} ${one.unit}`.trim(), strong: false });
    start = k + 1;
  });
  return [...boxes, { kind: 'names', names }];
}

const FILLS: Readonly<Record<Row['verdict'], Box['fill']>> = {
  pass: 'tint',
  fail: 'hatch',
  unknown: 'none',
  refused: 'none',
};

function mapPanels({ shown, rows }: Study, first: Vary, second: Vary): Panel[] {
  const [wide, tall] = [first.values.length, second.values.length];
  const room = wide <= MOST_TEXTS && tall * ROW <= TALLEST;
  const place = (row: number): { x: number; y: number } => ({ x: Math.floor(row / tall), y: row % tall });
  const cells = rows.map(({ verdict }, row): Box => {
    const { x, y } = place(row);
    return { kind: 'box', x: x - 0.5, x2: x + 0.5, y: y - 0.5, y2: y + 0.5, fill: FILLS[verdict] };
  });
  const verdicts = edgesOf(
    rows.map(({ verdict }) => verdict),
    tall,
    'strong',
  );
  const y = axisFor(second, true);
  return shown.slice(0, MOST_PANELS).map((one, n) => {
    const texts = rows.map((row) => row.texts[n] ?? '');
    const divided = room || one.steps ? texts : levelsOf(one, n, rows);
    // Where sizes are chosen anew at each point a drop jumps, and lines would be a thicket: then the whole is one.
    const edges = room ? [] : edgesOf(divided, tall, 'quiet');
    const tangled = edges.length > THICKET * (wide + tall);
    const classes = tangled ? new Array<string>(rows.length).fill(rangeOf(rows, n)) : divided;
    const named = room ? texts.keys() : middles(classes, place);
    return {
      title: one.unit === '' ? one.label : `${one.label} in ${one.unit}`,
      height: Math.min(TALLEST, Math.max(4, tall) * ROW),
      y,
      parts: [
        ...cells,
        ...(tangled ? [] : edges),
        ...verdicts,
        { kind: 'texts', texts: [...named].map((row) => ({ ...place(row), text: classes[row] as string })) },
      ],
    };
  });
}

/** The least and the most of numbers as they are printed, or how many different words. */
function rangeOf(rows: readonly Row[], n: number): string {
  const known = rows.flatMap(({ found, texts }) =>
    typeof found[n] === 'number' ? [{ value: found[n], text: texts[n] ?? '' }] : [],
  );
  const words = rows.flatMap(({ found }) => (typeof found[n] === 'string' ? [found[n]] : []));
  if (known.length === 0) return `${new Set(words).size} sizes, in no order`;
  known.sort((a, b) => a.value - b.value);
  return `${known[0]?.text} to ${known.at(-1)?.text}`;
}

/** Between which round numbers each value lies, in words. */
function levelsOf(one: Shown, n: number, rows: readonly Row[]): string[] {
  const values = rows.map(({ found }) => {
    const value = found[n];
    return typeof value === 'number' ? inUnit(value, one.from, one.as) : null;
  });
  const known = values.filter((value) => value !== null);
  const marks = ticks(Math.min(...known), Math.max(...known), LEVELS);
  return values.map((value) => {
    if (value === null) return '–';
    const above = bisectRight(marks, value);
    const [low, high] = [marks[above - 1], marks[above]];
    return low === undefined ? `below ${high}` : high === undefined ? `from ${low}` : `${low} to ${high}`;
  });
}

/** For each word that row which lies closest to the middle of all that have it. */
function middles(words: readonly string[], place: (row: number) => { x: number; y: number }): number[] {
  const groups = new Map<string, number[]>();
  words.forEach((word, row) => {
    groups.set(word, [...(groups.get(word) ?? []), row]);
  });
  // Of a few cells the word would lie on those of others.
  const wide = [...groups.values()].filter((rows) => rows.length * FEW >= words.length);
  return wide.map((rows) => {
    const mean = (of: 'x' | 'y'): number => rows.reduce((sum, row) => sum + place(row)[of], 0) / rows.length;
    const [x, y] = [mean('x'), mean('y')];
    const off = (row: number): number => Math.hypot(place(row).x - x, place(row).y - y);
    return rows.reduce((best, row) => (off(row) < off(best) ? row : best));
  });
}

/** Edges between cells that differ, joined to straight lines; cells stand in columns of so many. */
function edgesOf(words: readonly string[], tall: number, look: Look): Line[] {
  const wide = words.length / tall;
  const edges: Line[] = [];
  const put = (x: number, y: number, x2: number, y2: number): void => {
    edges.push(
      line(
        [
          { x, y },
          { x: x2, y: y2 },
        ],
        look,
      ),
    );
  };
  for (let i = 1; i < wide; i++)
    runs(
      tall,
      (k) => words[i * tall + k] !== words[(i - 1) * tall + k],
      (from, to) => put(i - 0.5, from - 0.5, i - 0.5, to - 0.5),
    );
  for (let k = 1; k < tall; k++)
    runs(
      wide,
      (i) => words[i * tall + k] !== words[i * tall + k - 1],
      (from, to) => put(from - 0.5, k - 0.5, to - 0.5, k - 0.5),
    );
  return edges;
}

/** Calls for each stretch of places that have something, its end not included. */
function runs(
  count: number,
  has: (place: number) => boolean,
  call: (from: number, to: number) => void,
): void {
  let start = -1;
  for (let i = 0; i <= count; i++) {
    const here = i < count && has(i);
    if (here && start < 0) start = i;
    if (!here && start >= 0) {
      call(start, i);
      start = -1;
    }
  }
}
