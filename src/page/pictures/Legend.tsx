/** What the lines of a chart are called, how they are dashed, and their values at the cursor. */
import { printNumber } from '../../basis/print.ts';
import type { Axis, Point } from './scale.ts';

export interface Line {
  readonly name: string;
  readonly points: readonly Point[];
  /** `strong` is the one to look at; `quiet` ones stand behind, without a value at the cursor. */
  readonly look: 'strong' | 'plain' | 'quiet';
}

/** A value to keep to, across the chart; or upright at a value of x. */
export interface Limit {
  readonly name: string;
  readonly value: number;
  readonly upright?: boolean;
}

export interface Band {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** A line with a name, its dashes, and its value at the cursor. */
export interface Reading {
  readonly line: Line;
  readonly dash: string;
  readonly value: number | null;
}

/** Dashes [px], the plain line first. */
const DASHES = ['', '7 3', '2 3', '9 3 2 3', '14 4', '5 2 1 2'];

/** Dashes of line number `i`; they begin again when they are used up. */
export const dash = (i: number): string => DASHES[i % DASHES.length] as string;

/** A value at the cursor. */
export const printed = (value: number | null, unit: string): string =>
  value === null ? '–' : Number.isFinite(value) ? `${printNumber(value)} ${unit}` : 'never';

interface LegendProps {
  /** Where the cursor is; null when there is none. */
  readonly at: number | null;
  readonly x: Axis;
  readonly y: Axis;
  readonly readings: readonly Reading[];
  readonly limits: readonly Limit[];
  readonly bands: readonly Band[];
  /** Id of the pattern of bands. */
  readonly hatch: string;
}

/** The cursor says the same to a screen reader. */
export function Legend({ at, x, y, readings, limits, bands, hatch }: LegendProps) {
  return (
    <ul class="legend" aria-hidden="true">
      <li class="where">
        {at === null ? 'move over the chart for values' : `at ${printNumber(at)} ${x.unit}`}
      </li>
      {readings.map(({ line, dash: own, value }) => (
        <li key={line.name}>
          <svg aria-hidden="true" width="30" height="8">
            <line class={`line ${line.look}`} x1="0" x2="30" y1="4" y2="4" stroke-dasharray={own} />
          </svg>
          {line.name}
          {at === null ? null : <b> {printed(value, y.unit)}</b>}
        </li>
      ))}
      {limits.map(({ name }) => (
        <li key={name}>
          <svg aria-hidden="true" width="30" height="8">
            <line class="limit" x1="0" x2="30" y1="4" y2="4" />
          </svg>
          {name}
        </li>
      ))}
      {bands.map(({ name }) => (
        <li key={name}>
          <svg aria-hidden="true" width="30" height="10">
            <rect width="30" height="10" fill={`url(#${hatch})`} />
          </svg>
          {name}
        </li>
      ))}
    </ul>
  );
}
