/** What every instrument shows at every conductor and coil, at every point, with the range that tolerances allow. */
import type { At, Quantity } from '../basis/quantity.ts';
import type { Design, Instrument, What } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { SPREADS } from '../model/readings.ts';
import { acrossOhm } from './across.ts';
import { statedAt } from './instruments.ts';
import { triggerRange } from './trigger.ts';

/** Where and with what a reading is taken. Indices of the design. */
export interface Where {
  readonly what: What;
  /** Null at a coil and at the battery posts. */
  readonly wire: number | null;
  /** Null at a conductor and at the battery posts. */
  readonly coil: number | null;
  /** Null where nothing runs: a resistance. */
  readonly point: number | null;
  readonly instrument: Instrument;
  /** Of a voltage between two places: the conductors between them. */
  readonly between?: readonly number[] | null;
  /** Of a drop: one place within the conductor, `fuse`, `joint 2`. */
  readonly across?: string | null;
  /** Of a temperature: that of the air around it [degC]; null where only the rise above it is meant. */
  readonly ambient?: number | null;
}

/** What to expect there, in `unit`; null where the model has no figure. */
export interface Expected extends Where {
  readonly expected: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: 'V' | 'A' | 'ohm' | 'H' | 's' | 'degC' | 'K';
  /** Unit in which a person reads it. */
  readonly shown: string;
}

/** Quantities of the model by what is measured, with which instrument, at a conductor or a coil. */
const QUANTITY: Readonly<Record<string, QuantityName>> = {
  'drop meter wire': 'expected_drop_average',
  'drop scope wire': 'expected_drop_peak',
  'current clamp_average wire': 'expected_average',
  'current clamp_effective wire': 'expected_effective',
  'current clamp_peak wire': 'expected_peak',
  'resistance value wire': 'expected_ohm',
  'resistance value coil': 'expected_primary',
  'resistance ohmmeter coil': 'expected_primary',
  'inductance trace coil': 'spread_henry',
  'dwell log coil': 'spread_dwell',
  'resting meter coil': 'expected_resting',
  'temperature camera wire': 'expected_rise',
  'supply least coil': 'expected_supply_average',
  'supply meter coil': 'expected_supply_average',
  'supply scope coil': 'expected_supply_least',
  'current clamp_average coil': 'expected_coil_average',
  'current clamp_effective coil': 'expected_coil_effective',
  'current clamp_peak coil': 'expected_coil_peak',
};

/** True for the supply at the battery posts. */
export const atPosts = ({ what, coil }: Where): boolean => what === 'supply' && coil === null;

/** The model's quantity for a reading; null for the supply at the battery posts, which the design states. */
export const quantityOf = (where: Where): QuantityName | null =>
  atPosts(where)
    ? null
    : (QUANTITY[`${where.what} ${where.instrument} ${where.wire === null ? 'coil' : 'wire'}`] ?? null);

/** Units of a reading: those of its quantity. */
function readLike(name: QuantityName): Pick<Expected, 'unit' | 'shown'> {
  const { unit, shown = unit }: Quantity = QUANTITIES[name];
  return { unit: unit as Expected['unit'], shown };
}

/** What to expect of one reading. The evaluation must hold the subject `readings`. */
export function expectedAt(e: Evaluation, where: Where): Expected {
  const { what, instrument, wire, coil, point } = where;
  const place = { what, instrument, wire, coil, point };
  if (atPosts(where)) {
    // What the point states is what the posts are held to; a tolerance of it would be a tolerance of everything.
    const at = e.design.points[point ?? -1];
    const supply = at === undefined ? null : statedAt(at, instrument);
    return { ...place, expected: supply, low: supply, high: supply, ...readLike('point_supply') };
  }
  if (where.between) {
    // The drops of a path one after the other; each range at its worst.
    const drops = where.between.map((one) =>
      expectedAt(e, { ...where, what: 'drop', wire: one, between: null }),
    );
    const sum = (of: (x: Expected) => number | null): number | null =>
      drops.reduce<number | null>((total, x) => {
        const value = of(x);
        return total === null || value === null ? null : total + value;
      }, 0);
    return {
      ...place,
      between: where.between,
      expected: sum((x) => x.expected),
      low: sum((x) => x.low),
      high: sum((x) => x.high),
      ...readLike('expected_drop_average'),
    };
  }
  if (what === 'trigger') return { ...place, ...triggerRange(e, where), unit: 'V', shown: 'V' };
  if (what === 'temperature') return temperatureExpected(e, where);
  if (where.across) return acrossExpected(e, where, where.across);
  const name = quantityOf(where);
  if (name === null) throw new Error(`${instrument} does not measure ${what}`);
  const at: At = {
    ...(wire === null ? {} : { wire }),
    ...(coil === null ? {} : { coil }),
    ...(point === null ? {} : { point }),
  };
  const values = SPREADS.map((_, spread) => e.number(name, { ...at, spread }));
  const known = values.filter((value) => value !== null);
  // What a meter holds while the starter turns is as much lower as the posts are.
  const dip = instrument === 'least' ? dipOf(e, point) : 0;
  return {
    ...place,
    expected: known.length < SPREADS.length ? null : (values[SPREADS.indexOf('expected')] as number) - dip,
    // A supply is least where the currents are largest.
    low: known.length < SPREADS.length ? null : Math.min(...known) - dip,
    high: known.length < SPREADS.length ? null : Math.max(...known) - dip,
    ...readLike(name),
  };
}

