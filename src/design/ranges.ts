/**
 * How far each value may go: the one table behind the reader, the entries of the workbook and docs/ranges.md.
 *
 * A range catches slips and keeps the arithmetic away from values that no part has; whether a value is sound is told
 * by the findings. So a slip of the unit by a thousand may pass here and be named there, from what it would mean.
 * `usual` is where most values lie: it tells which unit a number without one most likely has.
 */

import { readValue } from '../basis/read-value.ts';
import { inUnit } from '../basis/shown.ts';

export interface Range {
  /** What is bounded. */
  readonly of: string;
  /** Unit of the numbers; `1` for counts. */
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  /** `1 mohm to 100 ohm`, `1 to 60 V` */
  readonly text: string;
  readonly usual: readonly [number, number];
  readonly why: string;
}

/** Ends as a person writes them, `1 mohm`. */
type Ends = readonly [from: string, to: string];

function range(of: string, unit: string, [from, to]: Ends, usual: Ends, why: string): Range {
  const number = (text: string): number => {
    const read = readValue(text, unit);
    if (!read.ok) throw new Error(`${of}: ${text} is no value in ${unit}`);
    return read.value;
  };
  const tail = / .*$/.exec(to)?.[0] ?? '';
  const text = `${from.endsWith(tail) ? from.slice(0, from.length - tail.length) : from} to ${to}`;
  return {
    of,
    unit,
    from: number(from),
    to: number(to),
    text,
    usual: [number(usual[0]), number(usual[1])],
    why,
  };
}

const counted = (of: string, from: number, to: number, why: string): Range =>
  range(of, '1', [String(from), String(to)], [String(from), String(to)], why);

const ENGINE_BAY: Ends = ['-40 degC', '130 degC'];

