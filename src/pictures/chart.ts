/**
 * What a chart is: data, names and axes, and neither places nor colours: `svg.ts` gives it those, for a file and for the
 * page. All of it is plain data, so that a worker can send it.
 */

/** A point of a line, in the units of its axes. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A point of an area, from `y` to `y2`. */
export interface Span extends Point {
  readonly y2: number;
}

export interface Axis {
  readonly label: string;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  /** With logarithms; both ends above 0. */
  readonly log?: true;
  /** Where it is named; round numbers when this is left out. */
  readonly ticks?: readonly number[];
  /** What stands at 0, 1, 2 … in place of the number: names along an axis that has no scale. */
  readonly names?: readonly string[];
  /** A second row of names below: the value times `per`. */
  readonly also?: { readonly label: string; readonly unit: string; readonly per: number };
}

/** `strong` is the one to look at, `quiet` stands behind, `limit` is what must not be passed. */
export type Look = 'strong' | 'plain' | 'quiet' | 'limit';

export interface Line {
  readonly kind: 'line';
  readonly points: readonly Point[];
  readonly look: Look;
  /** What a reader at the cursor is told that it is; lines without a name are not read. */
  readonly name?: string;
  /** Stands beside the plot. */
  readonly label?: string;
  /** Number of its dashes and of its mark; a plain line when it is left out. */
  readonly style?: number;
  /** Where its mark stands. */
  readonly marks?: readonly Point[];
}

export interface Area {
  readonly kind: 'area';
  readonly points: readonly Span[];
  readonly fill: 'tint' | 'hatch';
}

/** A box, over the whole height where `y` is left out; with `text` at its upper edge. */
export interface Box {
  readonly kind: 'box';
  readonly x: number;
  readonly x2: number;
  readonly y?: number;
  readonly y2?: number;
  readonly fill: 'tint' | 'hatch' | 'none';
  readonly edge?: Look;
  readonly text?: string;
}

/** Marks without a line; `ends` are the ends of a range, drawn with a bar between them. */
export interface Marks {
  readonly kind: 'marks' | 'ends';
  readonly points: readonly Point[];
  readonly look: Look;
  readonly style?: number;
}

/** Names inside of the plot along its upper edge; those for which there is no room are left out, `strong` ones last. */
export interface Names {
  readonly kind: 'names';
  readonly names: readonly { readonly x: number; readonly text: string; readonly strong: boolean }[];
}

/** Texts inside of the plot, in the middle of their places. */
export interface Texts {
  readonly kind: 'texts';
  readonly texts: readonly (Point & { readonly text: string })[];
}

/** A text beside the plot. */
export interface Note {
  readonly kind: 'note';
  readonly y: number;
  readonly text: string;
  readonly look: Look;
}

export type Part = Line | Area | Box | Marks | Names | Texts | Note;

export interface Panel {
  readonly title: string;
  /** Of the plot [px]. */
  readonly height: number;
  /** An axis without a label is neither named nor ruled. */
  readonly y: Axis;
  /** Later ones lie on earlier ones. */
  readonly parts: readonly Part[];
}

/** Panels one below the other over one axis. */
export interface Stack {
  readonly title: string;
  readonly x: Axis;
  readonly panels: readonly Panel[];
}

export interface Picture {
  /** What it shows, in small ASCII letters; `picturesOf` tells several of a kind apart. */
  readonly name: string;
  readonly title: string;
  /** What is drawn, in a sentence. */
  readonly subtitle: string;
  /** For who cannot see it. */
  readonly description: string;
  readonly stacks: readonly Stack[];
}

export const line = (
  points: readonly Point[],
  look: Look,
  more: Omit<Line, 'kind' | 'points' | 'look'> = {},
): Line => ({ kind: 'line', points, look, ...more });

/** A line from end to end of an axis. */
export const across = ({ from, to }: Axis, y: number, look: Look, style: number, label: string): Line =>
  line(
    [from, to].map((x) => ({ x, y })),
    look,
    { style, label },
  );

export const note = (y: number, text: string, look: Look = 'plain'): Note => ({
  kind: 'note',
  y,
  text,
  look,
});

/** Room at the ends of an axis, as a share of what it spans, and the least that it spans, as a share of the highest value. */
const ROOM = 0.08;
const LEAST = 0.02;

/** An axis for some values, close to them; from 0 where they come near to it. It spans `least` at least. */
export function axisOf(label: string, unit: string, values: readonly number[], least?: number): Axis {
  const high = Math.max(...values) || 1;
  const low = Math.min(...values);
  if (low >= 0 && low < 0.6 * high) return { label, unit, from: 0, to: high * (1 + ROOM) };
  const span = Math.max(high - low, least ?? LEAST * Math.abs(high));
  return { label, unit, from: high - span * (1 + ROOM), to: high + span * ROOM };
}
