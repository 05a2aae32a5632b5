/** The diagnosis against installs with a known fault: the circuit simulator gives the readings. */
import { expect, test } from 'vitest';
import { diagnose } from '../../src/readings/diagnose.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { random } from '../protection/random.ts';
import { samples } from '../samples.ts';
import { faulty, noisy } from './faulty.ts';

const INSTALLS = samples(8);
const CARDS = 5;
/** Of the task: errors of the instruments, and what the diagnosis must make of them. */
const NOISE = 0.02;
const SIZE = 0.1;
const FOUND = 0.95;

describeWithPeer('ngspice', 'one fault, all drops read', () => {
  test('run and size are found in at least 95 of 100 cases', () => {
    const wrong: string[] = [];
    for (let seed = 1; seed <= INSTALLS; seed++) {
      const { e, wire, ohm, readings } = faulty(seed);
      const next = random(1000 + seed);
      for (let card = 0; card < CARDS; card++) {
        const { causes } = diagnose(e, noisy(readings, NOISE, next));
        const [first] = causes;
        const cause = first?.cause;
        const right =
          causes.length === 1 &&
          first?.orElse.length === 0 &&
          cause?.kind === 'resistance' &&
          cause.wire === wire &&
          Math.abs(cause.ohm / ohm - 1) <= SIZE;
        if (!right)
          wrong.push(
            `install ${seed}: ${e.design.wires[wire]?.id} ${ohm.toFixed(4)}: ${JSON.stringify(causes)}`,
          );
      }
    }
    expect(wrong.length / (INSTALLS * CARDS), wrong.join('\n')).toBeLessThanOrEqual(1 - FOUND);
    if (wrong.length) console.log(wrong.join('\n'));
  });
});
