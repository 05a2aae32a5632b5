/** Rules of the coils and of the supply: dwell, duty, peak, alternator. */
import { ARBITRARY, AS_STATED, COMMON_PRACTICE, cite, PHYSICS } from '../basis/sources.ts';
import type { Design } from '../design/design.ts';
import type { Rules } from './rule.ts';

/** The limit stands in the data sheet of the coil, as the design repeats it. */
const DATA_SHEET = AS_STATED;

const stated = ({ coil }: Design): boolean => coil.peak === null;

export const coilRules = {
  energy: {
    per: 'point',
    value: 'least_energy',
    sense: 'at least',
    limit: 'energy_limit',
    source: COMMON_PRACTICE,
    applies: stated,
    when: 'peak_alone=""',
  },
  usual_ohm: {
    value: 'ohm_unusual',
    sense: 'at most',
    limit: 'none_allowed',
    plain: true,
    advice: true,
    source: ARBITRARY,
  },
  usual_henry: {
    value: 'henry_unusual',
    sense: 'at most',
    limit: 'none_allowed',
    plain: true,
    advice: true,
    source: ARBITRARY,
    applies: stated,
    when: 'peak_alone=""',
  },
  usual_peak: {
    value: 'most_peak',
    sense: 'at most',
    limit: 'usual_peak_high',
    advice: true,
    source: ARBITRARY,
  },
  stud: {
    value: 'most_terminals',
    sense: 'at most',
    limit: 'stud_most',
    plain: true,
    advice: true,
    source: cite('FAA-AC-43.13-1B', 'printed', 'par. 11-174'),
  },
  max_dwell: {
    per: 'point',
    value: 'point_dwell',
    sense: 'at most',
    limit: 'max_dwell',
    source: DATA_SHEET,
    applies: (design) => design.coil.max_dwell !== null,
    when: 'ISNUMBER(max_dwell)',
  },
  max_duty: {
    per: 'point',
    value: 'point_duty',
    sense: 'at most',
    limit: 'max_duty',
    source: DATA_SHEET,
    applies: (design) => design.coil.max_duty !== null,
    when: 'ISNUMBER(max_duty)',
  },
  max_peak: {
    per: 'point',
    value: 'point_peak',
    sense: 'at most',
    limit: 'max_peak',
    source: DATA_SHEET,
    applies: (design) => design.coil.max_peak !== null,
    when: 'ISNUMBER(max_peak)',
  },
  min_supply: {
    per: 'point',
    value: 'least_supply',
    sense: 'at least',
    limit: 'min_supply',
    source: DATA_SHEET,
    applies: (design) => design.coil.min_supply !== null,
    when: 'ISNUMBER(min_supply)',
  },
  dwell_served: {
    per: 'point',
    value: 'point_dwell',
    sense: 'above',
    limit: 'no_time',
    plain: true,
    source: PHYSICS,
  },
  sparks_fit: {
    per: 'point',
    value: 'sparks_on',
    sense: 'at least',
    limit: 'one_needed',
    plain: true,
    advice: true,
    source: PHYSICS,
    applies: ({ ignition, points }, i) => (points[i]?.rpm ?? 0) < (ignition.sparks?.below ?? 0),
    when: 'IF(sparks_more>0,IF(point_rpm<sparks_below,1,0),0)=1',
    room: ({ ignition }) => ignition.sparks !== null,
  },
  alternator: {
    value: 'worst_total',
    sense: 'at most',
    limit: 'alternator_left',
    source: PHYSICS,
    applies: (design) => design.supply.alternator !== null,
    when: 'ISNUMBER(alternator)',
  },
  intervals: {
    value: 'intervals_missing',
    sense: 'at most',
    limit: 'none_allowed',
    plain: true,
    source: ARBITRARY,
  },
} as const satisfies Rules;
