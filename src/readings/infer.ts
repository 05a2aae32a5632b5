/**
 * What explains all readings together: every hypothesis weighed alike.
 *
 * A model is none, one or several hypotheses with their sizes. Its readings are those of the exact currents with these
 * sizes put in; they may differ from what was read by the errors of the instruments and by the tolerances of all parts,
 * which move many readings together. The tolerances enter as straight lines: the slopes of the expected install, each in
 * proportion to what the reading has become. The sizes that fit best are sought with slopes of the model itself, and what
 * a model is worth is its probability after all sizes that it could have had, by Laplace's method (Kass and Raftery 1995,
 * "Bayes factors", section 4.1, from memory): a cause that could explain anything is worth less than one that had to
 * show just this. Together with its odds that gives each model its share.
 */
import type { Measured } from '../design/design.ts';
import { causesOf, type Hypothesis, lnDensity, ODDS, samePart, TOGETHER } from './causes.ts';
import { atPosts, type Where } from './expected.ts';
import { dot, type Gauss, gaussOf, inverse } from './gauss.ts';
import { errorOf, senseOf } from './instruments.ts';
import { asExpected, type Knob, type Parts, STEADY } from './parts.ts';
import { showIn } from './show.ts';
import { type Warmth, warmthOf } from './warmth.ts';

export interface Model {
  readonly causes: readonly Hypothesis[];
  readonly sizes: readonly number[];
  /** Covariance of the sizes that are free. */
  readonly spread: readonly (readonly number[])[];
  /** ln of odds times probability of the readings; shares are made of it. */
  readonly worth: number;
  /** Sum of squares that is left, each in its own deviation: about as many as there are readings. */
  readonly left: number;
  readonly share: number;
}

export interface Inference {
  readonly parts: Parts;
  readonly readings: readonly Measured[];
  /** The likeliest first; their shares are 1 together. */
  readonly models: readonly Model[];
  /** Probability that a sound reading of the best model differs as much: small when nothing explains them. */
  readonly fits: number;
  /** How much a size of this hypothesis would show, in ln of the probability, for a size of 1: the square of a slope. */
  readonly shows: (cause: Hypothesis) => number;
  readonly causes: readonly Hypothesis[];
}

/** Of the tolerance of a coil, as much of a peak that several share: two or three of them make it. Arbitrary. */
const UNEVEN = 0.7;
/** Half of an even range over its standard deviation. */
const HALF = Math.sqrt(3);
/** A model fits when sound readings would differ as much this often. */
export const MISFIT = 0.005;
/** Hypotheses that are looked at closely: of parts, and of single readings. Arbitrary; the others explain far less. */
const CLOSE = 10;
const READINGS = 5;
/** What is looked at explains as much at first sight [ln], and such a share of what the best explains. Arbitrary. */
const LEAST = 1;
const WORTH = 0.3;
/** Of two at a time: first causes, and second ones for each. */
const FIRSTS = 3;
const SECONDS = 5;
/** More causes than these at a time are no diagnosis. */
const MOST_CAUSES = 3;
/** Rounds in which sizes settle, and the gain below which they have [ln]. */
const ROUNDS = 5;
const SETTLED = 0.02;
/** Factors to start from beside that of the slopes, as ln: a limit of the current can hide which way it goes. */
const FACTORS = [-0.45, 0.5];
/** Only scales this near to what the readings say are tried [ln]. */
const NEAR = 0.4;
/** A misread value may be anything up to so many times of what it should be. Arbitrary. */
const ANYTHING = 3;

/** Weighs all hypotheses. At least one reading. */
export const infer = (parts: Parts, readings: readonly Measured[]): Inference =>
  new Search(parts, readings).run();

interface Tried {
  readonly causes: readonly Hypothesis[];
  readonly sizes: readonly number[];
  readonly around: readonly number[];
  readonly shown: readonly number[];
  /** Of each reading the current behind it, over the expected one. */
  readonly driven: readonly number[];
  readonly apart: readonly number[];
  readonly gauss: Gauss;
  readonly lnLikely: number;
  readonly left: number;
  /** What the parts most likely are, each in its own deviation. */
  readonly parts: readonly number[];
  /** Slopes of the free sizes, where they were worked out. */
  readonly columns?: readonly (readonly number[])[];
}

