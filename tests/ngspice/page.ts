/** The text of docs/accuracy.md. */
import { grid } from '../../src/docs/markdown.ts';
import type { Measured } from './accuracy.ts';

const HEAD = `<!-- Made by \`npx vitest run tests/ngspice -u\`; changes by hand are lost. -->

# How accurate the currents are

There are three computations of the same currents. The **closed forms** are the formulas of the model, which every
size, rating and verdict is taken from: they are in the workbook. The **exact currents** of \`coilfeed trace\` solve the
circuit of all coils and conductors, coupled as they are, without approximation. And **ngspice**, a general circuit
simulator, solves the same circuit from a netlist in which every conductor is a resistor between two nodes.

This page is written by the tests that hold the three against each other.`;

const EXACT = `## Exact currents against the circuit simulator

Largest difference of each kind, of all conductors, coils and firings of the design, rounded up. The gates are 0.1 % for
peaks and for the supply at the firing, 0.2 % for average and effective currents over the working cycle. In the cases
with a limit the simulator's limiter is soft: it lets the current go up to a few milliamperes beyond.`;

const CLOSED = `## Closed forms against the exact currents

The loads (average, effective and peak current of each conductor) are counted on a stiff supply, so they must never lie
below the exact ones: a real feed lets less through. The delivered energy has to be within 0.5 % where the path of the
worst coil drops up to 0.7 V. Beyond that the closed form errs low, so that a poor feed looks somewhat worse than it is.
The supply at the coil at its firing is counted with the currents of the stiff supply, and is low for the same reason.`;

/** Values that a difference is rounded up to [%]: what lies below the first one is rounding and step of the simulator. */
const STEPS = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5];

/** Rounded up, so that another version of the simulator leaves the page as it is. */
export const ceiling = (share: number): string => {
  const step = STEPS.find((limit) => share * 100 <= limit);
  return step === undefined ? 'more than 0.5' : `≤ ${step}`;
};

/** A signed share in per cent with two decimals; no negative zero. */
export const percent = (share: number): string => signed(share * 100, 2);

const signed = (value: number, decimals: number): string => {
  const text = Math.abs(value).toFixed(decimals);
  return Number(text) === 0 ? text : `${value < 0 ? '−' : '+'}${text}`;
};

/** Text of `docs/accuracy.md`, from what was measured; `rest` is what another test writes below. */
export function accuracyPage(measured: readonly Measured[], rest: string): string {
  const exact = grid(
    ['design', 'coils', 'peak [%]', 'supply at firing [%]', 'average [%]', 'effective [%]'],
    measured.map(({ name, trace, simulator: s }) => [
      name,
      String(trace.circuit.coils),
      ...[s.peak, s.supply, s.average, s.effective].map(ceiling),
    ]),
  );
  const closed = grid(
    [
      'design',
      'drop of the worst path [V]',
      'loads: least excess [%]',
      'loads: largest excess [%]',
      'delivered energy [%]',
      'supply at firing [mV]',
    ],
    measured.map(({ name, closed: c }) => [
      name,
      c.drop.toFixed(2),
      percent(c.loads[0]),
      percent(c.loads[1]),
      percent(c.energy),
      signed(c.supply * 1000, 0),
    ]),
  );
  return `${[HEAD, EXACT, exact, CLOSED, closed, rest].join('\n\n').trimEnd()}\n`;
}
