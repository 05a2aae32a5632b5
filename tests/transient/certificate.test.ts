/**
 * The exact currents satisfy the circuit: no second solution is needed to see that they are right. At instants in every
 * segment Kirchhoff's voltage law is checked conductor by conductor, and at its ends that nothing jumps but what fires.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../src/transient/circuit.ts';
import { type Exponentials, slopeOf, valueAt } from '../../src/transient/exponentials.ts';
import { coilFigures, wireFigures } from '../../src/transient/figures.ts';
import type { Segment } from '../../src/transient/interval.ts';
import { type Course, steady } from '../../src/transient/steady.ts';
import { integral } from '../physics/reference.ts';
import { samples } from '../samples.ts';
import { circuits } from './random-circuit.ts';

/** The same circuits in every run. */
const RUNS = { numRuns: samples(150), seed: 4 };

/** Volts and amperes of this size are rounding: ten digits of what flows and what is supplied. */
const SMALL = 1e-9;

const currents = (segment: Segment, after: number): number[] =>
  segment.currents.map((current) => valueAt(current, after));

/** Voltage [V] that is left over for the inductance of `coil` when `amps` flow, summed up conductor by conductor. */
function leftOver({ drive, ohm, wires }: Circuit, amps: readonly number[], coil: number): number {
  const drops = wires
    .filter(({ coils }) => coils.includes(coil))
    .map((wire) => wire.ohm * wire.coils.reduce((sum, c) => sum + (amps[c] as number), wire.also));
  return drops.reduce((volts, drop) => volts - drop, drive - ohm * (amps[coil] as number));
}

/** Whether a coil is charged at an instant: by its firings alone. */
const charged = ({ firings, dwell, cycle }: Circuit, coil: number, at: number): boolean =>
  firings.some((firing) => {
    const ahead = (((firing.at - at) % cycle) + cycle) % cycle;
    return firing.coil === coil && ahead < (firing.dwell ?? dwell);
  });

/** What is wrong with a course, as words: a matcher for each of a million numbers would take most of the time. */
function faults(course: Course): string[] {
  const { circuit, segments } = course;
  const found: string[] = [];
  const check = (right: boolean, what: string, ...values: number[]): void => {
    if (!right) found.push(`${what}: ${values.join(', ')}`);
  };
  check(segments[0]?.from === 0, 'begin of the cycle');
  check(segments.at(-1)?.to === circuit.cycle, 'end of the cycle');
  segments.forEach((segment, i) => {
    const time = segment.to - segment.from;
    const next = segments[(i + 1) % segments.length] as Segment;
    if (i + 1 < segments.length) check(next.from === segment.to, 'gap', segment.to, next.from);
    const end = currents(segment, time);
    const start = currents(next, 0);
    const fires = (coil: number): boolean =>
      circuit.firings.some((f) => f.coil === coil && Math.abs(f.at - (next.from % circuit.cycle)) < 1e-11);
    for (let coil = 0; coil < circuit.coils; coil++) {
      // Nothing jumps; a firing ends at 0, whatever there was.
      const jump = (start[coil] as number) - (fires(coil) ? 0 : (end[coil] as number));
      check(Math.abs(jump) < SMALL, 'jump', i, coil, jump);
      const on = segment.on.includes(coil);
      check(on === charged(circuit, coil, segment.from + time / 2), 'charged', i, coil);
    }
    for (const part of [0, 0.3, 0.7, 1]) {
      const amps = currents(segment, part * time);
      amps.forEach((ampere, coil) => {
        const slope = valueAt(slopeOf(segment.currents[coil] as Exponentials), part * time);
        const left = leftOver(circuit, amps, coil);
        check(ampere >= -SMALL && ampere <= circuit.limit + SMALL, 'current', i, coil, ampere);
        if (!segment.on.includes(coil)) check(ampere === 0, 'off', i, coil, ampere);
        else if (slope === 0 && ampere === circuit.limit) check(left > -SMALL, 'held', i, coil, left);
        else check(Math.abs(circuit.henry * slope - left) < SMALL, 'voltage', i, coil, left);
      });
    }
  });
  return found;
}

test('every random circuit is satisfied', () => {
  let limits = 0;
  let lost = 0;
  fc.assert(
    fc.property(circuits, (circuit) => {
      const course = steady(circuit);
      expect(faults(course)).toEqual([]);
      const at = (segment: Segment, coil: number): boolean => segment.currents[coil]?.level === circuit.limit;
      course.segments.forEach((segment, i) => {
        const before = course.segments[i - 1];
        for (const coil of segment.on) {
          if (at(segment, coil)) limits++;
          else if (before && at(before, coil) && valueAt(segment.currents[coil] as Exponentials, 0) > 0)
            lost++;
        }
      });
    }),
    RUNS,
  );
  // The rare things did occur.
  expect(limits).toBeGreaterThan(500);
  expect(lost).toBeGreaterThan(10);
});

