/**
 * The circuit of a design as a netlist. Every conductor is a resistor between nodes, so that the simulator works out by
 * itself who shares what; nothing of our own matrices goes into it.
 *
 * Each coil: ammeter, inductance, resistance, limiter, drop of the driver, switch. The limiter is a voltage that rises
 * steeply once the current is above the limit. The switch opens to 10 MΩ: the current of an inductance dies away within
 * nanoseconds, and what leaks afterwards is microamperes.
 */
import type { Circuit } from '../../src/transient/circuit.ts';

/** Volts that the limiter takes up for an ampere above the limit: 5 V are taken up within 1 mA. */
const LIMITER = 5000;

/** Gates change over within this time [s]; the switch acts in its middle. */
const EDGE = 2e-9;

export interface Netlist {
  readonly text: string;
  /** Measurements by name; what each is stands in `measured`. */
  readonly names: readonly string[];
}

/** `sides[wire]` tells whether a conductor is feed or return. */
export function netlistOf(circuit: Circuit, sides: readonly ('feed' | 'return')[]): Netlist {
  const { supply, drive, ohm, henry, limit, dwell, cycle, firings, wires } = circuit;
  // Where no charge reaches over the begin of the cycle the first cycle is as good as any other.
  const cycles = firings.some((firing) => firing.at < (firing.dwell ?? dwell)) ? 4 : 1;
  const from = (cycles - 1) * cycle;
  const lines = ['* currents of ignition coils', `Vbat bat 0 ${supply}`];

  wires.forEach(({ coils, ohm: own, also }, w) => {
    const feed = sides[w] === 'feed';
    // The conductors of a coil in the order in which the current takes them; neighbours of all coils must be the same.
    const beside = new Set(
      coils.map((coil) => {
        const path = wires.flatMap((other, i) =>
          sides[i] === sides[w] && other.coils.includes(coil) ? [i] : [],
        );
        const next = path[path.indexOf(w) + (feed ? -1 : 1)];
        return next === undefined ? (feed ? 'bat' : '0') : `w${next}`;
      }),
    );
    if (beside.size !== 1) throw new Error(`conductor ${w} has no one place to hang on`);
    const [other] = beside;
    // Node w<i> is the coil's end of conductor i. The ammeter counts towards the coil in the feed, away in the return.
    const [a, b] = feed ? [other, `w${w}`] : [`w${w}`, other];
    lines.push(`Vw${w} ${a} m${w} 0`, `Rw${w} m${w} ${b} ${own}`);
    // Another load flows through this conductor alone.
    if (also > 0) lines.push(`Ialso${w} ${b} ${a} ${also}`);
  });

  for (let c = 0; c < circuit.coils; c++) {
    const { plus, minus } = terminals(circuit, sides, c);
    lines.push(
      `Vc${c} ${plus} c${c}a 0`,
      `L${c} c${c}a c${c}b ${henry} ic=0`,
      `R${c} c${c}b c${c}c ${ohm}`,
      limit === Number.POSITIVE_INFINITY
        ? `Vlim${c} c${c}c c${c}d 0`
        : `Blim${c} c${c}c c${c}d V=${LIMITER}*uramp(i(Vc${c})-${limit})`,
      `Vdrop${c} c${c}d c${c}e ${supply - drive}`,
      `S${c} c${c}e ${minus} g${c} 0 driver`,
      `Vg${c} g${c} 0 PWL(${gate(circuit, c, cycles)})`,
    );
  }

  const names: string[] = [];
  const measure = (name: string, what: string): void => {
    names.push(name);
    lines.push(`.meas tran ${name} ${what}`);
  };
  const window = `from=${from} to=${from + cycle}`;
  wires.forEach((_, w) => {
    for (const kind of ['avg', 'rms', 'max']) measure(`${kind}${w}`, `${kind} i(Vw${w}) ${window}`);
  });
  firings.forEach(({ coil, at }, k) => {
    // At 0 the charge of the cycle before ends: at its end.
    const instant = from + (at === 0 ? cycle : at) - EDGE;
    const { plus, minus } = terminals(circuit, sides, coil);
    measure(`peak${k}`, `find i(Vc${coil}) at=${instant}`);
    measure(`plus${k}`, `find v(${plus}) at=${instant}`);
    if (minus !== '0') measure(`minus${k}`, `find v(${minus}) at=${instant}`);
  });
  const step = Math.min(dwell / 400, 10e-6);
  lines.push(
    '.model driver sw vt=0.5 vh=0 ron=1e-6 roff=1e7',
    // The gear method damps what the trapezoidal one would let ring after a switch has opened.
    '.options reltol=1e-5 abstol=1e-9 method=gear maxord=2',
    `.save ${[...wires.keys()].map((w) => `i(Vw${w})`).join(' ')} ${savedOfCoils(circuit, sides)}`,
    `.tran ${step} ${cycles * cycle} ${from} ${step} uic`,
    '.end',
  );
  return { text: `${lines.join('\n')}\n`, names };
}

/** Nodes between which coil and driver lie. */
function terminals(
  { wires }: Circuit,
  sides: readonly ('feed' | 'return')[],
  coil: number,
): { plus: string; minus: string } {
  const own = (side: 'feed' | 'return'): number[] =>
    wires.flatMap(({ coils }, i) => (sides[i] === side && coils.includes(coil) ? [i] : []));
  const [last, first] = [own('feed').at(-1), own('return')[0]];
  return { plus: last === undefined ? 'bat' : `w${last}`, minus: first === undefined ? '0' : `w${first}` };
}

const savedOfCoils = (circuit: Circuit, sides: readonly ('feed' | 'return')[]): string =>
  Array.from({ length: circuit.coils }, (_, c) => {
    const { plus, minus } = terminals(circuit, sides, c);
    return [`i(Vc${c})`, `v(${plus})`, ...(minus === '0' ? [] : [`v(${minus})`])].join(' ');
  }).join(' ');

/** The gate of a coil over several cycles, as times and volts. */
function gate({ firings, dwell: first, cycle }: Circuit, coil: number, cycles: number): string {
  const edges = firings
    .filter((firing) => firing.coil === coil)
    .flatMap(({ at, dwell = first }) =>
      Array.from({ length: cycles + 1 }, (_, i) => ({ end: at + i * cycle, begin: at + i * cycle - dwell })),
    )
    .filter(({ end }) => end > 0)
    .sort((a, b) => a.begin - b.begin);
  const points = edges.flatMap(({ begin, end }) => [
    // A charge that is under way at the start of the simulation is on from there.
    ...(begin > 0 ? [`${begin - EDGE / 2} 0 ${begin + EDGE / 2} 1`] : ['0 1']),
    `${end - EDGE / 2} 1 ${end + EDGE / 2} 0`,
  ]);
  return `${(edges[0]?.begin ?? 0) > 0 ? '0 0 ' : ''}${points.join(' ')}`;
}
