/** A study as a picture: lines over one input, or a map over two, with what does not pass hatched. */
import { inUnit } from '../basis/shown.ts';
import { printUnit } from '../basis/units.ts';
import type { Row, Shown, Study } from '../study/study.ts';
import type { Vary } from '../study/values.ts';
import {
  type Axis,
  axisOf,
  type Box,
  type Line,
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
/** Marks along a line, so that the points are seen. */
const MOST_MARKS = 40;

const passes = ({ verdict }: Row): boolean => verdict === 'pass';

/** The picture of a study over one input or two. */
export function studyPicture(study: Study): Picture {
  const { design, vary } = study;
  const [first, second] = vary as [Vary, Vary?];
  const over = second === undefined ? first.path : `${first.path} and ${second.path}`;
  const failing = study.rows.filter((row) => !passes(row)).length;
  const panels = second === undefined ? linePanels(study, first) : mapPanels(study, first, second);
  return {
    name: 'study',
    title: design.title,
    subtitle: `Over ${over}; hatched: does not pass${second === undefined ? '' : '; the line is where that turns'}`,
    description: `${study.shown.map(({ label }) => label).join(', ')} over ${over}: ${study.rows.length} points, of which ${failing} do not pass.`,
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
  const bands = bandsOf(rows.map(passes), xs);
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

/** Where points do not pass: from half way to the point before to half way to the next. */
function bandsOf(passing: readonly boolean[], xs: readonly number[]): Box[] {
  return passing.flatMap((passed, i): Box[] => {
    if (passed || passing[i - 1] === false) return [];
    const next = passing.indexOf(true, i);
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

function mapPanels({ shown, rows }: Study, first: Vary, second: Vary): Panel[] {
  const tall = second.values.length;
  const at = (i: number, k: number): Row | undefined => rows[i * tall + k];
  const cells = first.values.flatMap((_, i) =>
    second.values.map((__, k): Box => {
      const place = { kind: 'box', x: i - 0.5, x2: i + 0.5, y: k - 0.5, y2: k + 0.5 } as const;
      const row = at(i, k);
      return {
        ...place,
        fill: row?.verdict === 'pass' ? 'tint' : row?.verdict === 'refused' ? 'none' : 'hatch',
      };
    }),
  );
  const edges = edgesOf(first.values.length, tall, (i, k) => passes(at(i, k) as Row));
  const y = axisFor(second, true);
  return shown.slice(0, MOST_PANELS).map(({ label, unit }, n) => ({
    title: unit === '' ? label : `${label} in ${unit}`,
    height: Math.min(TALLEST, Math.max(4, tall) * ROW),
    y,
    parts: [
      ...cells,
      ...edges,
      ...(first.values.length > MOST_TEXTS || tall * ROW > TALLEST
        ? []
        : [
            {
              kind: 'texts' as const,
              texts: first.values.flatMap((_, i) =>
                second.values.map((__, k) => ({ x: i, y: k, text: at(i, k)?.texts[n] ?? '' })),
              ),
            },
          ]),
    ],
  }));
}

/** Edges between cells of which one passes and one does not. */
function edgesOf(wide: number, tall: number, pass: (i: number, k: number) => boolean): Line[] {
  const edges: Line[] = [];
  const put = (x: number, y: number, x2: number, y2: number) =>
    edges.push(
      line(
        [
          { x, y },
          { x: x2, y: y2 },
        ],
        'strong',
      ),
    );
  for (let i = 0; i < wide; i++)
    for (let k = 0; k < tall; k++) {
      if (i + 1 < wide && pass(i, k) !== pass(i + 1, k)) put(i + 0.5, k - 0.5, i + 0.5, k + 0.5);
      if (k + 1 < tall && pass(i, k) !== pass(i, k + 1)) put(i - 0.5, k + 0.5, i + 0.5, k + 0.5);
    }
  return edges;
}
