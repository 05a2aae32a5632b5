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
        const { found } = diagnose(e, noisy(readings, NOISE, next));
        const [[cause, ...others] = []] = found;
        const right =
          found.length === 1 &&
          others.length === 0 &&
          cause?.part.is === 'wire' &&
          cause.part.wire === wire &&
          Math.abs(cause.size / ohm - 1) <= SIZE;
        if (!right)
          wrong.push(
            `install ${seed}: ${e.design.wires[wire]?.id} ${ohm.toFixed(4)}: ${JSON.stringify(found)}`,
          );
      }
    }
    expect(wrong.length / (INSTALLS * CARDS), wrong.join('\n')).toBeLessThanOrEqual(1 - FOUND);
    if (wrong.length) console.log(wrong.join('\n'));
  });
});
