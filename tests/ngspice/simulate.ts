/** Runs the circuit simulator on a netlist and reads what it measured. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Evaluation } from '../../src/engine/evaluate.ts';
import { circuitAt } from '../../src/transient/circuit.ts';
import { needPeer } from '../peers/peer.ts';
import { netlistOf } from './netlist.ts';

export interface Simulated {
  /** By conductor [A]. */
  readonly wires: readonly { average: number; effective: number; peak: number }[];
  /** By firing: current of the coil [A] and supply between its terminals [V] at the instant before. */
  readonly firings: readonly { peak: number; supply: number }[];
}

/** What the simulator makes of point 0 of a design. Throws when it leaves a measurement out. */
export function simulate(e: Evaluation): Simulated {
  const circuit = circuitAt(e, 0);
  const sides = e.design.wires.map(({ run }) => e.design.runs[run]?.side ?? 'feed');
  const { text, names } = netlistOf(circuit, sides);
  const found = measured(text);
  const missing = names.filter((name) => !found.has(name));
  if (missing.length > 0) throw new Error(`the simulator did not measure ${missing.join(', ')}`);
  const take = (name: string): number => found.get(name) as number;
  return {
    wires: circuit.wires.map((_, w) => ({
      average: take(`avg${w}`),
      effective: take(`rms${w}`),
      peak: take(`max${w}`),
    })),
    firings: circuit.firings.map((_, k) => ({
      peak: take(`peak${k}`),
      supply: take(`plus${k}`) - (names.includes(`minus${k}`) ? take(`minus${k}`) : 0),
    })),
  };
}

/** Runs a netlist and returns the measurements by name. */
export function measured(netlist: string): Map<string, number> {
  const output = run(netlist);
  return new Map(
    [...output.matchAll(/^(\w+)\s+=\s+([-+\d.e]+)/gim)].map(([, name, value]) => [
      (name as string).toLowerCase(),
      Number(value),
    ]),
  );
}

/** Runs a netlist in batch mode; returns what the simulator printed. */
export function run(netlist: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'coilfeed-ngspice-'));
  try {
    const file = join(folder, 'circuit.cir');
    writeFileSync(file, netlist);
    return execFileSync(needPeer('ngspice'), ['-b', file], {
      cwd: folder,
      encoding: 'utf8',
      maxBuffer: 64 * 1024 * 1024,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
