/** The words of every finding, in one table: the compiler refuses a rule without its words. */
import type { At } from '../basis/quantity.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { QuantityName } from '../model/model.ts';
import { printQuantity } from '../views/print.ts';
import type { Finding } from './finding.ts';
import { RULES, type RuleId } from './rules.ts';
import type { Facts, Words } from './word.ts';
import { coilWords } from './words-coil.ts';
import { relayWords } from './words-relay.ts';

const NO_FIGURE =
  'The ampacity table has no figure for this size: take a size from 0.75 mm² up, or the maker’s own figure.';

/** Times of the fuse and of the conductor at both ends of a run. */
const times = (f: Facts): string =>
  `at the far end (${f.say('end_fault')}) it opens within ${f.say('end_opening')} and the conductor withstands ` +
  `${f.say('end_withstood')}; at the start (${f.say('start_fault')}) ${f.say('start_opening')} and ${f.say('start_withstood')}`;

const MIXED =
  'The conductors of this run lie behind fuses of different kinds: divide the run in the design, one for each fuse.';

export const WORDS: Readonly<Record<RuleId, Words>> = {
  fuse_present: {
    title: 'Fuse: before every conductor',
    pass: () => 'Every conductor of the run stands behind a fuse.',
    fail: (f) => `${f.value} conductors of the run have no fuse before them: put one close to the source.`,
    unknown: () => 'It is not known whether a fuse stands before the run.',
  },
  fuse_load: {
    title: 'Fuse: load',
    pass: (f) => `The fuse carries ${f.value} and may carry ${f.limit} for ever at its temperature.`,
    fail: (f) =>
      `The fuse carries ${f.value} and may carry only ${f.limit} for ever at its temperature: ` +
      'take a larger rating with a conductor that suits it, a larger type, or a cooler place.',
    unknown: () => 'The load of the fuse is not known.',
  },
  fuse_conductor: {
    title: 'Fuse: its conductor',
    pass: (f) =>
      `The fuse of ${f.value} is not above 1.5 times what the conductor behind it carries, ${f.limit}.`,
    fail: (f) =>
      `The fuse of ${f.value} is above 1.5 times what the conductor behind it carries, ${f.limit}: a smaller fuse, or a ` +
      'larger conductor.',
    unknown: () => NO_FIGURE,
  },
  fuse_above_conductor: {
    title: 'Fuse: above its conductor',
    pass: (f) => `The fuse of ${f.value} is not above what the conductor behind it carries, ${f.limit}.`,
    fail: (f) =>
      `The fuse of ${f.value} is above what the conductor behind it carries, ${f.limit}; up to 1.5 times is allowed where ` +
      'nothing but the coils can load it. A smaller fuse or a larger conductor has no such condition.',
    unknown: () => NO_FIGURE,
  },
  curves: {
    title: 'Fuse: quicker than the wire',
    pass: (f) => `On a short anywhere along the run the fuse is quicker than the conductor: ${times(f)}.`,
    fail: (f) =>
      `On a short the fuse of ${f.say('run_fuse')} can be slower than the conductor: ${times(f)}. ` +
      'A smaller fuse at the head of this run, or a larger conductor.',
    unknown: (f) =>
      f.is('mixed')
        ? MIXED
        : 'Needs a fuse, a size with a known ampacity and the resistance of the source: give `supply.source_resistance`.',
  },
  stuck_driver: {
    title: 'Driver stuck on',
    pass: (f) =>
      `A driver stuck on draws ${f.say('stuck_current')}. Until the first fuse on its path opens: ${f.value}; ` +
      `withstood by the run: ${f.limit}.`,
    fail: (f) =>
      `A driver stuck on draws ${f.say('stuck_current')}. Until the first fuse on its path opens: ${f.value}; ` +
      `withstood by the run: ${f.limit} only. A fuse for each coil, or a larger size.`,
    unknown: () => NO_FIGURE,
  },
  failed_driver: {
    title: 'Driver failed short',
    pass: (f) =>
      `A driver that failed short draws ${f.say('failed_current')}. Until the first fuse on its path opens: ${f.value}; ` +
      `withstood by the run: ${f.limit}.`,
    fail: (f) =>
      `A driver that failed short, without drop or limit, draws ${f.say('failed_current')}. Until the first fuse on its ` +
      `path opens: ${f.value}; withstood by the run: ${f.limit} only.`,
    unknown: () => NO_FIGURE,
  },
  fault_opens: {
    title: 'Fuse: opens on a short',
    pass: (f) => `A short at the far end draws ${f.say('end_fault')}; the fuse opens within ${f.value}.`,
    fail: (f) =>
      `A short at the far end draws only ${f.say('end_fault')}; the fuse may take ${f.value}, where ${f.limit} is ` +
      'allowed: a smaller fuse, a shorter or larger conductor, or a fuse at the head of this run.',
    unknown: () =>
      'Needs a fuse before the run and the resistance of the source: give `supply.source_resistance`.',
  },
  fuse_pulse: {
    title: 'Fuse: pulses',
    pass: (f) =>
      `One firing heats the fuse by ${f.value}; ${f.limit} of its melting ${f.say('melting')} is allowed.`,
    fail: (f) =>
      `One firing heats the fuse by ${f.value}, where ${f.limit} of its melting ${f.say('melting')} is allowed: it opens ` +
      'after some time without any fault. A larger rating, or a slower type.',
    unknown: () => 'The melting energy of the fuse is not known: its maker states it as I²t.',
  },
  breaking: {
    title: 'Fuse: breaking capacity',
    pass: (f) => `A short right behind the fuse draws ${f.value}; it can break ${f.limit}.`,
    fail: (f) =>
      `A short right behind the fuse draws ${f.value}; it can break only ${f.limit} and may burst: a type with a larger ` +
      'breaking capacity.',
    unknown: () => 'Needs the resistance of the source: give `supply.source_resistance`.',
  },
  fuse_voltage: {
    title: 'Fuse: rated voltage',
    pass: (f) => `The highest supply is ${f.value}; the fuse is made for ${f.limit}.`,
    fail: (f) =>
      `The highest supply is ${f.value}; the fuse is made for ${f.limit} and may keep an arc: a fuse for this voltage.`,
    unknown: () => 'The rated voltage of the fuse is not known: give `voltage`.',
  },
  fuse_listed: {
    title: 'Fuse: a rating that is sold',
    pass: () => 'The rating is on the list of its type.',
    fail: (f) =>
      `A fuse of ${f.say('run_fuse')} is not on the list of type ${f.say('fuse_type')}: it may not be had, and what is ` +
      'stated here of its type need not hold for it. Take a listed rating, or the data sheet of its maker.',
    unknown: () => 'The rating of the fuse is not known.',
  },
  fuse_distance: {
    title: 'Fuse: close to the source',
    pass: (f) => `The fuse sits ${f.value} from the source; ${f.limit} is the most.`,
    fail: (f) =>
      `The fuse sits ${f.value} from the source; ${f.limit} is the most: what lies before it is not protected.`,
    unknown: () => 'Where the fuse sits is not stated: give `from_source`.',
  },
  wire_load: {
    title: 'Conductor: load',
    pass: (f) => `The conductor carries ${f.value} of ${f.limit} allowed at its place.`,
    fail: (f) =>
      `The conductor carries ${f.value} where ${f.limit} is allowed: a larger size, a warmer insulation, ` +
      'fewer conductors together, or a cooler route.',
    unknown: () => NO_FIGURE,
  },
  parallel_size: {
    title: 'Conductors in parallel',
    pass: (f) => `Conductors of ${f.value} lie in parallel; from ${f.limit} that is customary.`,
    fail: (f) =>
      `Conductors of ${f.value} lie in parallel; below ${f.limit} one larger conductor is customary: when one of several ` +
      'comes loose the others carry its share.',
    unknown: () => 'The size of the conductors in parallel is not known.',
  },
  bypass: {
    title: 'Paths: a coil beside the run',
    pass: () => 'No coil bypasses the run.',
    fail: (f) =>
      `${f.value} coils come from where this run starts and are not carried by it, while it carries their neighbours ` +
      'together: is that meant?',
    unknown: () => 'The paths are not known.',
  },
  material: {
    title: 'Insulation: material',
    pass: () => 'The material of the insulation is known.',
    fail: (f) =>
      `The class does not say what the insulation is made of: for a short it is taken as PVC, ${f.say('short_limit')}. ` +
      'If it is cross-linked, `material: cross-linked` says so, and thinner conductors may do.',
    unknown: () => 'The material of the insulation is not known.',
  },
  insulation: {
    title: 'Insulation: ambient',
    pass: (f) => `The place has ${f.value}, the insulation is rated ${f.limit}.`,
    fail: (f) =>
      `The place has ${f.value}, the insulation is rated only ${f.limit}: it can carry nothing there.`,
    unknown: () => 'The rating of the insulation is not known.',
  },
  size_found: {
    title: 'Size: found',
    pass: () => 'A size keeps every rule that a size can keep.',
    fail: (f) =>
      `No size that may be chosen keeps every rule (${f.say('binding') ?? 'see below'}). With the largest sizes the worst path ` +
      `would still drop ${f.say('least_drop')}, where ${f.say('drop_limit')} is allowed; the run needs an ampacity of ` +
      `${f.say('needed_amps')}, and the largest has ${f.say('largest_amps')}.`,
    unknown: () => 'The sizes are not known.',
  },
  series_ampacity: {
    title: 'Series: largest ampacity',
    pass: (f) => `The run needs an ampacity of ${f.value}; the largest size of the series has ${f.limit}.`,
    fail: (f) =>
      `The run needs an ampacity of ${f.value}; the largest size of the series has only ${f.limit} at this place. ` +
      'Lay several conductors, or find a cooler route.',
    unknown: () => NO_FIGURE,
  },
  drop: {
    title: 'Drop: worst coil’s path',
    pass: (f) => `The worst path drops ${f.value} at the firing instant; ${f.limit} is allowed.`,
    fail: (f) =>
      `The worst path drops ${f.value} at the firing instant; ${f.limit} is allowed. Look at the run with the largest ` +
      'share first.',
    unknown: () => 'The drop is not known.',
  },
  drop_budget: {
    title: 'Drop: left for conductors',
    pass: (f) => `Joints, fuses, relays and stated sizes leave ${f.value} of the drop allowed.`,
    fail: (f) =>
      `Joints, fuses, relays and stated sizes alone exceed the drop allowed (${f.value} is left): no conductor would ` +
      'do. Fewer joints, a better contact, or a larger stated size.',
    unknown: () => 'What is left of the drop is not known.',
  },
  supply_left: {
    title: 'Supply: left at the coil',
    pass: (f) => `The worst coil has ${f.value} at the firing instant.`,
    fail: (f) =>
      `The drop would be more than the supply (${f.value} is left): this feed cannot carry the load at this point.`,
    unknown: () => 'The supply at the coil is not known.',
  },
  ...relayWords,
  ...coilWords,
};

