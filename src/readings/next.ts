/**
 * What to measure next: of the readings that one could take the one whose result is expected to tell most between the
 * explanations that are left. Its gain is the mutual information of explanation and reading (Lindley 1956, from memory): how
 * far what it would show differs from one explanation to the other, against the error of the instrument and the tolerances.
 */

import { judgedAlone } from '../design/names.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { cardPlaces, samePlace } from './card.ts';
import type { Diagnosis } from './diagnose.ts';
import { expectedAt, type Where } from './expected.ts';
import type { Model } from './infer.ts';
import { errorOf, senseOf } from './instruments.ts';
import { asExpected, HALF, keyOf, type Parts, partsOf } from './parts.ts';
import { type Show, showIn } from './show.ts';
import { blinds, type Unseen } from './unseen.ts';

export interface Next {
  readonly where: Where;
  /** Information that it is expected to give [nat]. */
  readonly gain: number;
  /** What it would show with the likeliest explanation, and with the likeliest that it tells from it. */
  readonly shows: readonly { readonly model: Model; readonly value: number }[];
}

/** Explanations that are weighed: the likeliest, above a share. */
const MOST = 8;
const LEAST = 0.01;
/** Below this gain nothing is worth the way [nat]. Arbitrary: a share of 0.9 against 0.1 holds 0.33. */
const WORTH = 0.03;
/** Another reading is preferred from this much more on. Arbitrary. */
const BETTER = 1.05;
/** A range of tolerances over the standard deviation of what is shown: its ends are all tolerances at an end. Arbitrary. */
const RANGE = 5;
/** Nodes of an integral over four deviations either way. */
const NODES = 25;

/** Null when nothing that one could read tells more. */
export function nextReading(e: Evaluation, { inference }: Diagnosis): Next | null {
  if (inference === null) return null;
  const models = inference.models.filter(({ share }) => share > LEAST).slice(0, MOST);
  if (models.length < 2) return null;
  // What may be wrong with an instrument is not found with that instrument.
  const doubted = models.flatMap(({ causes }) =>
    causes.flatMap(({ part }) => (part.is === 'instrument' ? [part.sense] : [])),
  );
  const places = candidates(e).filter(
    (one) => !doubted.includes(senseOf(one.instrument)) && !e.design.measured.some((m) => samePlace(m, one)),
  );
  const points = [
    ...new Set([
      ...inference.parts.circuits.keys(),
      ...places.flatMap((p) => (p.point === null ? [] : [p.point])),
    ]),
  ];
  const parts = partsOf(e, points);
  const shows = models.map((model) => showOf(inference.parts, parts, model));
  const total = models.reduce((sum, { share }) => sum + share, 0);
  const weights = models.map(({ share }) => share / total);
  let best: Next | null = null;
  for (const where of places) {
    const values = shows.map((show) => show(where));
    const { low, high, expected } = expectedAt(e, where);
    const tolerance = expected && low !== null && high !== null ? (high - low) / RANGE / expected : 0;
    const deviations = values.map((value) =>
      Math.hypot(
        errorOf(e.design, where, value) / HALF,
        tolerance * (where.what === 'supply' ? 0.05 : 1) * value,
        1e-9,
      ),
    );
    const gain = information(weights, values, deviations);
    // Of two that tell as much the one that is easier to take, which comes first.
    if (gain <= Math.max(WORTH, BETTER * (best?.gain ?? 0))) continue;
    const first = values[0] as number;
    const far = (k: number): number => Math.abs((values[k] as number) - first) / (deviations[k] as number);
    const other = models.findIndex((_, k) => k > 0 && far(k) > 2);
    best = {
      where,
      gain,
      shows: [0, ...(other > 0 ? [other] : [])].map((k) => ({
        model: models[k] as Model,
        value: values[k] as number,
      })),
    };
  }
  return best;
}

/** Those of the card, and what is read with the coils unplugged or from a log. */
const candidates = ({ design }: Evaluation): Where[] => [
  ...cardPlaces({ ...design, measured: [] }).filter((where) => !judgedAlone(where)),
  ...design.coils.flatMap((_, coil): Where[] => [
    { what: 'resistance', instrument: 'value', wire: null, coil, point: null },
    { what: 'inductance', instrument: 'trace', wire: null, coil, point: null },
  ]),
  ...[...design.points.keys()]
    .reverse()
    .map((point): Where => ({ what: 'dwell', instrument: 'log', wire: null, coil: null, point })),
];

/** The state of a model, in the numbering of other parts: those of more points. An instrument shows by its own scale. */
function showOf(from: Parts, to: Parts, { causes, sizes }: Model): Show {
  const state = asExpected(to);
  causes.forEach(({ moves }, k) => {
    for (const [knob, by] of moves) {
      const i = to.index.get(keyOf(from.knobs[knob] as Parts['knobs'][number]));
      if (i !== undefined) state[i] = (state[i] as number) + by * (sizes[k] as number);
    }
  });
  const show = showIn(to, state);
  return (where) =>
    show(where) * Math.exp(state[to.index.get(`gain ${senseOf(where.instrument)}`) ?? -1] ?? 0);
}

/**
 * Where nothing is suspected: the drop over the conductor with most heat in it of those in which no reading would show
 * anything; null when there is none.
 */
export function blindReading(e: Evaluation, all: readonly Unseen[]): Where | null {
  const { points, measured } = e.design;
  const heat = (wire: number): number =>
    (e.number('worst_effective', { wire }) ?? 0) ** 2 * (e.number('joint_ohm') ?? 0);
  const wires = all.flatMap((one) => (one.part.is === 'wire' && blinds(one) ? [one.part.wire] : []));
  const [wire] = wires.sort((a, b) => heat(b) - heat(a));
  if (wire === undefined) return null;
  const point = [...points.keys()].reduce((a, b) => ((points[b]?.rpm ?? 0) > (points[a]?.rpm ?? 0) ? b : a));
  const where: Where = { what: 'drop', instrument: 'meter', wire, coil: null, point };
  return measured.some((m) => samePlace(m, where)) ? null : where;
}

/** Σ w·∫ N·ln(N/mixture): how much a reading with these values and deviations tells of which it is [nat]. */
function information(
  weights: readonly number[],
  values: readonly number[],
  deviations: readonly number[],
): number {
  const density = (k: number, x: number): number => {
    const z = (x - (values[k] as number)) / (deviations[k] as number);
    return Math.exp(-(z * z) / 2) / (deviations[k] as number);
  };
  let sum = 0;
  weights.forEach((weight, k) => {
    let [own, all] = [0, 0];
    for (let n = 0; n < NODES; n++) {
      const z = -4 + (8 * (n + 0.5)) / NODES;
      const x = (values[k] as number) + z * (deviations[k] as number);
      const mixture = weights.reduce((total, w, j) => total + w * density(j, x), 0);
      const share = Math.exp(-(z * z) / 2);
      own += share * Math.log(density(k, x) / mixture);
      all += share;
    }
    sum += (weight * own) / all;
  });
  return sum;
}
