/**
 * A feed as it is built for racing engines with a coil for each cylinder: one relay and one fuse of 50 A for all
 * eight coils, and a main conductor that is larger than the fuse asks for. Common practice, no source.
 *
 * Eight coils of 20 A and more look like 160 A. They are charged one after the other, so that two or three overlap.
 */
import { describe, expect, test } from 'vitest';
import { apart, known, modelOf } from './harness.ts';
import { type Course, currentAt, figures } from './reference.ts';

const RPM = 8200;
const SUPPLY = 14;
const DWELL = 3.2e-3;
const OHM = 0.38;
const HENRY = 1.3e-3;
const DROP = 1;

const eight = (relay: string, fuse: string) =>
  modelOf({
    coilfeed: 1,
    title: 'Eight coils, one relay',
    engine: { cylinders: 8, stroke: 4, firing_order: [1, 8, 4, 3, 6, 5, 7, 2] },
    ignition: { layout: 'coil_per_cylinder', dwell: `${DWELL} s` },
    coil: { resistance: `${OHM} ohm`, inductance: `${HENRY} H`, driver_drop: `${DROP} V` },
    points: [{ name: 'limiter', rpm: `${RPM} rpm`, supply: `${SUPPLY} V` }],
    feed: [
      {
        run: 'main',
        carries: 'all',
        length: '1.5 m',
        ambient: '50 degC',
        insulation: 'TXL',
        gauge: '8 AWG',
        fuse: { type: 'E', rating: fuse, ambient: '50 degC' },
        relay: { rating: relay, contact: '3 mohm' },
      },
      {
        run: 'branch',
        carries: 'each',
        length: '0.4 m',
        ambient: '80 degC',
        insulation: 'TXL',
        gauge: '14 AWG',
      },
    ],
  });

const CYCLE = 120 / RPM;
const course: Course = {
  charging: { ohm: OHM, henry: HENRY, volts: SUPPLY - DROP, limit: null },
  dwell: DWELL,
  cycle: CYCLE,
  fires: Array.from({ length: 8 }, (_, coil) => ({ coil, at: (coil / 8) * CYCLE })),
};
const all = course.fires.map(({ coil }) => coil);
const one = currentAt(course.charging, DWELL);
const main = figures(course, all);

const e = eight('50 A', '50 A');
const at = { run: 0, wire: 0, point: 0, speed: 0 };

describe('eight coils on 50 A', () => {
  test('each coil sinks 20 to 22 A at the end of its dwell', () => {
    expect(one).toBeGreaterThan(20);
    expect(one).toBeLessThan(22);
    expect(apart(known(e, 'peak', at), one)).toBeLessThan(1e-6);
  });

  test('the peak of the main is that of the coils that overlap, not of eight', () => {
    // 3.2 ms of dwell at a firing every 1.83 ms: the one that fires and the next one.
    const overlapping = one + currentAt(course.charging, DWELL - CYCLE / 8);
    expect(apart(main.peak, overlapping)).toBeLessThan(1e-9);
    expect(apart(known(e, 'peak_current', at), main.peak)).toBeLessThan(1e-6);
    expect(main.peak).toBeLessThan(2 * one);
  });

  test('average and effective current of the main', () => {
    expect(apart(known(e, 'average', at), main.average)).toBeLessThan(1e-6);
    expect(apart(known(e, 'effective', at), main.effective)).toBeLessThan(1e-6);
    expect(main.effective).toBeLessThan(25);
  });

  test('the fuse of 50 A carries it, and is the one that is chosen', () => {
    // At most 75 % of the rating, less 0.45 % for each kelvin above 25 °C (steepest of a maker's table, quoted):
    // 1 − 0.0045·25 = 0.8875; 0.75·50·0.8875 = 33.3 A.
    expect(known(e, 'fuse_load', at)).toBeCloseTo(main.effective / (50 * 0.8875), 6);
    expect(known(e, 'fuse_load', at)).toBeLessThanOrEqual(known(e, 'fuse_load_limit'));
    expect(known(eight('50 A', 'auto'), 'fuse_rating', at)).toBeLessThanOrEqual(50);
  });

  test('the relay of 50 A carries it, twice over for an inductive load', () => {
    expect(known(e, 'relay_load', at)).toBeLessThanOrEqual(1);
    expect(apart(known(e, 'relay_needed', at), 2 * main.effective)).toBeLessThan(1e-6);
    expect(known(e, 'relay_needed', at)).toBeLessThanOrEqual(50);
    expect(known(eight('auto', '50 A'), 'relay_rating', at)).toBe(50);
  });

  test('the conductor carries it, and its fuse', () => {
    // 33 CFR 183.425 table 5 (printed): 70 and 90 A at 30 °C for 10 and 8 AWG, 125 °C, of 5.2612 and 8.3656 mm². TXL is
    // sold by SAE number: 8 SAE has 7.504 mm² at least (SAE J1127/J1128, quoted) and lies between them, straight in the
    // logarithms.
    const share = Math.log(7.504 / 5.2612) / Math.log(8.3656 / 5.2612);
    const amps = 70 * (90 / 70) ** share * Math.sqrt((125 - 50) / (125 - 30));
    // Areas with five figures.
    expect(apart(known(e, 'ampacity', at), amps)).toBeLessThan(1e-4);
    expect(amps).toBeGreaterThan(50);
    expect(main.effective).toBeLessThanOrEqual(0.8 * amps);
  });
});

test('a relay of 40 A carries the current and does not have the two-fold reserve', () => {
  const small = eight('40 A', '50 A');
  expect(known(small, 'relay_load', at)).toBeCloseTo(main.effective / 40, 6);
  expect(known(small, 'relay_load', at)).toBeLessThan(1);
  expect(known(small, 'relay_rating', at)).toBe(40);
  expect(known(small, 'relay_needed', at)).toBeGreaterThan(40);
});
