/** What to mend, in the order of the harm that it can do, in sentences that one can say to a customer. */
import type { Evaluation } from '../engine/evaluate.ts';
import type { Finding } from '../findings/finding.ts';
import type { RuleId } from '../findings/rules.ts';
import { sentence } from '../findings/words.ts';
import { type Cost, costOf, lostOf } from './cost.ts';
import type { Cause, Diagnosis, Found } from './diagnose.ts';
import { foundSentence, HOT, heatOf, namedOf, placeOf } from './words.ts';

/** What can come of it, worst first. */
export const HARMS = ['fire', 'stop', 'damage', 'spark', 'note'] as const;
export type Harm = (typeof HARMS)[number];

export const HARM_WORDS: Readonly<Record<Harm, string>> = {
  fire: 'Can burn',
  stop: 'Can leave the engine dead',
  damage: 'Wears out coil or parts',
  spark: 'Costs spark',
  note: 'To look at again',
};

interface Plain {
  readonly harm: Harm;
  /** What it means for the owner of the car. */
  readonly says: string;
}

/** In the order of harm within each kind. */
export const PLAIN: Readonly<Record<RuleId, Plain>> = {
  fuse_present: {
    harm: 'fire',
    says: 'This wire has no fuse ahead of it. If it is pinched against the body, nothing stops the current until the wire burns.',
  },
  curves: {
    harm: 'fire',
    says: 'The fuse is too slow for this wire: in some faults the wire is ruined before the fuse opens.',
  },
  stuck_driver: {
    harm: 'fire',
    says: 'If the driver of a coil stays on, this wire is overloaded and no fuse opens to stop it.',
  },
  fault_opens: { harm: 'fire', says: 'A short at the far end of this wire may not blow the fuse in time.' },
  fuse_conductor: { harm: 'fire', says: 'The fuse is larger than this wire can carry.' },
  breaking: {
    harm: 'fire',
    says: 'A short right behind the fuse is more than the fuse can interrupt: it may burst.',
  },
  insulation: { harm: 'fire', says: 'This wire lies in a place hotter than its insulation is rated for.' },
  wire_load: { harm: 'fire', says: 'This wire runs too hot: it carries more than it should where it lies.' },
  relay_contact: {
    harm: 'fire',
    says: 'The relay contact carries more than it is rated for, and heats up.',
  },
  relay_tab: {
    harm: 'fire',
    says: 'The terminals of the relay are too narrow for this current, and heat up.',
  },
  fuse_voltage: {
    harm: 'fire',
    says: 'The fuse is not rated for this voltage: when it blows, an arc may keep burning inside.',
  },
  relay_coil: {
    harm: 'fire',
    says: 'The relay coil is rated for a lower voltage: it overheats and burns out.',
  },
  relay_worn: {
    harm: 'fire',
    says: 'The relay contact has too much resistance: it is worn, and heats up.',
  },
  fuse_distance: {
    harm: 'fire',
    says: 'The fuse sits too far from the battery: the wire ahead of it is not protected.',
  },
  fuse_load: {
    harm: 'stop',
    says: 'The fuse runs too close to its limit: some day it will blow without a fault.',
  },
  fuse_pulse: { harm: 'stop', says: 'Every spark ages this fuse: some day it will blow without a fault.' },
  fuse_listed: {
    harm: 'note',
    says: 'This fuse rating is not on the usual list: a spare may be hard to find.',
  },
  relay_pull_in: {
    harm: 'stop',
    says: 'When everything is hot the relay may not close while the starter turns: the engine does not start until it has cooled.',
  },
  relay_holds: {
    harm: 'stop',
    says: 'The relay may drop out when the starter pulls the battery down: the engine does not catch.',
  },
  relay_again: {
    harm: 'note',
    says: 'The relay closes with the key, and would not close again while the starter turns.',
  },
  relay_holds_unsaid: {
    harm: 'note',
    says: 'Nothing proves that the relay holds when the starter pulls the battery down.',
  },
  relay_coil_long: {
    harm: 'note',
    says: 'The relay coil gets more voltage than is good for it in the long term.',
  },
  relay_listed: {
    harm: 'note',
    says: 'This relay rating is not a usual one: a spare may be hard to find.',
  },
  relay_tab_wire: { harm: 'note', says: 'The wire may be too thick for the terminals of the relay.' },
  relay_inductive: {
    harm: 'stop',
    says: 'The relay contact is too small for coils: it wears out early.',
  },
  relay_make: { harm: 'stop', says: 'The relay contact can weld shut when it closes.' },
  dwell_served: { harm: 'stop', says: 'At this engine speed the coils cannot be charged at all.' },
  cable_made: { harm: 'note', says: 'Wire of this type is not usually made in this size.' },
  sparks_fit: { harm: 'note', says: 'At this engine speed there is no time for several sparks.' },
  alternator: {
    harm: 'stop',
    says: 'The alternator cannot supply the coils and everything else: the battery discharges.',
  },
  max_peak: { harm: 'damage', says: 'The coils are charged to more current than their maker allows.' },
  max_duty: {
    harm: 'damage',
    says: 'The coils are on for more of the time than their maker allows: they overheat.',
  },
  max_dwell: { harm: 'damage', says: 'The coils are charged longer than their maker allows.' },
  relay_suppression: {
    harm: 'damage',
    says: 'The relay coil sends a spike into the car’s own wiring each time it is switched off.',
  },
  energy: {
    harm: 'spark',
    says: 'The spark is weaker than in any ignition, or a number given for the coil is wrong.',
  },
  usual_ohm: { harm: 'note', says: 'The resistance of the coils is unusual.' },
  usual_henry: { harm: 'note', says: 'The inductance of the coils is unusual.' },
  usual_peak: { harm: 'note', says: 'The current of the coils is unusual.' },
  stud: { harm: 'note', says: 'Too many terminals are stacked on one stud: they come loose.' },
  min_supply: { harm: 'spark', says: 'The coils get less voltage than their maker calls for.' },
  drop: {
    harm: 'spark',
    says: 'Too much voltage is lost on the way to the coils: the spark is weaker than it could be.',
  },
  drop_budget: {
    harm: 'spark',
    says: 'Joints, fuse and relay alone lose more voltage than is allowed: larger wire would not help.',
  },
  series_ampacity: { harm: 'note', says: 'No size of this series carries the current here.' },
  supply_left: { harm: 'spark', says: 'The wiring would lose more voltage than the battery has.' },
  size_found: { harm: 'note', says: 'No wire size meets every rule here: something else has to change.' },
  fuse_above_conductor: { harm: 'note', says: 'The fuse is larger than this wire can carry continuously.' },
  failed_driver: {
    harm: 'note',
    says: 'If the driver of a coil fails short, this wire is overloaded and no fuse opens in time.',
  },
  material: {
    harm: 'note',
    says: 'It is not known what the insulation is made of, so neither is how hot it may get in a short.',
  },
  bypass: { harm: 'note', says: 'One coil bypasses the wire that its neighbours share.' },
  parallel_size: { harm: 'note', says: 'Thin wires run in parallel where one larger wire is usual.' },
  intervals: {
    harm: 'note',
    says: 'The firing angles were changed and the workbook no longer fits them.',
  },
};

