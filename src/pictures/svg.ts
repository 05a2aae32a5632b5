/**
 * From a chart to SVG:
 *
 *   Picture ─► stacks ─► panels ─► axes (axes.ts), parts (parts.ts), labels beside or below (side.ts)
 *
 * The same program draws files and the page; they differ in width, colours and in what measures a text.
 */
import { drawAcross, drawGrid, namesDown, ROW } from './axes.ts';
import type { Axis, Panel, Picture, Stack } from './chart.ts';
import { element, escaped, lettered, SIZE } from './elements.ts';
import { LIGHT, type Measure, type Pen, type Plot, type Theme } from './look.ts';
import { SVG_MARK } from './mark.ts';
import { drawPart, hatching } from './parts.ts';
import { shareOf } from './read.ts';
import { drawKeys, drawSide, labelsOf, type Side, sideOf } from './side.ts';
import { wrapped } from './words.ts';

/** Width of a picture that is a file, and its margin [px]. */
const FILE = 960;
const MARGIN = 16;
/** Space around names of axes, and between panels; height of a line of a title [px]. */
const PAD = 7;
const BETWEEN = 12;
const TITLE = 17;
const HEAD = 21;
/** No plot is narrower [px]. */
const NARROWEST = 60;

/** What all plots of a picture have in common, so that they stand in line [px]. */
export interface Frame {
  readonly left: number;
  readonly width: number;
  readonly side: Side;
}

/** The frame for the panels of some stacks in a picture of a width [px]. */
export function frameOf(stacks: readonly Stack[], width: number, measure: Measure): Frame {
  const labels = stacks.flatMap(({ x, panels }) => panels.flatMap((panel) => labelsOf(panel, x)));
  const names = stacks.flatMap(({ panels }) => panels.flatMap(({ y, height }) => namesDown(y, height)));
  const side = sideOf(labels, width, measure);
  const left = ROW + 2 * PAD + Math.max(0, ...names.map(({ texts }) => measure(texts[0] ?? '', SIZE.small)));
  return { left, width: Math.max(NARROWEST, width - left - side.room), side };
}

/** A stack as it is drawn: its elements, its height [px], and the place of each plot. */
export interface Drawn {
  readonly svg: string;
  readonly height: number;
  readonly plots: readonly Plot[];
}

/** Draws a stack from `top` [px] on. */
export function drawStack({ x, panels }: Stack, frame: Frame, pen: Pen, top = 0): Drawn {
  let at = top;
  const drawn = panels.map((panel, i) => {
    const last = i === panels.length - 1;
    const one = drawPanel(panel, x, frame, pen, { top: at, cut: `${pen.id}cut${i}`, last });
    at += one.height + (last ? 0 : BETWEEN);
    return one;
  });
  return {
    svg: hatching(pen) + drawn.map(({ svg }) => svg).join(''),
    height: at - top,
    plots: drawn.map(({ plot }) => plot),
  };
}

interface Place {
  readonly top: number;
  /** Id of what cuts the lines off at its edges. */
  readonly cut: string;
  readonly last: boolean;
}

function drawPanel(panel: Panel, x: Axis, frame: Frame, pen: Pen, { top, cut, last }: Place) {
  const { y, height, parts, title } = panel;
  const { left, width, side } = frame;
  const titles = wrapped(title, width + side.room, SIZE.text, pen.measure);
  const plot: Plot = {
    left,
    top: top + titles.length * TITLE + PAD,
    width,
    height,
    toX: (value) => left + shareOf(x, value) * width,
    toY: (value) => plot.top + (1 - shareOf(y, value)) * height,
  };
  const labels = labelsOf(panel, x);
  const axis = last ? drawAcross(x, plot, pen) : { svg: '', height: 0 };
  const below = plot.top + height + axis.height;
  const keys = side.keyed
    ? drawKeys(labels, [left, below + PAD, width + side.room], pen)
    : { svg: '', height: -PAD };
  const layers = parts.map((part) => drawPart(part, plot, pen));
  const svg = [
    ...titles.map((text, i) =>
      lettered(text, left, top + (i + 1) * TITLE - 4, pen.theme, { color: 'ink', size: SIZE.text }),
    ),
    drawGrid(x, y, plot, pen),
    element('clipPath', { id: cut }, element('rect', { x: left, y: plot.top, width, height })),
    element('g', { 'clip-path': `url(#${cut})` }, layers.map((layer) => layer.cut).join('')),
    axis.svg,
    ...layers.map(({ over }) => over),
    drawSide(labels, { keyed: side.keyed, led: y.label !== '' }, plot, pen),
    keys.svg,
  ];
  return { svg: svg.join(''), height: below - top + PAD + keys.height, plot };
}

/** The picture as a file, with title, description and the mark of this tool. The same picture gives the same text. */
export function toSvg(picture: Picture, measure: Measure, theme: Theme = LIGHT): string {
  const { title, subtitle, description, stacks } = picture;
  const room = FILE - 2 * MARGIN;
  const frame = frameOf(stacks, room, measure);
  let at = 0;
  const head = [
    ...wrapped(title, room, SIZE.title, measure, true).map((text) => {
      at += HEAD;
      return lettered(text, 0, at - 5, theme, { color: 'ink', size: SIZE.title, bold: true });
    }),
    ...wrapped(subtitle, room, SIZE.text, measure).map((text) => {
      at += TITLE;
      return lettered(text, 0, at - 3, theme, { color: 'quiet', size: SIZE.text });
    }),
  ];
  at += BETWEEN;
  const drawn = stacks.map((stack, i) => {
    const { svg, height } = drawStack(stack, frame, { theme, measure, id: `s${i}` }, at);
    at += height + 2 * BETWEEN;
    return svg;
  });
  const height = Math.ceil(at - 2 * BETWEEN + 2 * MARGIN);
  const root = {
    xmlns: 'http://www.w3.org/2000/svg',
    role: 'img',
    'aria-labelledby': 'title desc',
    width: FILE,
    height,
    viewBox: `0 0 ${FILE} ${height}`,
    'font-family': theme.font,
  };
  const inside = [
    element('title', { id: 'title' }, escaped(title)),
    element('desc', { id: 'desc' }, escaped(description)),
    element('metadata', {}, SVG_MARK),
    element('rect', { width: FILE, height, fill: theme.paper }),
    element('g', { transform: `translate(${MARGIN} ${MARGIN})` }, [...head, ...drawn].join('')),
  ];
  return `${element('svg', root, inside.join(''))}\n`;
}
