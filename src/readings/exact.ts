/** What a feed really draws and delivers at a point, by the exact currents: an old thin feed draws less than a stiff supply. */
import type { Evaluation } from '../engine/evaluate.ts';
import { circuitAt, whyNoTrace } from '../transient/circuit.ts';
import { coilFigures, type WireFigures, wireFigures } from '../transient/figures.ts';
import { steady } from '../transient/steady.ts';

export interface Exact {
  /** Current of all coils together [A]. */
  readonly average: number;
  /** Of the first conductor, without what else it feeds [A]. */
  readonly effective: number;
  readonly peak: number;
  /** Lowest supply at a coil as it fires [V]; null when none charges. */
  readonly supply: number | null;
  /** Energy of the weakest firing of all [J]. */
  readonly energy: number;
  /** The same as a share of that on a stiff supply. */
  readonly kept: number | null;
  /** Power into the coils, heat in the wiring [W]. */
  readonly power: number;
  readonly heat: number;
}

/** Null where only a peak current is known of the coil. */
export function exactOf(e: Evaluation, point: number): Exact | null {
  if (whyNoTrace(e) !== null) return null;
  const circuit = circuitAt(e, point);
  const all = Array.from({ length: circuit.coils }, (_, coil) => coil);
  const course = steady(circuit);
  const coils = all.map((coil) => coilFigures(course, coil));
  const supplies = coils.flatMap(({ supplyAtFiring }) => supplyAtFiring ?? []);
  const of = (carried: readonly number[]): WireFigures =>
    wireFigures({ ...course, circuit: { ...circuit, wires: [{ coils: carried, ohm: 0, also: 0 }] } }, 0);
  const average = of(all).average;
  const energy = Math.min(...coils.map((one) => one.energy));
  const stiff = e.number('energy', { speed: point });
  const main = of(circuit.wires[0]?.coils ?? []);
  return {
    average,
    effective: main.effective,
    peak: main.peak,
    supply: supplies.length === 0 ? null : Math.min(...supplies),
    energy,
    kept: stiff === null || stiff === 0 ? null : energy / stiff,
    power: circuit.drive * average,
    heat: circuit.wires.reduce((sum, { ohm }, i) => sum + ohm * wireFigures(course, i).effective ** 2, 0),
  };
}
