/** The published tables as columns of the model: conductor sizes, ampacity, insulation, fuses, relays. */
import type { Axis, Quantities } from '../basis/quantity.ts';
import { ARBITRARY, COMMON_PRACTICE, PHYSICS } from '../basis/sources.ts';
import { AMPACITY, AMPACITY_RATINGS, BUNDLE } from '../data/ampacity.ts';
import { AWG_SIZES } from '../data/awg.ts';
import { FUSE_RATINGS } from '../data/fuse-ratings.ts';
import { FUSE_DROP, FUSE_TYPES } from '../data/fuses.ts';
import { IEC_60228_CLASS_5 } from '../data/iec60228.ts';
import { INSULATIONS } from '../data/insulation.ts';
import { RELAY_RATINGS } from '../data/relays.ts';
import { SAE_SIZES } from '../data/sae.ts';

/** One conductor size of any series; a series stands together so that its sizes can be counted off. */
interface Size {
  readonly name: string;
  readonly series: string;
  /** Gauge number of the AWG definition. */
  readonly awg: number | null;
  /** [cmil] */
  readonly cmil: number | null;
  /** [mm2] */
  readonly nominal: number | null;
  /** [mohm/m] */
  readonly class5: number | null;
}

const none = { awg: null, cmil: null, nominal: null, class5: null };
const awgSizes = AWG_SIZES.rows.map((row) => ({
  ...none,
  name: `${row.gauge} AWG`,
  // The odd sizes can be asked for, and are not chosen.
  series: row.custom === 'customary' ? 'AWG' : 'AWG, odd',
  awg: row.number,
}));
export const SIZES: readonly Size[] = [
  ...awgSizes.filter((s) => s.series === 'AWG'),
  ...SAE_SIZES.rows.map((row) => ({ ...none, name: `${row.gauge} SAE`, series: 'SAE', cmil: row.area })),
  ...IEC_60228_CLASS_5.rows.map((row) => ({
    ...none,
    name: `${row.size} mm2`,
    series: 'mm2',
    nominal: row.size,
    class5: row.resistance,
  })),
  ...awgSizes.filter((s) => s.series !== 'AWG'),
];

/** Sizes of the longest series, and one more place for a size that the design states. */
const CANDIDATES =
  Math.max(...['AWG', 'SAE', 'mm2'].map((s) => SIZES.filter((z) => z.series === s).length)) + 1;

const FUSES = FUSE_RATINGS.rows.map((row) => ({
  ...row,
  drop:
    FUSE_DROP.rows.find((d) => d.type === row.type && d.from <= row.rating && row.rating <= d.to)?.drop ??
    null,
}));

/** Least number of conductors in the bundle of each row. */
const bundleRows = BUNDLE.rows;

export const TABLE_AXES: Partial<Record<Axis, readonly string[]>> = {
  candidate: Array.from({ length: CANDIDATES }, (_, i) =>
    i < CANDIDATES - 1 ? `size ${i + 1}` : 'as stated',
  ),
  size: SIZES.map((s) => s.name),
  amps_row: AMPACITY.rows.map((row) => `${row.gauge} AWG`),
  amps_column: AMPACITY_RATINGS.map((r) => `${r.rating} °C`),
  insulation: INSULATIONS.map((i) => i.name),
  fuse_type: FUSE_TYPES.rows.map((row) => row.type),
  fuse_size: FUSES.map((row) => `${row.type} ${row.rating} A`),
  bundle_row: bundleRows.map((row) => `${row.from} and more`),
  relay_size: RELAY_RATINGS.rows.map((row) => `${row.rating} A`),
};

