/**
 * How far apart the circuit simulator, the exact currents and the closed forms are: measured once, here, both for the
 * tests that gate it and for the page that tells it.
 */
import type { Evaluation } from '../../src/engine/evaluate.ts';
import { peakAt, supplyBefore } from '../../src/transient/figures.ts';
import { type Pair, type Trace, traceOf } from '../../src/transient/trace.ts';
import { type Case, modelOfCase } from './cases.ts';
import { simulate } from './simulate.ts';

/** Largest differences of a case, as shares. */
export interface Against {
  readonly peak: number;
  readonly supply: number;
  readonly average: number;
  readonly effective: number;
}

const off = (found: number, right: number): number => Math.abs(found - right) / Math.abs(right);

/** The exact currents against the simulator: firings, and conductors over the cycle. */
export function againstSimulator(trace: Trace): Against {
  const { wires, firings } = simulate(trace.evaluation);
  const { course } = trace;
  return {
    peak: Math.max(
      ...firings.map(({ peak }, k) => off(peakAt(course, k), peak)),
      ...trace.wires.map(({ peak }, w) => off(peak.exact, wires[w]?.peak ?? Number.NaN)),
    ),
    supply: Math.max(...firings.map(({ supply }, k) => off(supplyBefore(course, k), supply))),
    average: Math.max(...trace.wires.map((t, w) => off(t.average.exact, wires[w]?.average ?? Number.NaN))),
    effective: Math.max(
      ...trace.wires.map((t, w) => off(t.effective.exact, wires[w]?.effective ?? Number.NaN)),
    ),
  };
}

/** The closed forms against the exact currents. Shares: closed over exact, less 1. */
export interface Closed {
  /** Drop of the worst coil's path at its firing by the closed form [V]. */
  readonly drop: number;
  /** Least and largest excess of a load: average, effective and peak current of every conductor. */
  readonly loads: readonly [number, number];
  /** Error of the delivered energy that is largest in size. */
  readonly energy: number;
  /** Supply at the firing, closed less exact, farthest from 0 [V]. */
  readonly supply: number;
}

const excess = ({ exact, closed }: Pair): number => (closed ?? Number.NaN) / exact - 1;
const farthest = (values: readonly number[]): number =>
  values.reduce((a, b) => (Math.abs(b) > Math.abs(a) || Number.isNaN(b) ? b : a), 0);

export function againstExact({ evaluation: e, point, wires, coils }: Trace): Closed {
  const loads = wires.flatMap(({ average, effective, peak }) => [average, effective, peak]).map(excess);
  const drops = coils.map(({ coil }) => e.number('coil_drop', { coil, point }) ?? Number.NaN);
  return {
    drop: Math.max(...drops),
    loads: [Math.min(...loads), Math.max(...loads)],
    energy: farthest(coils.map(({ energy }) => excess(energy))),
    supply: farthest(
      coils.map(({ supplyAtFiring: s }) => (s === null ? 0 : (s.closed ?? Number.NaN) - s.exact)),
    ),
  };
}

export interface Measured {
  readonly name: string;
  readonly evaluation: Evaluation;
  readonly trace: Trace;
  readonly simulator: Against;
  readonly closed: Closed;
}

/** Everything that is measured of one case. */
export function measure(one: Case): Measured {
  const evaluation = modelOfCase(one);
  const trace = traceOf(evaluation, 0);
  return {
    name: one.name,
    evaluation,
    trace,
    simulator: againstSimulator(trace),
    closed: againstExact(trace),
  };
}
