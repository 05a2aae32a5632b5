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
  'The ampacity table has no figure for this size: choose 0.75 mm² or larger, or use the maker’s own figure.';

const NO_OHM =
  'The current of a driver that stays on is not known: give `coil.resistance`, the primary at 20 °C, read between its two ' +
  'terminals with the plug off.';

/** Times of the fuse and of the conductor at both ends of a run. */
const times = (f: Facts): string =>
  `far end (${f.say('end_fault')}): fuse ${f.say('end_opening')}, conductor ${f.say('end_withstood')}; ` +
  `near end (${f.say('start_fault')}): fuse ${f.say('start_opening')}, conductor ${f.say('start_withstood')}`;

const MIXED =
  'The conductors of this run lie behind fuses of different kinds: divide the run in the design, one run for each fuse.';

/** Why no size does, by the rule that none of them meets. */
const NO_SIZE: Readonly<Record<string, (f: Facts) => string>> = {
  drop: (f) =>
    `Even with the largest sizes on offer the worst path would drop ${f.say('least_drop')}; ${f.say('drop_limit')} is allowed.`,
  wire_load: (f) =>
    `The run needs an ampacity of ${f.say('needed_amps')}; the largest size on offer has ${f.say('largest_amps')}.`,
  curves: () => 'No size on offer withstands a short behind it until a fuse opens.',
  fault_opens: () => 'With any size on offer a short at its far end is too weak to open a fuse in time.',
  stuck_driver: () => 'No size on offer withstands a driver that stays on until a fuse opens.',
  own: () => 'A run that takes the same size cannot have any size on offer.',
};

