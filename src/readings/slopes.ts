/**
 * By how much readings rise with each part, at the expected install: finite differences of the exact currents, where currents
 * have to be worked out for them. Resistances that carry the same coils do the same to all currents: one stands for all of
 * them, and what each does besides, in its own place, is that current itself.
 */
import type { Measured } from '../design/design.ts';
import type { Hypothesis } from './causes.ts';
import { atPosts, currentBehind } from './expected.ts';
import { senseOf } from './instruments.ts';
import { asExpected, type Knob } from './parts.ts';
import type { Seen, Shown } from './seen.ts';
import { showIn } from './show.ts';

/** Of each reading, for each step of 1; null when none moves. */
export type Slope = readonly number[] | null;

/** Steps: [ohm], [V], the others in ln of a factor. */
const STEPS: Readonly<Partial<Record<Knob['of'], number>>> = { wire: 2e-5, within: 2e-5, supply: 0.05 };
const STEP = 0.01;

/** Slopes by knob. */
export function slopesOf(seen: Seen, { shown: expected, amps }: Shown): Slope[] {
  const { parts, readings } = seen;
  const alike = new Map<string, { readonly wire: number; readonly slope: readonly number[] }>();
  const limited = [...parts.circuits.values()].some(({ limit }) => limit < Number.POSITIVE_INFINITY);

  const differences = (index: number, step: number, point: number | null): number[] => {
    const state = asExpected(parts);
    state[index] = step;
    const show = showIn(parts, state);
    return readings.map((reading, i) =>
      point !== null && reading.point !== point
        ? 0
        : (seen.weighed(i, show(reading)) - (expected[i] as number)) / step,
    );
  };

  const asIs = seen.showIn(asExpected(parts));
  /** What a resistance adds to a reading in its own place, the currents as they are: its current, or itself. */
  const here = (wire: number, reading: Measured): number => {
    const { what, between } = reading;
    if (between ? !between.includes(wire) : reading.wire !== wire) return 0;
    if (what === 'resistance') return 1;
    if (what !== 'drop' && what !== 'voltage') return 0;
    return asIs(currentBehind({ ...reading, wire }));
  };

  const ofWire = (wire: number, index: number): readonly number[] => {
    // A temperature goes with the square of a current, and nothing but the source moves the posts.
    const apart = readings.some(
      ({ wire: own, what, across }) => own === wire && (what === 'temperature' || across),
    );
    if (apart || wire === parts.source) return differences(index, STEPS.wire as number, null);
    const key = (parts.e.design.wires[wire]?.coils ?? []).join();
    const known = alike.get(key);
    if (known === undefined) {
      const slope = differences(index, STEPS.wire as number, null);
      alike.set(key, { wire, slope });
      return slope;
    }
    return known.slope.map(
      (value, i) => value - here(known.wire, readings[i] as Measured) + here(wire, readings[i] as Measured),
    );
  };

  /** In series with a wire of its own: that wire stands for it, but for the drop of the wire itself. */
  const ofCoil = (coil: number, index: number): readonly number[] => {
    const known = alike.get(String(coil));
    if (known === undefined) return differences(index, STEP, null);
    return known.slope.map((value, i) => {
      const reading = readings[i] as Measured;
      if (reading.what === 'resistance' && reading.coil === coil) return expected[i] as number;
      const circuit = parts.circuits.get(reading.point ?? -1);
      if (circuit === undefined) return 0;
      const ohm = circuit.ohm - (parts.e.number('series_ohm', { speed: reading.point as number }) ?? 0);
      const own = here(known.wire, reading);
      const left = reading.what === 'supply' && reading.coil === coil ? (amps[i] as number) : 0;
      return ohm * (value - own + left);
    });
  };

  return parts.knobs.map((knob, index) => {
    const slope = ((): readonly number[] | null => {
      switch (knob.of) {
        case 'gain':
          return knob.sense === 'camera'
            ? null
            : expected.map((value, i) =>
                senseOf((readings[i] as Measured).instrument) === knob.sense ? value : 0,
              );
        case 'ohm':
          return ofCoil(knob.coil, index);
        case 'unplugged':
          return expected.map((value, i) => (unplugged(readings[i] as Measured) ? value : 0));
        case 'limit':
          return limited ? differences(index, STEP, null) : null;
        case 'wire':
          return ofWire(knob.wire, index);
        default:
          return differences(index, STEPS[knob.of] ?? STEP, knob.of === 'supply' ? knob.point : null);
      }
    })();
    return slope?.some((value) => value !== 0) ? slope : null;
  });
}

const unplugged = ({ what, coil }: Measured): boolean => what === 'resistance' && coil !== null;

/** A slope at a model: what a current drives goes with the current, and so does what a resistance makes of it. */
export function scaled(
  { parts, readings, warmth }: Seen,
  knob: Knob,
  slope: readonly number[],
  expected: readonly number[],
  at: {
    readonly shown: readonly number[];
    readonly driven: readonly number[];
    readonly causes: readonly Hypothesis[];
  },
  supplies: ReadonlyMap<number, number>,
): number[] {
  return slope.map((value, i) => {
    if (value === 0) return 0;
    const [now, before] = [at.shown[i] as number, expected[i] as number];
    // Of a logarithm.
    if (warmth[i]) return value * Math.exp(before - now);
    if (knob.of === 'wire' || knob.of === 'within') {
      const other = at.causes.some(({ how, reading }) => how === 'taken' && reading?.index === i);
      return other && before > 0 ? (value * now) / before : value * (at.driven[i] as number);
    }
    const reading = readings[i] as Measured;
    if (knob.of === 'gain' || reading.what !== 'supply') return before > 0 ? (value * now) / before : value;
    if (knob.of === 'supply' || atPosts(reading)) return value;
    const posts = parts.circuits.get(reading.point as number)?.supply ?? 0;
    const sag = posts - before;
    return sag > 0
      ? (value * Math.max(0, posts + (supplies.get(reading.point as number) ?? 0) - now)) / sag
      : value;
  });
}
