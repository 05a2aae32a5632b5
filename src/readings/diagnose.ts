/**
 * What explains all readings together.
 *
 * A cause is a conductor, or the source, with too much resistance; coils, one or all, that draw more or less than they
 * should; or a reading that was taken with another instrument than it says. Each cause is tried in turn: the sizes that fit
 * best by generalised least squares, and what is then left unexplained. The best one is taken when it explains enough, and
 * the search goes on with the rest. Causes that explain nearly as much as the best one are named beside it: the readings
 * cannot tell them apart.
 *
 * What is left is measured against the errors of instruments and against the tolerances of the parts, which move many
 * readings together: a coil that draws more in all of them, a conductor that drops more at every point.
 */
import type { Measured } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { whyNoTrace } from '../transient/circuit.ts';
import { wireFigures } from '../transient/figures.ts';
import type { Course } from '../transient/steady.ts';
import { atPosts, expectedAt, type Where } from './expected.ts';
import { type Bench, benchAt, courseWith, showsOf } from './forward.ts';
import { type Errors, type Fit, leastSquares } from './least-squares.ts';
import { otherInstruments } from './mixed-up.ts';

export type Cause =
  /** More resistance than designed [ohm]; the conductor's index, null for the source. */
  | {
      readonly kind: 'resistance';
      readonly wire: number | null;
      readonly ohm: number;
      readonly within: number;
    }
  /** Draws `factor` times what it should; null for all coils. */
  | { readonly kind: 'draw'; readonly coil: number | null; readonly factor: number; readonly within: number }
  /** Reading number `reading` was taken with that instrument. */
  | { readonly kind: 'instrument'; readonly reading: number; readonly instrument: Measured['instrument'] };

export interface Explained {
  readonly cause: Cause;
  /** Other causes that explain the readings as well. */
  readonly orElse: readonly Cause[];
  /** Squares of deviations that it explains: 9 is three deviations. */
  readonly explains: number;
}

export interface Diagnosis {
  readonly causes: readonly Explained[];
  /** Why there is none, as a sentence; null when there is one. */
  readonly why: string | null;
}

/** Errors of an instrument, as a share of the reading and at least [V, A, ohm]. Arbitrary: common instruments in a workshop. */
const ERRORS = {
  drop: { share: 0.02, least: 1e-3 },
  supply: { share: 0.005, least: 0.01 },
  current: { share: 0.02, least: 0.02 },
  resistance: { share: 0.02, least: 0.1e-3 },
} as const;

/** A cause must explain this much: more than three deviations, since many causes are tried. Arbitrary. */
const ENOUGH = 12;
/** Causes that explain this much less than the best one cannot be told from it: two deviations. */
const RIVAL = 4;
/** More causes than these at a time are no diagnosis. */
const MOST_CAUSES = 4;
/** Rounds in which the sizes settle: the currents change a little with the resistance. */
const ROUNDS = 4;
/** Share of what the best explains at first sight; the others are not worth a closer look. Arbitrary. */
const WORTH_A_LOOK = 0.5;
/** Share of its range that is one standard deviation of a part's value. Arbitrary: the ends are two deviations away. */
const RANGE = 4;
/** Steps for differences: of a resistance [ohm], and of a factor. */
const STEP = 1e-3;
const SMALL = 1e-3;
/** No size is sought beyond these [ohm, or the logarithm of a factor]: a feed that is open conducts nothing. */
const LEAST = -3;
const MOST = 3;

/** A cause whose size is still to be found. */
type Guess =
  | { readonly kind: 'resistance'; readonly wire: number }
  | { readonly kind: 'draw'; readonly coil: number | null }
  | { readonly kind: 'instrument'; readonly reading: number; readonly instrument: Measured['instrument'] };

/** Everything that a search needs. */
interface Setting {
  readonly e: Evaluation;
  readonly readings: readonly Measured[];
  readonly benches: ReadonlyMap<number, Bench>;
  /** Supply that a multimeter showed at the posts, by point [V]. */
  readonly posts: ReadonlyMap<number, number>;
  readonly source: number;
  /** Standard deviation of the resistance of each conductor [ohm], and of the draw of the coils [1]. */
  readonly wireSpread: readonly number[];
  readonly drawSpread: number;
  /** By `keyOf` and conductor [V/ohm], [A/ohm], [1]. */
  readonly slopes: ReadonlyMap<string, readonly number[]>;
  /** Readers by the resistances that were added. */
  readonly kept: Map<string, (where: Where) => number>;
}

