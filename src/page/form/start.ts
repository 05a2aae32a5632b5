/** What a part of the design starts with when a person adds it: parts that pass the reader. */
import type { Plain } from '../../saved/document.ts';
import { placeOf } from '../place.ts';

const SUPPLY = '14 V';

/** By the place of the part; `count` is how many there are already. */
const STARTS: Readonly<Record<string, (count: number) => Plain>> = {
  supply: () => ({ source_resistance: '8 mohm' }),
  'supply.source_resistance': () => '8 mohm',
  'supply.cold_cranking': () => '600 A',
  points: (count) => ({ name: `point ${count + 1}`, rpm: '3000 rpm', supply: SUPPLY }),
  sweep: () => ({ from: '1000 rpm', to: '7000 rpm', step: '500 rpm', supply: SUPPLY }),
  sizes: () => ({ series: 'AWG' }),
  limits: () => ({ drop: '0.5 V' }),
  tolerance: () => ({ coil_resistance: '10 %' }),
  'tolerance.distribution': () => ({ coil_resistance: 'normal' }),
  instruments: () => ({ meter: '0.5 % + 2 digits' }),
  measured: () => ({ what: 'drop' }),
  kit: () => ({ allowance: '5 %' }),
  'kit.trigger': () => ({ gauge: '18 AWG', insulation: 'C', length: '0.8 m' }),
  'kit.relay_ground': () => ({ gauge: '18 AWG', insulation: 'C', length: '0.25 m' }),
  'kit.spares': () => ({ fuse: 1 }),
  'kit.parts': () => ({ fuse: 'blade fuse' }),
  'coil.inductance': () => '3.0 mH',
  'coil.test_point': () => ({ supply: '13.5 V', dwell: '3.0 ms', peak: '10 A' }),
  'coil.peak': () => '12 A',
  'coil.series_resistor': () => ({ value: '1.4 ohm' }),
  'ignition.coils': (count) => ({ id: `coil ${count + 1}`, fires_at: [90 * count] }),
  'ignition.dwell': (count) => ({ supply: `${8 + 2 * count} V`, dwell: '3.0 ms' }),
  'ignition.sparks': () => ({ count: 3, below: '2500 rpm', charge: '1.2 ms' }),
  run: (count) => ({
    run: `run ${count + 1}`,
    carries: 'all',
    length: '1.0 m',
    ambient: '60 degC',
    insulation: 'C',
    gauge: 'auto',
  }),
  'run.fuse': () => ({ type: 'C', rating: 'auto' }),
  'run.fuse.curve': (count) => ({
    current: `${40 * 2 ** count} A`,
    within: `${Number((5 / 10 ** count).toPrecision(2))} s`,
  }),
  'run.fuse.rerating': (count) => ({ at: `${25 + 40 * count} degC`, share: `${100 - 20 * count} %` }),
  'run.relay': () => ({ rating: 'auto' }),
  'run.relay.derating': (count) => ({ at: `${23 + 62 * count} degC`, rating: `${50 - 15 * count} A` }),
};

/** Parts whose list cannot have a single member. */
const TWO = ['run.fuse.rerating', 'run.relay.derating'];

/** One part. Null for a part that starts empty. */
export const startOf = (path: readonly (string | number)[], count: number): Plain =>
  STARTS[placeOf(path)]?.(count) ?? {};

/** A list that was not there. */
export const listOf = (path: readonly (string | number)[]): Plain =>
  [0, ...(TWO.includes(placeOf(path)) ? [1] : [])].map((count) => startOf(path, count));
