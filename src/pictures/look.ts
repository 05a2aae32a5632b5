/** How pictures look: few colours, lines told apart by width, dashes, marks and labels, so that a print shows all of it. */
import type { Look } from './chart.ts';

/** Colours, as CSS has them, and letters. The page passes its own, which follow light and dark. */
export interface Theme {
  /** A list of families: where the first is missing the next ones are about as wide. */
  readonly font: string;
  readonly paper: string;
  /** Titles, lines and labels. */
  readonly ink: string;
  /** Axes and their names. */
  readonly quiet: string;
  /** The many lines behind the one that matters. */
  readonly faint: string;
  readonly grid: string;
  /** The line to look at, and the ground under it. */
  readonly strong: string;
  readonly tint: string;
  /** What must not be: limits, and currents without protection. */
  readonly danger: string;
}

export const LIGHT: Theme = {
  font: 'DejaVu Sans, Verdana, Geneva, sans-serif',
  paper: '#ffffff',
  ink: '#1c2733',
  quiet: '#566270',
  faint: '#8b97a3',
  grid: '#e4e8ec',
  strong: '#14508c',
  tint: '#dbe7f2',
  danger: '#b3261e',
};

/** Width of a text [px] at a size, bold or not. */
export type Measure = (text: string, size: number, bold?: boolean) => number;

/** How it is drawn: colours, widths of letters, and what the ids of the elements start with. */
export interface Pen {
  readonly theme: Theme;
  readonly measure: Measure;
  readonly id: string;
}

/** A plot's place [px], and its axes as places. */
export interface Plot {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly toX: (value: number) => number;
  readonly toY: (value: number) => number;
}

/** Colour and width [px] of a line. */
export const STROKES: Readonly<Record<Look, readonly [keyof Theme, number]>> = {
  strong: ['strong', 2.2],
  plain: ['ink', 1.5],
  quiet: ['faint', 1],
  limit: ['danger', 1.2],
};

/** Colour of a label. */
export const labelColor = (look: Look): keyof Theme => (look === 'limit' ? 'danger' : 'ink');

/** Dashes [px] and the outline of a mark around 0 [px], the plain line first. */
const STYLES: readonly (readonly [dashes: string, mark: string])[] = [
  ['', 'M3.3 0A3.3 3.3 0 1 1 -3.3 0A3.3 3.3 0 1 1 3.3 0Z'],
  ['8 3', 'M-3 -3H3V3H-3Z'],
  ['2 2', 'M0 -4L3.8 2.7H-3.8Z'],
  ['8 3 2 3', 'M0 -4.3L3.3 0L0 4.3L-3.3 0Z'],
  ['14 4', 'M0 4L3.8 -2.7H-3.8Z'],
  ['5 2 1 2 1 2', 'M-3.3 -3.3L3.3 3.3M3.3 -3.3L-3.3 3.3'],
];

/** Those of a line; they start again when they are used up. */
export const styleOf = (i = 0): (typeof STYLES)[number] =>
  STYLES[i % STYLES.length] as (typeof STYLES)[number];
