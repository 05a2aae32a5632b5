/**
 * The rules by which a feed is judged. A rule compares two quantities of the model; the comparison is a formula of
 * its own, so that a finding follows a changed input in the workbook as everything else does.
 */
import type { Axis } from '../basis/quantity.ts';
import { ARBITRARY, type Citation, COMMON_PRACTICE, cite, PHYSICS } from '../basis/sources.ts';
import type { Design } from '../design/design.ts';
import type { QuantityName } from '../model/model.ts';

/** How the value must stand to the limit. */
export type Sense = 'at most' | 'at least' | 'below' | 'above';

export interface Rule {
  /** What there is one finding for; nothing when the whole feed has one. */
  readonly per?: Extract<Axis, 'run' | 'point'>;
  readonly value: QuantityName;
  readonly sense: Sense;
  readonly limit: QuantityName;
  readonly source: Citation;
  /** Whether the design has what the rule is about; `index` is the run or point. */
  readonly applies?: (design: Design, index: number) => boolean;
}

const run = (design: Design, index: number) => design.runs[index];
const fused = (design: Design, index: number): boolean => Boolean(run(design, index)?.fuse);
const relayed = (design: Design, index: number): boolean => Boolean(run(design, index)?.relay);
const fed = (design: Design, index: number): boolean => run(design, index)?.side === 'feed';
const chosen = (design: Design, index: number): boolean => run(design, index)?.gauge === 'auto';
const anyChosen = (design: Design): boolean => design.runs.some((r) => r.gauge === 'auto');

const TABLE_5 = cite('33-CFR-183.425', 'printed', 'table 5');
const CONTACTS = cite('FAA-AC-43.13-1B', 'printed', 'table 11-4');

export const RULES = {
  fuse_present: {
    per: 'run',
    value: 'unfused',
    sense: 'at most',
    limit: 'none_allowed',
    source: COMMON_PRACTICE,
    applies: fed,
  },
  fuse_load: {
    per: 'run',
    value: 'run_effective',
    sense: 'at most',
    limit: 'fuse_allowed',
    source: COMMON_PRACTICE,
    applies: fused,
  },
  fuse_conductor: {
    per: 'run',
    value: 'run_fuse',
    sense: 'at most',
    limit: 'ampacity',
    source: COMMON_PRACTICE,
    applies: fed,
  },
  wire_load: {
    per: 'run',
    value: 'run_effective',
    sense: 'at most',
    limit: 'amps_allowed',
    source: TABLE_5,
  },
  insulation: {
    per: 'run',
    value: 'run_ambient',
    sense: 'below',
    limit: 'rating',
    source: cite('ISO-6722-1', 'quoted'),
  },
  series_ampacity: {
    per: 'run',
    value: 'needed_amps',
    sense: 'at most',
    limit: 'largest_amps',
    source: TABLE_5,
    applies: chosen,
  },
  series_area: {
    per: 'run',
    value: 'needed_area',
    sense: 'at most',
    limit: 'largest_area',
    source: PHYSICS,
    applies: chosen,
  },
  drop: {
    value: 'worst_drop',
    sense: 'at most',
    limit: 'drop_limit',
    source: cite('FAA-AC-43.13-1B', 'printed', 'table 11-6, 14 V, continuous'),
  },
  drop_budget: {
    value: 'least_budget',
    sense: 'above',
    limit: 'no_volts',
    source: PHYSICS,
    applies: anyChosen,
  },
  relay_contact: {
    per: 'run',
    value: 'run_effective',
    sense: 'at most',
    limit: 'relay_allowed',
    source: COMMON_PRACTICE,
    applies: relayed,
  },
  relay_inductive: {
    per: 'run',
    value: 'relay_needed',
    sense: 'at most',
    limit: 'relay_rating',
    source: CONTACTS,
    applies: relayed,
  },
  relay_pull_in: {
    per: 'run',
    value: 'relay_pull_in',
    sense: 'at most',
    limit: 'relay_supply',
    source: PHYSICS,
    applies: relayed,
  },
  dwell_served: {
    per: 'point',
    value: 'point_dwell',
    sense: 'above',
    limit: 'no_time',
    source: PHYSICS,
  },
  alternator: {
    value: 'worst_total',
    sense: 'at most',
    limit: 'alternator_left',
    source: PHYSICS,
    applies: (design) => design.supply.alternator !== null,
  },
  intervals: {
    value: 'intervals_missing',
    sense: 'at most',
    limit: 'none_allowed',
    source: ARBITRARY,
  },
} as const satisfies Record<string, Rule>;

export type RuleId = keyof typeof RULES;
export const RULE_IDS = Object.keys(RULES) as RuleId[];
