/** What to mend, in the order of the harm that it can do, in sentences that one can say to a customer. */
import type { Evaluation } from '../engine/evaluate.ts';
import type { Finding } from '../findings/finding.ts';
import type { RuleId } from '../findings/rules.ts';
import { sentence } from '../findings/words.ts';
import type { Diagnosis, Explained } from './diagnose.ts';
import { causeSentence, HOT, heatOf, placeOf } from './words.ts';

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
    says: 'This wire has no fuse before it. If it is pinched against the body, nothing stops the current until the wire burns.',
  },
  curves: {
    harm: 'fire',
    says: 'The fuse is too slow for this wire: with some faults the wire is ruined before the fuse opens.',
  },
  stuck_driver: {
    harm: 'fire',
    says: 'If the driver of a coil stays on, this wire is overloaded without end and no fuse ends it.',
  },
  fault_opens: { harm: 'fire', says: 'A short at the far end of this wire may not blow the fuse in time.' },
  fuse_conductor: { harm: 'fire', says: 'The fuse is larger than this wire can carry.' },
  breaking: {
    harm: 'fire',
    says: 'A short right behind the fuse is more than the fuse can break: it may burst.',
  },
  insulation: { harm: 'fire', says: 'The place is hotter than the insulation of this wire is made for.' },
  wire_load: { harm: 'fire', says: 'This wire runs too hot: it carries more than it should at its place.' },
  relay_contact: {
    harm: 'fire',
    says: 'The contact of the relay carries more than it is made for, and heats up.',
  },
  relay_tab: {
    harm: 'fire',
    says: 'The terminals of the relay are too narrow for this current, and heat up.',
  },
  fuse_voltage: {
    harm: 'fire',
    says: 'The fuse is not made for this voltage: when it blows, an arc may go on inside.',
  },
  relay_coil: {
    harm: 'fire',
    says: 'The coil of the relay is made for a lower voltage: it overheats and burns out.',
  },
  relay_worn: {
    harm: 'fire',
    says: 'The contact of the relay has too much resistance: it is worn, and heats up.',
  },
  fuse_distance: {
    harm: 'fire',
    says: 'The fuse sits too far from the battery: the wire before it is not protected.',
  },
  fuse_load: {
    harm: 'stop',
    says: 'The fuse works too close to its limit: it will blow some day without a fault.',
  },
  fuse_pulse: { harm: 'stop', says: 'Every spark ages this fuse: it will blow some day without a fault.' },
  fuse_listed: {
    harm: 'note',
    says: 'This rating of fuse is not on the usual list: a spare one may be hard to get.',
  },
  relay_pull_in: {
    harm: 'stop',
    says: 'When everything is hot the relay may not close while the starter turns: the engine does not start until it has cooled.',
  },
  relay_holds: {
    harm: 'stop',
    says: 'The relay may let go when the starter pulls the battery down: the engine does not catch.',
  },
  relay_again: {
    harm: 'note',
    says: 'The relay closes with the key, and would not close again while the starter turns.',
  },
  relay_holds_unsaid: {
    harm: 'note',
    says: 'Nobody has shown that the relay holds when the starter pulls the battery down.',
  },
  relay_coil_long: {
    harm: 'note',
    says: 'The coil of the relay gets more voltage than it should have for years.',
  },
  relay_listed: {
    harm: 'note',
    says: 'This rating of relay is not a usual one: a spare one may be hard to get.',
  },
  relay_tab_wire: { harm: 'note', says: 'The wire may be too thick for the terminals of the relay.' },
  relay_inductive: {
    harm: 'stop',
    says: 'The contact of the relay is too small for coils: it wears out early.',
  },
  relay_make: { harm: 'stop', says: 'The contact of the relay can weld itself shut when it closes.' },
  dwell_served: { harm: 'stop', says: 'At this speed the coils cannot be charged at all.' },
  alternator: {
    harm: 'stop',
    says: 'The alternator cannot feed the coils and everything else: the battery empties.',
  },
  max_peak: { harm: 'damage', says: 'The coils are charged to more current than their maker allows.' },
  max_duty: {
    harm: 'damage',
    says: 'The coils are on for more of the time than their maker allows: they overheat.',
  },
  max_dwell: { harm: 'damage', says: 'The coils are charged longer than their maker allows.' },
  relay_suppression: {
    harm: 'damage',
    says: 'The coil of the relay sends a spike into the car’s own wiring each time it is switched off.',
  },
  energy: {
    harm: 'spark',
    says: 'The spark is weaker than any ignition has, or a number of the coil is wrong.',
  },
  usual_ohm: { harm: 'note', says: 'The resistance of the coils is an unusual one.' },
  usual_henry: { harm: 'note', says: 'The inductance of the coils is an unusual one.' },
  usual_peak: { harm: 'note', says: 'The current of the coils is an unusual one.' },
  stud: { harm: 'note', says: 'Many terminals are stacked on one stud: they come loose.' },
  min_supply: { harm: 'spark', says: 'The coils get less voltage than their maker asks for.' },
  drop: {
    harm: 'spark',
    says: 'Too much voltage is lost on the way to the coils: the spark is weaker than it could be.',
  },
  drop_budget: {
    harm: 'spark',
    says: 'Joints, fuse and relay alone lose more voltage than is allowed: thicker wire would not help.',
  },
  series_ampacity: { harm: 'note', says: 'No size of this series carries the current at this place.' },
  supply_left: { harm: 'spark', says: 'The wiring would lose more voltage than the battery has.' },
  size_found: { harm: 'note', says: 'No size of wire keeps every rule here: something else has to change.' },
  fuse_above_conductor: { harm: 'note', says: 'The fuse is larger than this wire carries for good.' },
  failed_driver: {
    harm: 'note',
    says: 'If the driver of a coil fails as a short, this wire is overloaded and no fuse ends it in time.',
  },
  material: {
    harm: 'note',
    says: 'It is not known what the insulation is made of, and so how hot it may get in a short.',
  },
  bypass: { harm: 'note', says: 'A coil is wired past the wire that its neighbours share.' },
  parallel_size: { harm: 'note', says: 'Thin wires lie in parallel where one thicker one is usual.' },
  intervals: {
    harm: 'note',
    says: 'The firing angles were changed and the workbook does not fit them any more.',
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
}