/** Advice has the words of a failure, or those of an unknown where there is nothing to compare. */
const wordsOf = ({ verdict, value, limit }: Finding): 'pass' | 'fail' | 'unknown' =>
  verdict !== 'advice' ? verdict : value === null || limit === null ? 'unknown' : 'fail';

/** The sentence of a finding. */
export function sentence(f: Finding, e: Evaluation): string {
  const { value, limit } = RULES[f.rule];
  const { units } = e.design;
  // A feed run is also a run: its number is the same.
  const index = f.at.run ?? f.at.feed;
  const here: At = index === undefined ? f.at : { ...f.at, run: index, feed: index };
  const say = (name: QuantityName, at: At = {}): string | undefined => {
    const found = e.value(name, { ...here, ...at });
    return found === null ? undefined : typeof found === 'string' ? found : printQuantity(name, found, units);
  };
  return WORDS[f.rule][wordsOf(f)]({
    subject: f.subject,
    value: printQuantity(value, f.value, units),
    limit: printQuantity(limit, f.limit, units, value),
    say,
    is: (name, at = {}) => e.value(name, { ...here, ...at }) === 1,
  });
}

/** `Fuse: load, main`, or the title alone for the whole feed. */
export const heading = (f: Finding): string =>
  f.subject === 'feed' ? WORDS[f.rule].title : `${WORDS[f.rule].title}, ${f.subject}`;
