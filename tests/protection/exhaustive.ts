/**
 * What `auto` promises, evaluated a second time for any combination of sizes, and the one with the least copper.
 * Currents and the resistances of joints, fuses and relays do not hang on the sizes.
 */
import type { Design } from '../../src/design/design.ts';
import type { Evaluation } from '../../src/engine/evaluate.ts';
import {
  ALPHA_20,
  ampacityOf,
  type Conductor,
  fuseOhm,
  limitsOf,
  openingOf,
  ratingFor,
  SERIES,
  sizeOf,
  soundAt,
} from './truth.ts';

const CHASSIS = 0.005;
const OPENS_WITHIN = 5;
/** Rounding of doubles on both sides, of currents that come from sums. */
const DUST = 1e-9;

interface Wire {
  id: string;
  run: number;
  coils: number[];
  length: number;
  /** Effective current. */
  rms: number;
  /** Conductors between the battery and this one. */
  ahead: number[];
  /** Conductor whose fuse protects it; −1 for none. */
  protector: number;
}

interface RunFacts {
  name: string;
  feed: boolean;
  auto: boolean;
  stated: string;
  rms: number;
  wires: number[];
  fixed: number;
  fuseOhm: number;
  /** Own fuse. */
  own: number | null;
  /** The largest fuse that protects a conductor of the run. */
  fuse: { type: string; rating: number } | null;
  /** Number of the first run that takes one size with this one. */
  lead: number;
  /** The other coils of the run: average, and the square of their effective current. */
  others: { average: number; square: number };
}

/** What does not hang on the sizes. */
export interface Facts {
  design: Design;
  wires: Wire[];
  runs: RunFacts[];
  /** For every firing of every point: current in each conductor of its path. */
  firings: number[][];
  /** Drop allowed at each of them. */
  allowed: number[];
  /** Sizes that each run may take. */
  sizes: (readonly string[])[];
}

/** Names of the broken rules of each run, `drop` apart. */
export interface Breaches {
  /** One list for each run. */
  runs: string[][];
  drop: boolean;
}

export function factsOf(e: Evaluation): Facts {
  const { design } = e;
  const wires = design.wires.map((wire, i): Wire => {
    const feed = design.runs[wire.run]?.side === 'feed';
    const ahead = design.wires.flatMap((other, j) =>
      feed && other.run < wire.run && wire.coils.every((c) => other.coils.includes(c)) ? [j] : [],
    );
    const fused = (j: number): boolean => design.runs[design.wires[j]?.run ?? -1]?.fuse != null;
    const protector = !feed ? -1 : fused(i) ? i : ([...ahead].reverse().find(fused) ?? -1);
    return {
      id: wire.id,
      run: wire.run,
      coils: wire.coils,
      length: wire.length,
      rms: e.number('worst_effective', { wire: i }) ?? Number.NaN,
      ahead,
      protector,
    };
  });
  const rmsOf = (run: number): number => Math.max(...wires.filter((w) => w.run === run).map((w) => w.rms));
  const ratings = design.runs.map(({ fuse }, run) =>
    fuse === null
      ? null
      : {
          type: fuse.type,
          rating:
            fuse.rating === 'auto'
              ? ratingFor(fuse.type, rmsOf(run), design.limits.fuse_load, fuse.ambient)
              : fuse.rating,
        },
  );
  const runs = design.runs.map((run, i): RunFacts => {
    const own = ratings[i];
    const ohm = own ? fuseOhm(own.type, own.rating) : 0;
    const protectors = wires
      .filter((w) => w.run === i && w.protector >= 0)
      .map((w) => ratings[wires[w.protector]?.run ?? -1]);
    return {
      name: run.name,
      feed: run.side === 'feed',
      auto: run.gauge === 'auto',
      stated: run.gauge,
      rms: rmsOf(i),
      wires: wires.flatMap((w, j) => (w.run === i ? [j] : [])),
      fixed:
        (run.joints * design.limits.joint_resistance + run.contacts * design.limits.contact_resistance) /
          run.conductors +
        ohm +
        (run.relay?.contact ?? 0),
      fuseOhm: ohm,
      own: own?.rating ?? null,
      lead: (e.number('lead', { run: i }) ?? 0) - 1,
      others: {
        average: e.number('others_average', { run: i }) ?? Number.NaN,
        square: e.number('others_square', { run: i }) ?? Number.NaN,
      },
      fuse: protectors.reduce<RunFacts['fuse']>(
        (most, one) => (one && one.rating > (most?.rating ?? 0) ? one : most),
        null,
      ),
    };
  });
  const firings = design.points.flatMap((_, point) =>
    design.events.map((_, event) =>
      // What flows in a conductor of this coil's path is the sum over the coils that it carries.
      wires.map((wire) =>
        wire.coils.includes(design.events[event]?.coil ?? -1)
          ? design.events
              .map((other, event2) =>
                wire.coils.includes(other.coil)
                  ? (e.number('flowing_at', { point, event, event2 }) ?? NaN)
                  : 0,
              )
              .reduce((a, b) => a + b)
          : 0,
      ),
    ),
  );
  const { drop } = design.limits;
  const { min_supply } = design.coil;
  const allowed = design.points.flatMap(({ supply }) =>
    design.events.map(() =>
      min_supply !== null && supply > min_supply ? Math.min(drop, supply - min_supply) : drop,
    ),
  );
  return { design, wires, runs, firings, allowed, sizes: design.runs.map((run) => sizesFor(design, run)) };
}

