/**
 * What a short asks of each candidate: the smallest current from which on the fuse opens within 5 s and before the
 * conductor is too hot, and so the largest resistance that the loop of the short may have.
 *
 * A fuse lets an energy I²t through that falls from limit to limit and then stays; a conductor withstands one, more where
 * time is left for heat to leave. From the current at which the one falls below the other the conductor is covered.
 */
import type { Formula, Quantities } from '../basis/quantity.ts';
import { ARBITRARY, DEFINITION, PHYSICS } from '../basis/sources.ts';
import { timeConstant } from './curve-formulas.ts';

const PER_CANDIDATE = { per: ['run'], across: 'candidate' } as const;

type CrossingName = 'row' | 'crossing' | 'from';

/** Current from which the let-through energy of the fuse is not above `energy`; empty when it stays above. */
const crossing = <P extends string>(
  of: P,
  label: string,
  energy: string,
  mark: string,
): Readonly<Record<`${P}_${CrossingName}`, Formula>> => {
  const limit = `${of}_row`;
  const all: Record<string, Formula> = {
    [limit]: {
      symbol: `g_${mark}`,
      label: `${label}: opening-time limits of the fuse with more I²t`,
      unit: '1',
      ...PER_CANDIDATE,
      formula: `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(${energy}), SUMPRODUCT((opening_energy[opening]>${energy})*1), ""), "")`,
      source: DEFINITION,
    },
    [`${of}_crossing`]: {
      symbol: `I_x,${mark}`,
      label: `${label}: current beyond the last of these limits at which both are the same`,
      unit: 'A',
      ...PER_CANDIDATE,
      formula:
        `IF(ISNUMBER(${limit}), IF(${limit}>0, INDEX(opening_current[opening], 1, ${limit})*` +
        `(${energy}/INDEX(opening_energy[opening], 1, ${limit}))^INDEX(energy_power[opening], 1, ${limit}), ""), "")`,
      source: PHYSICS,
    },
    [`${of}_from`]: {
      symbol: `I_from,${mark}`,
      label: `${label}: current from which the fuse lets less I²t through`,
      unit: 'A',
      ...PER_CANDIDATE,
      formula: `IF(ISNUMBER(${limit}), IF(${limit}=0, open_from, IF(${limit}=COUNT(opening_no[opening]), "", MAX(open_from, ${of}_crossing))), "")`,
      source: PHYSICS,
      note: 'Empty when the conductor withstands less than the fuse lets through at any current.',
    },
  };
  return all as Readonly<Record<`${P}_${CrossingName}`, Formula>>;
};

export const survival = {
  opening_energy: {
    symbol: 'I²t',
    label: 'I²t that the fuse lets through at this opening-time limit, or at a later one if that is more',
    unit: 'A^2*s',
    per: ['run'],
    across: 'opening',
    formula:
      'IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(opening_energy[opening+1]), MAX(opening_slowest*opening_current^2, opening_energy[opening+1]), ' +
      'opening_slowest*opening_current^2), "")',
    source: PHYSICS,
  },
  energy_power: {
    symbol: 'n_E',
    label: 'Power of the I²t let through with which the current rises beyond the limit',
    unit: '1',
    per: ['run'],
    across: 'opening',
    formula: 'IF(ISNUMBER(slowest_slope), IF(slowest_slope=-2, 1, 1/(2+slowest_slope)), "")',
    source: PHYSICS,
    note: '1 beyond the last limit, where the I²t stays and no current is read.',
  },
  open_row: {
    symbol: 'g_5s',
    label: 'Opening-time limits of the fuse at which it may take longer than 5 s',
    unit: '1',
    per: ['run'],
    formula: 'IF(ISNUMBER(run_fuse_type), SUMPRODUCT((opening_slowest[opening]>open_limit)*1), "")',
    source: DEFINITION,
  },
  open_from: {
    symbol: 'I_5s',
    label: 'Current from which the fuse opens within 5 s',
    unit: 'A',
    per: ['run'],
    formula:
      'IF(ISNUMBER(open_row), MAX(fuse_holds, INDEX(opening_current[opening],1,open_row)*' +
      '(open_limit/INDEX(opening_slowest[opening],1,open_row))^(1/INDEX(slowest_slope[opening],1,open_row))), "")',
    source: PHYSICS,
  },
  candidate_theta: {
    symbol: 'θ',
    label: 'Thermal time constant of the candidate',
    unit: 's',
    shown: 's',
    ...PER_CANDIDATE,
    formula:
      'IF(ISNUMBER(candidate_T), ' +
      `${timeConstant('candidate_area', 'candidate_amps', 'candidate_metre')}, "")`,
    source: PHYSICS,
  },
  heat_room: {
    symbol: 'I²t_w',
    label: 'I²t that the candidate withstands when no heat leaves it',
    unit: 'A^2*s',
    ...PER_CANDIDATE,
    formula:
      'IF(ISNUMBER(candidate_T), MAX(0, short_limit-candidate_T)*candidate_theta*candidate_amps^2/(rating-run_ambient), "")',
    source: PHYSICS,
    note: 'From its temperature under load to the short-circuit limit, with the resistance at the rating of the insulation.',
  },
  ...crossing('cold', 'No heat leaves the candidate', 'heat_room', 'c'),
  short_time: {
    symbol: 't_x',
    label: 'Time of the fuse at that current, over the time constant of the candidate',
    unit: '1',
    ...PER_CANDIDATE,
    formula: 'IF(ISNUMBER(cold_from), MIN(open_limit, heat_room/cold_from^2)/candidate_theta, "")',
    source: PHYSICS,
  },
  heat_room_late: {
    symbol: 'I²t_w,t',
    label: 'I²t that the candidate withstands in that time, when heat leaves it',
    unit: 'A^2*s',
    ...PER_CANDIDATE,
    formula:
      'IF(ISNUMBER(short_time), IF(heat_room>0, heat_room*(short_time/(1-EXP(-short_time))+' +
      'short_time*(candidate_T-run_ambient)/(short_limit-candidate_T)), 0), "")',
    source: PHYSICS,
    note: 'The time is that of the larger current before: a little too short, so that the result is on the safe side.',
  },
  ...crossing('warm', 'Heat leaves the candidate', 'heat_room_late', 'w'),
  unlimited: {
    symbol: '∞',
    label: 'Resistance of a loop that nothing limits',
    unit: 'ohm',
    value: 1e6,
    source: ARBITRARY,
    note: 'More than any feed has.',
  },
  loop_most: {
    symbol: 'R_k,max',
    label: 'Largest resistance of the loop of a short at its far end with which the candidate is covered',
    unit: 'ohm',
    shown: 'mohm',
    ...PER_CANDIDATE,
    formula:
      'IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(source_ohm), IF(ISNUMBER(warm_from), ' +
      'lowest_supply/(warm_from*(1+alike)), 0), unlimited), unlimited)',
    source: PHYSICS,
    note: '0 when the fuse never covers it, without limit where no short is judged: no fuse, or a source that is not known.',
  },
} as const satisfies Quantities;
