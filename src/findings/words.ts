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

const between = (f: Facts): string => `${f.say('end_fault')} to ${f.say('start_fault')}`;

/** The windows in which the conductor is not protected, each with its credible cause. */
function windows(f: Facts): string {
  const found = [0, 1, 2].flatMap((window) => {
    const from = f.say('window_from', { window });
    if (from === undefined) return [];
    const causes = [
      f.is('window_stuck', { window }) ? `a driver stuck on (${f.say('stuck_current')})` : '',
      f.is('window_short', { window }) ? `a short (${between(f)})` : '',
    ].filter(Boolean);
    const cause = causes.length > 0 ? `, which ${causes.join(' or ')} draws` : ', which nothing here draws';
    return [`from ${from} to ${f.say('window_to', { window })}${cause}`];
  });
  return `The fuse of ${f.say('run_fuse')} is slower than the conductor ${found.join('; ')}.`;
}

/** Three ways out, with their numbers. */
function cures(f: Facts): string {
  const fuse = f.say('cure_fuse');
  const gauge = f.say('cure_gauge');
  const limit = f.say('cure_limit');
  const ways = [
    fuse && `a fuse of ${fuse} at the head of this run`,
    gauge && `a conductor of ${gauge}`,
    limit && `against a stuck driver a current limit below ${limit}`,
  ].filter(Boolean);
  return ways.length > 0
    ? `Cures: ${ways.join('; or ')}.`
    : 'A smaller fuse or a larger conductor is needed.';
}

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
    pass: (f) => `The fuse of ${f.value} is not above what the conductor behind it carries, ${f.limit}.`,
    fail: (f) =>
      `The fuse of ${f.value} is above what the conductor behind it carries, ${f.limit}: a smaller fuse, or a larger ` +
      'conductor.',
    unknown: () => NO_FIGURE,
  },
  curves: {
    title: 'Fuse: quicker than the wire',
    pass: (f) =>
      `Nothing that can happen here draws a current at which the fuse of ${f.say('run_fuse')} is slower than the ` +
      `conductor: ${f.say('stuck_current')} of a driver stuck on, ${between(f)} of a short.`,
    fail: (f) => `${windows(f)} ${cures(f)}`,
    unknown: (f) =>
      f.is('mixed')
        ? MIXED
        : 'Needs a fuse, a size with a known ampacity and the resistance of the source: give `supply.source_resistance`.',
  },
  stuck_driver: {
    title: 'Driver stuck on',
    pass: (f) =>
      `A driver stuck on draws ${f.value} without end; the run endures that much, or its fuse ends it in time (${f.limit}).`,
    fail: (f) =>
      `A driver stuck on draws ${f.value} without end, the run endures ${f.limit}, and no fuse ends it in time: ` +
      'a fuse for each coil, a larger size, or a driver with a lower current limit.',
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
  insulation: {
    title: 'Insulation: ambient',
    pass: (f) => `The place has ${f.value}, the insulation is rated ${f.limit}.`,
    fail: (f) =>
      `The place has ${f.value}, the insulation is rated only ${f.limit}: it can carry nothing there.`,
    unknown: () => 'The rating of the insulation is not known.',
  },
  series_ampacity: {
    title: 'Series: largest ampacity',
    pass: (f) => `The run needs an ampacity of ${f.value}; the largest size of the series has ${f.limit}.`,
    fail: (f) =>
      `The run needs an ampacity of ${f.value}; the largest size of the series has only ${f.limit} at this place. ` +
      'Lay several conductors, or find a cooler route.',
    unknown: () => NO_FIGURE,
  },
  series_area: {
    title: 'Series: largest area',
    pass: (f) => `The run takes ${f.value}; the series goes up to ${f.limit}.`,
    fail: (f) => `The drop limit would need ${f.value}; the series ends at ${f.limit}.`,
    unknown: () => 'The area needed is not known.',
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