const SAE_TYPES = ['GPT', 'SXL', 'GXL', 'TXL', 'SGT', 'SGX', 'STX'];

/** Sizes that may be chosen for a run: SAE numbers for the types that are sold so, from smallest to largest, of the stock and of the shop's wire. */
function sizesFor({ sizes, shelf }: Design, run: Design['runs'][number]): readonly string[] {
  const series = SAE_TYPES.includes(run.insulation) && sizes.series === 'AWG' ? 'SAE' : sizes.series;
  const all = SERIES[series] as readonly string[];
  const numbered = (size: string): number => all.findIndex((s) => s.split(' ')[0] === size.split(' ')[0]);
  const from = numbered(run.smallest ?? sizes.smallest);
  const to = run.largest === null ? all.length - 1 : numbered(run.largest);
  return all
    .slice(from, to + 1)
    .filter((s) => sizes.stock === null || sizes.stock.includes(s))
    .filter((s) => shelf === null || shelf.some((w) => w.size === s && w.insulation === run.insulation));
}

/** One run with one size: all that does not hang on the others. */
interface Fitted {
  gauge: string;
  copper: number;
  /** Carries its load and its own fuse. */
  carries: boolean;
  broken: string[];
  /** Of each conductor of the run, cold and warm, joints and the like included. */
  cold: number[];
  warm: number[];
  conductor: Conductor | null;
  from: number;
  /** Drop at every firing. */
  drops: number[];
}

/** What the shop measured of a metre, at 20 °C; of a wire that is listed twice the worse. */
function measured({ shelf }: Design, gauge: string, insulation: string): number | null {
  const all = (shelf ?? []).flatMap((wire) =>
    wire.size === gauge && wire.insulation === insulation && wire.measured ? [wire.measured] : [],
  );
  const [worst] = all.sort((a, b) => b.ohm - a.ohm);
  return worst === undefined ? null : worst.ohm / (1 + ALPHA_20 * (worst.at - 20));
}

function fitted({ design, wires, runs, firings }: Facts, index: number, gauge: string): Fitted {
  const run = runs[index] as RunFacts;
  const place = design.runs[index];
  if (!place) throw new Error('no such run');
  const { area, ohm: usual } = sizeOf(gauge);
  const ohm = measured(design, gauge, place.insulation) ?? usual;
  const limits = limitsOf(place.insulation);
  const amps = ampacityOf(gauge, place);
  const temperature = (rms: number): number =>
    amps ? place.ambient + (limits.rating - place.ambient) * (rms / amps) ** 2 : place.ambient;
  const own = run.wires.map((w) => wires[w] as Wire);
  const cold = own.map(({ length }) => ohm * length + run.fixed);
  const warm = own.map(
    ({ length, rms }) => ohm * length * (1 + ALPHA_20 * (temperature(rms) - 20)) + run.fixed,
  );
  const broken: string[] = [];
  if (amps !== null && run.rms > design.limits.wire_load * amps * (1 + DUST)) broken.push('wire_load');
  if (amps !== null && run.own !== null && (run.fuse?.rating ?? 0) > amps * (1 + DUST))
    broken.push('fuse_conductor');
  return {
    gauge,
    copper: own.reduce((sum, { length }) => sum + area * length, 0),
    carries: broken.length === 0,
    broken,
    cold,
    warm,
    conductor: amps === null ? null : { ...limits, area, ohm, ambient: place.ambient, amps },
    from: Math.max(...own.map(({ rms }) => temperature(rms))),
    drops: firings.map((currents) =>
      run.wires.reduce((sum, w, i) => sum + (currents[w] ?? 0) * (warm[i] ?? 0), 0),
    ),
  };
}

