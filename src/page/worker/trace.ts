/** The currents in time at a point or at a speed of the sweep. */
import type { Evaluation } from '../../engine/evaluate.ts';
import type { Picture } from '../../pictures/chart.ts';
import { tracePicture } from '../../pictures/trace.ts';
import { circuitAt, whyNoTrace } from '../../transient/circuit.ts';
import { coilFigures, wireFigures } from '../../transient/figures.ts';
import { steady } from '../../transient/steady.ts';
import type { Pair, Trace } from '../../transient/trace.ts';
import type { Nothing } from '../protocol.ts';

/** `speed` counts the points, then the speeds of the sweep. */
export function traceAt(e: Evaluation, speed: number): Picture | Nothing {
  const why = whyNoTrace(e);
  return why === null ? tracePicture(exactTrace(e, speed)) : { why };
}

/** The page draws the exact values only; the closed forms exist at the points alone. */
const exact = (value: number): Pair => ({ exact: value, closed: null });

function exactTrace(evaluation: Evaluation, speed: number): Trace {
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
