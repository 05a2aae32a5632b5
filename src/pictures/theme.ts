/** How pictures look: one calm style, few colours, lines told apart by dashes and labels. */
import type { Config } from 'vega-lite';

/** Colours and letters of a picture. A page may pass others, a dark set for instance. */
export interface Theme {
  /** A list of families as CSS has it: where the first is missing the next ones are about as wide. */
  readonly font: string;
  /** Background. */
  readonly paper: string;
  /** Titles, lines and labels that matter. */
  readonly ink: string;
  /** Axes and their labels, what is said beside. */
  readonly quiet: string;
  /** Grid, and the many lines behind the one that matters. */
  readonly faint: string;
  readonly grid: string;
  /** The line to look at, and the ground under it. */
  readonly strong: string;
  readonly tint: string;
  /** What must not be: windows without protection, limits. */
  readonly danger: string;
}

export const LIGHT: Theme = {
  font: 'DejaVu Sans, Verdana, Geneva, sans-serif',
  paper: '#ffffff',
  ink: '#1c2733',
  quiet: '#566270',
  faint: '#a3adb8',
  grid: '#e4e8ec',
  strong: '#14508c',
  tint: '#dbe7f2',
  danger: '#b3261e',
};

/** Width of every plot, without axes and labels [px]. */
export const WIDTH = 720;

/** Sizes of letters [px]. */
export const LETTERS = { title: 16, subtitle: 12, panel: 12, label: 11 } as const;

/** Dashes that can be told apart in black and white, the plain line first [px]. */
export const DASHES = [
  [1, 0],
  [8, 3],
  [2, 2],
  [8, 3, 2, 3],
  [14, 4],
  [5, 2, 1, 2, 1, 2],
] as const;

/** Dashes of line number `i`; they begin again when they are used up. */
export const dash = (i: number): number[] => [...(DASHES[i % DASHES.length] as readonly number[])];

/** What all pictures share. */
export const config = (theme: Theme): Config => ({
  font: theme.font,
  background: theme.paper,
  padding: 16,
  // Descriptions of single marks would make the file many times as large; the picture has one of its own.
  aria: false,
  view: { stroke: theme.grid },
  concat: { spacing: 14 },
  title: {
    anchor: 'start',
    color: theme.ink,
    fontSize: LETTERS.panel,
    fontWeight: 'normal',
    subtitleColor: theme.quiet,
    subtitleFontSize: LETTERS.subtitle,
    subtitlePadding: 5,
    subtitleLineHeight: 16,
    offset: 6,
    frame: 'group',
  },
  axis: {
    domainColor: theme.faint,
    tickColor: theme.faint,
    gridColor: theme.grid,
    labelColor: theme.quiet,
    titleColor: theme.quiet,
    labelFontSize: LETTERS.label,
    titleFontSize: LETTERS.label,
    titleFontWeight: 'normal',
    labelLineHeight: 14,
    labelFlush: false,
    titlePadding: 8,
  },
  text: { fontSize: LETTERS.label, color: theme.ink },
  line: { strokeJoin: 'round', strokeCap: 'butt' },
});