/** Runs that give way before the first fuse on the path of a coil ends the current of its driver that stays on. */
function overrun(facts: Facts, chosen: readonly Fitted[]): boolean[] {
  const { design, wires, runs } = facts;
  const { coil, points, tolerance } = design;
  const primary =
    (coil.resistance ?? Number.NaN) *
    (1 + ALPHA_20 * (coil.temperature - 20)) *
    (1 - tolerance.coil_resistance);
  const volts = Math.max(...points.map(({ supply }) => supply)) - coil.driver_drop;
  const stuck = design.coils.map((_, c) => {
    const path = wires.flatMap((wire, w) => (wire.coils.includes(c) ? [w] : []));
    const ohms = path.reduce((sum, w) => {
      const run = wires[w]?.run ?? -1;
      return sum + ((chosen[run] as Fitted).cold[(runs[run] as RunFacts).wires.indexOf(w)] ?? Number.NaN);
    }, 0);
    const amps = Math.min(coil.current_limit ?? Number.POSITIVE_INFINITY, volts / (primary + ohms));
    const ends = path.flatMap((w) => {
      const { own, fuse } = runs[wires[w]?.run ?? -1] as RunFacts;
      return own === null || fuse === null ? [] : [openingOf(fuse.type, own, amps)];
    });
    return { amps, ends: Math.min(86_400, ...ends) };
  });
  return runs.map((run, i) => {
    const { conductor, from } = chosen[i] as Fitted;
    if (conductor === null) return false;
    const mine = stuck.filter((_, c) => run.wires.some((w) => wires[w]?.coils.includes(c)));
    const amps = Math.max(...mine.map((s) => s.amps));
    const rms = Math.sqrt(amps ** 2 + 2 * amps * run.others.average + run.others.square);
    return !soundAt(conductor, from, rms * (1 - DUST), Math.max(...mine.map((s) => s.ends)));
  });
}

/** Shorts along the run, between the smallest and the largest fault current of its conductors. */
function shorts(facts: Facts, index: number, chosen: readonly (Fitted | undefined)[]): string[] {
  const { design, wires, runs } = facts;
  const run = runs[index] as RunFacts;
  const own = chosen[index] as Fitted;
  const source = design.supply.source_resistance;
  if (!run.feed || source === null || run.fuse === null) return [];
  const { fuse } = run;
  const supplies = design.points.map(({ supply }) => supply);
  const ohms = (w: number, of: 'cold' | 'warm'): number => {
    const at = wires[w] as Wire;
    const place = (runs[at.run] as RunFacts).wires.indexOf(w);
    return (chosen[at.run] as Fitted)[of][place] as number;
  };
  const faults = run.wires.map((w, i) => {
    const ahead = (wires[w] as Wire).ahead;
    const before = (of: 'cold' | 'warm'): number =>
      source + CHASSIS + ahead.reduce((sum, a) => sum + ohms(a, of), 0);
    return {
      most: Math.max(...supplies) / (before('cold') + run.fuseOhm),
      least: Math.min(...supplies) / (before('warm') + (own.warm[i] as number)),
    };
  });
  const most = Math.max(...faults.map((f) => f.most));
  const least = Math.min(...faults.map((f) => f.least));
  const broken: string[] = [];
  if (openingOf(fuse.type, fuse.rating, least) > OPENS_WITHIN * (1 + DUST)) broken.push('fault_opens');
  const { conductor } = own;
  // Below 1.1 of its rating a fuse promises nothing; the curves are compared from there on.
  const from = Math.max(least, 1.1 * fuse.rating);
  if (conductor && most >= 1.1 * fuse.rating) {
    const steps = 24;
    const sound = Array.from({ length: steps + 1 }, (_, k) => from * (most / from) ** (k / steps)).every(
      (amps) => {
        const opens = openingOf(fuse.type, fuse.rating, amps);
        // A step at which both times are equal may fall to either side.
        return soundAt(conductor, own.from, amps * (1 - DUST), opens);
      },
    );
    if (!sound) broken.push('curves');
  }
  return broken;
}

