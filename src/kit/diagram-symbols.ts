/** The symbols of the drawing, in black lines. All in mm, from the upper left corner of the symbol. */

import { escaped } from '../pictures/elements.ts';
import { FONT, LINE, type Shape, TERMINAL } from './diagram-graph.ts';

/** A number as it stands in the drawing: to a hundredth of a millimetre. */
export const mm = (value: number): string => String(Number(value.toFixed(2)));

const SMALL = 2.1;
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
export function draw({ spot, width: w, height: h, at, below, lines }: Shape): string {
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
        terminal('30', 2.6, at - 1.7) +
        terminal('87', w - 2.6, at - 1.7) +
        terminal('86', 2.6, below - 1.7) +
        terminal('85', w - 2.6, below - 1.7) +
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

/** The line of a wire. */
export const wireLine = (way: readonly { x: number; y: number }[], kind: string): string =>
  `<path class="${kind}" d="M${way.map(({ x, y }) => `${mm(x)} ${mm(y)}`).join('L')}"/>`;

/** Where wires are joined. */
export const joint = ({ x, y }: { x: number; y: number }): string => dot(x, y, 0.8, true);
