/** Random installs with one fault, and what instruments show there by the circuit simulator. */
import type { Measured } from '../../src/design/design.ts';
import { readDesign } from '../../src/design/read.ts';
import { type Evaluation, evaluate } from '../../src/engine/evaluate.ts';
import { circuitAt } from '../../src/transient/circuit.ts';
import { design } from '../ngspice/cases.ts';
import { netlistOf } from '../ngspice/netlist.ts';
import { measured } from '../ngspice/simulate.ts';
import { random } from '../protection/random.ts';

export interface Faulty {
  readonly e: Evaluation;
  /** Index of the conductor with the fault, and the resistance that was inserted there [ohm]. */
  readonly wire: number;
  readonly ohm: number;
  /** As the simulator shows them, without errors. */
  readonly readings: readonly Measured[];
}

/** The model of a design with the quantities of the readings. */
export function modelFor(document: object): Evaluation {
  const read = readDesign(JSON.stringify(document), 'design.json');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return evaluate(read.design);
}

const even = (n: number): number[] => Array.from({ length: n }, (_, i) => (i * 720) / n);
const EIGHT = [
  ['1', '4', '6', '7'],
  ['2', '3', '5', '8'],
];

/** An engine of four, six or eight, its trunk and perhaps its banks. */
function install(next: () => number): object {
  const cylinders = [4, 6, 8][Math.floor(next() * 3)] as number;
  const banks = cylinders === 8 && next() < 0.7 ? { banks: EIGHT } : {};
  const trunk: [string, number] = [
    ['6 AWG', '8 AWG', '10 AWG'][Math.floor(next() * 3)] as string,
    1 + next(),
  ];
  return {
    ...design({ angles: even(cylinders), rpm: 1000, dwell: 2.5 + next(), trunk, ...banks }),
    points: [
      { name: 'idle', rpm: `${Math.round(800 + 300 * next())} rpm`, supply: '13.6 V' },
      { name: 'fast', rpm: `${Math.round(5000 + 1500 * next())} rpm`, supply: '14.2 V' },
    ],
  };
}

/** What the card asks for: the drop of every conductor at both points, and the average current of the feed. */
export function faulty(seed: number): Faulty {
  const next = random(seed);
  const e = modelFor(install(next));
  const { wires, runs } = e.design;
  const wire = Math.floor(next() * wires.length);
  const own = e.number('wire_ohm', { wire }) as number;
  // From as much again as it has to eight times as much, and never what no instrument would notice.
  const ohm = Math.max(4e-3, own * 8 ** next());
  const sides = wires.map(({ run }) => runs[run]?.side ?? 'feed');
  const readings = e.design.points.flatMap((_, point): Measured[] => {
    const circuit = circuitAt(e, point);
    const ohms = circuit.wires.map((w, i) => w.ohm + (i === wire ? ohm : 0));
    const found = measured(
      netlistOf({ ...circuit, wires: circuit.wires.map((w, i) => ({ ...w, ohm: ohms[i] as number })) }, sides)
        .text,
    );
    const place = { coil: null, point, path: 'measured' };
    const average = (i: number): number => {
      const amps = found.get(`avg${i}`);
      if (amps === undefined) throw new Error(`the simulator did not measure conductor ${i}`);
      return amps;
    };
    return [
      ...wires.map(
        (__, i): Measured => ({
          ...place,
          what: 'drop',
          wire: i,
          instrument: 'meter',
          value: (ohms[i] as number) * average(i),
        }),
      ),
      { ...place, what: 'current', wire: 0, instrument: 'clamp_average', value: average(0) },
    ];
  });
  return { e, wire, ohm, readings };
}

/** Readings with errors: normally distributed, of this share (Box and Muller). */
export function noisy(readings: readonly Measured[], share: number, next: () => number): Measured[] {
  return readings.map((reading) => {
    const normal = Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
    return { ...reading, value: reading.value * (1 + share * normal) };
  });
}