const RANK = Object.keys(PLAIN) as RuleId[];

/** One thing to mend. */
export interface Mend {
  readonly harm: Harm;
  /** Run, coil, point or `feed`. */
  readonly subject: string;
  /** To the customer. */
  readonly says: string;
  /** To the mechanic, with its numbers. */
  readonly detail: string;
  /** The rule that fails; null when readings say so. */
  readonly rule: RuleId | null;
  /** What it costs now and once it is mended; null where a rule says so, or where the readings leave several parts. */
  readonly cost: Cost | null;
}

/** What readings explain and what rules fail, worst first. */
export function toMend(e: Evaluation, findings: readonly Finding[], { found }: Diagnosis): Mend[] {
  const all = [
    // What takes most of the energy comes first.
    ...found.map((one) => ofFound(e, one)).map((mend) => ({ mend, rank: -1 - lostBy(mend.cost) })),
    ...findings
      .filter(({ verdict }) => verdict === 'fail')
      .map((f) => ({
        mend: { ...PLAIN[f.rule], subject: f.subject, detail: sentence(f, e), rule: f.rule, cost: null },
        rank: RANK.indexOf(f.rule),
      })),
  ];
  return all
    .sort((a, b) => HARMS.indexOf(a.mend.harm) - HARMS.indexOf(b.mend.harm) || a.rank - b.rank)
    .map(({ mend }) => mend);
}

