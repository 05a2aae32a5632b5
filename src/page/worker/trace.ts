/** The currents in time at a point or at a speed of the sweep. */
import type { Evaluation } from '../../engine/evaluate.ts';
import { coilLines, sharedLines, worstOf } from '../../pictures/trace-lines.ts';
import { circuitAt, whyNoTrace } from '../../transient/circuit.ts';
import { coilFigures, wireFigures } from '../../transient/figures.ts';
import { steady } from '../../transient/steady.ts';
import type { Pair, Trace } from '../../transient/trace.ts';
import type { Nothing, TraceView } from '../protocol.ts';

/** `speed` counts the points, then the speeds of the sweep. */
export function traceView(e: Evaluation, speed: number): TraceView | Nothing {
  const why = whyNoTrace(e);
  if (why !== null) return { why };
  const trace = traceAt(e, speed);
  const { circuit } = trace;
  const coils = e.design.coils.map((_, coil) => coil);
  return {
    rpm: e.number('speed', { speed }) ?? 0,
    supply: circuit.supply,
    dwell: circuit.dwell,
    cycleAngle: circuit.cycleAngle,
    coils: coilLines(trace, coils),
    shared: sharedLines(trace, [...e.design.wires.keys()]),
    worst: worstOf(trace, coils),
  };
}

/** The page draws the exact values only; the closed forms exist at the points alone. */
const exact = (value: number): Pair => ({ exact: value, closed: null });

function traceAt(evaluation: Evaluation, speed: number): Trace {
  const circuit = circuitAt(evaluation, speed);
  const course = steady(circuit);
  return {
    evaluation,
    point: speed,
    circuit,
    course,
    wires: circuit.wires.map((_, wire) => {
      const { average, effective, peak } = wireFigures(course, wire);
      return { wire, average: exact(average), effective: exact(effective), peak: exact(peak) };
    }),
    coils: evaluation.design.coils.map((_, coil) => {
      const { supplyAtFiring, lowestSupply, peak, energy } = coilFigures(course, coil);
      return {
        coil,
        supplyAtFiring: supplyAtFiring === null ? null : exact(supplyAtFiring),
        lowestSupply,
        peak: exact(peak),
        energy: exact(energy),
      };
    }),
  };
}
