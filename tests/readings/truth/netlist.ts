/** An install as a netlist of its own: every conductor a resistor between two nodes, each coil with its own values. */
import type { Install } from './install.ts';

/** Gates change over within this time [s]. */
const EDGE = 2e-9;

export function netlist(install: Install, point: number): string {
  const { wires, coils, firings, driverDrop, limit, sourceOhm } = install;
  const { rpm, volts, dwell } = install.points[point] as Install['points'][number];
  const cycle = 120 / rpm;
  const cycles = 3;
  const lines = ['* random install', `Vbat open 0 ${volts}`, `Rs open bat ${Math.max(sourceOhm, 1e-9)}`];
  /** The conductors of a side that carry a coil, as the current meets them. */
  const path = (side: 'feed' | 'return', coil: number): number[] =>
    wires.flatMap((w, i) => (w.side === side && w.coils.includes(coil) ? [i] : []));
  wires.forEach(({ side, coils: carried, ohm }, w) => {
    const own = path(side, carried[0] as number);
    const beside = own[own.indexOf(w) + (side === 'feed' ? -1 : 1)];
    const other = beside === undefined ? (side === 'feed' ? 'bat' : '0') : `w${beside}`;
    const [a, b] = side === 'feed' ? [other, `w${w}`] : [`w${w}`, other];
    lines.push(`Vw${w} ${a} m${w} 0`, `Rw${w} m${w} ${b} ${ohm}`);
  });
  coils.forEach(({ ohm, henry }, c) => {
    const plus = `w${path('feed', c).at(-1)}`;
    const minus = path('return', c)[0] === undefined ? '0' : `w${path('return', c)[0]}`;
    const times = firings
      .flatMap((f) => (f.coil === c ? Array.from({ length: cycles + 1 }, (_, k) => (f.at + k) * cycle) : []))
      .sort((a, b) => a - b);
    const gate = times.flatMap((end) => {
      const from = end - dwell;
      return end <= 0
        ? []
        : [...(from > 0 ? [`${from} 0 ${from + EDGE} 1`] : ['0 1']), `${end - EDGE} 1 ${end} 0`];
    });
    const starts = gate[0]?.startsWith('0 1') ? '' : '0 0 ';
    lines.push(
      `Vc${c} ${plus} c${c}a 0`,
      `L${c} c${c}a c${c}b ${henry} ic=0`,
      `R${c} c${c}b c${c}c ${Number.isFinite(ohm) ? ohm : 1e9}`,
      limit === Number.POSITIVE_INFINITY
        ? `Vl${c} c${c}c c${c}d 0`
        : `Bl${c} c${c}c c${c}d V=5000*uramp(i(Vc${c})-${limit})`,
      `Vd${c} c${c}d c${c}e ${driverDrop}`,
      `S${c} c${c}e ${minus} g${c} 0 driver`,
      `Vg${c} g${c} 0 PWL(${starts}${gate.join(' ')})`,
    );
  });
  const window = `from=${(cycles - 1) * cycle} to=${cycles * cycle}`;
  wires.forEach((_, w) => {
    for (const kind of ['avg', 'rms', 'max'])
      lines.push(`.meas tran ${kind}${w} ${kind} i(Vw${w}) ${window}`);
  });
  lines.push(
    '.model driver sw(vt=0.5 vh=0 ron=1u roff=10meg)',
    `.tran ${dwell / 200} ${cycles * cycle} 0 ${dwell / 200} uic`,
    '.options method=gear reltol=1e-5 abstol=1e-9',
    '.end',
  );
  return lines.join('\n');
}
