/** A meter across one place within a run: what it shows, and what it tells of the run. */
import { describe, expect, test } from 'vitest';
import type { Measured } from '../../src/design/design.ts';
import { diagnose } from '../../src/readings/diagnose.ts';
import { judge } from '../../src/readings/judge.ts';
import { run } from '../../src/run.ts';
import { circuitAt } from '../../src/transient/circuit.ts';
import { wireFigures } from '../../src/transient/figures.ts';
import { steady } from '../../src/transient/steady.ts';
import { demo, design } from '../design/helpers.ts';
import { namesOf } from './named.ts';

const e = run(design(demo('hill-climb-six'))).evaluation;
const main = e.design.wires.findIndex(({ id }) => id === 'main');
const point = e.design.points.findIndex(({ name }) => name === 'limiter');
const where = { coil: null, point, path: 'measured' } as const;

/** The whole run and its fuse by the meter, with so much more in the run, of which so much in its fuse [ohm]. */
function readings(inRun: number, inFuse: number): Measured[] {
  const circuit = circuitAt(e, point);
  const ohm = (circuit.wires[main]?.ohm ?? 0) + inRun;
  const course = steady({
    ...circuit,
    wires: circuit.wires.map((wire, i) => (i === main ? { ...wire, ohm } : wire)),
  });
  const amps = wireFigures(course, main).average;
  const fuse = e.number('fuse_ohm', { run: 0 }) as number;
  const drop = { ...where, wire: main, what: 'drop', instrument: 'meter' } as const;
  return [
    { ...where, wire: null, what: 'supply', instrument: 'meter', value: circuit.supply },
    { ...where, wire: main, what: 'current', instrument: 'clamp_average', value: amps },
    { ...drop, value: ohm * amps },
    { ...drop, across: 'fuse', value: (fuse + inFuse) * amps },
  ];
}

describe('a run with 30 mΩ too much', () => {
  test('all of it across the fuse: the fuse, within 10 % of its size', () => {
    const { found } = diagnose(e, readings(0.03, 0.03));
    expect(found.map((causes) => causes.map(({ part }) => part))).toEqual([
      [{ is: 'within', wire: main, across: 'fuse' }],
    ]);
    // Tolerances pull by a few percent: joints may have half as much again.
    expect(Math.abs((found[0]?.[0]?.size ?? 0) / 0.03 - 1)).toBeLessThan(0.1);
  });

  test('none of it across the fuse: the run, elsewhere', () => {
    expect(namesOf(e, diagnose(e, readings(0.03, 0)))).toEqual([['main']]);
  });

  test('the reading across the fuse is high by itself', () => {
    const [, , , high] = readings(0.03, 0.03);
    const [, , , sound] = readings(0, 0);
    expect([high, sound].map((one) => judge(e, one as Measured).stands)).toEqual(['high', 'within']);
  });
});

test('nothing too much: nothing is found', () => {
  expect(namesOf(e, diagnose(e, readings(0, 0)))).toEqual([]);
});

test('joint and joint 1 are one place; another joint is another', () => {
  const text = demo('hill-climb-six').replace(/\nmeasured:[\s\S]*$/, '\n');
  const taken = design(`${text}
measured:
  - { what: drop, run: main, across: joint, point: limiter, meter: 4 mV }
  - { what: drop, run: main, across: joint 1, point: limiter, scope: 9 mV }
  - { what: drop, run: main, across: joint 2, point: limiter, meter: 4 mV }
`).measured;
  expect(taken.map(({ across }) => across)).toEqual(['joint 1', 'joint 1', 'joint 2']);
});