/** Explains the readings of a design. The evaluation must hold the subject `readings`. */
export function diagnose(e: Evaluation, readings: readonly Measured[] = e.design.measured): Diagnosis {
  if (readings.length === 0) return { causes: [], why: 'No readings were given.' };
  if (whyNoTrace(e) !== null)
    return {
      causes: [],
      why: 'Of the coil only a peak current is known, which is an upper bound: give its inductance.',
    };
  const setting = settingOf(e, readings);
  const guesses = guessesOf(setting);
  const causes: Explained[] = [];
  const taken: Guess[] = [];
  let left = tried(setting, [])?.found.left ?? 0;
  while (causes.length < MOST_CAUSES) {
    const explaining = (guess: Guess, rounds: number): Found[] => {
      const trial = tried(setting, [...taken, guess], rounds);
      return trial === null ? [] : [{ guess, trial, explains: left - trial.found.left }];
    };
    // A first look at all, a closer one at those that explain much.
    const seen = guesses.filter((guess) => !taken.includes(guess)).flatMap((guess) => explaining(guess, 1));
    const most = Math.max(0, ...seen.map(({ explains }) => explains));
    const found = seen
      .filter(({ explains }) => explains > most * WORTH_A_LOOK)
      .flatMap(({ guess }) => explaining(guess, ROUNDS))
      // Less resistance than designed is not what a fault does.
      .filter(({ guess, trial }) => guess.kind !== 'resistance' || (trial.sizes.at(-1) as number) > 0)
      .sort((a, b) => b.explains - a.explains);
    const [best, ...others] = found;
    if (best === undefined || best.explains < ENOUGH) break;
    const rivals = others.filter(({ explains }) => explains > best.explains - RIVAL);
    causes.push({
      cause: causeOf(setting, best.guess, best.trial),
      orElse: rivals.map(({ guess, trial }) => causeOf(setting, guess, trial)),
      explains: best.explains,
    });
    taken.push(best.guess);
    left = best.trial.found.left;
  }
  return { causes, why: null };
}

function settingOf(e: Evaluation, readings: readonly Measured[]): Setting {
  const points = new Set(readings.flatMap(({ point }) => (point === null ? [] : [point])));
  // What a multimeter shows at the posts is the supply that everything else is read at.
  const posts = new Map(
    readings.flatMap((r) =>
      atPosts(r) && r.instrument === 'meter' ? [[r.point as number, r.value] as const] : [],
    ),
  );
  const spread = (name: 'spread_wire_ohm', wire: number): number =>
    ((e.number(name, { spread: 2, wire }) ?? 0) - (e.number(name, { spread: 0, wire }) ?? 0)) / RANGE;
  const draw = expectedAt(e, {
    what: 'current',
    instrument: 'clamp_average',
    wire: null,
    coil: 0,
    point: [...points][0] ?? 0,
  });
  const setting = {
    kept: new Map(),
    e,
    readings,
    posts,
    benches: new Map([...points].map((point) => [point, benchAt(e, point, posts.get(point))])),
    source: e.design.wires.length,
    wireSpread: e.design.wires.map((_, wire) => spread('spread_wire_ohm', wire)),
    drawSpread: ((draw.high ?? 0) - (draw.low ?? 0)) / RANGE / (draw.expected || 1),
  };
  const places = readings.flatMap((r) => [
    r,
    ...otherInstruments(r).map((instrument) => ({ ...r, instrument })),
  ]);
  return { ...setting, slopes: slopesOf(setting, places) };
}

