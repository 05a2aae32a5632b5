/**
 * Whether the numbers of a coil can be meant: the energy that is left to the weakest coil, and which input with another
 * unit, a thousand times more or less, would bring it to what ignitions have.
 */
import type { Quantities } from '../basis/quantity.ts';
import { ARBITRARY, COMMON_PRACTICE, DEFINITION, PHYSICS } from '../basis/sources.ts';
import { ends, RANGES } from '../design/ranges.ts';

const usual = (symbol: string, label: string, unit: string, value: number) =>
  ({ symbol, label, unit, value, source: ARBITRARY }) as const;

/** What a coil alone would store with one of its numbers changed by a thousand. */
const instead = (symbol: string, what: string, henry: string, ohm: string, dwell: string) =>
  ({
    symbol,
    label: `Energy of one coil, stiff supply, if ${what}`,
    unit: 'J',
    shown: 'mJ',
    per: ['point'],
    formula: `IF(bound=1, "", (${henry})/2*MIN(most_amps, drive/(${ohm})*(1-EXP(-(${dwell})*(${ohm})/(${henry}))))^2)`,
    source: PHYSICS,
  }) as const;

const explains = (symbol: string, what: string, energy: string) =>
  ({
    symbol,
    label: `A unit of ${what} would explain the energy (1) or not (0)`,
    unit: '1',
    per: ['point'],
    formula: `IF(bound=1, 0, IF(least_energy<energy_limit, IF(${energy}>=MAX(energy_limit, unit_jump*least_energy), IF(${energy}<=energy_most, 1, 0), 0), 0))`,
    source: DEFINITION,
  }) as const;

export const plausible = {
  energy_limit: {
    symbol: 'E_min',
    label: 'Least energy of the weakest coil',
    unit: 'J',
    shown: 'mJ',
    path: 'limits.energy',
    range: ends(RANGES.energy, 'J'),
    source: COMMON_PRACTICE,
    note: 'Ignitions store some 20 to 200 mJ.',
  },
  energy_most: {
    ...usual('E_max', 'Energy above which no changed unit is taken for an explanation', 'J', 1),
    shown: 'J',
  },
  least_energy: {
    symbol: 'E_d,min',
    label: 'Energy of the weakest coil at the point',
    unit: 'J',
    shown: 'mJ',
    per: ['point'],
    formula: 'IF(bound=1, "", coil_L*MIN(delivered_peak[event])^2/2)',
    source: PHYSICS,
  },
  most_amps: {
    symbol: 'I_lim',
    label: 'Current limit of coil or driver, a large number when there is none',
    unit: 'A',
    formula: 'IF(ISNUMBER(current_limit), current_limit, amps_without_end)',
    source: DEFINITION,
  },
  thousand: {
    symbol: 'k',
    label: 'From one unit to the next',
    unit: '1',
    value: 1000,
    source: DEFINITION,
  },
  unit_jump: usual(
    'k_E',
    'A changed unit explains an energy only if it gives so many times as much',
    '1',
    20,
  ),
  amps_without_end: usual('I_∞', 'Stands for a current without a limit', 'A', 1e9),
  if_henry_less: instead(
    'E_L−',
    'the inductance were a thousandth',
    'coil_L/thousand',
    'charge_ohm',
    'dwell',
  ),
  if_henry_more: instead(
    'E_L+',
    'the inductance were a thousand times',
    'coil_L*thousand',
    'charge_ohm',
    'dwell',
  ),
  if_dwell_more: instead('E_t+', 'the dwell were a thousand times', 'coil_L', 'charge_ohm', 'dwell*thousand'),
  if_ohm_less: instead('E_R−', 'the resistance were a thousandth', 'coil_L', 'charge_ohm/thousand', 'dwell'),
  henry_less: explains('u_L−', 'the inductance, too large,', 'if_henry_less'),
  henry_more: explains('u_L+', 'the inductance, too small,', 'if_henry_more'),
  dwell_more: explains('u_t+', 'the dwell, too short,', 'if_dwell_more'),
  ohm_less: explains('u_R−', 'the resistance, too large,', 'if_ohm_less'),
  usual_ohm_low: { ...usual('R_lo', 'Primaries have usually at least', 'ohm', 0.1), shown: 'ohm' },
  usual_ohm_high: { ...usual('R_hi', 'Primaries have usually at most', 'ohm', 20), shown: 'ohm' },
  usual_henry_low: { ...usual('L_lo', 'Inductances are usually at least', 'H', 0.3e-3), shown: 'mH' },
  usual_henry_high: { ...usual('L_hi', 'Inductances are usually at most', 'H', 30e-3), shown: 'mH' },
  usual_peak_high: usual('I_hi', 'Peak currents are usually at most', 'A', 60),
  ohm_unusual: {
    symbol: 'odd_R',
    label: 'Primary resistance is unusual (1) or not (0)',
    unit: '1',
    formula:
      'IF(ISNUMBER(coil_ohm_20), IF(coil_ohm_20<usual_ohm_low, 1, IF(coil_ohm_20>usual_ohm_high, 1, 0)), "")',
    source: ARBITRARY,
  },
  henry_unusual: {
    symbol: 'odd_L',
    label: 'Primary inductance is unusual (1) or not (0)',
    unit: '1',
    formula: 'IF(ISNUMBER(coil_L), IF(coil_L<usual_henry_low, 1, IF(coil_L>usual_henry_high, 1, 0)), "")',
    source: ARBITRARY,
  },
  most_peak: {
    symbol: 'I_pk,max',
    label: 'Largest peak current of one coil',
    unit: 'A',
    formula: 'MAX(peak[speed])',
    source: DEFINITION,
  },
} as const satisfies Quantities;
