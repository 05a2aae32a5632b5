/** A recording beside the exact currents of the design. */
import { currentFrom } from '../figures.ts';
import type { Trace } from '../trace.ts';
import { contraryTo, spacingText } from './contrary.ts';
import type { MeasuredTrace } from './measure.ts';

export interface Overlay {
  /** Time since the start of the charge [s], currents [A]. */
  readonly points: readonly {
    readonly after: number;
    readonly measured: number;
    readonly computed: number;
  }[];
  /** Root of the mean squared difference [A]. */
  readonly apart: number;
}

export interface Comparison {
  readonly coil: number;
  readonly overlay: Overlay;
  /** What the design says: [ohm] coil and path, [H], [s], [A]. */
  readonly resistance: number;
  readonly inductance: number;
  readonly dwell: number;
  readonly peak: number;
  /** Other coils are charged while this one is: their drop shows in its current. */
  readonly overlapped: boolean;
  /** Where the two are so far apart that something is mixed up, and why most likely, as sentences. */
  readonly contrary: readonly string[];
  /** Whether the charges are those of one coil, as a sentence. */
  readonly spacing: string;
}

/**
 * Compares with coil number `coil`: its first charge in the recording with its first one in the cycle. `wire` is the conductor
 * that was in the clamp, null when nobody says.
 */
export function compare(
  trace: Trace,
  coil: number,
  wire: number | null,
  measured: MeasuredTrace,
): Comparison {
  const { circuit, course } = trace;
  const computed = currentFrom(course, coil);
  const charge = measured.charges[0];
  const points = (charge?.samples ?? [])
    .filter(({ after }) => after >= 0 && after <= circuit.dwell)
    .map(({ after, current }) => ({ after, measured: current, computed: computed(after) }));
  const squares = points.reduce((sum, p) => sum + (p.measured - p.computed) ** 2, 0);
  const design = {
    resistance: circuit.ohm + (course.shared[coil]?.[coil] as number),
    inductance: circuit.henry,
    dwell: circuit.dwell,
    peak: trace.coils[coil]?.peak.exact ?? 0,
  };
  return {
    coil,
    overlay: { points, apart: Math.sqrt(squares / Math.max(1, points.length)) },
    ...design,
    contrary: contraryTo(measured, design),
    spacing: spacingText(trace, wire, measured.spacing),
    overlapped: course.segments.some(({ on }) => on.includes(coil) && on.length > 1),
  };
}