export const RANGES = {
  supply: range(
    'supply voltage',
    'V',
    ['1 V', '60 V'],
    ['5 V', '32 V'],
    'below 1 V no driver conducts; above 60 V direct voltage other rules of safety hold (from memory)',
  ),
  lost: range(
    'voltage lost in a driver or a trigger wire',
    'V',
    ['0 V', '20 V'],
    ['0.05 V', '3 V'],
    'arbitrary: far more than a sound part loses',
  ),
  drop_limit: range(
    'limit of the voltage drop',
    'V',
    ['10 mV', '10 V'],
    ['0.1 V', '2 V'],
    'arbitrary: below it no meter of a shop tells, above it nothing of 12 V would be left',
  ),
  relay_voltage: range(
    'pull-in and drop-out voltage of a relay',
    'V',
    ['0.1 V', '60 V'],
    ['0.5 V', '20 V'],
    'arbitrary below; above as the supply',
  ),
  read_voltage: range('voltage that was read', 'V', ['0 V', '60 V'], ['0.05 V', '30 V'], 'as the supply'),
  coil_current: range(
    'primary current',
    'A',
    ['1 mA', '1000 A'],
    ['1 A', '60 A'],
    'arbitrary: far beyond any coil on both sides; what stores no spark is named by a finding',
  ),
  rating: range(
    'rating of a fuse or a relay',
    'A',
    ['1 A', '1000 A'],
    ['1 A', '300 A'],
    'the smallest blade fuse has 1 A; arbitrary above',
  ),
  make_current: range(
    'largest current that a contact may make',
    'A',
    ['1 A', '10 kA'],
    ['10 A', '1000 A'],
    'arbitrary',
  ),
  fault_current: range(
    'current of a fault',
    'A',
    ['1 A', '100 kA'],
    ['10 A', '5 kA'],
    'arbitrary: more than any battery delivers',
  ),
  clearing: range(
    'time in which a fuse opens',
    's',
    ['1 us', '1000000 s'],
    ['1 ms', '3600 s'],
    'arbitrary: from the fastest short to eleven days',
  ),
  melting: range(
    'melting energy of a fuse',
    'A2s',
    ['0.1 A2s', '1000000000 A2s'],
    ['1 A2s', '1000000 A2s'],
    'arbitrary',
  ),
  alternator: range('output of the alternator', 'A', ['1 A', '1000 A'], ['10 A', '400 A'], 'arbitrary'),
  cold_cranking: range(
    'cold cranking current of the battery',
    'A',
    ['10 A', '5000 A'],
    ['100 A', '1500 A'],
    'arbitrary: from a battery for alarms to one for trucks',
  ),
  energy: range(
    'energy of a coil',
    'J',
    ['0.01 mJ', '10 J'],
    ['1 mJ', '1 J'],
    'arbitrary: a thousand times beyond any ignition',
  ),
  load: range('current of other loads', 'A', ['0 A', '1000 A'], ['1 A', '300 A'], 'arbitrary'),
  read_current: range('current that was read', 'A', ['0 A', '1000 A'], ['0.1 A', '200 A'], 'arbitrary'),
  test_current: range('current of the bench test', 'A', ['0.1 A', '100 A'], ['1 A', '30 A'], 'arbitrary'),
  through: range(
    'resistance of a hand meter through a wire',
    'ohm',
    ['0.01 ohm', '10 ohm'],
    ['0.1 ohm', '2 ohm'],
    'arbitrary: below, no hand meter reads',
  ),
  apart: range(
    'resistance between wires that are apart',
    'ohm',
    ['1 kohm', '1000000 kohm'],
    ['10 kohm', '100000 kohm'],
    'arbitrary',
  ),
  insulation_volts: range(
    'voltage of an insulation test',
    'V',
    ['10 V', '1000 V'],
    ['50 V', '500 V'],
    'arbitrary: makers test insulation of this kind with more',
  ),
  coil_resistance: range(
    'resistance of a primary',
    'ohm',
    ['1 mohm', '100 ohm'],
    ['0.1 ohm', '20 ohm'],
    'arbitrary: ten times and more beyond any coil, so that a slip of the unit is named by a finding',
  ),
  series_resistor: range(
    'resistor before a coil',
    'ohm',
    ['1 mohm', '100 ohm'],
    ['0.3 ohm', '5 ohm'],
    'as the primary',
  ),
  relay_coil: range(
    'resistance of a relay coil',
    'ohm',
    ['1 ohm', '10 kohm'],
    ['10 ohm', '2 kohm'],
    'arbitrary: at 12 V these are 144 W and 14 mW',
  ),
  joint: range(
    'resistance of a joint or a contact',
    'ohm',
    ['0 ohm', '1 ohm'],
    ['0.01 mohm', '50 mohm'],
    'arbitrary: more is a break and no joint',
  ),
  source: range(
    'resistance of the battery and its posts',
    'ohm',
    ['0 ohm', '1 ohm'],
    ['1 mohm', '200 mohm'],
    'arbitrary: from a stiff supply to a battery that starts nothing',
  ),
  read_resistance: range(
    'resistance that was read',
    'ohm',
    ['0 ohm', '1 kohm'],
    ['0.1 mohm', '10 ohm'],
    'arbitrary',
  ),
  inductance: range(
    'primary inductance',
    'H',
    ['1 uH', '10 H'],
    ['0.3 mH', '30 mH'],
    'arbitrary: a thousand times beyond any coil, so that a slip of the unit is named by a finding',
  ),
  capacitor: range('capacitor', 'uF', ['0.001 uF', '1000000 uF'], ['0.1 uF', '10000 uF'], 'arbitrary'),
  dwell: range(
    'dwell',
    's',
    ['1 us', '1 s'],
    ['0.5 ms', '20 ms'],
    'arbitrary: a thousand times below any dwell, so that a slip of the unit is named by a finding',
  ),
  sparks: range(
    'sparks of one firing',
    '1',
    ['2', '5'],
    ['2', '5'],
    'arbitrary: the workbook has rows for them',
  ),
  rest: range('rest between two charges', 's', ['0 s', '1 s'], ['0.1 ms', '10 ms'], 'arbitrary'),
  speed: range(
    'engine speed',
    'rpm',
    ['1 rpm', '30000 rpm'],
    ['50 rpm', '20000 rpm'],
    'arbitrary: slower than any starter turns, faster than any engine with spark plugs',
  ),
  temperature: range(
    'temperature',
    'degC',
    ['-60 degC', '300 degC'],
    ENGINE_BAY,
    'from the coldest start to the 6 h overload limit of the best insulation (ISO 6722-1 class H)',
  ),
  rise: range('rise of a temperature', 'K', ['0 K', '200 K'], ['1 K', '150 K'], 'arbitrary'),
  length: range(
    'length of a conductor',
    'm',
    ['1 mm', '100 m'],
    ['50 mm', '8 m'],
    'arbitrary: from what joins two parts to the longest trailer',
  ),
  place: range('place along a conductor', 'm', ['0 m', '100 m'], ['10 mm', '3 m'], 'as the length'),
  short: range('length at an end of a conductor', 'm', ['0 m', '1 m'], ['0.3 mm', '200 mm'], 'arbitrary'),
  per_length: range(
    'resistance of a conductor per length',
    'ohm/m',
    ['0.01 mohm/m', '1 ohm/m'],
    ['0.1 mohm/m', '100 mohm/m'],
    'arbitrary: from far above 4/0 AWG to far below 22 AWG',
  ),
  crimp: range(
    'height of a crimp',
    'mm',
    ['0.3 mm', '50 mm'],
    ['0.5 mm', '15 mm'],
    'arbitrary: from the thinnest wire to the thickest strap',
  ),
  force: range('pull-out force of a crimp', 'N', ['1 N', '100000 N'], ['20 N', '5000 N'], 'arbitrary'),
  inside: range('inside of a sleeve', 'mm', ['0.5 mm', '200 mm'], ['2 mm', '50 mm'], 'arbitrary'),
  tab: range('width of a flat tab', 'mm', ['0.5 mm', '50 mm'], ['2 mm', '12 mm'], 'arbitrary'),
  share: range(
    'share of a rating',
    '%',
    ['2 %', '100 %'],
    ['2 %', '100 %'],
    'a rating may be used up and not exceeded; below arbitrary, so that 0.8 entered for 80 % is told',
  ),
  extra: range('share on top', '%', ['0 %', '100 %'], ['1 %', '100 %'], 'arbitrary: at most as much again'),
  spread: range(
    'half the width of a tolerance',
    '%',
    ['0 %', '90 %'],
    ['1 %', '90 %'],
    'something must be left of the value',
  ),
  angle: range(
    'crank angle',
    'deg',
    ['0 deg', '720 deg'],
    ['0 deg', '720 deg'],
    'a cycle of a 4-stroke engine',
  ),
  cylinders: counted(
    'cylinders, coils, firings of a coil',
    1,
    16,
    'arbitrary: what the workbook has room for',
  ),
  coil_number: counted('number of a coil', 1, 99, 'arbitrary'),
  joints: counted('joints of a conductor', 0, 100, 'arbitrary'),
  parallel: counted('conductors in parallel', 1, 8, 'arbitrary: more are no longer of one length'),
  bundle: counted('conductors bundled together', 1, 200, 'arbitrary: beyond any harness at coils'),
  spares: counted('spares and samples', 0, 20, 'arbitrary'),
} as const satisfies Readonly<Record<string, Range>>;

/** Ends of a range in the unit of a quantity of the model. */
export const ends = ({ unit, from, to }: Range, wanted: string): readonly [number, number] =>
  wanted === unit ? [from, to] : [inUnit(from, unit, wanted), inUnit(to, unit, wanted)];

/** The unit of these in which a number without one most likely stands: the first that makes a usual value of it. */
export function likelyUnit(
  number: number,
  { unit, usual: [from, to] }: Range,
  units: readonly string[],
): string {
  const fits = (one: string): boolean => {
    const value = inUnit(number, one, unit);
    return value >= from && value <= to;
  };
  return units.find(fits) ?? (units[0] as string);
}
