/** The published tables as columns of the model: conductor sizes, ampacity, insulation, fuses, relays. */
import type { Axis, Layout, Quantities } from '../basis/quantity.ts';
import { ARBITRARY, AS_STATED, COMMON_PRACTICE, cite, fromMemory, PHYSICS } from '../basis/sources.ts';
import { AMPACITY, AMPACITY_RATINGS, BUNDLE } from '../data/ampacity.ts';
import { AWG_SIZES } from '../data/awg.ts';
import { FUSE_LIMITS } from '../data/fuse-limits.ts';
import { FUSE_RATINGS } from '../data/fuse-ratings.ts';
import { FUSE_DROP, FUSE_TYPES } from '../data/fuses.ts';
import { IEC_60228_CLASS_5 } from '../data/iec60228.ts';
import {
  BATTERY_TYPES,
  CABLE_SIZES,
  CONDUCTOR_TYPES,
  INSULATIONS,
  SHORT_CIRCUIT_LIMITS,
} from '../data/insulation.ts';
import { FLAT_TABS, RELAY_RATINGS } from '../data/relays.ts';
import { SAE_SIZES, sae } from '../data/sae.ts';
import { PRESETS } from '../design/defaults.ts';
import { isOffered } from '../design/shop/fuses.ts';

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

/** [K] Between the continuous limit of every class and its 6 h limit. */
const OVERLOAD_RISE = 50;
/** [degC] Insulation of unstated material is taken as PVC. */
const limitOf = (material: string): number =>
  SHORT_CIRCUIT_LIMITS.rows.find((row) => row.material === material)?.limit ?? 0;

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

/** Steps of a time-current curve, besides the fuse's own limits and the currents from which a conductor is in danger. */
const GRID_STEPS = 24;
/** Steps where each of the conductor's two limits starts to matter, and above: its time falls steeply there. */
const NEAR_STEPS = 6;
/** Windows in which a conductor is not protected: more than three do not occur with falling curves. */
const WINDOWS = 3;

/** Sizes of the longest series, and one more place for a size that the design states. */
const CANDIDATES =
  Math.max(...['AWG', 'SAE', 'mm2'].map((s) => SIZES.filter((z) => z.series === s).length)) + 1;

const FUSES = FUSE_RATINGS.rows.map((row) => ({
  ...row,
  drop:
    FUSE_DROP.rows.find((d) => d.type === row.type && d.from <= row.rating && row.rating <= d.to)?.drop ??
    null,
}));

/** Rows for the limits of a type, and for a fuse's own curve behind its rating; those left over follow the last by I²t. */
const LIMITS = 8;
const FAR_OUT = 2;
const limitsOf = (type: string): { multiple: number; min: number; max: number | null }[] => {
  const own = FUSE_LIMITS.rows
    .filter((g) => g.type === type)
    .map(({ multiple, min, max }) => ({ multiple, min, max }));
  const last = own.at(-1) as (typeof own)[number];
  const beyond = (by: number): (typeof own)[number] => ({
    multiple: last.multiple * by,
    min: last.min / by ** 2,
    max: last.max === null ? null : last.max / by ** 2,
  });
  return Array.from({ length: LIMITS }, (_, i) => own[i] ?? beyond(FAR_OUT ** (i + 1 - own.length)));
};
const GRID_ROWS = GRID_STEPS + LIMITS + 2 * NEAR_STEPS;
const limits = FUSE_TYPES.rows.map((t) => limitsOf(t.type));

/** Least number of conductors in the bundle of each row. */
const bundleRows = BUNDLE.rows;

/** Six rows by temperature that a part may have, and two for what is beyond the last. */
const HOT_ROWS = 8;

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
  opening: Array.from({ length: LIMITS }, (_, i) => `limit ${i + 1}`),
  grid: Array.from({ length: GRID_ROWS }, (_, i) => `${i + 1}`),
  window: Array.from({ length: WINDOWS }, (_, i) => `window ${i + 1}`),
  tab: FLAT_TABS.rows.map((row) => `${row.width} mm`),
  hot: Array.from({ length: HOT_ROWS }, (_, i) => `row ${i + 1}`),
  relay_size: RELAY_RATINGS.rows.map((row) => `${row.rating} A`),
};