/** Every cause that some reading could show. */
function guessesOf({ e, readings, source }: Setting): Guess[] {
  const { wires, coils } = e.design;
  const scopes = readings.some((r) => atPosts(r) && r.instrument === 'scope');
  const drawn = readings.some(({ what }) => what === 'current');
  return [
    ...wires.map((_, wire): Guess => ({ kind: 'resistance', wire })),
    ...(scopes ? [{ kind: 'resistance', wire: source } as const] : []),
    ...(drawn ? [null, ...(coils.length > 1 ? coils.keys() : [])] : []).map(
      (coil): Guess => ({ kind: 'draw', coil }),
    ),
    ...readings.flatMap((r, reading) =>
      otherInstruments(r).map((instrument): Guess => ({ kind: 'instrument', reading, instrument })),
    ),
  ];
}

interface Trial {
  readonly found: Fit;
  /** Of each guess: [ohm], or the natural logarithm of the factor; 0 for an instrument. */
  readonly sizes: readonly number[];
}

interface Found {
  readonly guess: Guess;
  readonly trial: Trial;
  readonly explains: number;
}

/** The sizes that fit best when these are the causes; null when the readings leave one open. */
function tried(s: Setting, guesses: readonly Guess[], rounds = 1): Trial | null {
  const instruments = new Map(
    guesses.flatMap((g) => (g.kind === 'instrument' ? [[g.reading, g.instrument]] : [])),
  );
  const readings = s.readings.map((r, i) => ({ ...r, instrument: instruments.get(i) ?? r.instrument }));
  const sized = guesses.filter((g) => g.kind !== 'instrument');
  let sizes = sized.map(() => 0);
  let found: Fit | null = null;
  for (let round = 0; round < (sized.length === 0 ? 1 : rounds); round++) {
    const shown = shownWith(s, readings, sized, sizes);
    const apart = s.readings.map(({ value }, i) => value - (shown[i] as number));
    const columns = sized.map((guess, k) => {
      const step = guess.kind === 'resistance' ? STEP : SMALL;
      const there = sizes.map((size, i) => (i === k ? size + step : size));
      return shownWith(s, readings, sized, there).map((value, i) => (value - (shown[i] as number)) / step);
    });
    found = leastSquares(apart, columns, errorsOf(s, readings, shown));
    if (found === null) return null;
    const step = found.values;
    sizes = sizes.map((size, i) => Math.max(LEAST, Math.min(MOST, size + (step[i] as number))));
  }
  if (found === null) return null;
  // What is left is worked out at the sizes themselves: the last step may have been cut short.
  const shown = shownWith(s, readings, sized, sizes);
  const apart = s.readings.map(({ value }, i) => value - (shown[i] as number));
  const left = leastSquares(apart, [], errorsOf(s, readings, shown))?.left ?? found.left;
  let next = 0;
  return {
    found: { ...found, left },
    sizes: guesses.map((g) => (g.kind === 'instrument' ? 0 : (sizes[next++] as number))),
  };
}

/** What the readings would be with causes of these sizes. */
function shownWith(
  s: Setting,
  readings: readonly Where[],
  guesses: readonly Guess[],
  sizes: readonly number[],
): number[] {
  const more = new Map<number, number>();
  const draws: { coil: number | null; factor: number }[] = [];
  guesses.forEach((g, i) => {
    const size = sizes[i] as number;
    if (g.kind === 'resistance') more.set(g.wire, size);
    if (g.kind === 'draw') draws.push({ coil: g.coil, factor: Math.exp(size) });
  });
  const show = readerOf(s, more);
  return readings.map((where) =>
    draws.reduce((value, { coil, factor }) => scaled(s, where, coil, value, factor), show(where)),
  );
}

/** Reads the circuits of all points with these resistances added [ohm]; what was worked out once is kept. */
function readerOf(s: Setting, more: ReadonlyMap<number, number>): (where: Where) => number {
  const id = [...more].join(';');
  const kept = s.kept.get(id) ?? reader(s, more);
  s.kept.set(id, kept);
  return kept;
}

