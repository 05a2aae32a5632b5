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
import { causesOf, type Hypothesis, samePart } from './causes.ts';
import { Fits, limited, type Model, type Tried } from './fit.ts';
import { dot } from './gauss.ts';
import { senseOf } from './instruments.ts';
import type { Parts } from './parts.ts';
import { Seen } from './seen.ts';
import { beyond } from './volume.ts';

export type { Model } from './fit.ts';

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

/** A model fits when sound readings would differ as much this often. */
export const MISFIT = 0.005;
/** Hypotheses that are looked at closely: of parts, and of single readings. Arbitrary; the others explain far less. */
const CLOSE = 10;
const READINGS = 5;
/** What is looked at explains as much at first sight [ln], and such a share of what the best explains. Arbitrary. */
const LEAST = 1;
/** What explains less than this is weighed by a straight line [ln]: nothing is named by it. Arbitrary. */
const SLIGHT = 3;
const WORTH = 0.3;
/** Of two at a time: first causes, and second ones for each. */
const FIRSTS = 3;
const SECONDS = 5;
/** More causes than these at a time are no diagnosis. */
const MOST_CAUSES = 3;
/** Factors to start from beside that of the slopes, as ln: a limit of the current can hide which way it goes. */
const FACTORS = [-0.45, 0.5];
/** Only scales this near to what the readings say are tried [ln]. */
const NEAR = 0.4;

/** Weighs all hypotheses. At least one reading. */
export const infer = (parts: Parts, readings: readonly Measured[]): Inference =>
  new Search(parts, readings).run();

class Search {
  readonly #parts: Parts;
  readonly #readings: readonly Measured[];
  readonly #fits: Fits;

  constructor(parts: Parts, readings: readonly Measured[]) {
    this.#parts = parts;
    this.#readings = readings;
    this.#fits = new Fits(new Seen(parts, readings));
  }

  run(): Inference {
    const causes = causesOf(this.#parts, this.#readings);
    const sound = this.#fits.settled(this.#fits.tried([], []));
    const models = [this.#fits.model(sound)];
    models.push(...this.#closer(sound, causes, CLOSE, READINGS));
    for (let many = 2; many <= MOST_CAUSES && this.#misfit(models); many++) {
      const firsts = models.filter((m) => m.causes.length === many - 1).slice(0, many === 2 ? FIRSTS : 1);
      for (const first of firsts)
        models.push(
          ...this.#closer(
            this.#fits.settled(this.#fits.tried(first.causes, first.sizes)),
            causes,
            SECONDS,
            2,
          ),
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
        const column = this.#fits.direction(cause, sound);
        return column === null ? 0 : dot(column, sound.gauss.weigh(column));
      },
    };
  }

  /** Whether the best of these leaves more than errors and tolerances do. */
  #misfit(models: Model[]): boolean {
    models.sort((a, b) => b.worth - a.worth);
    return beyond(models[0]?.left as number, this.#readings.length) < MISFIT;
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
      const column = this.#fits.direction(cause, from);
      if (column === null) return [];
      const shows = dot(column, from.gauss.weigh(column));
      if (!(shows > 0)) return [];
      const size = dot(column, weighed) / shows;
      const within =
        cause.how === 'misread' ? size : Math.max(cause.log ? 0 : cause.from, Math.min(cause.to, size));
      const gain = within * dot(column, weighed) - (within ** 2 * shows) / 2;
      return [{ cause, column, size: within, gain, score: gain + Math.log(cause.odds) }];
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
      ...[...close, ...mates].map(({ cause, column, size, gain }) =>
        gain < SLIGHT && cause.unit !== 'read' && cause.from < cause.to
          ? this.#fits.near(from, cause, column, size)
          : this.#fitted(from, cause, size),
      ),
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
      .map((start) => this.#fits.tried(causes, [...from.sizes, start]))
      .sort((a, b) => b.lnLikely - a.lnLikely);
    if (best === undefined) return null;
    // What has no size to seek, and is no better than nothing at first sight, is not looked at closely.
    const idle = cause.from === cause.to && best.lnLikely < from.lnLikely + SLIGHT;
    return this.#fits.model(idle ? best : this.#fits.settled(best));
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
        (this.#fits.expected[i] as number) > 0
          ? [Math.log(value / (this.#fits.expected[i] as number))]
          : [],
      )
      .sort((a, b) => a - b);
    return ratios[Math.floor(ratios.length / 2)] ?? 0;
  }
}
