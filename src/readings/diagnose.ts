/** What the weighed hypotheses come to: what is named, what cannot be told apart, with sizes and bands. */
import type { Measured } from '../design/design.ts';
import { judgedAlone } from '../design/names.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { whyNoTrace } from '../transient/circuit.ts';
import type { How, Hypothesis, Part } from './causes.ts';
import { type Inference, infer, MISFIT, type Model } from './infer.ts';
import { partsOf } from './parts.ts';

export interface Cause {
  readonly part: Part;
  /** In which way, the likeliest. */
  readonly how: How;
  /** Other ways that the same part could have it, which these readings do not exclude. */
  readonly ways: readonly How[];
  /** In the unit of `how`: [ohm] too much, a factor, volts above, or nothing. */
  readonly size: number;
  /** Nine times in ten it is within these. */
  readonly low: number;
  readonly high: number;
  /** Probability that it is this part, among everything that was weighed. */
  readonly share: number;
}

/** One thing that is wrong: the part that it is, or those among which the readings cannot tell, the likeliest first. */
export type Found = readonly Cause[];

export interface Diagnosis {
  readonly found: readonly Found[];
  /** Probability that nothing is wrong. */
  readonly sound: number;
  /** What may be wrong while nothing being wrong is as well possible; empty when something is found. */
  readonly suspects: Found;
  /** Whether anything that was thought of explains the readings. */
  readonly explained: boolean;
  /** Why nothing was weighed, as a sentence; null when it was. */
  readonly why: string | null;
  readonly inference: Inference | null;
}

/** A part is named from this share on. Arbitrary: nine times in ten. */
export const NAMED = 0.9;
/** From this share on of nothing being wrong nobody need be told what else there could be. Arbitrary. */
export const SURE = 0.8;
/** Of those that cannot be told apart as many are listed as make up this share, none below the second. Arbitrary. */
const LISTED = 0.95;
const LEAST = 0.02;
/** A way is mentioned beside the likeliest from this share of the part on. Arbitrary. */
const WAY = 0.1;
/** 90 % of a normal distribution are within so many deviations. */
const NINETY = 1.645;

const none = (why: string): Diagnosis => ({
  found: [],
  sound: 1,
  suspects: [],
  explained: true,
  why,
  inference: null,
});

/** Explains the readings of a design. The evaluation must hold the subject `readings`. */
export function diagnose(e: Evaluation, readings: readonly Measured[] = e.design.measured): Diagnosis {
  const weighed = readings.filter((one) => !judgedAlone(one));
  if (readings.length === 0) return none('No readings were taken.');
  if (weighed.length === 0)
    return none('No reading tells of the feed: only the battery or the coil of a relay was read.');
  if (whyNoTrace(e) !== null)
    return none('Only a peak current is known of the coil, and that is a bound: give its inductance.');
  const read = [...new Set(weighed.flatMap(({ point }) => (point === null ? [] : [point])))];
  const points = read.length > 0 ? read : [0];
  const inference = infer(partsOf(e, points, weighed), weighed);
  const sets = setsOf(inference.models);
  const sound = sets.find(({ keys }) => keys.length === 0)?.share ?? 0;
  const top = sets.find(({ keys }) => keys.length > 0);
  const found = top === undefined ? [] : top.keys.map((key) => foundOf(sets, top, key));
  const sure = sound <= 1 - NAMED;
  return {
    found: sure ? found : [],
    sound,
    suspects: sure ? [] : (found[0] ?? []),
    explained: inference.fits >= MISFIT,
    why: null,
    inference,
  };
}

/** Models with the same parts, whatever is the matter with these. */
interface Group {
  readonly keys: readonly string[];
  readonly share: number;
  readonly models: readonly Model[];
}

/** A supply that is low at one point and one that is low at all are the same thing to look at. */
const keyOf = ({ part }: Hypothesis): string => (part.is === 'supply' ? part.is : JSON.stringify(part));

/** The likeliest first. */
function setsOf(models: readonly Model[]): Group[] {
  const groups = new Map<string, Model[]>();
  for (const model of models) {
    const key = model.causes.map(keyOf).sort().join();
    groups.set(key, [...(groups.get(key) ?? []), model]);
  }
  return [...groups.values()]
    .map((own) => ({
      keys: [...new Set(own[0]?.causes.map(keyOf))],
      share: own.reduce((sum, { share }) => sum + share, 0),
      models: own,
    }))
    .sort((a, b) => b.share - a.share);
}

/** A part of the likeliest explanation, and those that could stand in its place. */
function foundOf(sets: readonly Group[], top: Group, key: string): Found {
  const others = top.keys.filter((one) => one !== key);
  const rivals = sets.flatMap((group) => {
    const own = group.keys.filter((one) => !others.includes(one));
    return own.length === 1 && group.keys.length === top.keys.length
      ? [{ group, key: own[0] as string }]
      : [];
  });
  const withKey = (one: string): number =>
    sets.reduce((sum, { keys, share }) => (keys.includes(one) ? sum + share : sum), 0);
  const causes = rivals
    .map((rival) => causeOf(rival.group, rival.key, withKey(rival.key)))
    .sort((a, b) => b.share - a.share);
  const listed: Cause[] = [];
  let share = 0;
  for (const cause of causes) {
    if (listed.length > 0 && (share >= LISTED || cause.share < LEAST)) break;
    listed.push(cause);
    share += cause.share;
    if ((listed[0] as Cause).share >= NAMED) break;
  }
  return listed;
}

function causeOf({ models, share: all }: Group, key: string, share: number): Cause {
  const ways = new Map<How, number>();
  for (const model of models) {
    const how = model.causes.find((c) => keyOf(c) === key)?.how;
    if (how !== undefined) ways.set(how, (ways.get(how) ?? 0) + model.share);
  }
  const likely = [...ways].sort((a, b) => b[1] - a[1]);
  const how = likely[0]?.[0] as How;
  const at = (model: Model): number => model.causes.findIndex((c) => keyOf(c) === key && c.how === how);
  const model = models.filter((m) => at(m) >= 0).reduce((a, b) => (b.share > a.share ? b : a));
  const k = at(model);
  const { unit, part, from, to } = model.causes[k] as Hypothesis;
  const free = model.causes.slice(0, k).filter((c) => c.from < c.to).length;
  const deviation = from === to ? 0 : Math.sqrt(model.spread[free]?.[free] ?? 0);
  const size = model.sizes[k] as number;
  const said = (value: number): number =>
    unit === 'ln' ? Math.exp(value) : unit === 'share' ? 1 + value : value;
  return {
    part,
    how,
    ways: likely.flatMap(([other, part]) => (other !== how && part > WAY * all ? [other] : [])),
    size: said(size),
    low: said(
      unit === 'ohm' || unit === 'share' ? Math.max(0, size - NINETY * deviation) : size - NINETY * deviation,
    ),
    high: said(size + NINETY * deviation),
    share,
  };
}
