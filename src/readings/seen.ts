/** Readings as they are weighed: value and own variance of each, and what the install shows there in some state of its parts. */
import type { Instrument, Measured } from '../design/design.ts';
import type { Hypothesis } from './causes.ts';
import { atPosts, currentBehind } from './expected.ts';
import { errorOf, senseOf } from './instruments.ts';
import { asExpected, HALF, type Parts, STEADY } from './parts.ts';
import { type Show, showIn } from './show.ts';
import { type Warmth, warmthOf } from './warmth.ts';

/** Of the tolerance of a coil, as much of a peak that several share: two or three of them make it. Arbitrary. */
const UNEVEN = 0.7;

export interface Shown {
  readonly shown: readonly number[];
  /** Of each reading the current behind it [A]; 0 where no resistance turns one into what is read. */
  readonly amps: readonly number[];
}

export class Seen {
  readonly parts: Parts;
  readonly readings: readonly Measured[];
  readonly values: readonly number[];
  /** Variance of each reading by itself, without the share that goes with the value. */
  readonly own: readonly number[];
  /** Of those that are temperatures. */
  readonly warmth: readonly (Warmth | null)[];

  readonly #known: { readonly state: readonly number[]; readonly show: Show }[] = [];

  constructor(parts: Parts, readings: readonly Measured[]) {
    this.parts = parts;
    this.readings = readings;
    const { design } = parts.e;
    const spread = parts.e.number('thermal_spread') ?? 1;
    this.warmth = readings.map((r) => (r.what === 'temperature' ? warmthOf(design, r, spread) : null));
    this.values = readings.map(({ value }, i) => this.weighed(i, value));
    this.own = readings.map((r, i) => this.warmth[i]?.variance ?? this.#variance(r));
  }

  #variance(r: Measured): number {
    const { design } = this.parts.e;
    const gain = STEADY * design.instruments[senseOf(r.instrument)].share * r.value;
    // The peak in a shared conductor is that of whichever coils draw most: no straight line in their tolerances.
    const shared =
      (r.instrument === 'clamp_peak' || r.instrument === 'scope') &&
      r.wire !== null &&
      (design.wires[r.wire]?.coils.length ?? 0) > 1;
    const uneven = shared ? UNEVEN * design.tolerance.coil_inductance * r.value : 0;
    return (errorOf(design, r, r.value) ** 2 - gain ** 2 + uneven ** 2) / HALF ** 2;
  }

  /** What stands for a reading of this value. */
  weighed(i: number, value: number): number {
    return this.warmth[i]?.weighed(value) ?? value;
  }

  /** What instruments show with these causes in, the parts as they are thought to be, each in its own deviation. */
  with(causes: readonly Hypothesis[], sizes: readonly number[], around: readonly number[] = []): Shown {
    const { parts, readings } = this;
    const state = asExpected(parts).map((_, k) => (around[k] ?? 0) * (parts.spread[k] as number));
    causes.forEach(({ moves }, k) => {
      for (const [knob, by] of moves) state[knob] = (state[knob] as number) + by * (sizes[k] as number);
    });
    const taken = new Map(
      causes.flatMap(({ reading }) =>
        reading?.instrument === undefined ? [] : [[reading.index, reading.instrument] as const],
      ),
    );
    const show = this.showIn(state);
    return {
      shown: readings.map((reading, i) => {
        const instrument = taken.get(i) ?? reading.instrument;
        return this.weighed(i, this.#gain(state, instrument) * show({ ...reading, instrument }));
      }),
      amps: readings.map((reading) => behind(reading, show)),
    };
  }

  /** The currents of a state are worked out once. */
  showIn(state: readonly number[]): Show {
    const known = this.#known.find((one) => one.state.every((value, k) => value === state[k]));
    if (known !== undefined) return known.show;
    const show = showIn(this.parts, state);
    this.#known.push({ state, show });
    return show;
  }

  #gain(state: readonly number[], instrument: Instrument): number {
    return Math.exp(state[this.parts.index.get(`gain ${senseOf(instrument)}`) as number] as number);
  }
}

/** The current that resistances turn into this reading; 0 where none do. */
function behind(reading: Measured, show: Show): number {
  const { what, wire, between } = reading;
  if ((what !== 'drop' && what !== 'voltage' && what !== 'supply') || atPosts(reading)) return 0;
  return show(currentBehind({ ...reading, wire: between?.[0] ?? wire }));
}