/** By the sizes that the design names, and by the wire of the shop. */
/** Whether a size is on the shelf with its insulation; without a shelf every one is. */
export const isShelved = (shelf: Layout['shelf'], size: string, insulation: string): boolean =>
  shelf === null || shelf.some((one) => one.size === size && one.insulation === insulation);

const isStocked = (size = '', insulation = '', { sizes: { stock }, shelf }: Layout): boolean =>
  (stock === null || stock.includes(size)) && isShelved(shelf, size, insulation);

/** What the shop measured of a wire: of one that is listed several times the greatest resistance. */
export const measuredOf = (size: string, insulation: string, shelf: Layout['shelf']) =>
  shelf
    ?.flatMap((one) =>
      one.size === size && one.insulation === insulation && one.measured ? [one.measured] : [],
    )
    .sort((a, b) => b.ohm - a.ohm)[0];

const measuredAt = (at: { size: number; insulation: number }, { shelf }: Layout) =>
  measuredOf(SIZES[at.size]?.name ?? '', INSULATIONS[at.insulation]?.name ?? '', shelf);

export const tables = {
  candidate_no: {
    symbol: 'c',
    label: 'Number of the candidate',
    unit: '1',
    per: ['candidate'],
    value: (at) => at.candidate + 1,
  },
  size_name: {
    symbol: 'size',
    label: 'Conductor size',
    unit: 'text',
    per: ['size'],
    values: SIZES.map((s) => s.name),
  },
  in_stock: {
    symbol: 'stk',
    label: 'In stock with this insulation, or no stock is named (1), or not (0)',
    unit: '1',
    per: ['size'],
    across: 'insulation',
    value: (at, layout) =>
      isStocked(SIZES[at.size]?.name, INSULATIONS[at.insulation]?.name, layout) ? 1 : 0,
    source: AS_STATED,
    note: 'It is changed in the design or in the shop’s file, not in the workbook.',
  },
  measured_ohm: {
    symbol: 'r_m',
    label: 'Resistance of one metre as the shop measured it with this insulation, 0 where it states none',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['size'],
    across: 'insulation',
    value: (at, layout) => measuredAt(at, layout)?.ohm ?? 0,
    source: AS_STATED,
    note: 'It is changed in the shop’s file, not in the workbook.',
  },
  measured_T: {
    symbol: 'T_rm',
    label: 'Temperature of the wire when its resistance was measured; 20 °C where none was',
    unit: 'degC',
    per: ['size'],
    across: 'insulation',
    value: (at, layout) => measuredAt(at, layout)?.at ?? PRESETS.temperature.value,
    source: AS_STATED,
  },
  size_series: {
    symbol: 'series',
    label: 'Series',
    unit: 'text',
    per: ['size'],
    values: SIZES.map((s) => s.series),
    source: COMMON_PRACTICE,
    note: 'AWG 3 and 1 are seldom stocked for vehicles: a design may state them, they are not chosen.',
  },
  size_awg: {
    symbol: 'n',
    label: 'AWG number',
    unit: '1',
    per: ['size'],
    values: SIZES.map((s) => s.awg),
    source: AWG_SIZES.source,
  },
  size_cmil: {
    symbol: 'cmil',
    label: 'Least area, circular mils',
    unit: '1',
    per: ['size'],
    values: SIZES.map((s) => s.cmil),
    source: SAE_SIZES.source,
  },
  size_nominal: {
    symbol: 'S_n',
    label: 'Nominal area',
    unit: 'mm^2',
    per: ['size'],
    values: SIZES.map((s) => s.nominal),
    source: IEC_60228_CLASS_5.source,
  },
  size_class_5: {
    symbol: 'r_5',
    label: 'Greatest resistance of a class 5 conductor at 20 °C',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['size'],
    values: SIZES.map((s) => (s.class5 === null ? null : s.class5 / 1000)),
    source: IEC_60228_CLASS_5.source,
  },
  size_area: {
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
    symbol: 'r₂₀',
    label: 'Resistance of one metre at 20 °C',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['size'],
    formula: 'IF(ISNUMBER(size_class_5), size_class_5, rho_20*lay/size_area)',
    source: PHYSICS,
    note: 'Metric sizes by the greatest resistance that class 5 allows, which holds the lay already.',
  },
  amps_area: {
    symbol: 'S_a',
    label: 'Conductor area',
    unit: 'mm^2',
    per: ['amps_row'],
    formula: 'PI()/4*(awg_diameter*awg_ratio^((awg_number-amps_awg)/awg_steps))^2',
    source: AWG_SIZES.source,
  },
  amps_awg: {
    symbol: 'n_a',
    label: 'AWG number',
    unit: '1',
    per: ['amps_row'],
    values: AMPACITY.rows.map((row) => AWG_SIZES.rows.find((a) => a.gauge === row.gauge)?.number ?? null),
    source: AWG_SIZES.source,
  },
  amps_table: {
    symbol: 'I_t',
    label: 'Ampacity by insulation rating, 30 °C',
    unit: 'A',
    per: ['amps_row'],
    across: 'amps_column',
    values: AMPACITY.rows.map((row) => AMPACITY_RATINGS.map(({ column }) => row[column])),
    source: AMPACITY.source,
  },
  amps_rating: {
    symbol: 'TR_t',
    label: 'Insulation rating of the column',
    unit: 'degC',
    per: ['amps_column'],
    values: AMPACITY_RATINGS.map((r) => r.rating),
    source: AMPACITY.source,
  },
  insulation_name: {
    symbol: 'class',
    label: 'Class or conductor type',
    unit: 'text',
    per: ['insulation'],
    values: INSULATIONS.map((i) => i.name),
  },
  insulation_sae: {
    symbol: 'sae',
    label: 'Sold by SAE number (1) or not (0)',
    unit: '1',
    per: ['insulation'],
    values: INSULATIONS.map((i) => (CONDUCTOR_TYPES.rows.some((row) => row.name === i.name) ? 1 : 0)),
    source: CONDUCTOR_TYPES.source,
  },
  insulation_rating: {
    symbol: 'TR',
    label: 'Continuous temperature',
    unit: 'degC',
    per: ['insulation'],
    values: INSULATIONS.map((i) => i.continuous),
    source: INSULATIONS[0]?.source ?? ARBITRARY,
  },
  bundle_from: {
    symbol: 'n_b',
    label: 'Conductors in the bundle, from',
    unit: '1',
    per: ['bundle_row'],
    values: bundleRows.map((row) => row.from),
    source: BUNDLE.source,
  },
  bundle_share: {
    symbol: 'k_b',
    label: 'Factor on the ampacity',
    unit: '1',
    per: ['bundle_row'],
    values: bundleRows.map((row) => row.factor),
    source: BUNDLE.source,
    note: 'The regulation applies it from 50 V on; it is taken here as a cautious default.',
  },
  fuse_size_type: {
    symbol: 'type_s',
    label: 'Type',
    unit: 'text',
    per: ['fuse_size'],
    values: FUSES.map((f) => f.type),
    source: FUSE_RATINGS.source,
  },
  fuse_size_rating: {
    symbol: 'I_n',
    label: 'Rated current',
    unit: 'A',
    per: ['fuse_size'],
    values: FUSES.map((f) => f.rating),
    source: FUSE_RATINGS.source,
  },
  fuse_size_listed: {
    symbol: 'std',
    label: 'On the list of the standard (1) or beyond it (0)',
    unit: '1',
    per: ['fuse_size'],
    values: FUSES.map((f) => (f.standing === 'listed' ? 1 : 0)),
    source: FUSE_RATINGS.source,
  },
  fuse_size_offered: {
    symbol: 'off',
    label:
      'May be chosen: on the list of the standard, and of the shop where that has fuses of the type (1), or not (0)',
    unit: '1',
    per: ['fuse_size'],
    value: (at, { shop }) => {
      const fuse = FUSES[at.fuse_size];
      return fuse !== undefined && isOffered(shop, fuse.type, Number(fuse.rating)) ? 1 : 0;
    },
    source: AS_STATED,
  },
  fuse_size_drop: {
    symbol: 'U_n',
    label: 'Greatest drop at rated current',
    unit: 'V',
    shown: 'mV',
    per: ['fuse_size'],
    values: FUSES.map((f) => f.drop),
    source: FUSE_DROP.source,
  },
  type_name: {
    symbol: 'type',
    label: 'Type of fuse',
    unit: 'text',
    per: ['fuse_type'],
    values: FUSE_TYPES.rows.map((t) => t.type),
    source: FUSE_TYPES.source,
  },
  type_voltage: {
    symbol: 'V_n',
    label: 'Rated voltage, the lower kind',
    unit: 'V',
    per: ['fuse_type'],
    values: FUSE_TYPES.rows.map((t) => t.voltage),
    source: FUSE_TYPES.source,
  },
  type_breaking: {
    symbol: 'I_b',
    label: 'Breaking capacity',
    unit: 'A',
    per: ['fuse_type'],
    values: FUSE_TYPES.rows.map((t) => t.breaking),
    source: FUSE_TYPES.source,
  },
  type_multiple: {
    symbol: 'm',
    label: 'Opening-time limit: current over rated current',
    unit: '1',
    per: ['fuse_type'],
    across: 'opening',
    values: limits.map((own) => own.map((g) => g.multiple)),
    source: FUSE_LIMITS.source,
    note: 'Beyond the last limit of a type the rows follow it by I²t: twice the current, a quarter of the time.',
  },
  type_slowest: {
    symbol: 't_max',
    label: 'Opening-time limit: opens at the latest after',
    unit: 's',
    shown: 's',
    per: ['fuse_type'],
    across: 'opening',
    values: limits.map((own) => own.map((g) => g.max)),
    source: FUSE_LIMITS.source,
  },
  type_fastest: {
    symbol: 't_min',
    label: 'Opening-time limit: opens not before',
    unit: 's',
    shown: 's',
    per: ['fuse_type'],
    across: 'opening',
    values: limits.map((own) => own.map((g) => g.min)),
    source: FUSE_LIMITS.source,
  },
  opening_further: {
    symbol: 'k_g',
    label: 'Rows beyond the last point of a fuse’s curve: current over that of the row before',
    unit: '1',
    value: FAR_OUT,
    source: ARBITRARY,
    note: 'They lie on the line by I²t, wherever they stand on it.',
  },
  opening_no: {
    symbol: 'g',
    label: 'Number of the opening-time limit',
    unit: '1',
    per: ['opening'],
    value: (at) => at.opening + 1,
  },
  grid_no: {
    symbol: 'k',
    label: 'Number of the step',
    unit: '1',
    per: ['grid'],
    value: (at) => at.grid + 1,
  },
  grid_steps: {
    symbol: 'K',
    label: 'Steps of the logarithmic current axis',
    unit: '1',
    value: GRID_STEPS,
    source: ARBITRARY,
  },
  near_steps: {
    symbol: 'K_n',
    label: 'Steps where a limit of the conductor starts to matter',
    unit: '1',
    value: NEAR_STEPS,
    source: ARBITRARY,
  },
  window_no: {
    symbol: 'w',
    label: 'Number of the window',
    unit: '1',
    per: ['window'],
    value: (at) => at.window + 1,
  },
  tab_width: {
    symbol: 'b_t',
    label: 'Width of a flat tab',
    unit: 'mm',
    per: ['tab'],
    values: FLAT_TABS.rows.map((row) => row.width),
    source: FLAT_TABS.source,
  },
  tab_amps: {
    symbol: 'I_tab',
    label: 'Customary continuous current, low end',
    unit: 'A',
    per: ['tab'],
    values: FLAT_TABS.rows.map((row) => row.from),
    source: FLAT_TABS.source,
    note: 'There is no figure in the standard.',
  },
  tab_wire: {
    symbol: 'S_tab',
    label: 'Largest wire for a tab of this width',
    unit: 'mm^2',
    per: ['tab'],
    values: FLAT_TABS.rows.map((row) => row.wire),
    source: cite('IEC-61210', 'quoted'),
  },
  insulation_overload: {
    symbol: 'T_6h',
    label: 'Limit of a 6 h overload',
    unit: 'degC',
    per: ['insulation'],
    values: INSULATIONS.map((i) => i.hours_6 ?? i.continuous + OVERLOAD_RISE),
    source: fromMemory('high', 'ISO-6722-1', 'temperature classes'),
    note: 'Conductor types for which it is not stated: 50 K above the rating, as every class has it.',
  },
  insulation_short: {
    symbol: 'T_5s',
    label: 'Limit of a short circuit up to 5 s',
    unit: 'degC',
    per: ['insulation'],
    values: INSULATIONS.map((i) => Math.max(i.hours_6 ?? 0, i.short_circuit ?? limitOf('PVC'))),
    source: cite('IEC-60364-5-54', 'quoted'),
    note:
      'PVC 160 °C, cross-linked 250 °C. A class letter does not state its material: it is taken as PVC, and never below its ' +
      'own overload limit; a run may state `material: cross-linked`.',
  },
  insulation_cable: {
    symbol: 'cbl',
    label: 'Type is primary cable (1), battery cable (2), or a class that is no cable (0)',
    unit: '1',
    per: ['insulation'],
    values: INSULATIONS.map(({ name }) =>
      BATTERY_TYPES.includes(name) ? 2 : CONDUCTOR_TYPES.rows.some((row) => row.name === name) ? 1 : 0,
    ),
    source: CONDUCTOR_TYPES.source,
  },
  primary_most: {
    symbol: 'S_pr',
    label: 'Largest area in which primary cable is customarily made, 8 SAE',
    unit: 'mm^2',
    value: (CABLE_SIZES.rows[0]?.to ?? Number.NaN) * sae.circular_mil.value,
    source: CABLE_SIZES.source,
  },
  battery_least: {
    symbol: 'S_bat',
    label: 'Least area in which battery cable is customarily made, 6 SAE',
    unit: 'mm^2',
    value: (CABLE_SIZES.rows[1]?.from ?? Number.NaN) * sae.circular_mil.value,
    source: fromMemory('medium', 'SAE-J1127'),
  },
  insulation_typed: {
    symbol: 'mat',
    label: 'The name says what the insulation is made of (1) or not (0)',
    unit: '1',
    per: ['insulation'],
    values: INSULATIONS.map((i) => (i.short_circuit === null ? 0 : 1)),
    source: CONDUCTOR_TYPES.source,
  },
  linked_limit: {
    symbol: 'T_XL',
    label: 'Limit of a short circuit up to 5 s, cross-linked insulation',
    unit: 'degC',
    value: limitOf('cross-linked'),
    source: cite('IEC-60364-5-54', 'quoted'),
  },
  relay_size_rating: {
    symbol: 'I_r',
    label: 'Customary rating',
    unit: 'A',
    per: ['relay_size'],
    values: RELAY_RATINGS.rows.map((row) => row.rating),
    source: RELAY_RATINGS.source,
  },
} as const satisfies Quantities;
