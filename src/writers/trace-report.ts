/** The currents in time as text for the terminal: exact values, and how far the closed forms are from them. */
import { asRead, printNumber, printValue } from '../basis/print.ts';
import type { Pair, Trace } from '../transient/trace.ts';
import { columns, fold } from './columns.ts';

const WIDTH = 80;

/** The report of a trace; `wires` are the conductors to show, by index. */
export function traceReport(trace: Trace, wires: readonly number[]): string {
  const { evaluation: e, point, circuit } = trace;
  const speed = e.number('speed', { speed: point });
  const head = [
    fold(e.design.title, WIDTH, ''),
    fold(
      `At ${e.design.points[point]?.name}: ${printNumber(speed)} rpm, ${printValue(circuit.supply, 'V')}, dwell ` +
        `${printValue(circuit.dwell, 's')}${e.number('clipped', { speed: point }) === 1 ? ' (cut short)' : ''}, ` +
        `a working cycle of ${printValue(circuit.cycle, 's')}`,
      WIDTH,
      '',
    ),
  ];
  return `${[
    head.join('\n'),
    `Currents over one cycle\n${wireTable(trace, wires)}`,
    `Coils\n${coilTable(trace)}`,
    fold(NOTE, WIDTH, ''),
  ].join('\n\n')}\n`;
}

const NOTE =
  'Beside each value in %: by how much the closed form of the calculation, which sizes are chosen by, lies above (+) or ' +
  'below (−) it. Loads are counted on a stiff supply, on the safe side. Supply at the firing, peak and energy are those ' +
  'of the weakest firing of each coil.';

function wireTable({ evaluation: e, wires }: Trace, shown: readonly number[]): string {
  const rows = shown.map((wire) => {
    const found = wires[wire];
    const pairs = found ? [found.average, found.effective, found.peak] : [];
    return [e.design.wires[wire]?.id ?? '', ...pairs.flatMap((pair) => [printNumber(pair.exact), off(pair)])];
  });
  return table(['Run', 'avg A', '%', 'eff. A', '%', 'peak A', '%'], rows);
}

function coilTable({ evaluation: e, coils }: Trace): string {
  const rows = coils.map(({ coil, supplyAtFiring, lowestSupply, peak, energy }) => [
    e.design.coils[coil]?.id ?? '',
    printNumber(supplyAtFiring?.exact ?? null, 4),
    supplyAtFiring === null ? '–' : off(supplyAtFiring),
    printNumber(lowestSupply, 4),
    printNumber(peak.exact),
    off(peak),
    asRead(energy.exact, 'J')[0],
    off(energy),
  ]);
  return table(['Coil', 'fires at V', '%', 'lowest V', 'peak A', '%', 'energy mJ', '%'], rows);
}

const table = (titles: readonly string[], rows: readonly (readonly string[])[]): string =>
  columns(
    titles.map((title, i) => ({ title, align: i === 0 ? 'left' : 'right' })),
    rows,
  );

/** Closed form over exact value, less 1, in %: `+1.3`; a dash where there is nothing to compare. */
export function off({ exact, closed }: Pair): string {
  if (closed === null || exact === 0) return '–';
  const text = Math.abs((closed / exact - 1) * 100).toFixed(2);
  if (Number(text) === 0) return '0';
  return `${closed < exact ? '−' : '+'}${text}`;
}
