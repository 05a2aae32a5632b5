/**
 * Copper: resistance, heat and mass of annealed copper conductors.
 * IEC 60028, FAA AC 43.13-1B p. 11-22, IEC 60364-5-54 annex, NEC (NFPA 70) ch. 9 table 8.
 */
import type { Quantities } from '../basis/quantity.ts';
import { cite, fromMemory } from '../basis/sources.ts';

export const copper = {
  rho_20: {
    symbol: 'ρ₂₀',
    label: 'Resistivity of annealed copper at 20 °C',
    unit: 'ohm*mm^2/m',
    // The standard defines the conductivity, 58 m/(Ω·mm²), so that this is exact.
    value: 1 / 58,
    source: cite('IEC-60028', 'quoted'),
  },
  alpha_20: {
    symbol: 'α₂₀',
    label: 'Temperature coefficient of the resistance of copper at 20 °C',
    unit: '1/K',
    value: 0.00393,
    source: cite('IEC-60028', 'quoted'),
  },
  copper_zero: {
    symbol: 'β',
    label: 'How far below 0 °C the resistance of copper, drawn on as a straight line, would vanish',
    unit: 'K',
    value: 234.5,
    source: cite('FAA-AC-43.13-1B', 'printed', 'p. 11-22'),
    note: '1/(234.5 + 20) is 0.003929 per kelvin: the same line as the temperature coefficient, to its last digit.',
  },
  T_ref: {
    symbol: 'T₂₀',
    label: 'Temperature at which resistances are stated',
    unit: 'degC',
    value: 20,
    source: cite('IEC-60028', 'quoted'),
  },
  copper_heat: {
    symbol: 'Qc',
    label: 'Heat capacity of copper by volume, at 20 °C',
    // Per mm² of area and metre of length, so that it fits the units of a wire: 1 J/(K·mm³) is 1000 of these.
    unit: 'J/K/mm^2/m',
    shown: 'J/K/mm^3',
    value: 3.45,
    source: cite('IEC-60364-5-54', 'quoted', 'annex'),
  },
  copper_density: {
    symbol: 'γ',
    label: 'Density of copper',
    unit: 'kg/mm^2/m',
    shown: 'g/cm^3',
    value: 0.00889,
    source: fromMemory('high', 'IEC-60028'),
  },
  lay: {
    symbol: 'k_lay',
    label: 'Lay factor: how much longer the twisted strands are than the conductor',
    unit: '1',
    value: 1.02,
    source: cite('NEC', 'quoted', 'ch. 9 table 8, stranded against solid columns'),
  },
} as const satisfies Quantities;
