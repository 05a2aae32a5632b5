/** The steady state at instants: exact values, however close or far apart they are asked for. */
import { type Exponentials, valueAt } from './exponentials.ts';
import type { Segment } from './interval.ts';
import type { Course } from './steady.ts';

/** A value of a waveform at each of the instants; one segment is asked for what it holds. */
export type Reading = (segment: Segment) => Exponentials;

/** An instant of a picture or a table. */
export interface Instant {
  /** Time since crank angle 0 [s]; an instant of switching comes twice, before and after it. */
  readonly at: number;
  readonly segment: Segment;
}

/**
 * Instants to draw a cycle by: start and end of every segment, and in between steps of at most `degrees` of the crank,
 * at least `least` of them in a segment in which a coil charges.
 */
export function instantsOf({ circuit, segments }: Course, degrees: number, least: number): Instant[] {
  const step = (degrees / circuit.cycleAngle) * circuit.cycle;
  return segments.flatMap((segment) => {
    const { from, to, on } = segment;
    // Nothing moves while no coil charges.
    const steps = on.length === 0 ? 1 : Math.max(least, Math.ceil((to - from) / step));
    return Array.from({ length: steps + 1 }, (_, i) => ({
      at: i === steps ? to : from + ((to - from) * i) / steps,
      segment,
    }));
  });
}

/** Value at an instant. */
export const readAt = (reading: Reading, { at, segment }: Instant): number =>
  valueAt(reading(segment), at - segment.from);
