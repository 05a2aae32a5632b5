/** Designs for the kit: straight engines with any number of coils, and engines of two banks. */

import type { Result } from '../../src/findings/result.ts';
import { run } from '../../src/run.ts';
import { design } from '../design/helpers.ts';

/** What a person holds in their hands. */
export const PAPERS = [
  'instructions.html',
  'test-card.html',
  'bench.html',
  'build-record.html',
  'labels.html',
] as const;

const numbers = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);

/** Lines under `kit:`, each with its indent. */
export function straight(coils: number, kit = '', title = 'Invented engine'): string {
  return `coilfeed: 1
title: ${JSON.stringify(title)}
engine: { cylinders: ${coils}, stroke: 4, firing_order: [${numbers(1, coils)}] }
ignition: { layout: coil_per_cylinder, dwell: 2.0 ms }
coil: { resistance: 0.6 ohm, inductance: 4 mH, driver_drop: 1.0 V }
supply: { source_resistance: 8 mohm, alternator: 200 A, other_load: 20 A }
points:
  - { name: cranking, rpm: 220 rpm, supply: 9.6 V }
  - { name: idle, rpm: 900 rpm, supply: 13.6 V }
  - { name: limiter, rpm: 5000 rpm, supply: 14.2 V }
feed:
  - run: main
    carries: all
    length: 1.5 m
    ambient: 50 degC
    insulation: C
    gauge: 6 AWG
    joints: 4
    fuse: { type: E, rating: auto, ambient: 50 degC, from_source: 0.15 m }
    relay: { rating: 80 A, rated_at: 85 degC, coil: 90 ohm, pull_in: 6.5 V, drop_out: 1.2 V, contact: 2 mohm, suppression: resistor, tab: 9.5 mm, ambient: 50 degC }
  - { run: drop, carries: each, length: 0.45 m, ambient: 60 degC, insulation: C, gauge: auto, joints: 3 }
return:
  - { run: coil ground, carries: each, length: 0.35 m, ambient: 60 degC, insulation: C, gauge: auto }
  - { run: engine strap, carries: all, length: 0.5 m, ambient: 60 degC, insulation: C, gauge: 4 AWG }
${kit === '' ? '' : `kit:\n${kit}`}`;
}

/** Two banks, each with a trunk, a strap and a fuse of its own. */
export function banked(coils: number): string {
  const half = coils / 2;
  const [left, right] = [numbers(1, half), numbers(half + 1, coils)];
  const trunk = (name: string, ids: number[]): string =>
    `  - { run: ${name}, carries: [${ids}], length: 0.6 m, ambient: 60 degC, insulation: TXL, gauge: auto, fuse: { type: E, rating: auto } }\n`;
  const strap = (name: string, ids: number[]): string =>
    `  - { run: ${name}, carries: [${ids}], length: 0.4 m, ambient: 60 degC, insulation: TXL, gauge: 8 AWG }\n`;
  return straight(coils)
    .replace('  - { run: drop', `${trunk('left trunk', left)}${trunk('right trunk', right)}  - { run: drop`)
    .replace(
      '  - { run: engine strap',
      `${strap('left strap', left)}${strap('right strap', right)}  - { run: engine strap`,
    );
}

/** A shop of its own, for a straight engine. */
export const shop = (warranty: string) => `
shop:
  shop:
    name: Invented Spark Works
    address: [1 Nowhere Street, Anytown]
    contact: 555-0199
    logo: logo.svg
    revision: R7
    warranty: ${JSON.stringify(warranty)}
  currency: EUR
  wire: [{ size: 4 AWG, insulation: C, price: 77.70 EUR/m }]
  terminals:
    - name: ring A
      largest: 2 AWG
      strip: 12 mm
      stock: R-100
      price: 55.50 EUR
      tool: press 2
      crimps: [{ size: 4 AWG, height: 4.41 mm, pull: 700 N }]
  instruments: [{ name: bench meter, kind: meter, accuracy: 0.7 % + 3 digits }]
`;
const known = new Map<string, Result>();
/** The evaluated design; each text is evaluated once. The readings take longer than all the rest together. */
export function result(text: string, readings = false): Result {
  const key = `${readings} ${text}`;
  const before = known.get(key);
  if (before) return before;
  const made = run(design(text));
  known.set(key, made);
  return made;
}