function reader(s: Setting, more: ReadonlyMap<number, number>): (where: Where) => number {
  const courses = new Map([...s.benches].map(([point, bench]) => [point, courseWith(bench, more)]));
  const read = (where: Where): number => {
    if (where.what === 'resistance')
      return (expectedAt(s.e, where).expected ?? 0) + (more.get(where.wire as number) ?? 0);
    const bench = s.benches.get(where.point as number) as Bench;
    // A multimeter at the posts tells the supply itself.
    if (atPosts(where) && where.instrument === 'meter') return bench.circuit.supply;
    const course = courses.get(where.point as number) as Course;
    // The multimeter has taken the average sag off already.
    const back = where.what === 'supply' && s.posts.has(where.point as number) ? sag(course, bench) : 0;
    return showsOf(course, bench, where) + back;
  };
  const values = new Map<string, number>();
  return (where) => {
    const key = keyOf(where);
    const value = values.get(key) ?? read(where);
    values.set(key, value);
    return value;
  };
}

/** By how much a reading rises for an ohm more in each conductor of the design, as designed. */
function slopesOf(s: Omit<Setting, 'slopes'>, places: readonly Where[]): Map<string, readonly number[]> {
  const setting = { ...s, slopes: new Map() };
  const plain = readerOf(setting, new Map());
  const there = s.e.design.wires.map((_, wire) => readerOf(setting, new Map([[wire, STEP]])));
  return new Map(
    places.map((where) => [keyOf(where), there.map((show) => (show(where) - plain(where)) / STEP)]),
  );
}

/** Average sag before the posts [V]. */
const sag = (course: Course, { source }: Bench): number =>
  (course.circuit.wires[source]?.ohm ?? 0) * wireFigures(course, source).average;

const keyOf = ({ what, instrument, wire, coil, point }: Where): string =>
  [what, instrument, wire, coil, point].join();

/** A reading when one coil, or all, draw `factor` times as much: the share of the current that is theirs. */
function scaled(s: Setting, where: Where, coil: number | null, value: number, factor: number): number {
  const share = shareOf(s, where, coil);
  if (where.what !== 'supply') return value * (1 + (factor - 1) * share);
  const supply = s.benches.get(where.point as number)?.circuit.supply ?? value;
  return supply - (supply - value) * (1 + (factor - 1) * share);
}

/** Share of a reading that goes with the current of a coil. A peak in common is one of the others' as well: 0. */
function shareOf({ e }: Setting, { what, wire, coil, instrument }: Where, whose: number | null): number {
  if (what === 'resistance') return 0;
  if (whose === null) return 1;
  if (wire === null) return coil === whose ? 1 : 0;
  const { coils } = e.design.wires[wire] as (typeof e.design.wires)[number];
  if (!coils.includes(whose)) return 0;
  if (coils.length === 1) return 1;
  if (instrument !== 'meter' && instrument !== 'clamp_average') return 0;
  const firings = (which: readonly number[]): number =>
    e.design.events.filter((event) => which.includes(event.coil)).length;
  return firings([whose]) / firings(coils);
}

/** Errors of the instruments, and what the tolerances of the parts do to several readings at a time. */
function errorsOf(s: Setting, readings: readonly Where[], shown: readonly number[]): Errors {
  const slopes = readings.map((where) => s.slopes.get(keyOf(where)) ?? []);
  return {
    own: readings.map(({ what }, i) => {
      const { share, least } = ERRORS[what];
      const read = Math.max(shown[i] as number, s.readings[i]?.value as number);
      return (share * read) ** 2 + least ** 2;
    }),
    common: [
      ...s.wireSpread.map((own, wire) => slopes.map((slope) => (slope[wire] as number) * own)),
      readings.map((where, i) => {
        const value = shown[i] as number;
        return ((scaled(s, where, null, value, 1 + SMALL) - value) / SMALL) * s.drawSpread;
      }),
    ],
  };
}

function causeOf(s: Setting, guess: Guess, { sizes, found }: Trial): Cause {
  const size = sizes.at(-1) as number;
  const within = 2 * (found.within.at(-1) ?? 0);
  switch (guess.kind) {
    case 'resistance':
      return { kind: 'resistance', wire: guess.wire === s.source ? null : guess.wire, ohm: size, within };
    case 'draw':
      return { kind: 'draw', coil: guess.coil, factor: Math.exp(size), within };
    case 'instrument':
      return guess;
  }
}
