/** What every instrument shows at every conductor and coil, at every point, with the range that tolerances allow. */
import type { At } from '../basis/quantity.ts';
import type { Instrument, What } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { SPREADS } from '../model/readings.ts';

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
}

/** What to expect there, in `unit`; null where the model has no figure. */
export interface Expected extends Where {
  readonly expected: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: 'V' | 'A' | 'ohm';
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
  'supply meter coil': 'expected_supply_average',
  'supply scope coil': 'expected_supply_least',
  'current clamp_average coil': 'expected_coil_average',
  'current clamp_effective coil': 'expected_coil_effective',
  'current clamp_peak coil': 'expected_coil_peak',
};

/** The model's quantity for a reading; null for the supply at the battery posts, which the design states. */
export const quantityOf = ({ what, instrument, wire }: Where): QuantityName | null =>
  QUANTITY[`${what} ${instrument} ${wire === null ? 'coil' : 'wire'}`] ?? null;

/** True for the supply at the battery posts. */
export const atPosts = ({ what, coil }: Where): boolean => what === 'supply' && coil === null;

/** What to expect of one reading. The evaluation must hold the subject `readings`. */
export function expectedAt(e: Evaluation, where: Where): Expected {
  const { what, instrument, wire, coil, point } = where;
  const place = { what, instrument, wire, coil, point };
  if (atPosts(where)) {
    // What the point states is what the posts are held to; a tolerance of it would be a tolerance of everything.
    const supply = e.design.points[point ?? -1]?.supply ?? null;
    return { ...place, expected: supply, low: supply, high: supply, unit: 'V', shown: 'V' };
  }
  const name = quantityOf(where);
  if (name === null) throw new Error(`${instrument} does not measure ${what}`);
  const at: At = {
    ...(wire === null ? {} : { wire }),
    ...(coil === null ? {} : { coil }),
    ...(point === null ? {} : { point }),
  };
  const values = SPREADS.map((_, spread) => e.number(name, { ...at, spread }));
  const known = values.filter((value) => value !== null);
  const { unit, shown } = QUANTITIES[name];
  return {
    ...place,
    expected: values[SPREADS.indexOf('expected')] ?? null,
    // A supply is least where the currents are largest.
    low: known.length < SPREADS.length ? null : Math.min(...known),
    high: known.length < SPREADS.length ? null : Math.max(...known),
    unit: unit as Expected['unit'],
    shown: shown ?? unit,
  };
}

/**
 * Every reading that can be taken: at each point the battery posts, drops and currents of each conductor, supply and
 * current of each coil; then the resistance of each conductor. Points in order, conductors and coils within them.
 */
export function expectedReadings(e: Evaluation): Expected[] {
  const { points, wires, coils } = e.design;
  const at = (where: Omit<Where, 'wire' | 'coil'> & Partial<Where>): Expected =>
    expectedAt(e, { wire: null, coil: null, ...where });
  return [
    ...points.flatMap((_, point) => [
      at({ what: 'supply', instrument: 'meter', point }),
      ...wires.flatMap((_, wire) => [
        ...(['meter', 'scope'] as const).map((instrument) => at({ what: 'drop', instrument, wire, point })),
        ...CLAMPS.map((instrument) => at({ what: 'current', instrument, wire, point })),
      ]),
      ...coils.flatMap((_, coil) => [
        ...(['meter', 'scope'] as const).map((instrument) => at({ what: 'supply', instrument, coil, point })),
        ...CLAMPS.map((instrument) => at({ what: 'current', instrument, coil, point })),
      ]),
    ]),
    ...wires.map((_, wire) => at({ what: 'resistance', instrument: 'value', wire, point: null })),
  ];
}

const CLAMPS = ['clamp_average', 'clamp_effective', 'clamp_peak'] as const;
