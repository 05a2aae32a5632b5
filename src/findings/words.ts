/** The words of every finding, in one table: the compiler refuses a rule without its words. */
import { printValue } from '../basis/print.ts';
import { QUANTITIES } from '../model/model.ts';
import type { Finding } from './finding.ts';
import { RULES, type RuleId } from './rules.ts';

/** What a sentence may say of a finding, already printed. */
interface Facts {
  readonly subject: string;
  readonly value: string;
  readonly limit: string;
}

interface Words {
  readonly title: string;
  readonly pass: (f: Facts) => string;
  readonly fail: (f: Facts) => string;
  /** What is not known, and what to look up. */
  readonly unknown: (f: Facts) => string;
}

const NO_FIGURE =
  'The ampacity table has no figure for this size: take a size from 0.75 mm² up, or the maker’s own figure.';

export const WORDS: Readonly<Record<RuleId, Words>> = {
  fuse_present: {
    title: 'Fuse before the conductor',
    pass: () => 'Every conductor of the run stands behind a fuse.',
    fail: (f) => `${f.value} conductors of the run have no fuse before them: put one close to the source.`,
    unknown: () => 'It is not known whether a fuse stands before the run.',
  },
  fuse_load: {
    title: 'Load of the fuse',
    pass: (f) => `The fuse carries ${f.value} and may carry ${f.limit} for ever at its temperature.`,
    fail: (f) =>
      `The fuse carries ${f.value} and may carry only ${f.limit} for ever at its temperature: ` +
      'take a larger rating with a conductor that suits it, a larger type, or a cooler place.',
    unknown: () => 'The load of the fuse is not known.',
  },
  fuse_conductor: {
    title: 'Fuse against conductor',
    pass: (f) => `The fuse of ${f.value} is not above what the conductor carries, ${f.limit}.`,
    fail: (f) =>
      `The fuse of ${f.value} is above what the conductor carries, ${f.limit}: a smaller fuse at the head of the run, ` +
      'or a larger conductor.',
    unknown: () => NO_FIGURE,
  },
  wire_load: {
    title: 'Load of the conductor',
    pass: (f) => `The conductor carries ${f.value} of ${f.limit} allowed at its place.`,
    fail: (f) =>
      `The conductor carries ${f.value} where ${f.limit} is allowed: a larger size, a warmer insulation, ` +
      'fewer conductors together, or a cooler route.',
    unknown: () => NO_FIGURE,
  },
  insulation: {
    title: 'Insulation against ambient',
    pass: (f) => `The place has ${f.value}, the insulation is rated ${f.limit}.`,
    fail: (f) =>
      `The place has ${f.value}, the insulation is rated only ${f.limit}: it can carry nothing there.`,
    unknown: () => 'The rating of the insulation is not known.',
  },
  series_ampacity: {
    title: 'Largest size of the series, current',
    pass: (f) => `The run needs an ampacity of ${f.value}; the largest size of the series has ${f.limit}.`,
    fail: (f) =>
      `The run needs an ampacity of ${f.value}; the largest size of the series has only ${f.limit} at this place. ` +
      'Lay several conductors, or find a cooler route.',
    unknown: () => NO_FIGURE,
  },
  series_area: {
    title: 'Largest size of the series, drop',
    pass: (f) => `The run takes ${f.value}; the series goes up to ${f.limit}.`,
    fail: (f) => `The drop limit would need ${f.value}; the series ends at ${f.limit}.`,
    unknown: () => 'The area needed is not known.',
  },
  drop: {
    title: 'Drop of the worst coil’s path',
    pass: (f) => `The worst path drops ${f.value} at the firing instant; ${f.limit} is allowed.`,
    fail: (f) =>
      `The worst path drops ${f.value} at the firing instant; ${f.limit} is allowed. Look at the run with the largest ` +
      'share first.',
    unknown: () => 'The drop is not known.',
  },
  drop_budget: {
    title: 'Drop left to the sizes that are chosen',
    pass: (f) => `Joints, fuses, relays and stated sizes leave ${f.value} of the drop allowed.`,
    fail: (f) =>
      `Joints, fuses, relays and stated sizes alone exceed the drop allowed (${f.value} is left): no conductor would ` +
      'do. Fewer joints, a better contact, or a larger stated size.',
    unknown: () => 'What is left of the drop is not known.',
  },
  relay_contact: {
    title: 'Relay contact, continuous load',
    pass: (f) => `The contact carries ${f.value} and is rated ${f.limit} at this temperature.`,
    fail: (f) => `The contact carries ${f.value} and is rated only ${f.limit} at this temperature.`,
    unknown: () =>
      'A contact rating holds up to its own temperature: look up in the data sheet what the relay carries at this ' +
      'ambient temperature, and state it with `rated_at`.',
  },
  relay_inductive: {
    title: 'Relay contact, inductive load',
    pass: (f) => `For an inductive load the contact needs ${f.value} nominal and has ${f.limit}.`,
    fail: (f) => `For an inductive load the contact needs ${f.value} nominal and has only ${f.limit}.`,
    unknown: () => 'The rating of the contact is not known.',
  },
  relay_pull_in: {
    title: 'Relay pulls in hot while cranking',
    pass: (f) => `The hot coil pulls in at ${f.value} and has ${f.limit} while cranking.`,
    fail: (f) =>
      `The hot coil pulls in only at ${f.value} and has ${f.limit} while cranking: the relay may not close. A cooler ` +
      'place, a relay with a lower pull-in voltage, or a better trigger wire.',
    unknown: () => 'The pull-in voltage is not stated: the data sheet of the relay has it, at 20 °C.',
  },
  dwell_served: {
    title: 'Time for a dwell',
    pass: (f) => `The coil gets ${f.value} of dwell.`,
    fail: () => 'The rest takes the whole time between two firings: this engine speed cannot be served.',
    unknown: () => 'The dwell is not known.',
  },
  alternator: {
    title: 'Alternator',
    pass: (f) => `The coils take ${f.value} on average; the other loads leave ${f.limit}.`,
    fail: (f) =>
      `The coils take ${f.value} on average; the other loads leave only ${f.limit}: the battery empties.`,
    unknown: () => 'What the alternator has to spare is not known.',
  },
  intervals: {
    title: 'Rows for the firing intervals',
    pass: () => 'Every interval between firings has its row.',
    fail: (f) =>
      `${f.value} pairs of firings have intervals without a row: the firing angles were changed by hand. Make the ` +
      'workbook anew from a design with these angles; until then its currents are too low.',
    unknown: () => 'The intervals are not known.',
  },
};

/** The sentence of a finding. */
export function sentence(f: Finding): string {
  const { value, limit } = RULES[f.rule];
  const words = WORDS[f.rule];
  const facts: Facts = {
    subject: f.subject,
    value: printValue(f.value, f.unit, QUANTITIES[value].shown),
    limit: printValue(f.limit, f.unit, QUANTITIES[limit].shown),
  };
  return words[f.verdict](facts);
}

/** `main: Load of the fuse`, or the title alone for the whole feed. */
export const heading = (f: Finding): string =>
  f.subject === 'feed' ? WORDS[f.rule].title : `${f.subject}: ${WORDS[f.rule].title}`;