/** Rules that a feed with these sizes breaks. */
export function breachesOf(facts: Facts, gauges: readonly string[]): Breaches {
  const chosen = gauges.map((gauge, run) => fitted(facts, run, gauge));
  const stuck = overrun(facts, chosen);
  const runs = chosen.map((one, run) => [
    ...one.broken,
    ...shorts(facts, run, chosen),
    ...(stuck[run] ? ['stuck_driver'] : []),
  ]);
  return { runs, drop: dropped(facts, chosen) };
}

/** Whether some firing drops more than is allowed at its point. */
const dropped = ({ allowed }: Facts, chosen: readonly Fitted[]): boolean =>
  allowed.some((most, k) => chosen.reduce((sum, c) => sum + (c.drops[k] ?? 0), 0) > most * (1 + DUST));

const dropOf = (chosen: readonly Fitted[]): number =>
  Math.max(...(chosen[0]?.drops ?? []).map((_, k) => chosen.reduce((sum, c) => sum + (c.drops[k] ?? 0), 0)));

/** Worst drop of a feed with these sizes, for the comparison with the model. */
export const worstDrop = (facts: Facts, gauges: readonly string[]): number =>
  dropOf(gauges.map((gauge, run) => fitted(facts, run, gauge)));

export const copperOf = (facts: Facts, gauges: readonly string[]): number =>
  gauges.reduce((sum, gauge, run) => sum + fitted(facts, run, gauge).copper, 0);

/**
 * The feed with the least copper that keeps every rule of the runs whose size is chosen, and the drop; null when
 * none does. Every combination is tried but those that cannot be better than the best one so far, or whose drop is
 * too large even with the largest sizes in the runs left. What a stated run breaks by itself is not counted. `cost` is
 * what a size of a run costs, in place of its copper.
 */
export function optimum(
  facts: Facts,
  cost?: (run: number, gauge: string) => number,
): { gauges: string[]; copper: number } | null {
  const { runs, sizes, allowed } = facts;
  const options = runs.map((run, i) =>
    (run.auto ? (sizes[i] as readonly string[]) : [run.stated])
      .map((gauge) => ({ ...fitted(facts, i, gauge), ...(cost ? { copper: cost(i, gauge) } : {}) }))
      .filter((one) => !run.auto || one.carries),
  );
  if (options.some((list) => list.length === 0)) return null;
  const least = options.map((list) => Math.min(...list.map(({ copper }) => copper)));
  // The largest size has the least drop at every firing.
  const leastDrop = options.map((list) => (list.at(-1) as Fitted).drops);
  const left = (from: number, of: readonly number[]): number => of.slice(from).reduce((a, b) => a + b, 0);
  let best: { gauges: string[]; copper: number } | null = null;
  const chosen: (Fitted | undefined)[] = runs.map(() => undefined);
  const visit = (i: number, copper: number, drops: readonly number[]): void => {
    if (best && copper + left(i, least) >= best.copper * (1 - DUST)) return;
    const rest = leastDrop.slice(i);
    if (
      drops.some(
        (sum, k) => sum + rest.reduce((a, one) => a + (one[k] ?? 0), 0) > (allowed[k] as number) * (1 + DUST),
      )
    )
      return;
    if (i === runs.length) {
      const stuck = overrun(facts, chosen as Fitted[]);
      if (runs.some((run, r) => run.auto && stuck[r])) return;
      best = { gauges: chosen.map((one) => one?.gauge ?? ''), copper };
      return;
    }
    const lead = runs[i]?.lead ?? i;
    for (const one of options[i] as Fitted[]) {
      if (lead < i && chosen[lead]?.gauge !== one.gauge) continue;
      chosen[i] = one;
      if (!runs[i]?.auto || shorts(facts, i, chosen).length === 0)
        visit(
          i + 1,
          copper + one.copper,
          drops.map((sum, k) => sum + (one.drops[k] ?? 0)),
        );
      chosen[i] = undefined;
    }
  };
  visit(
    0,
    0,
    facts.firings.map(() => 0),
  );
  return best;
}
