/**
 * Labels of lines right of a plot, each with a thin leader. Where they would take too much of a narrow picture a letter
 * stands beside the plot instead, and the label behind the same letter below it.
 */
import type { Axis, Look, Panel, Point } from './chart.ts';
import { lettered, path, SIZE, stroked } from './elements.ts';
import { spread } from './labels.ts';
import { labelColor, type Measure, type Pen, type Plot } from './look.ts';
import { shareOf, valueAt } from './read.ts';
import { fitted } from './words.ts';

/** Least distance of two labels one above the other, length of the leader, and space before the label [px]. */
const LINE = 15;
const LEADER = 12;
const SPACE = 4;
/** The largest part of a picture's width that labels may take. */
const MOST = 0.36;
/** Room of a letter, and between two labels below a plot [px]. */
const KEY = 16;
const BETWEEN = 16;

interface Label {
  readonly text: string;
  readonly look: Look;
  readonly at: Point;
}

/** Labels of a panel; each leads from the last point of its line that is to be seen. */
export function labelsOf({ parts, y }: Panel, x: Axis): Label[] {
  return parts.flatMap((part): Label[] => {
    if (part.kind === 'note') return [{ ...part, at: { x: x.to, y: part.y } }];
    if (part.kind !== 'line' || part.label === undefined) return [];
    const { points, label: text, look } = part;
    const end = { x: x.to, y: valueAt(points, x.to, { x, y }) ?? Infinity };
    const at = within(y, end.y) ? end : points.findLast((point) => within(x, point.x) && within(y, point.y));
    if (at) return [{ text, look, at }];
    // No point of it is to be seen: it lies above the plot, or below.
    const above = (points.at(-1)?.y ?? y.to) > y.to;
    return [
      { text: `${text}, ${above ? 'above ↑' : 'below ↓'}`, look, at: { x: x.to, y: above ? y.to : y.from } },
    ];
  });
}

/** Within the axis, but for the last digits. */
const within = (axis: Axis, value: number): boolean => Math.abs(shareOf(axis, value) - 0.5) < 0.5 + 1e-6;

export interface Side {
  /** Room right of the plots [px]. */
  readonly room: number;
  /** Letters stand beside the plots, the labels below them. */
  readonly keyed: boolean;
}

/** The room that the widest of some labels needs in a picture of a width [px]. */
export function sideOf(labels: readonly Label[], width: number, measure: Measure): Side {
  const room = LEADER + SPACE + Math.max(0, ...labels.map(({ text }) => measure(text, SIZE.small)));
  return room <= MOST * width ? { room, keyed: false } : { room: LEADER + SPACE + SIZE.small, keyed: true };
}

const keyOf = (i: number): string => 'abcdefghijklmnopqrstuvwxyz'[i] ?? String(i + 1);

/** Beside a plot: labels or their letters, and leaders where labels are `led` from lines. */
export function drawSide(
  labels: readonly Label[],
  { keyed, led }: { readonly keyed: boolean; readonly led: boolean },
  { left, top, width, height, toX, toY }: Plot,
  { theme }: Pen,
): string {
  const right = left + width;
  const wanted = labels.map(({ at }) => Math.min(height, Math.max(0, toY(at.y) - top)));
  const places = spread(wanted, height, LINE);
  return labels
    .map(({ text, look, at }, i) => {
      const [from, to] = [wanted[i] as number, places[i] as number];
      const leader = path`M${toX(at.x) + 1} ${top + from}H${right}l${LEADER} ${to - from}`;
      const color = labelColor(look);
      const word = lettered(keyed ? keyOf(i) : text, right + LEADER + SPACE, top + to + 4, theme, { color });
      return (led ? stroked(leader, theme.faint, 0.7) : '') + word;
    })
    .join('');
}

/** Labels with their letters in lines below a plot, and the height of all [px]. */
export function drawKeys(
  labels: readonly Label[],
  [left, top, width]: readonly [number, number, number],
  { measure, theme }: Pen,
): { svg: string; height: number } {
  let [x, line] = [0, 0];
  const texts = labels.map(({ text, look }, i) => {
    const short = fitted(text, width - KEY, SIZE.small, measure);
    const wide = KEY + measure(short, SIZE.small);
    if (x > 0 && x + wide > width) [x, line] = [0, line + 1];
    const [from, y] = [left + x, top + (line + 1) * LINE - 3];
    x += wide + BETWEEN;
    return (
      lettered(keyOf(i), from, y, theme, { color: 'quiet' }) +
      lettered(short, from + KEY, y, theme, { color: labelColor(look) })
    );
  });
  return { svg: texts.join(''), height: labels.length > 0 ? (line + 1) * LINE + SPACE : 0 };
}