test('averages, effective currents and peaks are those of a numeric sum', () => {
  fc.assert(
    fc.property(circuits, (circuit) => {
      const course = steady(circuit);
      circuit.wires.slice(0, 3).forEach(({ coils, also }, wire) => {
        let [charge, square, peak] = [0, 0, 0];
        for (const segment of course.segments) {
          const total = (after: number): number =>
            coils.reduce((sum, c) => sum + valueAt(segment.currents[c] as Exponentials, after), also);
          const time = segment.to - segment.from;
          // A fifth of the fastest time constant: there the ninth-order rule errs by less than 1e-12.
          const fastest = Math.max(1, ...(segment.currents[0]?.rates ?? []));
          charge += integral(total, 0, time, 0.2 / fastest);
          square += integral((t) => total(t) ** 2, 0, time, 0.2 / fastest);
          for (let i = 0; i <= 50; i++) peak = Math.max(peak, total((time * i) / 50));
        }
        const found = wireFigures(course, wire);
        expect(found.average).toBeCloseTo(charge / circuit.cycle, 9);
        expect(found.effective).toBeCloseTo(Math.sqrt(square / circuit.cycle), 7);
        // Fifty steps may miss a peak between two of them, never exceed it.
        expect(found.peak).toBeGreaterThanOrEqual(peak - SMALL);
        expect(found.peak).toBeLessThan(peak * 1.001 + SMALL);
      });
      circuit.firings.forEach(({ coil }) => {
        const { supplyAtFiring, lowestSupply, energy, peak } = coilFigures(course, coil);
        expect(lowestSupply as number).toBeLessThanOrEqual((supplyAtFiring as number) + SMALL);
        expect(energy).toBe((circuit.henry * peak ** 2) / 2);
      });
    }),
    { numRuns: samples(60), seed: 4 },
  );
});

describe('one coil alone', () => {
  const alone: Circuit = {
    supply: 14,
    drive: 12,
    ohm: 0.5,
    henry: 0.003,
    limit: Number.POSITIVE_INFINITY,
    dwell: 0.003,
    cycle: 0.02,
    cycleAngle: 720,
    coils: 1,
    firings: [{ coil: 0, at: 0 }],
    wires: [{ coils: [0], ohm: 0.1, also: 0 }],
  };

  test('rises as the formula of every textbook says: V/R·(1 − e^(−tR/L))', () => {
    // 12 V, 0.6 ohm in all, 3 mH, 3 ms: 20·(1 − e^−0.6) = 9.02376727…
    expect(coilFigures(steady(alone), 0).peak).toBeCloseTo(20 * (1 - Math.exp(-0.6)), 12);
    expect(coilFigures(steady(alone), 0).supplyAtFiring).toBeCloseTo(14 - 2 * (1 - Math.exp(-0.6)), 12);
  });

  test('stops at its limit when the formula says', () => {
    const course = steady({ ...alone, limit: 8 });
    const held = course.segments.find(({ currents: [own] }) => own?.level === 8);
    // t = −τ·ln(1 − 8/20), τ = 5 ms; the charge ends with the cycle. Found to 1e-12 s.
    expect((held?.from ?? 0) - 0.017).toBeCloseTo(-0.005 * Math.log(0.6), 11);
    expect(coilFigures(course, 0).peak).toBe(8);
  });

  test('starts from what another load leaves: 2 A in 0.1 ohm are 0.2 V less', () => {
    const course = steady({ ...alone, wires: [{ coils: [0], ohm: 0.1, also: 2 }] });
    // 11.8 V over 0.6 ohm; the wire carries the 2 A besides.
    const peak = (11.8 / 0.6) * (1 - Math.exp(-0.6));
    expect(coilFigures(course, 0).peak).toBeCloseTo(peak, 12);
    expect(coilFigures(course, 0).supplyAtFiring).toBeCloseTo(14 - 0.1 * (peak + 2), 12);
    expect(wireFigures(course, 0).peak).toBeCloseTo(peak + 2, 12);
  });

  test('charges without a rest when the dwell is the whole cycle', () => {
    const course = steady({ ...alone, dwell: alone.cycle });
    expect(coilFigures(course, 0).peak).toBeCloseTo(20 * (1 - Math.exp(-4)), 12);
  });

  test('draws nothing without dwell, and has no supply at a firing that is none', () => {
    const course = steady({ ...alone, dwell: 0 });
    expect(coilFigures(course, 0)).toEqual({ supplyAtFiring: null, lowestSupply: null, peak: 0, energy: 0 });
    expect(wireFigures(course, 0)).toEqual({ average: 0, effective: 0, peak: 0 });
  });

  test('draws nothing when the driver leaves no voltage', () => {
    expect(coilFigures(steady({ ...alone, drive: 0 }), 0).peak).toBe(0);
  });
});