/** What readings explain and what rules fail, worst first. */
export function toMend(e: Evaluation, findings: readonly Finding[], diagnosis: Diagnosis): Mend[] {
  const found = [
    ...diagnosis.causes.map((explained) => ({ mend: ofCause(e, explained), rank: -1 })),
    ...findings
      .filter(({ verdict }) => verdict === 'fail')
      .map((f) => ({
        mend: { ...PLAIN[f.rule], subject: f.subject, detail: sentence(f, e), rule: f.rule },
        rank: RANK.indexOf(f.rule),
      })),
  ];
  return found
    .sort((a, b) => HARMS.indexOf(a.mend.harm) - HARMS.indexOf(b.mend.harm) || a.rank - b.rank)
    .map(({ mend }) => mend);
}

function ofCause(e: Evaluation, explained: Explained): Mend {
  const { cause, orElse } = explained;
  const common = { subject: placeOf(e, cause), detail: causeSentence(e, explained), rule: null };
  if (orElse.length > 0)
    return {
      ...common,
      subject: 'readings',
      harm: 'spark',
      says: 'Something is not as it should be; more readings are needed to say where.',
    };
  switch (cause.kind) {
    case 'resistance': {
      const heat = heatOf(e, cause.wire, cause.ohm);
      return heat > HOT && cause.wire !== null
        ? {
            ...common,
            harm: 'fire',
            says: 'There is a bad connection, or a wire that is too thin, in this run, and it gets hot.',
          }
        : {
            ...common,
            harm: 'spark',
            says:
              cause.wire === null
                ? 'The battery or its connections give way under the load of the coils.'
                : 'There is a bad connection, or a wire that is too thin, in this run.',
          };
    }
    case 'draw':
      return cause.factor > 1
        ? { ...common, harm: 'damage', says: 'The coils draw more current than they should.' }
        : { ...common, harm: 'spark', says: 'The coils get less current than they should.' };
    case 'instrument':
      return { ...common, harm: 'note', says: 'One reading was taken with another instrument than it says.' };
  }
}
