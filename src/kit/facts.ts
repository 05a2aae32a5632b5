/** What the placeholders of the words stand for: values and names of the design, as markup. */

import { leastBehind, TRIGGER_SIZES } from '../data/trigger-wire.ts';
import { FITTING, type Fitting, type Pin } from '../design/kit.ts';
import { listed } from '../design/problems.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { name, sizeName } from './html.ts';
import type { Job } from './job.ts';
import type { Spot } from './places.ts';
import { blank, kitValue, modelValue, terminal } from './values.ts';

type Fact = (job: Job) => string;

const spots = ({ harness }: Job, kind: Spot['kind']): Spot[] =>
  harness.spots.filter((spot) => spot.kind === kind);

const runOf = ({ result }: Job, spot: Spot): number =>
  result.evaluation.design.wires[spot.wire ?? -1]?.run ?? 0;

/** One text for each part of a kind: `F1: 20 A, type E and F2: …`. */
const ofEach =
  (kind: Spot['kind'], text: (job: Job, run: number, spot: Spot) => string): Fact =>
  (job) => {
    const all = spots(job, kind).map((spot) => text(job, runOf(job, spot), spot));
    return all.length === 0 ? blank : listed(all);
  };

const of = (job: Job, quantity: QuantityName, run: number): string =>
  modelValue(job.result.evaluation, quantity, { run });

const names =
  (kind: Spot['kind']): Fact =>
  (job) => {
    const all = spots(job, kind).map((spot) => name(spot.id));
    return all.length === 0 ? blank : listed(all);
  };

/** Pieces between the battery and the fuses. */
const firstPieces: Fact = (job) => {
  const first = job.harness.pieces.filter(
    (piece) => piece.from.spot.kind === 'plus' && piece.to.spot.kind === 'fuse',
  );
  return first.length === 0
    ? blank
    : listed(
        first.map(
          (piece) =>
            `the wire ${name(piece.id)} is ${kitValue(job, `length ${piece.id}`, piece.length, 'piece')} long`,
        ),
      );
};

/** Wires that begin or end at a kind of place. */
const wiresFrom =
  (kind: Spot['kind']): Fact =>
  ({ harness }) => {
    const all = harness.pieces.filter(({ from, to }) => from.spot.kind === kind || to.spot.kind === kind);
    return all.length === 0 ? blank : listed(all.map((piece) => `the wire ${name(piece.id)}`));
  };

/** Text of the shop, or a line to write on. */
const given = (text: string | null): string => (text === null ? blank : name(text));
const fitting =
  (what: Fitting): Fact =>
  ({ result }) =>
    given(result.evaluation.design.kit.fitting[what]);
const pin =
  (which: Pin): Fact =>
  ({ result }) =>
    given(result.evaluation.design.kit.pins[which]);

/**
 * What the relay coil must get while the engine cranks: what it pulls in at; where the design lets it hold below that,
 * what it holds at.
 */
const triggerLimit = (job: Job, run: number): string => {
  const { evaluation: e } = job.result;
  const [supply, pullIn] = [e.number('relay_supply', { run }), e.number('relay_pull_in', { run })];
  const holds = supply !== null && pullIn !== null && supply < pullIn;
  return of(job, holds ? 'relay_drop_out' : 'relay_pull_in', run);
};

/** By the fuse of the original ignition wire when it is known, else for each size the largest fuse. */
const triggerSizes: Fact = (job) => {
  const { fuse } = job.result.evaluation.design.kit.trigger;
  const amps = (value: number): string => kitValue(job, 'trigger fuse', value, 'A');
  if (fuse !== null) return `${sizeName(leastBehind(fuse))} behind its fuse of ${amps(fuse)}`;
  return listed(
    TRIGGER_SIZES.map(
      (size) => `${sizeName(size.gauge)} behind a fuse of up to ${amps(Math.floor(size.amps))}`,
    ),
  );
};

