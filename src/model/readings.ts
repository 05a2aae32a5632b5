/**
 * What instruments show on the install: three times the same calculation, with the least currents that tolerances
 * allow, as designed, and with the largest.
 *
 * Unlike the loads, which are counted on a stiff supply, these are the currents behind the feed: the path of the coil is
 * put before its resistance, and the average drop that others make during its dwell is taken off the supply, each as
 * the mean of all firings. Every reading rises or falls with each tolerance from one end of its range to the other, so
 * that its extremes lie where all of them are at an end: low resistance, low inductance and long dwell make the largest
 * current, great length and poor joints the largest resistance.
 *
 * Conductors may be as cold as 20 °C, or the ambient where that is colder, and as warm as their largest load makes them.
 */
import type { Quantities } from '../basis/quantity.ts';
import { ARBITRARY, DEFINITION, PHYSICS } from '../basis/sources.ts';
import { ends, RANGES } from '../design/ranges.ts';
import { charging, meeting } from './charge.ts';

/** The members of the axis: all tolerances towards the least current, none, towards the largest. */
export const SPREADS = ['low', 'expected', 'high'] as const;

const share = (symbol: string, label: string, path: string) =>
  ({
    symbol,
    label,
    unit: '1',
    shown: '%',
    path: `tolerance.${path}`,
    range: ends(RANGES.spread, '1'),
    source: ARBITRARY,
  }) as const;