export const WORDS: Readonly<Record<RuleId, Words>> = {
  fuse_present: {
    title: 'Fuse: before every conductor',
    pass: () => 'Every conductor of the run is behind a fuse.',
    fail: (f) => `${f.value} conductors of the run have no fuse ahead of them: nothing ends a short there.`,
    unknown: () => 'It is not known whether there is a fuse ahead of the run.',
  },
  fuse_load: {
    title: 'Fuse: load',
    pass: (f) => `The fuse carries ${f.value}; at its temperature it may carry ${f.limit} continuously.`,
    fail: (f) =>
      `The fuse carries ${f.value}; at its temperature it may carry only ${f.limit} continuously, ` +
      'and will open some day without any fault.',
    unknown: () => 'The load of the fuse is not known.',
  },
  fuse_conductor: {
    title: 'Fuse: its conductor',
    pass: (f) =>
      `The ${f.value} fuse is within 1.5 times the ampacity of the conductor behind it, ${f.limit}.`,
    fail: (f) =>
      `The ${f.value} fuse exceeds 1.5 times the ampacity of the conductor behind it, ${f.limit}, ` +
      'the most that is allowed.',
    unknown: () => NO_FIGURE,
  },
  fuse_above_conductor: {
    title: 'Fuse: above its conductor',
    pass: (f) => `The ${f.value} fuse is within the ampacity of the conductor behind it, ${f.limit}.`,
    fail: (f) =>
      `The ${f.value} fuse exceeds the ampacity of the conductor behind it, ${f.limit}. Up to 1.5 times is allowed where ` +
      'nothing but the coils can load it.',
    unknown: () => NO_FIGURE,
  },
  curves: {
    title: 'Fuse: quicker than the wire',
    pass: (f) =>
      `On a short anywhere along the run the fuse opens before the conductor is harmed: ${times(f)}.`,
    fail: (f) =>
      `On a short the ${f.say('run_fuse')} fuse can open too late to save the conductor: ${times(f)}.`,
    unknown: (f) =>
      f.is('mixed')
        ? MIXED
        : 'Needs a fuse, a size with a known ampacity and the resistance of the source: give `supply.source_resistance` or `supply.cold_cranking`.',
  },
  stuck_driver: {
    title: 'Driver stuck on',
    pass: (f) =>
      `A driver stuck on draws ${f.say('stuck_current')}. Time until a fuse on its path opens: ${f.value}; ` +
      `the run withstands: ${f.limit}.`,
    fail: (f) =>
      `A driver stuck on draws ${f.say('stuck_current')}. Time until a fuse on its path opens: ${f.value}; ` +
      `the run withstands: only ${f.limit}.`,
    unknown: (f) =>
      f.say('stuck_current') === undefined
        ? `${NO_OHM} A \`current_limit\` of the driver would bound it as well.`
        : NO_FIGURE,
  },
  failed_driver: {
    title: 'Driver failed short',
    pass: (f) =>
      `A driver that failed short draws ${f.say('failed_current')}. Time until a fuse on its path opens: ${f.value}; ` +
      `the run withstands: ${f.limit}.`,
    fail: (f) =>
      `A driver that failed short, with no drop and no current limit, draws ${f.say('failed_current')}. Time until a ` +
      `fuse on its path opens: ${f.value}; the run withstands: only ${f.limit}.`,
    unknown: (f) => (f.say('failed_current') === undefined ? NO_OHM : NO_FIGURE),
  },
  fault_opens: {
    title: 'Fuse: opens on a short',
    pass: (f) => `A short at the far end draws ${f.say('end_fault')}; the fuse opens within ${f.value}.`,
    fail: (f) =>
      `A short at the far end draws only ${f.say('end_fault')}; time until the fuse opens: ${f.value}, where ${f.limit} is ` +
      'allowed.',
    unknown: (f) =>
      f.is('mixed') && f.is('auto')
        ? MIXED
        : 'Needs a fuse ahead of the run and the resistance of the source: give `supply.source_resistance` or `supply.cold_cranking`.',
  },
  fuse_pulse: {
    title: 'Fuse: pulses',
    pass: (f) =>
      `One firing heats the fuse by ${f.value}; even a hundred pulses ten seconds apart may have ${f.limit} each. Firings ` +
      'come closer: for those the effective current counts, see the load of the fuse.',
    fail: (f) =>
      `One firing heats the fuse by ${f.value}; even a hundred pulses ten seconds apart may have only ${f.limit} each: in ` +
      'time it opens without any fault.',
    unknown: () => 'The melting energy of the fuse is not known: its maker states it as I²t. Give `melting`.',
  },
  breaking: {
    title: 'Fuse: breaking capacity',
    pass: (f) => `A short right behind the fuse draws ${f.value}; the fuse can interrupt ${f.limit}.`,
    fail: (f) =>
      `A short right behind the fuse draws ${f.value}; the fuse can interrupt only ${f.limit} and may burst.`,
    unknown: () =>
      'Needs the resistance of the source: give `supply.source_resistance` or `supply.cold_cranking`.',
  },
  fuse_voltage: {
    title: 'Fuse: rated voltage',
    pass: (f) => `The highest supply is ${f.value}; the fuse is rated ${f.limit}.`,
    fail: (f) =>
      `The highest supply is ${f.value}; the fuse is rated only ${f.limit} and may sustain an arc.`,
    unknown: () => 'The rated voltage of the fuse is not known: give `voltage`.',
  },
  fuse_listed: {
    title: 'Fuse: a standard rating',
    pass: () => 'The rating is on the list of its type.',
    fail: (f) =>
      `${f.say('run_fuse')} is not on the list of type ${f.say('fuse_type')}: such a fuse may be hard to buy, and what is ` +
      'stated here for the type may not hold for it. Go by its maker’s data sheet.',
    unknown: () => 'The rating of the fuse is not known.',
  },
  fuse_distance: {
    title: 'Fuse: close to the source',
    pass: (f) => `The fuse sits ${f.value} from the source; ${f.limit} is the most allowed.`,
    fail: (f) =>
      `The fuse sits ${f.value} from the source; ${f.limit} is the most allowed. What lies ahead of it is not protected.`,
    unknown: () => 'Where the fuse sits is not stated: give `from_source`.',
  },
  wire_load: {
    title: 'Conductor: load',
    pass: (f) => `The conductor carries ${f.value}; ${f.limit} is allowed where it lies.`,
    fail: (f) =>
      `The conductor carries ${f.value}; only ${f.limit} is allowed where it lies: it gets too hot.`,
    unknown: () => NO_FIGURE,
  },
  parallel_size: {
    title: 'Conductors in parallel',
    pass: (f) => `Conductors of ${f.value} are in parallel; that is customary from ${f.limit} up.`,
    fail: (f) =>
      `Conductors of ${f.value} are in parallel. Below ${f.limit} one larger conductor is customary: when one of several ` +
      'comes loose, the others carry its share.',
    unknown: () => 'The size of the conductors in parallel is not known.',
  },
  bypass: {
    title: 'Paths: a coil beside the run',
    pass: () => 'No coil bypasses the run.',
    fail: (f) =>
      `${f.value === '1' ? '1 coil is' : `${f.value} coils are`} fed from the point where this run starts, but not through it, ` +
      'while it carries the coils next to them together. Is that intended?',
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
  cable_made: {
    title: 'Cable: a size it is made in',
    pass: () => 'The type is customarily made in this size.',
    fail: (f) =>
      f.say('cable') === '2'
        ? `${f.say('run_insulation')} is battery cable, customarily made from ${f.say('battery_least')} up; the run has ` +
          `${f.say('area')}: such a size may be hard to buy. Thinner wire is primary cable: GPT, GXL, SXL, TXL.`
        : `${f.say('run_insulation')} is primary cable, customarily made up to ${f.say('primary_most')}; the run has ` +
          `${f.say('area')}: such a size may be hard to buy. Thicker wire is battery cable: SGT, SGX, STX.`,
    unknown: () => 'The size is not known.',
  },
  insulation: {
    title: 'Insulation: ambient',
    pass: (f) => `Ambient ${f.value}; insulation rated ${f.limit}.`,
    fail: (f) => `Ambient ${f.value}; insulation rated only ${f.limit}: the wire can carry no current there.`,
    unknown: () => 'The rating of the insulation is not known.',
  },
  size_found: {
    title: 'Size: available',
    pass: () => 'The size chosen meets every rule that a size can meet.',
    fail: (f) => {
      const binding = f.say('binding') ?? '';
      return NO_SIZE[binding]?.(f) ?? `No size on offer meets every rule (${binding}).`;
    },
    unknown: () => 'The sizes are not known.',
  },
  series_ampacity: {
    title: 'Series: largest ampacity',
    pass: (f) => `The run needs an ampacity of ${f.value}; the largest size of the series has ${f.limit}.`,
    fail: (f) =>
      `The run needs an ampacity of ${f.value}; the largest size of the series has only ${f.limit} at this place.`,
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
    pass: (f) => `Joints, fuses, relays and stated sizes leave ${f.value} of the allowed drop.`,
    fail: (f) =>
      `Joints, fuses, relays and stated sizes alone exceed the allowed drop (${f.value} is left): no conductor would ` +
      'do.',
    unknown: () => 'What is left of the drop is not known.',
  },
  supply_left: {
    title: 'Supply: left at the coil',
    pass: (f) => `The worst coil has ${f.value} at the firing instant.`,
    fail: (f) =>
      `The drop would exceed the supply (${f.value} is left): this feed cannot carry the load at this operating point.`,
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
export const heading = (f: Finding): string => headingOf(f, [f.subject]);

const headingOf = ({ rule }: Finding, subjects: readonly string[]): string =>
  [WORDS[rule].title, ...subjects.filter((subject) => subject !== 'feed')].join(', ');

/** A sentence that one finding, or several of the same rule and verdict, have in common. */
export interface Told {
  readonly first: Finding;
  readonly count: number;
  /** `Fuse: load, main, left trunk` */
  readonly heading: string;
  readonly sentence: string;
}

/** What is the same for several runs or points is said once, where the first of them stands. */
export function toldOnce(found: readonly Finding[], e: Evaluation): Told[] {
  const groups = new Map<string, { first: Finding; all: Finding[]; said: string }>();
  for (const f of found) {
    const said = sentence(f, e);
    const key = `${f.verdict} ${f.rule} ${said}`;
    const group = groups.get(key) ?? { first: f, all: [], said };
    group.all.push(f);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ first, all, said }): Told => {
    const subjects = [...new Set(all.map(({ subject }) => subject))];
    return { first, count: all.length, heading: headingOf(first, subjects), sentence: said };
  });
}