const hottest: Fact = ({ result: { evaluation: e } }) => {
  const all = e.design.wires.map((_, wire) => e.number('wire_T', { wire }));
  if (all.includes(null)) return blank;
  const wire = all.reduce<number>((most, t, i) => ((t ?? 0) > (all[most] ?? 0) ? i : most), 0);
  return modelValue(e, 'wire_T', { wire });
};

export const FACTS: Readonly<Record<string, Fact>> = {
  title: ({ result }) => name(result.evaluation.design.title),
  coil_count: (job) => kitValue(job, 'coils', job.result.evaluation.design.coils.length, 'count'),
  fuses: ofEach(
    'fuse',
    (job, run, spot) => `${name(spot.id)}: ${of(job, 'fuse_rating', run)}, type ${of(job, 'fuse_type', run)}`,
  ),
  fuse_names: names('fuse'),
  fuse_places: ofEach('fuse', (job, run, spot) => `${of(job, 'fuse_ambient', run)} around ${name(spot.id)}`),
  first_pieces: firstPieces,
  relays: ofEach('relay', (job, run, spot) => `${name(spot.id)}: ${of(job, 'relay_rating', run)}`),
  relay_names: names('relay'),
  relay_places: ofEach('relay', (job, run) => of(job, 'relay_ambient', run)),
  pull_ins: ofEach('relay', (job, run) => of(job, 'relay_pull_in', run)),
  relay_supplies: ofEach('relay', (job, run) => of(job, 'relay_supply', run)),
  trigger_currents: ofEach('relay', (job, run) => of(job, 'trigger_current', run)),
  trigger_limits: ofEach('relay', triggerLimit),
  trigger_sizes: triggerSizes,
  trigger_wires: wiresFrom('trigger'),
  relay_grounds: wiresFrom('chassis'),
  splices: names('splice'),
  grounds: names('ground'),
  hottest,
  allowance: (job) => kitValue(job, 'allowance', job.result.evaluation.design.kit.allowance, '%'),
  end_allowance: (job) =>
    kitValue(job, 'end_allowance', job.result.evaluation.design.kit.end_allowance, 'small'),
  test_current: (job) => kitValue(job, 'test_current', job.result.evaluation.design.kit.test_current, 'A'),
  continuity: (job) => kitValue(job, 'continuity', job.result.evaluation.design.kit.continuity, 'ohm'),
  isolation: (job) => kitValue(job, 'isolation', job.result.evaluation.design.kit.isolation, 'ohm'),
  contact: ({ result }) => given(result.evaluation.design.shop?.shop?.contact ?? null),
  supply_pin: pin('supply'),
  ground_pin: pin('ground'),
  control_pin: pin('control'),
  ...(Object.fromEntries(FITTING.map((key) => [key, fitting(key)])) as Record<Fitting, Fact>),
  t_fifteen: () => terminal('15'),
  t_thirty: () => terminal('30'),
  t_thirtyone: () => terminal('31'),
  t_eightyfive: () => terminal('85'),
  t_eightysix: () => terminal('86'),
  t_eightyseven: () => terminal('87'),
};

/** Quantities that exist once, by their own name. */
const isSingle = (key: string): key is QuantityName => {
  const q = Object.hasOwn(QUANTITIES, key) ? QUANTITIES[key as QuantityName] : undefined;
  return q !== undefined && q.per === undefined && q.across === undefined && q.unit !== 'text';
};

export const isFact = (key: string): boolean => Object.hasOwn(FACTS, key) || isSingle(key);

export const factNames = (): string[] => Object.keys(FACTS);

/** The markup that a placeholder stands for. Throws on one that does not exist. */
export function fact(key: string, job: Job): string {
  const known = Object.hasOwn(FACTS, key) ? FACTS[key] : undefined;
  if (known) return known(job);
  if (isSingle(key)) return modelValue(job.result.evaluation, key);
  throw new Error(`there is no value {${key}}`);
}
