/** Designs whose parts are off their values, and what instruments would show there by the exact currents. */
import type { At } from '../../src/basis/quantity.ts';
import type { Design } from '../../src/design/design.ts';
import { asEntered } from '../../src/engine/cell.ts';
import { type Evaluation, evaluate } from '../../src/engine/evaluate.ts';
import { QUANTITIES, type QuantityName } from '../../src/model/model.ts';
import type { Where } from '../../src/readings/expected.ts';
import { circuitAt } from '../../src/transient/circuit.ts';
import { supplyBefore, wireFigures } from '../../src/transient/figures.ts';
import { type Course, steady } from '../../src/transient/steady.ts';

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

/** The design as installed, nothing left to be chosen and without fuses, whose resistance follows from their rating. */
export function settled(design: Design): Design {
  const e = evaluate(design);
  return {
    ...design,
    runs: design.runs.map((run, i) => ({
      ...run,
      gauge: String(e.value('gauge', { run: i })),
      fuse: null,
      relay: run.relay && { ...run.relay, rating: e.number('relay_rating', { run: i }) as number },
    })),
  };
}

/** Puts the parts of the evaluated design off their values: setting inputs is far quicker than laying it out anew. */
export function putOff(e: Evaluation, by: Off): void {
  const { tolerance: t, coil, ignition, wires, runs, limits } = e.design;
  const joints = 1 + by.joints * t.joint_resistance;
  // Halfway between the two ends at 0.
  const cold = (1 - by.warmth) / 2;
  const set = (name: QuantityName, value: number, at: At = {}): void =>
    e.set(name, at, asEntered(value, QUANTITIES[name]));
  set('coil_ohm_20', coil.resistance * (1 - by.resistance * t.coil_resistance));
  set('coil_L_given', (coil.inductance as number) * (1 - by.inductance * t.coil_inductance));
  set('coil_T', coil.temperature + cold * t.coil_warmer);
  ignition.dwell.forEach((row, dwell_row) => {
    set('dwell_time', row.dwell * (1 + by.dwell * t.dwell), { dwell_row });
  });
  wires.forEach(({ length }, wire) => {
    set('wire_length', length * (1 + by.length * t.length), { wire });
  });
  runs.forEach(({ ambient, relay }, run) => {
    set('run_ambient', ambient + cold * (Math.min(ambient, 20) - ambient), { run });
    if (relay) set('relay_contact_ohm', relay.contact * joints, { run });
  });
  set('joint_ohm', limits.joint_resistance * joints);
}

/** What the instruments would show, by the exact currents. */
export function shows(e: Evaluation, point: number): (where: Where) => number {
  const course = steady(circuitAt(e, point));
  return (where) => shown(course, where);
}

/** Reading of a course; nothing of the closed forms goes into it. */
export function shown(course: Course, { what, instrument, wire, coil }: Where): number {
  const { circuit } = course;
  if (wire !== null) {
    const { average, effective, peak } = wireFigures(course, wire);
    const ohm = what === 'drop' ? (circuit.wires[wire]?.ohm as number) : 1;
    const amps =
      instrument === 'meter' || instrument === 'clamp_average'
        ? average
        : instrument === 'clamp_effective'
          ? effective
          : peak;
    return ohm * amps;
  }
  const own = circuit.wires.flatMap(({ coils }, i) => (coils.includes(coil as number) ? [i] : []));
  if (what === 'supply') {
    if (instrument === 'meter')
      return own.reduce(
        (v, i) => v - (circuit.wires[i]?.ohm as number) * wireFigures(course, i).average,
        circuit.supply,
      );
    const firings = circuit.firings.flatMap((firing, i) => (firing.coil === coil ? [i] : []));
    return Math.min(...firings.map((firing) => supplyBefore(course, firing)));
  }
  // A conductor of its own shows the current of the coil.
  const alone = circuit.wires.findIndex(({ coils }) => coils.length === 1 && coils[0] === coil);
  return shown(course, { what, instrument, wire: alone, coil: null, point: null });
}
