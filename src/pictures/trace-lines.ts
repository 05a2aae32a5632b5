/** The lines of a trace: currents and supplies over the crank angle, in the units in which they are drawn. */
import { currentOf, supplyBefore, supplyOf } from '../transient/figures.ts';
import type { Trace } from '../transient/trace.ts';
import { instantsOf, type Reading, readAt } from '../transient/waveform.ts';
import type { Point } from './chart.ts';
import { thinned } from './thin.ts';

/** Steps of at most a degree, and at least forty from one switching to the next. Arbitrary: fine enough to draw. */
const DEGREES = 1;
const STEPS = 40;

/** Points that are left out lie this near to the line, as a share of its largest value: a fraction of a pixel. */
const APART = 0.0007;

/** Conductors in series carry the same current: one line for all that carry the same coils. */
export interface SharedLine {
  readonly coils: readonly number[];
  /** Indices of the conductors. */
  readonly wires: readonly number[];
  /** `main, engine strap`: names of the runs, or of the conductors where a run has several. */
  readonly name: string;
  /** Crank angle [deg], current [A]. */
  readonly points: readonly Point[];
  /** [A] */
  readonly average: number;
  readonly effective: number;
  readonly peak: number;
}

/** Lines of those conductors among `wires` that carry more than one coil, in the order of the design. */
export function sharedLines(trace: Trace, wires: readonly number[]): SharedLine[] {
  const { design } = trace.evaluation;
  const groups = new Map<string, number[]>();
  for (const wire of wires) {
    const coils = design.wires[wire]?.coils ?? [];
    if (coils.length < 2) continue;
    const key = coils.join();
    groups.set(key, [...(groups.get(key) ?? []), wire]);
  }
  return [...groups.values()].map((same) => {
    const first = same[0] as number;
    const figures = trace.wires[first];
    return {
      coils: design.wires[first]?.coils ?? [],
      wires: same,
      name: same.map((wire) => design.wires[wire]?.id).join(', '),
      points: lineOf(trace, (segment) => currentOf(trace.course, first, segment)),
      average: figures?.average.exact ?? 0,
      effective: figures?.effective.exact ?? 0,
      peak: figures?.peak.exact ?? 0,
    };
  });
}

export interface CoilLine {
  readonly coil: number;
  readonly id: string;
  /** Crank angle [deg], current [A]. */
  readonly current: readonly Point[];
  /** Crank angle [deg], supply between the terminals of coil and driver [V]. */
  readonly supply: readonly Point[];
  /** For each firing of the coil: crank angle [deg], current [A] and supply [V] at the instant before it. */
  readonly firings: readonly { readonly x: number; readonly current: number; readonly supply: number }[];
}

/** `coil 3`; an id that says that it is a coil stands alone. */
export const coilName = (id: string): string => (/coil/i.test(id) ? id : `coil ${id}`);

/** Lines of some coils. */
export function coilLines(trace: Trace, coils: readonly number[]): CoilLine[] {
  const { course, evaluation } = trace;
  return coils.map((coil) => ({
    coil,
    id: evaluation.design.coils[coil]?.id ?? '',
    current: lineOf(trace, ({ currents }) => currents[coil] as ReturnType<Reading>),
    supply: lineOf(trace, (segment) => supplyOf(course, coil, segment)),
    firings: course.circuit.firings.flatMap((firing, i) =>
      firing.coil === coil
        ? [
            {
              // What fires at 0 was charged at the end of the cycle.
              x: evaluation.design.events[i]?.angle || course.circuit.cycleAngle,
              current: course.atFiring[i]?.[coil] ?? 0,
              supply: supplyBefore(course, i),
            },
          ]
        : [],
    ),
  }));
}

/** Coil with the lowest supply at its firing, the first of them; among those given. */
export function worstOf(trace: Trace, coils: readonly number[]): number {
  const supply = (coil: number): number => trace.coils[coil]?.supplyAtFiring?.exact ?? Infinity;
  // Coils of the same path differ by the last digits of their sums only.
  return coils.reduce((worst, coil) => (supply(coil) < supply(worst) - 1e-9 ? coil : worst));
}

/** Firing at which the supply is lowest. */
export const lowestFiring = ({ firings }: CoilLine): CoilLine['firings'][number] =>
  firings.reduce((low, firing) => (firing.supply < low.supply - 1e-9 ? firing : low));

/** Coils that some conductors carry, in the order of the design. */
export const carriedBy = ({ evaluation }: Trace, wires: readonly number[]): number[] =>
  [...new Set(wires.flatMap((wire) => evaluation.design.wires[wire]?.coils ?? []))].sort((a, b) => a - b);

/** One waveform over the cycle, exact at every point. */
function lineOf(trace: Trace, reading: Reading): Point[] {
  const points = instantsOf(trace.course, DEGREES, STEPS).map((instant) => ({
    x: angleOf(trace, instant.at),
    y: readAt(reading, instant),
  }));
  const values = points.map(({ y }) => y);
  return thinned(points, APART * (Math.max(...values) - Math.min(...values)));
}

const angleOf = ({ circuit }: Trace, at: number): number => (at / circuit.cycle) * circuit.cycleAngle;

/** The part of a line in the `milliseconds` before the crank angle `until` [deg], over the milliseconds since its begin. */
export function during(
  { circuit }: Trace,
  points: readonly Point[],
  until: number,
  milliseconds: number,
): Point[] {
  const { cycle, cycleAngle } = circuit;
  const perDegree = (cycle * 1e3) / cycleAngle;
  const begin = until * perDegree - milliseconds;
  // The cycle repeats: what begins before angle 0 is found one cycle later.
  const twice = [...points.map(({ x, y }) => ({ x: x - cycleAngle, y })), ...points];
  const moved = twice.map(({ x, y }) => ({ x: x * perDegree - begin, y }));
  const hair = 1e-9 * milliseconds;
  // What switches is two points, before and after: the line begins with the second and ends with the first.
  const begins = moved.findLastIndex(({ x }) => x <= hair);
  const ends = moved.findIndex(({ x }) => x >= milliseconds - hair);
  return moved.slice(Math.max(0, begins), ends + 1).filter(({ x }) => x >= -hair);
}