class Search {
  readonly #parts: Parts;
  readonly #readings: readonly Measured[];
  readonly #values: readonly number[];
  /** Of those that are temperatures. */
  readonly #warmth: readonly (Warmth | null)[];
  /** Variance of each reading by itself, and the share of it that goes with the value. */
  readonly #own: readonly number[];
  readonly #expected: readonly number[];
  /** Of each reading the current behind it; 0 where a resistance does not turn one into what is read. */
  readonly #amps: readonly number[];
  /** By knob: by how much each reading rises for 1; null when none does. */
  readonly #slopes: readonly (readonly number[] | null)[];

  constructor(parts: Parts, readings: readonly Measured[]) {
    this.#parts = parts;
    this.#readings = readings;
    const { design } = parts.e;
    const spread = parts.e.number('thermal_spread') ?? 1;
    this.#warmth = readings.map((r) => (r.what === 'temperature' ? warmthOf(design, r, spread) : null));
    this.#values = readings.map(({ value }, i) => this.#weighed(i, value));
    this.#own = readings.map((r, i) => {
      const warmth = this.#warmth[i];
      if (warmth) return warmth.variance;
      const gain = STEADY * design.instruments[senseOf(r.instrument)].share * r.value;
      // The peak in a shared conductor is that of whichever coils draw most: no straight line in their tolerances.
      const shared =
        (r.instrument === 'clamp_peak' || r.instrument === 'scope') &&
        r.wire !== null &&
        (design.wires[r.wire]?.coils.length ?? 0) > 1;
      const uneven = shared ? UNEVEN * design.tolerance.coil_inductance * r.value : 0;
      return (errorOf(design, r, r.value) ** 2 - gain ** 2 + uneven ** 2) / HALF ** 2;
    });
    const expected = this.#shown([], []);
    this.#expected = expected.shown;
    this.#amps = expected.amps;
    this.#slopes = parts.knobs.map((knob, i) => this.#slope(knob, i));
  }

  run(): Inference {
    const causes = causesOf(this.#parts, this.#readings);
    const sound = this.#settled(this.#tried([], []));
    const models = [this.#model(sound)];
    models.push(...this.#closer(sound, causes, CLOSE, READINGS));
    for (let many = 2; many <= MOST_CAUSES && this.#misfit(models); many++) {
      const firsts = models.filter((m) => m.causes.length === many - 1).slice(0, many === 2 ? FIRSTS : 1);
      for (const first of firsts)
        models.push(
          ...this.#closer(this.#settled(this.#tried(first.causes, first.sizes)), causes, SECONDS, 2),
        );
      models.sort((a, b) => b.worth - a.worth);
    }
    models.sort((a, b) => b.worth - a.worth);
    const most = models[0]?.worth as number;
    const total = models.reduce((sum, { worth }) => sum + Math.exp(worth - most), 0);
    return {
      parts: this.#parts,
      readings: this.#readings,
      models: models.map((model) => ({ ...model, share: Math.exp(model.worth - most) / total })),
      fits: beyond(models[0]?.left as number, this.#readings.length),
      causes,
      shows: (cause) => {
        const column = this.#direction(cause, sound);
        return column === null ? 0 : dot(column, sound.gauss.weigh(column));
      },
    };
  }

  /** Whether the best of these leaves more than errors and tolerances do. */
  #misfit(models: Model[]): boolean {
    models.sort((a, b) => b.worth - a.worth);
    return beyond(models[0]?.left as number, this.#readings.length) < MISFIT;
  }

  /** What instruments show with these causes in, the parts as they are thought to be, each in its own deviation. */
  #shown(
    causes: readonly Hypothesis[],
    sizes: readonly number[],
    around: readonly number[] = [],
  ): { shown: number[]; amps: number[] } {
    const state = asExpected(this.#parts).map((_, k) => (around[k] ?? 0) * (this.#parts.spread[k] as number));
    causes.forEach(({ moves }, k) => {
      for (const [knob, by] of moves) state[knob] = (state[knob] as number) + by * (sizes[k] as number);
    });
    const taken = new Map(
      causes.flatMap(({ reading }) =>
        reading?.instrument === undefined ? [] : [[reading.index, reading.instrument] as const],
      ),
    );
    const show = showIn(this.#parts, state);
    const shown = this.#readings.map((reading, i) => {
      const instrument = taken.get(i) ?? reading.instrument;
      return this.#weighed(i, this.#gain(state, instrument) * show({ ...reading, instrument }));
    });
    const amps = this.#readings.map((reading) => {
      const behind = currentBehind(reading);
      return behind === null ? 0 : show(behind);
    });
    return { shown, amps };
  }

  /** What stands for a reading of this value. */
  #weighed(i: number, value: number): number {
    return this.#warmth[i]?.weighed(value) ?? value;
  }

  #gain(state: readonly number[], instrument: Measured['instrument']): number {
    return Math.exp(state[this.#parts.index.get(`gain ${senseOf(instrument)}`) as number] as number);
  }

  /** By finite differences of the exact currents at the expected install. */
  #slope(knob: Knob, index: number): number[] | null {
    const { point, sense } = { point: null, sense: null, ...knob } as {
      point: number | null;
      sense: string | null;
    };
    if (sense === 'camera') return null;
    if (sense !== null)
      return this.#expected.map((value, i) =>
        senseOf((this.#readings[i] as Measured).instrument) === sense ? value : 0,
      );
    const step = knob.of === 'wire' || knob.of === 'within' ? 1e-3 : knob.of === 'supply' ? 0.05 : 0.01;
    const state = asExpected(this.#parts);
    state[index] = step;
    const show = showIn(this.#parts, state);
    const column = this.#readings.map((reading, i) =>
      point !== null && reading.point !== point
        ? 0
        : (this.#weighed(i, show(reading)) - (this.#expected[i] as number)) / step,
    );
    return column.some((value) => value !== 0) ? column : null;
  }

  /** A slope at a model: what a current drives goes with the current, and so does what a resistance makes of it. */
  #scaled(
    knob: Knob,
    slope: readonly number[],
    shown: readonly number[],
    causes: readonly Hypothesis[],
    supplies: ReadonlyMap<number, number>,
    driven: readonly number[],
  ): number[] {
    return slope.map((value, i) => {
      if (value === 0) return 0;
      const [now, before] = [shown[i] as number, this.#expected[i] as number];
      // Of a logarithm.
      if (this.#warmth[i]) return value * Math.exp(before - now);
      const other = causes.some(({ how, reading }) => how === 'taken' && reading?.index === i);
      if (knob.of === 'wire' || knob.of === 'within')
        return other && before > 0 ? (value * now) / before : value * (driven[i] as number);
      const reading = this.#readings[i] as Measured;
      if (knob.of === 'gain' || reading.what !== 'supply') return before > 0 ? (value * now) / before : value;
      if (knob.of === 'supply' || atPosts(reading)) return value;
      const posts = this.#parts.circuits.get(reading.point as number)?.supply ?? 0;
      const sag = posts - before;
      return sag > 0
        ? (value * Math.max(0, posts + (supplies.get(reading.point as number) ?? 0) - now)) / sag
        : value;
    });
  }

  #suppliesOf(causes: readonly Hypothesis[], sizes: readonly number[]): Map<number, number> {
    const found = new Map<number, number>();
    causes.forEach(({ moves }, k) => {
      for (const [index, by] of moves) {
        const knob = this.#parts.knobs[index] as Knob;
        if (knob.of === 'supply')
          found.set(knob.point, (found.get(knob.point) ?? 0) + by * (sizes[k] as number));
      }
    });
    return found;
  }

  /** The readings by a straight line through the model in which the parts are as `around` says. */
  #tried(causes: readonly Hypothesis[], sizes: readonly number[], around: readonly number[] = []): Tried {
    const { shown, amps } =
      causes.length === 0 && around.length === 0
        ? { shown: this.#expected, amps: this.#amps }
        : this.#shown(causes, sizes, around);
    const driven = amps.map((now, i) =>
      (this.#amps[i] as number) > 0 ? now / (this.#amps[i] as number) : 1,
    );
    const apart = this.#values.map((value, i) => value - (shown[i] as number));
    const supplies = this.#suppliesOf(causes, sizes);
    const active = this.#slopes.flatMap((slope, k) =>
      slope === null || this.#parts.spread[k] === 0 ? [] : [{ slope, k, knob: this.#parts.knobs[k] as Knob }],
    );
    const columns = active.map(({ slope, k, knob }) =>
      this.#scaled(knob, slope, shown, causes, supplies, driven).map(
        (value) => value * (this.#parts.spread[k] as number),
      ),
    );
    active.forEach(({ k }, p) => {
      const back = around[k] ?? 0;
      if (back !== 0)
        (columns[p] as number[]).forEach((value, i) => {
          apart[i] = (apart[i] as number) + value * back;
        });
    });
    const own = [...this.#own];
    for (const { how, reading } of causes)
      if (how === 'misread' && reading !== undefined) {
        const i = reading.index;
        own[i] =
          (ANYTHING * Math.max(Math.abs(this.#values[i] as number), Math.abs(shown[i] as number), 1e-3)) ** 2;
      }
    const gauss = gaussOf(own, columns);
    const left = dot(apart, gauss.weigh(apart));
    const likely = gauss.likely(apart);
    const parts = this.#slopes.map(() => 0);
    active.forEach(({ k }, p) => {
      parts[k] = likely[p] as number;
    });
    return {
      causes,
      sizes,
      around,
      shown,
      driven,
      apart,
      gauss,
      left,
      parts,
      lnLikely: -(left + gauss.lnDet) / 2,
    };
  }

  /** By how much each reading moves for a size of 1, by the slopes of the expected install; null when none does. */
  #direction({ moves, reading, how }: Hypothesis, at: Tried): number[] | null {
    if (how === 'misread' && reading !== undefined)
      return this.#values.map((_, i) => (i === reading.index ? 1 : 0));
    let sum: number[] | null = null;
    const supplies = this.#suppliesOf(at.causes, at.sizes);
    for (const [index, by] of moves) {
      const slope = this.#slopes[index];
      if (!slope) continue;
      const scaled = this.#scaled(
        this.#parts.knobs[index] as Knob,
        slope,
        at.shown,
        at.causes,
        supplies,
        at.driven,
      );
      sum = scaled.map((value, i) => value * by + (sum?.[i] ?? 0));
    }
    return sum;
  }

  /** Those of the causes that explain most of what `from` leaves, each fitted together with those of `from`. */
  #closer(from: Tried, causes: readonly Hypothesis[], many: number, readings: number): Model[] {
    const weighed = from.gauss.weigh(from.apart);
    const seen = causes.flatMap((cause) => {
      if (
        from.causes.some(
          (c) =>
            samePart(c.part, cause.part) ||
            (c.how === 'misread' && cause.how === 'misread' && c.reading === cause.reading),
        )
      )
        return [];
      if (cause.how === 'taken') return [];
      const column = this.#direction(cause, from);
      if (column === null) return [];
      const shows = dot(column, from.gauss.weigh(column));
      if (!(shows > 0)) return [];
      const size = dot(column, weighed) / shows;
      const within =
        cause.how === 'misread' ? size : Math.max(cause.log ? 0 : cause.from, Math.min(cause.to, size));
      const gain = within * dot(column, weighed) - (within ** 2 * shows) / 2;
      return [{ cause, size: within, gain, score: gain + Math.log(cause.odds) }];
    });
    const ranked = [...seen].sort((x, y) => y.score - x.score);
    const most = Math.max(0, ...seen.map(({ gain }) => gain));
    const worth = ranked.filter(({ gain }) => gain > Math.max(LEAST, most * WORTH));
    const best = worth.filter(({ cause }) => cause.reading === undefined);
    const close = best.slice(0, many);
    // Everything that a part could have, when one of it is worth a look.
    const mates = ranked.filter(
      ({ cause, gain }) =>
        !close.some((c) => c.cause === cause) &&
        close.some((c) => samePart(c.cause.part, cause.part)) &&
        (cause.from === cause.to || gain > most * WORTH),
    );
    const single = worth.filter(({ cause }) => cause.reading !== undefined).slice(0, readings);
    const taken = causes.filter(
      ({ how, part }) => how === 'taken' && single.some(({ cause }) => samePart(cause.part, part)),
    );
    return [
      ...[...close, ...mates].map(({ cause, size }) => this.#fitted(from, cause, size)),
      ...[...single.map(({ cause }) => cause), ...taken].map((cause) => this.#fitted(from, cause, 0)),
    ].filter((model) => model !== null);
  }

  #fitted(from: Tried, cause: Hypothesis, size: number): Model | null {
    const causes = [...from.causes, cause];
    if (cause.how === 'scale' && cause.from === cause.to && Math.abs(cause.from - this.#scale(cause)) > NEAR)
      return null;
    const starts =
      cause.how === 'scale' && cause.from < cause.to
        ? [this.#scale(cause)]
        : [size, ...(cause.unit === 'ln' && this.#limited ? FACTORS : [])];
    const [best] = [...new Set(starts.map((start) => limited(cause, start)))]
      .map((start) => this.#tried(causes, [...from.sizes, start]))
      .sort((a, b) => b.lnLikely - a.lnLikely);
    return best === undefined ? null : this.#model(this.#settled(best));
  }

  /** Whether a current is limited anywhere. */
  get #limited(): boolean {
    return [...this.#parts.circuits.values()].some(({ limit }) => limit < Number.POSITIVE_INFINITY);
  }

  /** What an instrument shows over what is expected, in the middle of its readings. */
  #scale({ part }: Hypothesis): number {
    const ratios = this.#readings
      .flatMap(({ instrument, value }, i) =>
        part.is === 'instrument' &&
        senseOf(instrument) === part.sense &&
        value > 0 &&
        (this.#expected[i] as number) > 0
          ? [Math.log(value / (this.#expected[i] as number))]
          : [],
      )
      .sort((a, b) => a - b);
    return ratios[Math.floor(ratios.length / 2)] ?? 0;
  }

  /** Steps of Gauss and Newton, each halved until it is one to the better. */
  #settled(start: Tried): Tried {
    let now = this.#tried(start.causes, start.sizes, start.parts);
    let columns: number[][] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const free = freeOf(now.causes);
      if (free.length === 0) {
        const next = this.#tried(now.causes, now.sizes, now.parts);
        const still = Math.abs(next.lnLikely - now.lnLikely) < SETTLED;
        now = next;
        if (still) return now;
        continue;
      }
      // Slopes hardly change once the size is about right.
      if (round < 2) columns = free.map((k) => this.#slopeAt(now, k));
      const weighed = columns.map((column) => now.gauss.weigh(column));
      const covariance = inverse(weighed.map((w) => columns.map((c) => dot(w, c))));
      if (covariance === null) return { ...now, columns };
      const pull = weighed.map((w) => dot(w, now.apart));
      const step = covariance.map((row) => dot(row, pull));
      let better: Tried | null = null;
      for (let part = 1; part > 0.1 && better === null; part /= 2) {
        const sizes = [...now.sizes];
        free.forEach((k, i) => {
          sizes[k] = limited(
            now.causes[k] as Hypothesis,
            (now.sizes[k] as number) + part * (step[i] as number),
          );
        });
        const tried = this.#tried(now.causes, sizes, now.parts);
        if (tried.lnLikely > now.lnLikely) better = tried;
      }
      if (better === null) return { ...now, columns };
      const gain = better.lnLikely - now.lnLikely;
      now = better;
      if (gain < SETTLED && round > 0) return { ...now, columns };
    }
    return { ...now, columns };
  }

  #slopeAt(at: Tried, k: number): number[] {
    const cause = at.causes[k] as Hypothesis;
    const size = at.sizes[k] as number;
    const step = cause.log ? Math.max(1e-3 * cause.from, 0.01 * size) : 0.01;
    const sizes = at.sizes.map((s, i) => (i === k ? s + step : s));
    return this.#shown(at.causes, sizes, at.around).shown.map(
      (value, i) => (value - (at.shown[i] as number)) / step,
    );
  }

  /** What a fit is worth. */
  #model(tried: Tried): Model {
    const { causes, sizes, gauss, lnLikely, left } = tried;
    const odds = causes.reduce((sum, cause) => sum + Math.log(cause.odds * TOGETHER), 0);
    const free = freeOf(causes);
    const columns = tried.columns ?? free.map((k) => this.#slopeAt(tried, k));
    const weighed = columns.map((column) => gauss.weigh(column));
    const spread = inverse(weighed.map((w) => columns.map((c) => dot(w, c)))) ?? [];
    let volume = 0;
    if (free.length === 1) {
      const pull = dot(weighed[0] as number[], tried.apart);
      const variance = spread[0]?.[0] ?? Number.POSITIVE_INFINITY;
      volume = lnVolume(
        causes[free[0] as number] as Hypothesis,
        sizes[free[0] as number] as number,
        variance,
        pull,
      );
    } else if (free.length > 1)
      // Bands that reach beyond the sizes that there can be count as far as those.
      free.forEach((k, i) => {
        const cause = causes[k] as Hypothesis;
        const deviation = Math.min(
          Math.sqrt(spread[i]?.[i] ?? Number.POSITIVE_INFINITY),
          cause.to - cause.from,
        );
        volume += lnDensity(cause, sizes[k] as number) + Math.log(deviation) + Math.log(2 * Math.PI) / 2;
      });
    return {
      causes,
      sizes,
      spread,
      left,
      worth: lnLikely + volume + (causes.length === 0 ? Math.log(ODDS.sound) : odds),
      share: 0,
    };
  }
}

/** The current that resistances turn into this reading; null where none do. */
function currentBehind(reading: Measured): Where | null {
  const { what, wire, between, instrument } = reading;
  if (what !== 'drop' && what !== 'voltage' && what !== 'supply') return null;
  if (atPosts(reading)) return null;
  const amps = instrument === 'meter' ? 'clamp_average' : 'clamp_peak';
  const on = between?.[0] ?? wire;
  return { ...reading, what: 'current', instrument: amps, wire: on, between: null, across: null };
}

/** The causes whose size is sought. */
const freeOf = (causes: readonly Hypothesis[]): number[] =>
  causes.flatMap(({ from, to }, k) => (from < to ? [k] : []));

const limited = ({ from, to }: Hypothesis, size: number): number => Math.max(from, Math.min(to, size));

/** Nodes of an integral over sizes. */
const NODES = 80;

/** ln ∫ density · likelihood over its best value, over the sizes that there can be; the likelihood as normal around `size`. */
function lnVolume(cause: Hypothesis, size: number, variance: number, pull: number): number {
  const { from, to, log } = cause;
  const deviation = Math.sqrt(variance);
  const [low, high] = [Math.max(from, size - 6 * deviation), Math.min(to, size + 6 * deviation)];
  const [a, b] = log ? [Math.log(low), Math.log(high)] : [low, high];
  if (!(b > a)) return -Infinity;
  let sum = 0;
  for (let i = 0; i < NODES; i++) {
    const u = a + ((b - a) * (i + 0.5)) / NODES;
    const x = log ? Math.exp(u) : u;
    const rise = pull * (x - size) - (x - size) ** 2 / variance / 2;
    // A fit that has not settled is taken for one that has.
    sum += Math.exp(Math.min(rise, 0) + lnDensity(cause, x)) * (log ? x : 1);
  }
  return Math.log((sum * (b - a)) / NODES);
}

/** Probability that a sum of n squares of normal deviations is larger: Wilson and Hilferty's cube root (from memory). */
export function beyond(left: number, n: number): number {
  const z = (Math.cbrt(left / n) - (1 - 2 / (9 * n))) / Math.sqrt(2 / (9 * n));
  return normalTail(z);
}

/** 1 − Φ(z), by the logistic curve: within 0.01 of it, and of the right size in the tail. From memory. */
const normalTail = (z: number): number => 1 / (1 + Math.exp(1.5976 * z + 0.070565 * z ** 3));