export const tables = {
  candidate_no: {
    kind: 'structure',
    symbol: 'c',
    label: 'Number of the candidate',
    unit: '1',
    per: ['candidate'],
    value: (at) => at.candidate + 1,
  },
  size_name: {
    kind: 'column',
    symbol: 'size',
    label: 'Conductor size',
    unit: 'text',
    per: ['size'],
    values: SIZES.map((s) => s.name),
  },
  size_series: {
    kind: 'column',
    symbol: 'series',
    label: 'Series',
    unit: 'text',
    per: ['size'],
    values: SIZES.map((s) => s.series),
    source: COMMON_PRACTICE,
    note: 'AWG 3 and 1 are seldom stocked for vehicles: a design may state them, they are not chosen.',
  },
  size_awg: {
    kind: 'column',
    symbol: 'n',
    label: 'AWG number',
    unit: '1',
    per: ['size'],
    values: SIZES.map((s) => s.awg),
    source: AWG_SIZES.source,
  },
  size_cmil: {
    kind: 'column',
    symbol: 'cmil',
    label: 'Least area, circular mils',
    unit: '1',
    per: ['size'],
    values: SIZES.map((s) => s.cmil),
    source: SAE_SIZES.source,
  },
  size_nominal: {
    kind: 'column',
    symbol: 'S_n',
    label: 'Nominal area',
    unit: 'mm^2',
    per: ['size'],
    values: SIZES.map((s) => s.nominal),
    source: IEC_60228_CLASS_5.source,
  },
  size_class_5: {
    kind: 'column',
    symbol: 'r_5',
    label: 'Greatest resistance of a class 5 conductor at 20 °C',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['size'],
    values: SIZES.map((s) => (s.class5 === null ? null : s.class5 / 1000)),
    source: IEC_60228_CLASS_5.source,
  },
  size_area: {
    kind: 'formula',
    symbol: 'S',
    label: 'Conductor area',
    unit: 'mm^2',
    per: ['size'],
    formula:
      'IF(ISNUMBER(size_awg), PI()/4*(awg_diameter*awg_ratio^((awg_number-size_awg)/awg_steps))^2, ' +
      'IF(ISNUMBER(size_cmil), size_cmil*circular_mil, size_nominal))',
    source: PHYSICS,
    note: 'AWG by its definition, SAE by its least area, metric sizes by their name.',
  },
  size_ohm: {
    kind: 'formula',
    symbol: 'r₂₀',
    label: 'Resistance of one metre at 20 °C',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['size'],
    formula: 'IF(ISNUMBER(size_class_5), size_class_5, rho_20*lay/size_area)',
    note: 'Metric sizes by the greatest resistance that class 5 allows, which holds the lay already.',
  },
  amps_area: {
    kind: 'formula',
    symbol: 'S_a',
    label: 'Conductor area',
    unit: 'mm^2',
    per: ['amps_row'],
    formula: 'PI()/4*(awg_diameter*awg_ratio^((awg_number-amps_awg)/awg_steps))^2',
    source: AWG_SIZES.source,
  },
  amps_awg: {
    kind: 'column',
    symbol: 'n_a',
    label: 'AWG number',
    unit: '1',
    per: ['amps_row'],
    values: AMPACITY.rows.map((row) => AWG_SIZES.rows.find((a) => a.gauge === row.gauge)?.number ?? null),
    source: AWG_SIZES.source,
  },
  amps_table: {
    kind: 'column',
    symbol: 'I_t',
    label: 'Ampacity by insulation rating, 30 °C',
    unit: 'A',
    per: ['amps_row'],
    across: 'amps_column',
    values: AMPACITY.rows.map((row) => AMPACITY_RATINGS.map(({ column }) => row[column])),
    source: AMPACITY.source,
  },
  amps_rating: {
    kind: 'column',
    symbol: 'TR_t',
    label: 'Insulation rating of the column',
    unit: 'degC',
    per: ['amps_column'],
    values: AMPACITY_RATINGS.map((r) => r.rating),
    source: AMPACITY.source,
  },
  insulation_name: {
    kind: 'column',
    symbol: 'class',
    label: 'Class or conductor type',
    unit: 'text',
    per: ['insulation'],
    values: INSULATIONS.map((i) => i.name),
  },
  insulation_rating: {
    kind: 'column',
    symbol: 'TR',
    label: 'Continuous temperature',
    unit: 'degC',
    per: ['insulation'],
    values: INSULATIONS.map((i) => i.continuous),
    source: INSULATIONS[0]?.source ?? ARBITRARY,
  },
  bundle_from: {
    kind: 'column',
    symbol: 'n_b',
    label: 'Conductors in the bundle, from',
    unit: '1',
    per: ['bundle_row'],
    values: bundleRows.map((row) => row.from),
    source: BUNDLE.source,
  },
  bundle_share: {
    kind: 'column',
    symbol: 'k_b',
    label: 'Factor on the ampacity',
    unit: '1',
    per: ['bundle_row'],
    values: bundleRows.map((row) => row.factor),
    source: BUNDLE.source,
    note: 'The regulation applies it from 50 V on; it is taken here as a cautious default.',
  },
  fuse_size_type: {
    kind: 'column',
    symbol: 'type',
    label: 'Type',
    unit: 'text',
    per: ['fuse_size'],
    values: FUSES.map((f) => f.type),
    source: FUSE_RATINGS.source,
  },
  fuse_size_rating: {
    kind: 'column',
    symbol: 'I_n',
    label: 'Rated current',
    unit: 'A',
    per: ['fuse_size'],
    values: FUSES.map((f) => f.rating),
    source: FUSE_RATINGS.source,
  },
  fuse_size_listed: {
    kind: 'column',
    symbol: 'std',
    label: 'On the list of the standard (1) or beyond it (0)',
    unit: '1',
    per: ['fuse_size'],
    values: FUSES.map((f) => (f.standing === 'listed' ? 1 : 0)),
    source: FUSE_RATINGS.source,
  },
  fuse_size_drop: {
    kind: 'column',
    symbol: 'U_n',
    label: 'Greatest drop at rated current',
    unit: 'V',
    shown: 'mV',
    per: ['fuse_size'],
    values: FUSES.map((f) => f.drop),
    source: FUSE_DROP.source,
  },
  relay_size_rating: {
    kind: 'column',
    symbol: 'I_r',
    label: 'Customary rating',
    unit: 'A',
    per: ['relay_size'],
    values: RELAY_RATINGS.rows.map((row) => row.rating),
    source: RELAY_RATINGS.source,
  },
} as const satisfies Quantities;
