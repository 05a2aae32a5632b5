/** The generator of installs, before it judges anything: its currents against the circuit simulator. */
import { expect, test } from 'vitest';
import { measured } from '../ngspice/simulate.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { samples } from '../samples.ts';
import { flow } from './truth/circuit.ts';
import { install, type Kind } from './truth/install.ts';
import { netlist } from './truth/netlist.ts';

const KINDS: readonly Kind[] = ['none', 'resistance', 'coil', 'dwell', 'source', 'battery'];
/** Steps of 1/300 of a dwell, of second order: some 1e-5; limits that are let go within a step a little more. */
const CLOSE = 2e-3;

describeWithPeer('ngspice', 'what flows in a random install', () => {
  test.each(Array.from({ length: samples(6) }, (_, i) => i + 1))('install %i', (seed) => {
    const one = install(seed, KINDS[seed % KINDS.length] as Kind);
    const shown = flow(one, 2);
    const found = measured(netlist(one, 2));
    expect(found.size).toBeGreaterThan(2 * one.wires.length);
    one.wires.forEach((wire, w) => {
      const near = (name: string, value: number): void => {
        const right = found.get(`${name}${w}`) as number;
        expect(Math.abs(value - right), `${wire.id} ${name} ${value} ${right}`).toBeLessThan(
          CLOSE * Math.max(right, 0.1),
        );
      };
      near('avg', shown.average[w] as number);
      near('rms', shown.effective[w] as number);
      near('max', shown.peak[w] as number);
    });
  });
});
