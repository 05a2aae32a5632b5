/** The worked cases of docs/cases.md: what was done to each install, and what the simulator shows there. */
import { readFileSync } from 'node:fs';
import type { Design } from '../../src/design/design.ts';
import type { Evaluation } from '../../src/engine/evaluate.ts';
import type { Where } from '../../src/readings/expected.ts';
import { circuitAt } from '../../src/transient/circuit.ts';
import { netlistOf } from '../ngspice/netlist.ts';
import { measured } from '../ngspice/simulate.ts';

const root = new URL('../../', import.meta.url);
export const page = (): string => readFileSync(new URL('docs/cases.md', root), 'utf8');
export const caseText = (name: string): string =>
  readFileSync(new URL(`docs/cases/${name}.yaml`, root), 'utf8');

export interface Case {
  readonly name: string;
  /** Resistance that the case adds to a conductor [ohm]. */
  readonly fault?: Readonly<Record<string, number>>;
  /** Readings that the case takes with another instrument than it says, by index. */
  readonly takenWith?: Readonly<Record<number, Where['instrument']>>;
}

export const CASES: readonly Case[] = [
  { name: 'undersized-main' },
  { name: 'corroded-return', fault: { 'engine strap': 0.035 } },
  { name: 'relay-drops-out' },
  { name: 'misleading-meter', takenWith: { 0: 'scope' } },
  { name: 'wasted-spark' },
  { name: 'stuck-driver' },
  { name: 'weak-cylinder', fault: { 'branch.3': 0.12 } },
];

/** What an instrument shows by the simulator: drops, currents in conductors, and the posts. */
export function simulated(e: Evaluation, { fault = {} }: Case): (where: Where) => number {
  const { wires, runs, points }: Design = e.design;
  const sides = wires.map(({ run }) => runs[run]?.side ?? 'feed');
  const found = new Map<number, { ohms: number[]; values: Map<string, number> }>();
  const at = (point: number) => {
    const known = found.get(point);
    if (known) return known;
    const circuit = circuitAt(e, point);
    const ohms = circuit.wires.map(({ ohm }, i) => ohm + (fault[wires[i]?.id ?? ''] ?? 0));
    const { text } = netlistOf(
      { ...circuit, wires: circuit.wires.map((w, i) => ({ ...w, ohm: ohms[i] as number })) },
      sides,
    );
    const made = { ohms, values: measured(text) };
    found.set(point, made);
    return made;
  };
  const show = ({ what, instrument, wire, point, between }: Where): number => {
    if (between)
      return between.reduce(
        (volts, one) => volts + show({ what: 'drop', instrument, wire: one, point, coil: null }),
        0,
      );
    if (wire === null) return points[point as number]?.supply as number;
    const { ohms, values } = at(point as number);
    const kind = {
      meter: 'avg',
      clamp_average: 'avg',
      clamp_effective: 'rms',
      scope: 'max',
      clamp_peak: 'max',
      value: '',
    };
    const amps = values.get(`${kind[instrument as keyof typeof kind]}${wire}`);
    if (amps === undefined) throw new Error(`the simulator did not measure conductor ${wire}`);
    return what === 'drop' ? (ohms[wire] as number) * amps : amps;
  };
  return show;
}
