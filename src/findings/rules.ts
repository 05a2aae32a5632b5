/**
 * The rules by which a feed is judged. A rule compares two quantities of the model; the comparison is a formula of
 * its own, so that a finding follows a changed input in the workbook as everything else does.
 */
import type { Axis } from '../basis/quantity.ts';
import { ARBITRARY, type Citation, COMMON_PRACTICE, cite, PHYSICS, QUOTED } from '../basis/sources.ts';
import { fuseDistance } from '../data/fuse-distance.ts';
import { FLAT_TABS } from '../data/relays.ts';
import type { Design } from '../design/design.ts';
import type { QuantityName } from '../model/model.ts';

/** How the value must stand to the limit. */
export type Sense = 'at most' | 'at least' | 'below' | 'above';

export interface Rule {
  /** What there is one finding for; nothing when the whole feed has one. */
  readonly per?: Extract<Axis, 'run' | 'point' | 'feed'>;
  readonly value: QuantityName;
  readonly sense: Sense;
  readonly limit: QuantityName;
  readonly source: Citation;
  /** A count or a yes or no: a distance to the limit says nothing. */
  readonly plain?: true;
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
/** The limit stands in the data sheet of the coil, as the design repeats it. */
const DATA_SHEET: Citation = { status: 'design' };
const CONTACTS = cite('FAA-AC-43.13-1B', 'printed', 'table 11-4');

export const RULES = {
  fuse_present: {
    per: 'run',
    value: 'unfused',
    sense: 'at most',
    limit: 'none_allowed',
    plain: true,
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
    applies: fused,
  },
  curves: {
    per: 'feed',
    value: 'causes',
    sense: 'at most',
    limit: 'none_allowed',
    plain: true,
    source: PHYSICS,
  },
  stuck_driver: {
    per: 'run',
    value: 'stuck_current',
    sense: 'at most',
    limit: 'stuck_allowed',
    source: PHYSICS,
  },
  fault_opens: {
    per: 'run',
    value: 'end_opening',
    sense: 'at most',
    limit: 'open_limit',
    source: cite('IEC-60364-5-54', 'quoted'),
    applies: fed,
  },
  breaking: {
    per: 'run',
    value: 'start_fault',
    sense: 'at most',
    limit: 'breaking',
    source: cite('ISO-8820-3', 'printed'),
    applies: fused,
  },
  fuse_distance: {
    per: 'run',
    value: 'fuse_distance_given',
    sense: 'at most',
    limit: 'fuse_distance',
    source: fuseDistance.fuse_distance.source,
    applies: (design, i) => run(design, i)?.fuse?.from_source != null,
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
    plain: true,
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
  relay_suppression: {
    per: 'run',
    value: 'suppressed',
    sense: 'at least',
    limit: 'one_needed',
    plain: true,
    source: QUOTED,
    applies: relayed,
  },
  relay_tab: {
    per: 'run',
    value: 'run_effective',
    sense: 'at most',
    limit: 'tab_allowed',
    source: FLAT_TABS.source,
    applies: (design, i) => run(design, i)?.relay?.tab != null,
  },
  relay_make: {
    per: 'run',
    value: 'make_current',
    sense: 'at most',
    limit: 'relay_make_limit',
    source: PHYSICS,
    applies: (design, i) => relayed(design, i) && design.runs.some((r) => r.capacitor !== null),
  },
  max_dwell: {
    per: 'point',
    value: 'point_dwell',
    sense: 'at most',
    limit: 'max_dwell',
    source: DATA_SHEET,
    applies: (design) => design.coil.max_dwell !== null,
  },
  max_duty: {
    per: 'point',
    value: 'point_duty',
    sense: 'at most',
    limit: 'max_duty',
    source: DATA_SHEET,
    applies: (design) => design.coil.max_duty !== null,
  },
  max_peak: {
    per: 'point',
    value: 'point_peak',
    sense: 'at most',
    limit: 'max_peak',
    source: DATA_SHEET,
    applies: (design) => design.coil.max_peak !== null,
  },
  min_supply: {
    per: 'point',
    value: 'least_supply',
    sense: 'at least',
    limit: 'min_supply',
    source: DATA_SHEET,
    applies: (design) => design.coil.min_supply !== null,
  },
  dwell_served: {
    per: 'point',
    value: 'point_dwell',
    sense: 'above',
    limit: 'no_time',
    plain: true,
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
    plain: true,
    source: ARBITRARY,
  },
} as const satisfies Record<string, Rule>;

export type RuleId = keyof typeof RULES;
export const RULE_IDS = Object.keys(RULES) as RuleId[];
