/**
 * Temperatures as they are weighed: the logarithm of a rise above the air around, since what is not known of the way of the
 * heat is a factor. Rises that a camera cannot tell from nothing are drawn together by its own error.
 */
import type { Design, Measured } from '../design/design.ts';
import { errorOf } from './instruments.ts';
import { HALF } from './parts.ts';

export interface Warmth {
  /** What is weighed in place of a temperature [degC], or of a rise [K]. */
  readonly weighed: (value: number) => number;
  /** Its variance, by the error of the camera and the spread of the way of the heat. */
  readonly variance: number;
}

/** `spread`: the factor by which a rise may be off, up and down. */
export function warmthOf(design: Design, reading: Measured, spread: number): Warmth {
  const error = errorOf(design, reading, reading.value);
  const weighed = (value: number): number => Math.log(Math.max(0, value - (reading.ambient ?? 0)) + error);
  const share = error / Math.exp(weighed(reading.value));
  return { weighed, variance: (Math.log(spread) ** 2 + share ** 2) / HALF ** 2 };
}
