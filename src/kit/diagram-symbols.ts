/** The symbols of the drawing, in black lines. All in mm, from the upper left corner of the symbol. */

import { escaped } from '../pictures/elements.ts';
import { FUSE, UPRIGHT } from './diagram-fold.ts';
import { type Edge, FONT, type Inner, LINE, type Shape, TERMINAL } from './diagram-graph.ts';

/** A number as it stands in the drawing: to a hundredth of a millimetre. */
export const mm = (value: number): string => String(Number(value.toFixed(2)));

const SMALL = FONT;
/** Where the current of the coils flows. */
const FEED = ' class="feed"';
/** Height of a small figure's upper half, to centre it on a line. */
const HALF = 0.36;

export const line = (x1: number, y1: number, x2: number, y2: number, more = ''): string =>
  `<path d="M${mm(x1)} ${mm(y1)}L${mm(x2)} ${mm(y2)}"${more}/>`;
const box = (x: number, y: number, w: number, h: number, more = ''): string =>
  `<rect x="${mm(x)}" y="${mm(y)}" width="${mm(w)}" height="${mm(h)}"${more}/>`;
const dot = (x: number, y: number, r: number, filled: boolean): string =>
  `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(r)}"${filled ? ' class="full"' : ''}/>`;

/** Lines of text around `x`, the first one's top at `y`. */
export const text = (texts: readonly string[], x: number, y: number, kind = '', size = FONT): string =>
  texts
    .map(
      (t, i) =>
        `<text x="${mm(x)}" y="${mm(y + i * (size === FONT ? LINE : size * 1.24) + size * 0.95)}" font-size="${size}"${
          kind === '' || i > 0 ? '' : ` class="${kind}"`
        }>${escaped(t)}</text>`,
    )
    .join('');

const terminal = (name: string, x: number, y: number): string =>
  `<text x="${mm(x)}" y="${mm(y + SMALL * HALF)}" font-size="${SMALL}">${name}</text>`;

/** What is drawn for a symbol, without its place. */
export function draw(shape: Shape): string {
  if (shape.inner !== undefined) return drawInner(shape.inner);
  if (shape.upright) return drawUpright(shape);
  const { spot, width: w, height: h, at, below, lines } = shape;
  const middle = w / 2;
  switch (spot.kind) {
    case 'fuse':
      return box(middle - 5, at - 2, 10, 4) + line(0, at, w, at, FEED) + text(lines, middle, 5.5, 'name');
    case 'relay':
      return (
        box(0, 0, w, 20) +
        line(0, at, middle - 5, at, FEED) +
        line(middle - 5, at, middle + 4.5, at - 3, FEED) +
        line(middle + 5, at, w, at, FEED) +
        dot(middle - 5, at, 0.6, true) +
        dot(middle + 5, at, 0.6, true) +
        line(middle, at - 1.6, middle, below - 2.5, ' stroke-dasharray="1 0.8"') +
        box(middle - 4, below - 2.5, 8, 5) +
        line(middle - 1.5, below + 2.5, middle + 1.5, below - 2.5) +
        line(0, below, middle - 4, below) +
        line(middle + 4, below, w, below) +
        terminal('30', 2.6, at - 2.2) +
        terminal('87', w - 2.6, at - 2.2) +
        terminal('86', 2.6, below - 2.2) +
        terminal('85', w - 2.6, below - 2.2) +
        text(lines, middle, 20.3, 'name')
      );
    case 'splice':
      return line(0, at, w, at, FEED) + dot(middle, at, 1, true) + text(lines, middle, 0, 'name');
    case 'ground':
      return (
        line(0, at, middle - 1.5, at, FEED) +
        line(middle + 1.5, at, w, at, FEED) +
        dot(middle, at, 1.5, false) +
        dot(middle, at, 0.5, true) +
        text(lines, middle, 0, 'name')
      );
    case 'chassis':
      return (
        line(0, at, 4, at) +
        line(4, at, 4, at + 1.5) +
        line(1.5, at + 1.5, 6.5, at + 1.5) +
        line(2.4, at + 2.5, 5.6, at + 2.5) +
        line(3.3, at + 3.5, 4.7, at + 3.5) +
        terminal('31', 7, at) +
        text(lines, middle, 7)
      );
    default: {
      const inner = text(lines, middle, (h - lines.length * LINE) / 2, 'name');
      const left = { coil: '15', minus: '31' }[spot.kind as string];
      const right = { coil: '31', plus: '30', trigger: '15' }[spot.kind as string];
      return (
        box(0, 0, w, h, spot.kind === 'coil' ? ' rx="2"' : '') +
        inner +
        (left === undefined ? '' : terminal(left, TERMINAL / 2 + 0.3, at)) +
        (right === undefined ? '' : terminal(right, w - TERMINAL / 2 - 0.3, at))
      );
    }
  }
}

/** The line of a wire; `of` tells which one, and between which parts. */
export const wireLine = (way: readonly { x: number; y: number }[], kind: string, of: Edge): string =>
  `<path class="${kind}" data-wire="${escaped(of.piece)}" data-from="${escaped(of.from.id)}" data-to="${escaped(of.to.id)}" d="M${way.map(({ x, y }) => `${mm(x)} ${mm(y)}`).join('L')}"/>`;

