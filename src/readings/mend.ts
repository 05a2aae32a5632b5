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
      says: 'Something is wrong; more readings are needed to say where.',
    };
  switch (cause.kind) {
    case 'resistance': {
      const heat = heatOf(e, cause.wire, cause.ohm);
      return heat > HOT && cause.wire !== null
        ? {
            ...common,
            harm: 'fire',
            says: 'This run has a bad connection or a wire that is too thin, and it gets hot.',
          }
        : {
            ...common,
            harm: 'spark',
            says:
              cause.wire === null
                ? 'The battery or its connections sag under the load of the coils.'
                : 'This run has a bad connection or a wire that is too thin.',
          };
    }
    case 'draw':
      return cause.factor > 1
        ? { ...common, harm: 'damage', says: 'The coils draw more current than they should.' }
        : { ...common, harm: 'spark', says: 'The coils get less current than they should.' };
    case 'instrument':
      return {
        ...common,
        harm: 'note',
        says: 'One reading was taken with a different instrument than it says.',
      };
  }
}
