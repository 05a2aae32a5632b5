/** The trace of one operating point: the exact currents in time, and the closed forms of the model beside them. */
import type { Evaluation } from '../engine/evaluate.ts';
import { type Circuit, circuitAt } from './circuit.ts';
import { type CoilFigures, coilFigures, type WireFigures, wireFigures } from './figures.ts';
import { type Course, steady } from './steady.ts';

/** An exact value and what the closed form says; null when that is unknown. */
export interface Pair {
  readonly exact: number;
  readonly closed: number | null;
}

export interface WireTrace {
  /** Index in the design's conductors. */
  readonly wire: number;
  /** [A] */
  readonly average: Pair;
  readonly effective: Pair;
  readonly peak: Pair;
}

export interface CoilTrace {
  readonly coil: number;
  /** [V]; null when the coil never charges. */
  readonly supplyAtFiring: Pair | null;
  readonly lowestSupply: number | null;
  /** [A] */
  readonly peak: Pair;
  /** [J] */
  readonly energy: Pair;
}

export interface Trace {
  readonly evaluation: Evaluation;
  /** Index in the design's points. */
  readonly point: number;
  readonly circuit: Circuit;
  readonly course: Course;
  readonly wires: readonly WireTrace[];
  readonly coils: readonly CoilTrace[];
}

/** Computes the trace of point number `point`. Throws where `whyNoTrace` has something to say. */
export function traceOf(evaluation: Evaluation, point: number): Trace {
  const circuit = circuitAt(evaluation, point);
  const course = steady(circuit);
  return {
    evaluation,
    point,
    circuit,
    course,
    wires: circuit.wires.map((_, wire) => wireTrace(evaluation, point, wire, wireFigures(course, wire))),
    coils: Array.from({ length: circuit.coils }, (_, coil) =>
      coilTrace(evaluation, point, coil, coilFigures(course, coil)),
    ),
  };
}

const wireTrace = (e: Evaluation, point: number, wire: number, exact: WireFigures): WireTrace => ({
  wire,
  average: { exact: exact.average, closed: e.number('average', { wire, point }) },
  effective: { exact: exact.effective, closed: e.number('effective', { wire, point }) },
  peak: { exact: exact.peak, closed: e.number('peak_current', { wire, point }) },
});

const coilTrace = (e: Evaluation, point: number, coil: number, exact: CoilFigures): CoilTrace => ({
  coil,
  supplyAtFiring:
    exact.supplyAtFiring === null
      ? null
      : { exact: exact.supplyAtFiring, closed: e.number('coil_supply', { coil, point }) },
  lowestSupply: exact.lowestSupply,
  peak: { exact: exact.peak, closed: e.number('coil_peak', { coil, point }) },
  energy: { exact: exact.energy, closed: e.number('coil_energy', { coil, point }) },
});