export const readings = {
  tolerance_henry: share('t_L', 'Tolerance of the primary inductance, up and down', 'coil_inductance'),
  tolerance_dwell: share('t_td', 'Tolerance of the dwell, up and down', 'dwell'),
  tolerance_length: share('t_ℓ', 'Tolerance of lengths, up and down', 'length'),
  tolerance_joint: share('t_j', 'Tolerance of joints, fuses and contacts, up and down', 'joint_resistance'),
  tolerance_supply: share('t_V', 'Tolerance of the supply at the posts, up and down', 'supply'),
  coil_warmer: {
    symbol: 'ΔT_c',
    label: 'How much warmer a coil may be than in the design',
    unit: 'K',
    path: 'tolerance.coil_warmer',
    range: ends(RANGES.rise, 'K'),
    source: ARBITRARY,
  },
  spread_sign: {
    symbol: '±',
    label: 'Least currents (−1), as designed (0), largest currents (1)',
    unit: '1',
    per: ['spread'],
    value: (at) => at.spread - 1,
  },
  typical_path_ohm: {
    symbol: 'R̄_p',
    label: 'Resistance of a coil’s path, mean of all firings',
    unit: 'ohm',
    shown: 'mohm',
    formula: 'SUM(path_ohm[event])/COUNT(path_ohm[event])',
    source: PHYSICS,
  },
  typical_neighbour: {
    symbol: 'ΔV̄_n',
    label: 'Average drop that the other coils cause during a dwell, mean of all firings',
    unit: 'V',
    per: ['point'],
    formula: 'SUM(neighbour_drop[event])/COUNT(neighbour_drop[event])',
    source: PHYSICS,
    note: 'As designed in all three cases; its own spread is neglected.',
  },
  spread_ohm: {
    symbol: 'R+R̄_p',
    label: 'Primary resistance with the path before it',
    unit: 'ohm',
    per: ['spread'],
    formula:
      'IF(ISNUMBER(coil_ohm_20), coil_ohm_20*(1-spread_sign*tolerance_ohm)*' +
      '(1+alpha_20*(coil_T+IF(spread_sign<0, coil_warmer, 0)-T_ref))+typical_path_ohm, "")',
    source: PHYSICS,
    note: 'A warm coil draws least. The path is as designed in all three cases: its spread is a small part of the sum.',
  },
  spread_henry: {
    symbol: 'L',
    label: 'Primary inductance',
    unit: 'H',
    shown: 'mH',
    per: ['spread'],
    formula: 'IF(bound=1, "", coil_L*(1-spread_sign*tolerance_henry))',
    source: PHYSICS,
  },
  spread_dwell: {
    symbol: 't_d',
    label: 'Dwell',
    unit: 's',
    shown: 'ms',
    per: ['spread', 'point'],
    formula: 'MAX(0, MIN(dwell_asked*(1+spread_sign*tolerance_dwell), dwell_room))',
    source: DEFINITION,
  },
  spread_final_current: {
    symbol: 'I_∞',
    label: 'Current towards which the primary tends behind the feed',
    unit: 'A',
    per: ['spread', 'point'],
    formula: 'IF(ISNUMBER(spread_ohm), MAX(0, drive-typical_neighbour)/(spread_ohm+series_ohm), 0)',
    source: PHYSICS,
  },
  spread_tau: {
    symbol: 'τ',
    label: 'Time constant of primary and path',
    unit: 's',
    shown: 'ms',
    per: ['spread', 'point'],
    formula: 'IF(bound=1, cycle_time, spread_henry/(spread_ohm+series_ohm))',
    source: PHYSICS,
  },
  ...charging('spread_', ['spread', 'point'], '', 'IF(spread_sign<0, 0, peak_alone)'),
  ...meeting('spread_', ['spread', 'point']),
  spread_flowing_at: {
    symbol: 'i_k',
    label: 'Current in the coil of the other firing at the instant of this one',
    unit: 'A',
    per: ['spread', 'point', 'event'],
    across: 'event2',
    formula: 'INDEX(spread_flowing[lag], 1, interval_no)',
    source: DEFINITION,
  },
  burst_draw: {
    symbol: 'k_Q',
    label: 'Charge for all sparks of a firing over that for the first one, as designed',
    unit: '1',
    per: ['point'],
    formula: 'IF(charge>0, charge_all/charge, 1)',
    source: DEFINITION,
    note: 'The spread of the further charges is taken for that of the first; in peaks and drops they are left out.',
  },
  burst_heat: {
    symbol: 'k_C',
    label: 'Square of the effective current with all sparks over that with the first ones, as designed',
    unit: '1',
    per: ['wire', 'point'],
    formula:
      'IF(sparks_on=1, IF(charge>0, coils_square*cycle_time/SUMPRODUCT(MMULT(product[lag], meetings[lag])), 1), 1)',
    source: DEFINITION,
  },
  coil_burst_heat: {
    symbol: 'k_C,c',
    label: 'The same for one coil alone',
    unit: '1',
    per: ['point'],
    formula: 'IF(sparks_on=1, IF(charge>0, INDEX(product_all[lag], 1, 1)/INDEX(product[lag], 1, 1), 1), 1)',
    source: DEFINITION,
  },
  expected_average: {
    symbol: 'I_avg',
    label: 'Average current: a clamp on direct current',
    unit: 'A',
    per: ['spread', 'wire', 'point'],
    formula: 'wire_firings*spread_charge*burst_draw/cycle_time+run_also',
    source: PHYSICS,
  },
  expected_effective: {
    symbol: 'I_eff',
    label: 'Effective current: a clamp with true effective value',
    unit: 'A',
    per: ['spread', 'wire', 'point'],
    formula:
      'SQRT(SUMPRODUCT(MMULT(spread_product[lag], meetings[lag]))*burst_heat/cycle_time+2*(expected_average-run_also)*run_also+run_also^2)',
    source: PHYSICS,
  },
  expected_peak: {
    symbol: 'I_max',
    label: 'Peak current: a clamp on a scope',
    unit: 'A',
    per: ['spread', 'wire', 'point'],
    formula: 'MAX(MMULT(spread_flowing_at[event,event2], carried[event]))+run_also',
    source: PHYSICS,
  },
  spread_wire_T: {
    symbol: 'T_w',
    label: 'Conductor temperature: cold, or at the worst point',
    unit: 'degC',
    per: ['spread', 'wire'],
    formula:
      'IF(spread_sign<0, MIN(T_ref, run_ambient), IF(ISNUMBER(ampacity), IF(ampacity>0, ' +
      'run_ambient+(rating-run_ambient)*(MAX(expected_effective[point])/amps_together)^2, run_ambient), run_ambient))',
    source: PHYSICS,
  },
  spread_wire_ohm: {
    symbol: 'R_w',
    label: 'Resistance of the conductor with its joints, fuse and relay contact',
    unit: 'ohm',
    shown: 'mohm',
    per: ['spread', 'wire'],
    formula:
      'INDEX(size_ohm[size], gauge_row, 1)/parallel*wire_length*(1+spread_sign*tolerance_length)*' +
      '(1+alpha_20*(spread_wire_T-T_ref))+fixed_ohm*(1+spread_sign*tolerance_joint)',
    source: PHYSICS,
  },
  metered_T: {
    symbol: 'T_m',
    label: 'Conductor temperature without current: 20 °C, or the ambient where that goes further',
    unit: 'degC',
    per: ['spread', 'wire'],
    formula: 'IF(spread_sign>0, MAX(T_ref, run_ambient), IF(spread_sign<0, MIN(T_ref, run_ambient), T_ref))',
    source: DEFINITION,
  },
  expected_primary: {
    symbol: 'R_c',
    label: 'Primary resistance of an unplugged coil: cold, or at most as warm as it works',
    unit: 'ohm',
    per: ['spread'],
    formula:
      'coil_ohm_20*(1-spread_sign*tolerance_ohm)*(1+alpha_20*(IF(spread_sign<0, coil_T+coil_warmer, T_ref)-T_ref))',
    source: PHYSICS,
  },
  expected_ohm: {
    symbol: 'R₂₀',
    label: 'Resistance measured without current: at 20 °C, at most at ambient',
    unit: 'ohm',
    shown: 'mohm',
    per: ['spread', 'wire'],
    formula:
      'INDEX(size_ohm[size], gauge_row, 1)/parallel*wire_length*(1+spread_sign*tolerance_length)*' +
      '(1+alpha_20*(metered_T-T_ref))+fixed_ohm*(1+spread_sign*tolerance_joint)',
    source: PHYSICS,
  },
  expected_drop_average: {
    symbol: 'U_avg',
    label: 'Average drop: a multimeter',
    unit: 'V',
    shown: 'mV',
    per: ['spread', 'wire', 'point'],
    formula: 'spread_wire_ohm*expected_average',
    source: PHYSICS,
  },
  expected_drop_peak: {
    symbol: 'U_max',
    label: 'Peak drop: a scope',
    unit: 'V',
    shown: 'mV',
    per: ['spread', 'wire', 'point'],
    formula: 'spread_wire_ohm*expected_peak',
    source: PHYSICS,
  },
  spread_common_ohm: {
    symbol: 'R_jk',
    label: 'Resistance that the paths of the two coils have in common',
    unit: 'ohm',
    shown: 'mohm',
    per: ['spread', 'event'],
    across: 'event2',
    formula: 'SUMPRODUCT(carries[wire], carries[wire,event=event2], spread_wire_ohm[wire])',
    source: PHYSICS,
  },
  spread_path_weight: {
    symbol: 'ΣnR',
    label: 'Resistances of the path, each times the firings that it carries in a cycle',
    unit: 'ohm',
    shown: 'mohm',
    per: ['spread', 'event'],
    formula: 'SUMPRODUCT(carries[wire], wire_firings[wire], spread_wire_ohm[wire])',
    source: DEFINITION,
    note: 'Times the charge of one dwell over the time of a cycle it is the average drop of the path.',
  },
  spread_path_also: {
    symbol: 'ΣΔV_a',
    label: 'Drop that other steady loads make on the coil’s path',
    unit: 'V',
    per: ['spread', 'event'],
    formula: 'SUMPRODUCT(carries[wire], spread_wire_ohm[wire], wire_also[wire])',
    source: PHYSICS,
  },
  spread_path_drop: {
    symbol: 'ΔV',
    label: 'Drop of the coil’s path at the firing instant',
    unit: 'V',
    per: ['spread', 'point', 'event'],
    formula: 'SUMPRODUCT(spread_common_ohm[event2], spread_flowing_at[event2])+spread_path_also',
    source: PHYSICS,
  },
  expected_supply_least: {
    symbol: 'V_c',
    label: 'Supply at the coil at its worst firing: a scope',
    unit: 'V',
    per: ['spread', 'coil', 'point'],
    formula: 'supply-SUMPRODUCT(MAX((event_coil[event]=coil_no)*spread_path_drop[event]))',
    source: PHYSICS,
    note: 'With the least currents it is highest.',
  },
  expected_supply_average: {
    symbol: 'V_c,avg',
    label: 'Supply at the coil on average: a multimeter',
    unit: 'V',
    per: ['spread', 'coil', 'point'],
    formula:
      'supply-SUMPRODUCT(MAX((event_coil[event]=coil_no)*spread_path_weight[event]))*spread_charge*burst_draw/cycle_time-SUMPRODUCT(MAX((event_coil[event]=coil_no)*spread_path_also[event]))',
    source: PHYSICS,
  },
  expected_coil_average: {
    symbol: 'I_avg,c',
    label: 'Average current of the coil: a clamp on direct current',
    unit: 'A',
    per: ['spread', 'coil', 'point'],
    formula: 'coil_firings*spread_charge*burst_draw/cycle_time',
    source: PHYSICS,
  },
  expected_coil_effective: {
    symbol: 'I_eff,c',
    label: 'Effective current of the coil: a clamp with true effective value',
    unit: 'A',
    per: ['spread', 'coil', 'point'],
    formula: 'SQRT(coil_firings*INDEX(spread_product[lag], 1, 1)*coil_burst_heat/cycle_time)',
    source: PHYSICS,
    note: 'The charges of one coil never overlap: only the row of interval 0 counts.',
  },
  expected_coil_peak: {
    symbol: 'I_pk,c',
    label: 'Peak current of the coil: a clamp on a scope',
    unit: 'A',
    per: ['spread', 'coil', 'point'],
    formula: 'spread_peak',
    source: PHYSICS,
  },
} as const satisfies Quantities;