/** A resistance that takes less than this share of the energy of a coil is to be looked at again, no more. Arbitrary. */
const SLIGHT = 0.02;

const lostBy = (cost: Cost | null): number => (cost?.energy ? lostOf(cost.energy) : 0);

function ofFound(e: Evaluation, found: Found): Mend {
  const [first, ...others] = found;
  if (first === undefined) throw new Error('nothing was found');
  const common = { detail: foundSentence(e, found), rule: null };
  const worst = found
    .map((cause) => plainOf(e, cause))
    .reduce((a, b) => (HARMS.indexOf(b.harm) < HARMS.indexOf(a.harm) ? b : a));
  if (others.length === 0) {
    const cost = costOf(e, first);
    const slight = worst.harm === 'spark' && first.how === 'resistance' && lostBy(cost) < SLIGHT;
    return {
      ...common,
      ...(slight ? { harm: 'note', says: `${worst.says} It costs next to nothing as yet.` } : worst),
      subject: placeOf(e, first.part),
      cost,
    };
  }
  const places = found.map(({ part }) => namedOf(e, part));
  return {
    ...common,
    harm: worst.harm,
    subject: places.join(' or '),
    says: `One of these is not as it should be; one more reading tells which.${worst.harm === 'fire' ? ' If it is a bad connection, it gets hot.' : ''}`,
    cost: null,
  };
}

function plainOf(e: Evaluation, { part, how, size, high }: Cause): Plain {
  switch (how) {
    case 'resistance': {
      if (part.is !== 'wire' && part.is !== 'within')
        return { harm: 'spark', says: 'The battery or its connections sag under the load of the coils.' };
      const what =
        part.is === 'within'
          ? `The ${part.across} has too much resistance`
          : 'This run has a bad connection or a wire that is too thin';
      if (heatOf(e, part.wire, size) > HOT) return { harm: 'fire', says: `${what}, and it gets hot.` };
      if (heatOf(e, part.wire, high) > HOT) return { harm: 'fire', says: `${what}, and it may get hot.` };
      return { harm: 'spark', says: `${what}.` };
    }
    case 'thinner':
      return { harm: 'spark', says: 'The wires of this run are longer or thinner than they should be.' };
    case 'open':
      return { harm: 'spark', says: 'This coil is dead.' };
    case 'ohm':
    case 'henry':
    case 'turns': {
      const [who, should] =
        part.is === 'coils' ? ['The coils draw', 'they should'] : ['This coil draws', 'it should'];
      return size < 1
        ? { harm: 'damage', says: `${who} more current than ${should}.` }
        : { harm: 'spark', says: `${who} less current than ${should}.` };
    }
    case 'dwell':
      return size > 1
        ? { harm: 'damage', says: 'The coils are charged longer than they should be, and heat up.' }
        : { harm: 'spark', says: 'The coils are charged for too short a time.' };
    case 'supply':
      return size < 0
        ? { harm: 'spark', says: 'The battery is low, or it is not being charged.' }
        : { harm: 'damage', says: 'The charging voltage is too high.' };
    case 'scale':
      return { harm: 'note', says: 'This instrument is not set as its readings say.' };
    case 'taken':
      return { harm: 'note', says: 'One reading was taken with a different instrument than it says.' };
    case 'misread':
      return { harm: 'note', says: 'One reading does not fit with the others.' };
  }
}
