/** Circuits whose parts are off their values, and what instruments would show there by the exact currents. */
import type { Evaluation } from '../../src/engine/evaluate.ts';
import type { Where } from '../../src/readings/expected.ts';
import { type Circuit, circuitAt } from '../../src/transient/circuit.ts';
import { supplyBefore, wireFigures } from '../../src/transient/figures.ts';
import { type Course, steady } from '../../src/transient/steady.ts';
import { known } from '../physics/harness.ts';

/** −1 to 1 for each tolerance: the end of its range that makes the least and the largest reading. */
export interface Off {
  readonly resistance: number;
  readonly inductance: number;
  readonly dwell: number;
  readonly length: number;
  readonly joints: number;
  /** −1: warmest coil, coldest conductors. 1: as designed. */
  readonly warmth: number;
}

/** Copper, IEC 60028 (quoted) [1/K]. */
const ALPHA = 0.00393;
const copperAt = (celsius: number): number => 1 + ALPHA * (celsius - 20);

/** A coil of that design, its feed not yet. */
function coilOff(e: Evaluation, point: number, by: Off): Circuit {
  const { tolerance: t, coil } = e.design;
  const cold = (1 - by.warmth) / 2;
  const circuit = circuitAt(e, point);
  const asked = known(e, 'dwell_asked', { speed: point }) * (1 + by.dwell * t.dwell);
  return {
    ...circuit,
    ohm:
      (coil.resistance as number) *
      (1 - by.resistance * t.coil_resistance) *
      copperAt(coil.temperature + cold * t.coil_warmer),
    henry: circuit.henry * (1 - by.inductance * t.coil_inductance),
    dwell: Math.min(asked, known(e, 'dwell_room', { speed: point })),
  };
}

/** The circuits of all points with these parts; conductors are warmed by the exact currents of the worst point. */
export function coursesOff(e: Evaluation, by: Off): Course[] {
  const { tolerance: t, points, wires } = e.design;
  const cold = (1 - by.warmth) / 2;
  const asDesigned = points.map((_, point) => steady(coilOff(e, point, by)));
  const ohms = wires.map(({ run }, wire) => {
    const amps = Math.max(...asDesigned.map((course) => wireFigures(course, wire).effective));
    const [ambient, rating] = [known(e, 'run_ambient', { run }), known(e, 'rating', { run })];
    const warm = ambient + (rating - ambient) * (amps / known(e, 'ampacity', { run })) ** 2;
    const copper = known(e, 'wire_copper_ohm', { wire }) / copperAt(known(e, 'wire_T', { wire }));
    return (
      copper * (1 + by.length * t.length) * copperAt(warm + cold * (20 - warm)) +
      known(e, 'fixed_ohm', { run }) * (1 + by.joints * t.joint_resistance)
    );
  });
  return asDesigned.map(({ circuit }) =>
    steady({ ...circuit, wires: circuit.wires.map((wire, i) => ({ ...wire, ohm: ohms[i] as number })) }),
  );
}

/** What an instrument would show; nothing of the closed forms goes into it. */
export function shown(course: Course, { what, instrument, wire, coil }: Where): number {
  const { circuit } = course;
  const ohm = (i: number): number => circuit.wires[i]?.ohm as number;
  if (wire !== null) {
    const { average, effective, peak } = wireFigures(course, wire);
    const mean = instrument === 'meter' || instrument === 'clamp_average';
    return (
      (what === 'drop' ? ohm(wire) : 1) *
      (mean ? average : instrument === 'clamp_effective' ? effective : peak)
    );
  }
  if (what === 'supply' && coil === null) return circuit.supply;
  const own = circuit.wires.flatMap(({ coils }, i) => (coils.includes(coil as number) ? [i] : []));
  if (what === 'supply') {
    if (instrument === 'meter')
      return own.reduce((v, i) => v - ohm(i) * wireFigures(course, i).average, circuit.supply);
    const firings = circuit.firings.flatMap((firing, i) => (firing.coil === coil ? [i] : []));
    return Math.min(...firings.map((firing) => supplyBefore(course, firing)));
  }
  // A conductor of its own shows the current of the coil.
  const alone = own.find((i) => circuit.wires[i]?.coils.length === 1) as number;
  return shown(course, { what, instrument, wire: alone, coil: null, point: null });
}
