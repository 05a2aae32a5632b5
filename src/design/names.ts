/** Names that a design may use: sizes of conductors, insulations, types of fuses. Their values stand in the data. */
import { AWG_SIZES } from '../data/awg.ts';
import { IEC_60228_CLASS_5 } from '../data/iec60228.ts';
import { CONDUCTOR_TYPES, INSULATIONS as INSULATION_DATA } from '../data/insulation.ts';
import { SAE_SIZES } from '../data/sae.ts';
import type { Distribution, FuseType, Instrument, Material, Series, Spreading, What } from './design.ts';

/** What sizes are chosen for. */
export const AIMS = ['copper', 'price'] as const;

/** Sizes that the tables hold, smallest first, as they are written after normalising. */
export const SIZES: Readonly<Record<Series, readonly string[]>> = {
  AWG: AWG_SIZES.rows.map((row) => row.gauge),
  SAE: SAE_SIZES.rows.map((row) => row.gauge),
  mm2: IEC_60228_CLASS_5.rows.map((row) => String(row.size)),
};

export const SERIES = ['AWG', 'SAE', 'mm2'] as const satisfies readonly Series[];

/** Classes by temperature (ISO 6722-1, ISO 19642) and types of SAE J1128 and J1127. */
export const INSULATIONS: readonly string[] = INSULATION_DATA.map((insulation) => insulation.name);

/** Types of SAE J1128 and J1127: sold by SAE number. */
export const SAE_TYPES: readonly string[] = CONDUCTOR_TYPES.rows.map((row) => row.name);

export const FUSE_TYPES = ['C', 'F', 'E', 'SF30'] as const satisfies readonly FuseType[];

export const CLOSES = ['before cranking', 'while cranking'] as const;
export const MATERIALS = ['PVC', 'cross-linked'] as const satisfies readonly Material[];

/** Of `like`: a size of its own. */
export const LIKE_NONE = 'none';

export const SUPPRESSIONS = ['none', 'diode', 'resistor', 'diode_zener'] as const;

/** What is measured. */
export const MEASURED = [
  'drop',
  'voltage',
  'supply',
  'current',
  'resistance',
  'inductance',
  'dwell',
  'trigger',
  'resting',
  'temperature',
] as const satisfies readonly What[];

/** Instruments, by the key under which a reading stands, and what each can measure. */
export const INSTRUMENTS: Readonly<Record<Instrument, readonly What[]>> = {
  meter: ['drop', 'voltage', 'supply', 'trigger', 'resting'],
  least: ['supply', 'trigger'],
  scope: ['drop', 'voltage', 'supply', 'trigger'],
  clamp_average: ['current'],
  clamp_effective: ['current'],
  clamp_peak: ['current'],
  value: ['resistance'],
  ohmmeter: ['resistance'],
  trace: ['inductance'],
  log: ['dwell'],
  camera: ['temperature'],
};

/** What no current of a coil drives is judged by itself, and not weighed with the other readings. */
export const judgedAlone = ({ what, instrument }: { what: What; instrument: Instrument }): boolean =>
  what === 'trigger' || what === 'resting' || instrument === 'least';

export const LAYOUTS = [
  'coil_per_cylinder',
  'wasted_coil_per_cylinder',
  'coil_per_pair',
  'single_coil',
  'listed',
] as const;

/** How values lie within a tolerance. */
export const DISTRIBUTIONS = ['uniform', 'normal'] as const satisfies readonly Distribution[];
/** Tolerances from which installs are drawn. */
export const SPREADING = [
  'coil_resistance',
  'coil_inductance',
  'coil_warmer',
  'current_limit',
  'dwell',
  'supply',
  'ambient',
  'length',
  'joint_resistance',
] as const satisfies readonly Spreading[];