/** By how much the supply dips below that of its point while the starter turns [V]. */
function dipOf({ design }: Evaluation, point: number | null): number {
  const at = design.points[point ?? -1];
  return at === undefined ? 0 : at.supply - statedAt(at, 'least');
}

/** Of the hottest place, or of one place, each tolerance at its end and the thermal spread beyond. */
function temperatureExpected(e: Evaluation, where: Where): Expected {
  const { wire, point, across, ambient = null, what, instrument, coil } = where;
  const { run } = e.design.wires[wire as number] as Design['wires'][number];
  const [low, expected, high] = SPREADS.map((_, spread) => {
    const at = { wire: wire as number, point: point as number, spread };
    if (!across) return e.number('expected_rise', at);
    const sign = spread - SPREADS.indexOf('expected');
    const ohm = acrossOhm(e, wire as number, across) * (1 + sign * e.design.tolerance.joint_resistance);
    const heat = (e.number('expected_effective', at) ?? 0) ** 2 * ohm;
    const rise = (e.number('expected_wire_rise', at) ?? 0) + (e.number('place_rise', { run }) ?? 0) * heat;
    return rise * (e.number('thermal_spread') ?? 1) ** sign;
  }).map((rise) => (rise == null ? null : rise + (ambient ?? 0)));
  const unit = ambient === null ? 'K' : 'degC';
  return {
    ...{ what, instrument, wire, coil, point, across: across ?? null, ambient },
    ...{ expected: expected ?? null, low: low ?? null, high: high ?? null },
    ...{ unit, shown: unit },
  };
}

/** Where and with what the current is read that makes this voltage: its average, or its peak. */
export const currentBehind = <T extends Where>(where: T): T => ({
  ...where,
  what: 'current',
  instrument: where.instrument === 'meter' ? 'clamp_average' : 'clamp_peak',
  between: null,
  across: null,
});

/** The current there through what the place has, each at its end. */
function acrossExpected(e: Evaluation, where: Where, across: string): Expected {
  const amps = expectedAt(e, currentBehind(where));
  const ohm = acrossOhm(e, where.wire as number, across);
  const by = e.design.tolerance.joint_resistance;
  const times = (value: number | null, factor: number): number | null =>
    value === null ? null : value * factor;
  return {
    ...amps,
    what: where.what,
    instrument: where.instrument,
    across,
    expected: times(amps.expected, ohm),
    low: times(amps.low, ohm * Math.max(0, 1 - by)),
    high: times(amps.high, ohm * (1 + by)),
    unit: 'V',
    shown: 'mV',
  };
}

/**
 * Every place where a reading can be taken: at each point the battery posts, drops and currents of each conductor, supply
 * and current of each coil; then the resistance of each conductor. Points in order, conductors and coils within them.
 */
export function placesOf({ points, wires, coils }: Design): Where[] {
  const nowhere = { wire: null, coil: null };
  return [
    ...points.flatMap((_, point): Where[] => [
      { ...nowhere, what: 'supply', instrument: 'meter', point },
      ...wires.flatMap((__, wire): Where[] => [
        ...VOLTS.map((instrument): Where => ({ what: 'drop', instrument, wire, coil: null, point })),
        ...CLAMPS.map((instrument): Where => ({ what: 'current', instrument, wire, coil: null, point })),
      ]),
      ...coils.flatMap((__, coil): Where[] => [
        ...VOLTS.map((instrument): Where => ({ what: 'supply', instrument, wire: null, coil, point })),
        ...CLAMPS.map((instrument): Where => ({ what: 'current', instrument, wire: null, coil, point })),
      ]),
    ]),
    ...wires.map(
      (_, wire): Where => ({ what: 'resistance', instrument: 'value', wire, coil: null, point: null }),
    ),
  ];
}

const VOLTS = ['meter', 'scope'] as const;
const CLAMPS = ['clamp_average', 'clamp_effective', 'clamp_peak'] as const;

/** What to expect at every place. The evaluation must hold the subject `readings`. */
export const expectedReadings = (e: Evaluation): Expected[] =>
  placesOf(e.design).map((where) => expectedAt(e, where));
