/** What lies inside of a plot. */
import type { Box, Marks, Names, Part, Point, Texts } from './chart.ts';
import { element, lettered, path, SIZE, stroked } from './elements.ts';
import { type Pen, type Plot, STROKES, styleOf } from './look.ts';

/** Half the bar at the end of a range, and space around names [px]. */
const BAR = 6;
const SPACE = 5;

/** A part: what is cut off at the edges of the plot, and what lies over it. Labels beside the plot are not its business. */
export function drawPart(part: Part, plot: Plot, pen: Pen): { readonly cut: string; readonly over: string } {
  switch (part.kind) {
    case 'line': {
      const { points, look, style, marks = [] } = part;
      const [color, width] = STROKES[look];
      return {
        cut: stroked(pathOf(points, plot), pen.theme[color], width, styleOf(style)[0]),
        over: drawMarks({ ...part, kind: 'marks', points: marks }, plot, pen),
      };
    }
    case 'area': {
      // Along `y`, and back along `y2`.
      const back = part.points.map(({ x, y2 }) => ({ x, y: y2 })).reverse();
      const d = `${pathOf([...part.points, ...back], plot)}Z`;
      return { cut: element('path', { d, fill: fillOf(part.fill, pen) }), over: '' };
    }
    case 'box':
      return drawBox(part, plot, pen);
    case 'marks':
    case 'ends':
      return { cut: '', over: drawMarks(part, plot, pen) };
    case 'names':
      return { cut: '', over: drawNames(part, plot, pen) };
    case 'texts':
      return { cut: '', over: drawTexts(part, plot, pen) };
    case 'note':
      return { cut: '', over: '' };
  }
}

const fillOf = (fill: 'tint' | 'hatch' | 'none', { theme, id }: Pen): string =>
  ({ tint: theme.tint, hatch: `url(#${id}hatch)`, none: 'none' })[fill];

/** The pattern of hatched parts. */
export const hatching = ({ theme, id }: Pen): string =>
  element(
    'pattern',
    { id: `${id}hatch`, width: 5, height: 5, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
    stroked('M0 0V5', theme.danger, 2),
  );

const pathOf = (points: readonly Point[], { toX, toY }: Plot): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${path`${toX(x)} ${toY(y)}`}`).join('');

/** Marks are open, so that a line under them is seen. */
function drawMarks({ kind, points, look, style }: Marks, plot: Plot, { theme }: Pen): string {
  const { toX, toY } = plot;
  const stroke = theme[STROKES[look][0]];
  if (kind === 'ends') {
    const bars = points.map(({ x, y }) => path`M${toX(x)} ${toY(y) - BAR}v${2 * BAR}`);
    return stroked(pathOf(points, plot) + bars.join(''), stroke, 2);
  }
  const mark = { d: styleOf(style)[1], fill: theme.paper, stroke, 'stroke-width': 1.5 };
  return points
    .map(({ x, y }) => element('path', { ...mark, transform: path`translate(${toX(x)} ${toY(y)})` }))
    .join('');
}

function drawBox(box: Box, { toX, toY, left, top, height }: Plot, pen: Pen) {
  const { x: start, x2, y, y2, fill, edge, text } = box;
  const [x, to] = [Math.max(left, toX(start)), toX(x2)];
  const [upper, lower] = y === undefined || y2 === undefined ? [top, top + height] : [toY(y2), toY(y)];
  const stroke = edge && pen.theme[STROKES[edge][0]];
  const place = { x, y: upper, width: to - x, height: lower - upper };
  const cut = element('rect', { ...place, fill: fillOf(fill, pen), stroke });
  if (text === undefined) return { cut, over: '' };
  // Left of it where it is too narrow for its text.
  const [at, anchor] =
    pen.measure(text, SIZE.small) + 2 * SPACE <= to - x ? [x + SPACE] : ([x - SPACE, 'end'] as const);
  const over = lettered(text, at, top + SIZE.small + 3, pen.theme, {
    color: 'quiet',
    ...(anchor && { anchor }),
  });
  return { cut, over };
}

/** Names that would stand on others are left out: the strong one stays, then from left to right. */
function drawNames({ names }: Names, { toX, left, top, width }: Plot, { theme, measure }: Pen): string {
  const taken: (readonly [number, number])[] = [];
  return [...names]
    .sort((a, b) => Number(b.strong) - Number(a.strong) || a.x - b.x)
    .map(({ x, text, strong }) => {
      const half = measure(text, SIZE.small) / 2;
      const middle = Math.min(left + width - half, Math.max(left + half, toX(x)));
      if (taken.some(([from, to]) => middle - half < to + SPACE && middle + half > from - SPACE)) return '';
      taken.push([middle - half, middle + half]);
      const color = strong ? 'strong' : 'quiet';
      return lettered(text, middle, top + SIZE.small + 3, theme, { color, anchor: 'middle' });
    })
    .join('');
}

/** On the colour of paper, so that hatching under them does not hide them. */
function drawTexts({ texts }: Texts, { toX, toY }: Plot, { theme, measure }: Pen): string {
  return texts
    .map(({ x, y, text }) => {
      const wide = measure(text, SIZE.small) + 4;
      const place = {
        x: toX(x) - wide / 2,
        y: toY(y) - 8,
        width: wide,
        height: 15,
        fill: theme.paper,
        'fill-opacity': 0.8,
      };
      return (
        element('rect', place) + lettered(text, toX(x), toY(y) + 4, theme, { color: 'ink', anchor: 'middle' })
      );
    })
    .join('');
}