/** Where wires are joined. */
export const joint = ({ x, y }: { x: number; y: number }): string => dot(x, y, 0.8, true);

/** Lines of text from `x` on. */
export const leftText = (lines: readonly string[], x: number, y: number, bold = true): string =>
  lines
    .map(
      (t, i) =>
        `<text class="left${bold && i === 0 ? ' name' : ''}" x="${mm(x)}" y="${mm(y + i * LINE + FONT * 0.95)}" font-size="${FONT}">${escaped(t)}</text>`,
    )
    .join('');

const drawInner = ({ wires, parts }: Inner): string =>
  wires
    .map(
      ({ edge, way, label }) =>
        wireLine(way, edge.control ? 'link' : 'feed', edge) + leftText(edge.lines, label.x, label.y),
    )
    .join('') +
  parts
    .map(
      ({ shape, x, y }) =>
        `<g data-spot="${escaped(shape.spot.id)}" transform="translate(${mm(x)} ${mm(y)})">${draw(shape)}</g>`,
    )
    .join('');

/** A contact that a hand or a key opens, in a line at height `y`. */
const opened = (x: number, y: number): string =>
  line(x, y, x + 1, y) + line(x + 1, y, x + 4, y - 1.8) + line(x + 4.2, y, x + 5.5, y);

function drawUpright({ spot, width: w, height: h, lines }: Shape): string {
  switch (spot.kind) {
    case 'fuse':
      return box(0, 1, w, h - 2) + line(w / 2, 0, w / 2, FUSE.height, FEED) + leftText(lines, w + 1.5, 0.8);
    case 'relay':
      return box(0, 0, w, h) + uprightRelay(lines);
    case 'chassis':
      return (
        line(w / 2 - 2.5, 0, w / 2 + 2.5, 0) +
        line(w / 2 - 1.6, 1, w / 2 + 1.6, 1) +
        line(w / 2 - 0.7, 2, w / 2 + 0.7, 2) +
        leftText(lines, w / 2 + 4, -0.5)
      );
    case 'trigger': {
      const row = h - 2;
      return (
        box(0, 0, w, h) +
        leftText(lines, 1.5, 0.8) +
        line(1.5, row, 3, row) +
        box(3, row - 1, 4, 2) +
        line(7, row, 9, row) +
        opened(9, row) +
        opened(15, row)
      );
    }
    default:
      return box(0, 0, w, h) + text(lines, w / 2, (h - lines.length * LINE) / 2, 'name');
  }
}

/** Contact at the right, coil with what suppresses it at the left. */
function uprightRelay(lines: readonly string[]): string {
  const { middle, make, coilIn, coilOut, width } = UPRIGHT;
  const suppression = lines.join(' ');
  const diode =
    '<path d="M8.8 13.4L11.2 13.4L10 11.2Z"/>' +
    line(8.8, 11.2, 11.2, 11.2) +
    line(10, 9, 10, 11.2) +
    line(10, 13.4, 10, 15.5);
  const element = suppression.includes('zener')
    ? diode + line(8.8, 11.2, 8.8, 12) + line(11.2, 11.2, 11.2, 10.4)
    : suppression.includes('diode')
      ? diode
      : suppression.includes('resistor')
        ? box(9.1, 10, 1.8, 4.5) + line(10, 9, 10, 10) + line(10, 14.5, 10, 15.5)
        : '';
  const beside =
    element === ''
      ? ''
      : line(5.5, 7, 10, 7) +
        line(10, 7, 10, 9) +
        line(10, 15.5, 10, 17.5) +
        line(10, 17.5, 5.5, 17.5) +
        dot(5.5, 7, 0.6, true) +
        dot(5.5, 17.5, 0.6, true);
  return (
    `<path${FEED} d="M${middle} 0L${middle} 1.2L${middle + 3} 1.2L${middle + 3} 5"/>` +
    dot(middle + 3, 5, 0.6, true) +
    line(middle + 3, 5, middle + 6.5, 11.5, FEED) +
    dot(middle + 3, 12.5, 0.6, true) +
    line(middle + 3, 12.5, middle + 3, make, FEED) +
    line(middle + 3, make, width, make, FEED) +
    line(0, coilIn, 5.5, coilIn) +
    line(5.5, coilIn, 5.5, 9) +
    box(3.5, 9, 4, 6.5) +
    line(3.5, 13.5, 7.5, 11) +
    line(5.5, 15.5, 5.5, coilOut) +
    line(5.5, coilOut, 0, coilOut) +
    line(11.5, 12.2, middle + 4.5, 8.7, ' stroke-dasharray="1 0.8"') +
    element +
    beside +
    terminal('30', middle - 2.6, 2.4) +
    terminal('87', width - 2.6, make - 2.2) +
    terminal('86', 2.4, coilIn - 2.2) +
    terminal('85', 2.4, coilOut + 2.2) +
    leftText(lines, width + 1.5, 0.5)
  );
}
