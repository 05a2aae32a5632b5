/** Random feeds for the tests of sizing, from a generator with a fixed seed. */
import { SERIES } from './truth.ts';

/**
 * Uniform between 0 and 1: the multiplicative generator of Lehmer with the factor of Park, Miller and Stockmeyer
 * (from memory). The first few numbers of neighbouring seeds are alike and are thrown away.
 */
export function random(seed: number): () => number {
  const modulus = 2 ** 31 - 1;
  let state = (seed * 7919 + 104_729) % modulus;
  const next = (): number => {
    state = (state * 48_271) % modulus;
    return state / modulus;
  };
  for (let i = 0; i < 8; i++) next();
  return next;
}

/** Choices from one generator. */
export function dice(seed: number) {
  const next = random(seed);
  const between = (low: number, high: number): number => Number((low + (high - low) * next()).toPrecision(4));
  return {
    chance: (share: number): boolean => next() < share,
    between,
    spread: (low: number, high: number): number => Number((low * (high / low) ** next()).toPrecision(4)),
    whole: (low: number, high: number): number => low + Math.floor(next() * (high - low + 1)),
    one: <T>(of: readonly T[]): T => of[Math.floor(next() * of.length)] as T,
  };
}
export type Dice = ReturnType<typeof dice>;

const INSULATIONS = ['A', 'B', 'C', 'C', 'D', 'F', 'H', 'GPT', 'TXL', 'TXL'];
const PLACES: Readonly<Record<string, readonly [number, number]>> = {
  A: [20, 70],
  B: [20, 85],
  GPT: [20, 65],
};

interface Shape {
  feed: { run: string; carries: unknown }[];
  back: { run: string; carries: unknown }[];
  /** Coil ids where the layout is `listed`. */
  ids: string[];
}

/** Who carries whom: a main conductor, banks, a branch for each coil; returns none, one or two. */
function shapeOf(d: Dice, ids: string[]): Shape {
  const half = Math.ceil(ids.length / 2);
  const banks = [
    { run: 'left', carries: ids.slice(0, half) },
    { run: 'right', carries: ids.slice(half) },
  ];
  const main = { run: 'main', carries: 'all' };
  const branch = { run: 'branch', carries: 'each' };
  const feeds = [[main], [main, branch], [main, branch], [branch]];
  if (ids.length > 1) feeds.push([main, ...banks] as never, [...banks, branch] as never);
  const ground = { run: 'ground', carries: 'each' };
  const strap = { run: 'strap', carries: 'all' };
  return { feed: d.one(feeds), back: d.one([[], [strap], [ground], [ground, strap]]), ids };
}

/**
 * One random design: 1 to 8 coils, 1 to 3 feed runs and up to 2 return runs, most of them with sizes to be chosen,
 * at least one of them in any case.
 */
export function feedDesign(seed: number): object {
  const d = dice(seed);
  const coils = d.one([1, 2, 3, 4, 4, 6, 8]);
  const ids = Array.from({ length: coils }, (_, i) => `c${i + 1}`);
  const shape = shapeOf(d, ids);
  const series = d.one(['AWG', 'AWG', 'SAE', 'mm2']);
  const sizes = SERIES[series] as readonly string[];
  const long = d.chance(0.15);
  const ohm = d.spread(0.3, 1.2);
  const limited = d.chance(0.4);
  const uneven = d.chance(0.3);
  const fuseType = d.one(['C', 'E', 'E', 'SF30', 'F']);
  const where = d.one(['first', 'first', 'first', 'every', 'last', 'none']);
  const sure = d.whole(0, shape.feed.length + shape.back.length - 1);
  const fuse = (load: number) => ({
    type: load > 22 && (fuseType === 'C' || fuseType === 'F') ? 'E' : fuseType,
    rating: d.chance(0.75) ? 'auto' : `${d.one([20, 30, 40])} A`,
    ambient: `${d.between(20, 80)} degC`,
  });
  const run = (one: { run: string; carries: unknown }, i: number, fused: boolean) => {
    const insulation = d.one(INSULATIONS);
    const [low, high] = PLACES[insulation] ?? [20, 105];
    const auto = d.chance(0.75) || i === sure;
    const every = one.carries === 'each';
    return {
      ...one,
      length: `${long ? d.spread(0.5, 12) : d.spread(0.2, 3)} m`,
      ambient: `${d.between(low, high)} degC`,
      insulation,
      bundle: d.one([1, 1, 2, 3, 5, 8]),
      gauge: auto ? 'auto' : (sizes[d.whole(every ? 0 : 3, every ? 4 : 7)] as string),
      joints: d.whole(0, 4),
      ...(fused ? { fuse: fuse(every ? 5 : 30) } : {}),
    };
  };
  const fusedAt = (i: number, count: number): boolean =>
    where === 'every' ||
    // Where two banks come first each has its own.
    (where === 'first' && (i === 0 || (i === 1 && shape.feed[0]?.run === 'left'))) ||
    (where === 'last' && i === count - 1);
  return {
    coilfeed: 1,
    title: `Random feed ${seed}`,
    engine: {
      cylinders: coils,
      stroke: 4,
      firing_order: Array.from({ length: coils }, (_, i) => i + 1),
    },
    ignition: {
      layout: 'listed',
      coils: ids.map((id, i) => ({
        id,
        fires_at: uneven && i % 2 === 1 ? [(720 * (i - 0.25)) / coils] : [(720 * i) / coils],
      })),
      dwell: `${d.between(1.5, 4.5)} ms`,
    },
    coil: {
      resistance: `${ohm} ohm`,
      inductance: `${d.spread(1.2, 6)} mH`,
      driver_drop: `${d.between(0, 1.5)} V`,
      ...(limited ? { current_limit: `${d.between(8, 20)} A` } : {}),
    },
    supply: d.chance(0.75) ? { source_resistance: `${d.spread(3, 40)} mohm` } : {},
    points: [
      { name: 'cranking', rpm: '220 rpm', supply: `${d.between(8, 11)} V` },
      { name: 'full', rpm: `${d.between(4000, 9500)} rpm`, supply: `${d.between(13, 15)} V` },
    ],
    sizes: { series, ...(d.chance(0.3) ? { smallest: sizes[1] as string } : {}) },
    feed: shape.feed.map((one, i) => run(one, i, fusedAt(i, shape.feed.length))),
    ...(shape.back.length === 0
      ? {}
      : { return: shape.back.map((one, i) => run(one, shape.feed.length + i, false)) }),
    limits: {
      drop: `${d.spread(0.15, 1.2)} V`,
      wire_load: `${d.between(60, 100)} %`,
      joint_resistance: `${d.between(0.1, 1)} mohm`,
    },
  };
}
