/**
 * The rules by which a feed is judged. A rule compares two quantities of the model; the comparison is a formula of
 * its own, so that a finding follows a changed input in the workbook as everything else does.
 *
 * Here those of wires, fuses and drop; relay and coils have files of their own.
 */
import type { Quantity } from '../basis/quantity.ts';
import {
  AS_STATED,
  type Citation,
  COMMON_PRACTICE,
  cite,
  DEFINITION,
  PHYSICS,
  QUOTED,
} from '../basis/sources.ts';
import { fuseDistance } from '../data/fuse-distance.ts';
import { FUSE_PULSES } from '../data/fuses.ts';
import { CABLE_SIZES } from '../data/insulation.ts';
import type { Design } from '../design/design.ts';
import { wasFilled } from '../design/filled.ts';
import { QUANTITIES } from '../model/model.ts';
import { bypassing } from '../model/route.ts';
import { fused, type Rule, type Rules, run } from './rule.ts';
import { coilRules } from './rules-coil.ts';
import { relayRules } from './rules-relay.ts';

export type { Rule, Sense } from './rule.ts';

const fed = (design: Design, index: number): boolean => run(design, index)?.side === 'feed';
const chosen = (design: Design, index: number): boolean => run(design, index)?.gauge === 'auto';
const anyChosen = (design: Design): boolean => design.runs.some((r) => r.gauge === 'auto');

/** A class letter says nothing of the material. */
const isLetter = (insulation = ''): boolean => insulation.length === 1;
/** Up to 150 % below 50 V, (c)(1). */
const OVER_AMPACITY = cite('33-CFR-183.455', 'quoted', '(c)(1)');
const TABLE_5 = cite('33-CFR-183.425', 'printed', 'table 5');

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
    stated: 'limits.fuse_load',
    source: QUOTED,
    applies: fused,
  },
  fuse_conductor: {
    per: 'run',
    value: 'run_fuse',
    sense: 'at most',
    limit: 'fuse_most',
    source: OVER_AMPACITY,
    applies: fused,
  },
  fuse_above_conductor: {
    per: 'run',
    value: 'run_fuse',
    sense: 'at most',
    limit: 'amps_together',
    advice: true,
    source: OVER_AMPACITY,
    applies: fused,
  },
  curves: {
    per: 'feed',
    value: 'causes',
    sense: 'at most',
    limit: 'none_allowed',
    plain: true,
    source: cite('FAA-AC-43.13-1B', 'quoted', 'par. 11-48, time-current characteristics'),
  },
  stuck_driver: {
    per: 'run',
    value: 'stuck_lasts',
    sense: 'at most',
    limit: 'stuck_withstood',
    source: PHYSICS,
  },
  failed_driver: {
    per: 'run',
    value: 'failed_lasts',
    sense: 'at most',
    limit: 'failed_withstood',
    advice: true,
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
  fuse_pulse: {
    per: 'run',
    value: 'run_pulse',
    sense: 'at most',
    limit: 'pulse_allowed',
    source: FUSE_PULSES.source,
    applies: (design, i) => run(design, i)?.fuse?.melting != null,
    when: 'ISNUMBER(melting)',
    room: fused,
  },
  breaking: {
    per: 'run',
    value: 'start_fault',
    sense: 'at most',
    limit: 'breaking',
    source: cite('ISO-8820-3', 'printed'),
    applies: fused,
  },
  fuse_voltage: {
    per: 'run',
    value: 'highest_supply',
    sense: 'at most',
    limit: 'fuse_volts',
    source: cite('ISO-8820-3', 'printed'),
    applies: fused,
  },
  fuse_listed: {
    per: 'run',
    value: 'fuse_on_list',
    sense: 'at least',
    limit: 'one_needed',
    plain: true,
    advice: true,
    source: cite('ISO-8820-3', 'quoted'),
    applies: fused,
  },
  fuse_distance: {
    per: 'run',
    value: 'fuse_distance_given',
    sense: 'at most',
    limit: 'fuse_distance',
    source: fuseDistance.fuse_distance.source,
    applies: (design, i) => run(design, i)?.fuse?.from_source != null,
    when: 'ISNUMBER(fuse_distance_given)',
    room: fused,
  },
  wire_load: {
    per: 'run',
    value: 'run_effective',
    sense: 'at most',
    limit: 'amps_allowed',
    source: TABLE_5,
  },
  parallel_size: {
    per: 'run',
    value: 'area',
    sense: 'at least',
    limit: 'parallel_least',
    advice: true,
    source: COMMON_PRACTICE,
    applies: (design, i) => (run(design, i)?.conductors ?? 1) > 1,
    when: 'parallel>1',
  },
  bypass: {
    per: 'run',
    value: 'bypassed_by',
    sense: 'at most',
    limit: 'none_allowed',
    plain: true,
    advice: true,
    source: COMMON_PRACTICE,
    applies: (design, i) => bypassing(i, design) > 0,
  },
  material: {
    per: 'run',
    value: 'material_known',
    sense: 'at least',
    limit: 'one_needed',
    plain: true,
    advice: true,
    source: cite('IEC-60364-5-54', 'quoted'),
    applies: (design, i) => fed(design, i) && isLetter(run(design, i)?.insulation),
    when: 'INDEX(insulation_typed[insulation], MATCH(run_insulation, insulation_name[insulation], 0), 1)=0',
    room: fed,
  },
  cable_made: {
    per: 'run',
    value: 'made',
    sense: 'at least',
    limit: 'one_needed',
    plain: true,
    advice: true,
    source: CABLE_SIZES.source,
    applies: (design, i) => !isLetter(run(design, i)?.insulation),
    when: 'cable>0',
  },
  insulation: {
    per: 'run',
    value: 'run_ambient',
    sense: 'below',
    limit: 'rating',
    source: cite('ISO-6722-1', 'quoted'),
  },
  size_found: {
    per: 'run',
    value: 'undone',
    sense: 'at most',
    limit: 'none_allowed',
    plain: true,
    source: DEFINITION,
    applies: chosen,
    when: 'run_gauge="auto"',
  },
  series_ampacity: {
    per: 'run',
    value: 'needed_amps',
    sense: 'at most',
    limit: 'largest_amps',
    source: TABLE_5,
    applies: chosen,
    when: 'run_gauge="auto"',
  },
  drop: {
    value: 'worst_drop',
    sense: 'at most',
    limit: 'drop_limit',
    source: cite('FAA-AC-43.13-1B', 'quoted', 'table 11-6, continuous'),
  },
  drop_budget: {
    value: 'least_budget',
    sense: 'above',
    limit: 'no_volts',
    plain: true,
    source: PHYSICS,
    applies: anyChosen,
    when: 'SUMPRODUCT((run_gauge[run]="auto")*1)>0',
  },
  supply_left: {
    per: 'point',
    value: 'least_supply',
    sense: 'above',
    limit: 'no_volts',
    plain: true,
    source: PHYSICS,
  },
  ...relayRules,
  ...coilRules,
} as const satisfies Rules;

export type RuleId = keyof typeof RULES;
export const RULE_IDS = Object.keys(RULES) as RuleId[];

/** Where the limit of a rule comes from in this design: what it states itself is cited as that. */
export function citationOf(id: RuleId, design: Design): Citation {
  const { limit, stated, source }: Rule = RULES[id];
  const q: Quantity = QUANTITIES[limit];
  const path = stated ?? (q.kind === 'input' ? q.path : undefined);
  return path === undefined || wasFilled(design, path) ? source : AS_STATED;
}
