/**
 * The design as the model takes it: validated, defaults filled in, every value a number in the model's unit.
 * The unit stands behind each field. A field that a design may leave out is null when it was left out.
 */
import type { Layout as ModelLayout } from '../basis/quantity.ts';
import type { Units } from '../basis/shown.ts';
import type { Carried } from './carried.ts';
import type { FuseType, Sense, Suppression } from './kinds.ts';
import type { Kit } from './kit.ts';
import type { Bound, Shop, Used } from './shop/shop.ts';

export type { FuseType, Sense, Suppression } from './kinds.ts';

export type Layout =
  | 'coil_per_cylinder'
  | 'wasted_coil_per_cylinder'
  | 'coil_per_pair'
  | 'single_coil'
  | 'listed';
export type Series = 'AWG' | 'SAE' | 'mm2';
export type Closes = 'before cranking' | 'while cranking';
export type Material = 'PVC' | 'cross-linked';
export type Distribution = 'uniform' | 'normal';
/** Tolerances from which installs are drawn. */
export type Spreading =
  | 'coil_resistance'
  | 'coil_inductance'
  | 'coil_warmer'
  | 'current_limit'
  | 'dwell'
  | 'supply'
  | 'ambient'
  | 'length'
  | 'joint_resistance';

export interface Design {
  title: string;
  /** Free text of the author. */
  notes: string | null;
  /** Day of this state of the design, `2031-05-28`. */
  date: string | null;
  /** In which results are shown; it enters no calculation. */
  units: Units;
  engine: {
    cylinders: number;
    /** 2 or 4. */
    stroke: number;
    /** Cylinder numbers in the order in which they fire. */
    firing_order: number[];
    /** [deg] of crank, in that order; first ≥ 0, last below the cycle. */
    firing_angles: number[];
  };
  ignition: {
    layout: Layout;
    /** Rest between two charges of one coil [s]. */
    rest: number;
    /** Several sparks below an engine speed [1, rpm, s, s]; null: one. */
    sparks: { count: number; below: number; charge: number; burn: number } | null;
    /** Dwell asked for, by supply; one row with supply null is a constant. Sorted by supply. [V, s] */
    dwell: { supply: number | null; dwell: number }[];
  };
  /** One entry per coil, in the order of first firing (or of the list). */
  coils: { id: string; fires_at: number[] }[];
  /** Every firing of every coil, sorted by angle [deg], then by coil index. */
  events: { coil: number; angle: number }[];
  coil: {
    /** Its name in the shop’s file. */
    use: string | null;
    /** Primary at 20 °C [ohm]; null where a peak alone is stated. */
    resistance: number | null;
    /** [H] */
    inductance: number | null;
    /** Bench test that stands in for the inductance [V, s, A], at its own temperature [degC]. */
    test_point: { supply: number; dwell: number; peak: number; temperature: number | null } | null;
    /** Only a peak is known [A]: a bound. */
    peak: number | null;
    /** [V] */
    driver_drop: number;
    /** [A] */
    current_limit: number | null;
    /** In the path of each coil, not in the coil [ohm]; bridged at the points named. */
    series_resistor: { value: number; bypassed_at: string[] } | null;
    /** For the load [degC]. */
    temperature: number;
    /** [s], [1], [A], [V] */
    max_dwell: number | null;
    max_duty: number | null;
    max_peak: number | null;
    min_supply: number | null;
  };
  supply: {
    /** [ohm] */
    source_resistance: number | null;
    /** In its place: what the battery delivers for 30 s at −18 °C [A]. */
    cold_cranking: number | null;
    /** [A] */
    alternator: number | null;
    /** [A] */
    other_load: number | null;
    /** Of the battery at rest, for a relay that closes before cranking; null when nobody asks for it [V]. */
    resting: number | null;
  };
  /** [rpm], [V] */
  points: {
    name: string;
    rpm: number;
    supply: number /** Lowest instant of cranking [V]. */;
    dip: number | null;
  }[];
  /** [rpm], [V]; `rows` speeds from `from` in steps of `step`, the last one not above `to`. */
  sweep: { from: number; to: number; step: number; supply: number; rows: number } | null;
  sizes: {
    series: Series;
    /** "18 AWG" */
    smallest: string;
    /** The only sizes to choose from; null: all of the series. */
    stock: string[] | null;
    /** What they are chosen for. */
    aim: 'copper' | 'price';
  };
  /** Feed runs from the battery outward, then return runs from the coil to battery negative. */
  runs: Run[];
  /** Every conductor: runs in order, within a run in the order of its coils. */
  wires: Wire[];
  limits: {
    /** [V] */
    drop: number;
    /** Least of the weakest coil [J]. */
    energy: number;
    /** [1] */
    wire_load: number;
    /** [1] */
    fuse_load: number;
    /** [ohm] of one crimp */
    joint_resistance: number;
    /** [ohm] of one pair of plug contacts */
    contact_resistance: number;
  };
  kit: Kit;
  /** The shop's own file; null where the design has none. */
  shop: Shop | null;
  /** Parts of that file that the design uses. */
  used: readonly Used[];
  /** The shop's wire, from which alone sizes are chosen; null: any. */
  shelf: ModelLayout['shelf'];
  /** Sizes to which runs are held, found for the least price; null: they are chosen by the model. */
  pins: readonly (string | null)[] | null;
  /** How far parts may be from their values; half the width of each range. */
  tolerance: {
    /** [1] */
    coil_resistance: number;
    coil_inductance: number;
    dwell: number;
    length: number;
    joint_resistance: number;
    /** Supply at the posts, up and down [1]. */
    supply: number;
    /** How much warmer a coil may be than `coil.temperature` [K]. */
    coil_warmer: number;
    current_limit: number;
    /** Of all places together [K]. */
    ambient: number;
    distribution: Readonly<Record<Spreading, Distribution>>;
  };
  /** Errors of the instruments, as their makers state them. */
  instruments: Record<Sense, Accuracy>;
  /** What was filled in of those tolerances that matter to a spread only. */
  spread_assumed: { path: string; value: string; why: string }[];
  /** What was filled in of the tolerances; they matter to readings only. */
  tolerance_assumed: { path: string; value: string; why: string }[];
  /** Readings that were taken, one for each instrument, in the order of the file. */
  measured: Measured[];
  /** Parts that nobody knows, in an install that is checked; something stands in for each. */
  unknowns: Unknown[];
  /** The same coils behind another feed; null when there is none. */
  original: Design | null;
  /** Values and rules of the author’s own. */
  own: readonly OwnRow[];
  /** Cells of sheets that a person added: a number, a text, a formula that starts with an equals sign. */
  added: ReadonlyMap<string, ReadonlyMap<string, number | string>>;
  /** Notes beside the inputs of a workbook, by name of the row. */
  remarks: ReadonlyMap<string, string>;
  /** What was not given and filled in: key path and the text of the value taken. */
  assumed: { path: string; value: string; why: string }[];
  /** The author's text, with plain line ends: a workbook carries it, for what has no cell there. */
  text: Carried;
}

/** A value of the author’s own; a rule where `sense` is given. */
export interface OwnRow {
  readonly label: string;
  /** Without an equals sign. */
  readonly formula: string;
  readonly unit: string;
  readonly sense: 'at_most' | 'at_least' | null;
  readonly limit: number | null;
  readonly words: string;
}

export interface Unknown {
  kind: 'gauge' | 'bundle' | 'fuse_type' | 'relay';
  /** Index in `runs`. */
  run: number;
  /** `feed[0].gauge` */
  path: string;
}

export type What =
  | 'drop'
  | 'voltage'
  | 'supply'
  | 'current'
  | 'resistance'
  | 'inductance'
  | 'dwell'
  | 'trigger'
  | 'resting'
  | 'temperature';
/** What was read with what; `value` is the value of a resistance. */
export type Instrument =
  | 'meter'
  | 'least'
  | 'scope'
  | 'clamp_average'
  | 'clamp_effective'
  | 'clamp_peak'
  | 'value'
  | 'ohmmeter'
  | 'trace'
  | 'log'
  | 'camera';

/** Largest error of an instrument: share of the reading, last digits of a display, and an error that is always there. */
export interface Accuracy {
  /** [1] */
  share: number;
  digits: number;
  /** How many steps the display has. */
  counts: number;
  /** [V], [A], [ohm], [K] */
  least: number;
}

/** A reading. Without conductor and coil it is the supply at the battery posts. */
export interface Measured {
  what: What;
  /** Index in `wires`. */
  wire: number | null;
  /** Index in `coils`; null where a conductor is named. */
  coil: number | null;
  /** Index in `points`; null for a resistance. */
  point: number | null;
  instrument: Instrument;
  /** Of a voltage between two places: the conductors between them; else null. */
  between?: readonly number[] | null;
  /** Of a drop: the one place within the conductor, `fuse`, `joint 2`; null for all of it. */
  across?: string | null;
  /** Of a temperature: that of the surroundings [degC]; null where the value is the rise above them [K]. */
  ambient?: number | null;
  /** [V], [A], [ohm], [H], [s], [degC] or [K] */
  value: number;
  /** `measured[2]` */
  path: string;
}

export interface Run {
  name: string;
  side: 'feed' | 'return';
  /** [degC] */
  ambient: number;
  /** Class letter A–H or a conductor type such as TXL. */
  insulation: string;
  bundle: number;
  /** "auto" or a size such as "8 AWG", "8 SAE", "6 mm2". */
  gauge: string;
  /** Sizes between which one is chosen; null: those of the design, and of the series. */
  smallest: string | null;
  largest: string | null;
  /** What the parts of the shop at its ends take; null where none says. */
  takes: { readonly smallest: Bound | null; readonly largest: Bound | null };
  /** Name of the run whose size this one takes, `none` for a size of its own, null where nothing is said. */
  like: string | null;
  /** What the insulation is made of, where its class does not say. */
  material: Material | null;
  /** Conductors in parallel, each with its share of the current. */
  conductors: number;
  /** Another steady load in this run [A]. */
  also: number;
  joints: number;
  /** Pairs of plug contacts in series. */
  contacts: number;
  /** Capacitor at this run's end [uF]. */
  capacitor: number | null;
  fuse: Fuse | null;
  relay: Relay | null;
}

export interface Fuse {
  /** Its name in the shop’s file. */
  use: string | null;
  type: FuseType;
  /** [A] */
  rating: number | 'auto';
  /** [degC] */
  ambient: number;
  /** Length of conductor between the source and the fuse [m]. */
  from_source: number | null;
  /** The maker's longest clearing times, rising currents [A, s]; null: the limits of the type's standard. */
  curve: { current: number; within: number }[] | null;
  /** The maker's melting energy I²t [A²·s]. */
  melting: number | null;
  /** Rated voltage [V]. */
  voltage: number | null;
  /** What is left of the rating by temperature, from the maker; rising [degC, 1]. */
  rerating: { at: number; share: number }[] | null;
}

export interface Relay {
  /** Its name in the shop’s file. */
  use: string | null;
  /** [A] */
  rating: number | 'auto';
  /** Temperature of that rating [degC]. */
  rated_at: number | null;
  /** Coil at 20 °C [ohm]. */
  coil: number | null;
  /** What the contact carries by temperature, from the maker; rising [degC, A]. */
  derating: { at: number; rating: number }[] | null;
  /** At 20 °C [V]. */
  pull_in: number | null;
  /** At 20 °C [V]. */
  drop_out: number | null;
  /** Largest continuous voltage of its coil [V]. */
  coil_max: number | null;
  /** When it must close. */
  closes: Closes;
  /** [ohm] */
  contact: number;
  /** [degC] */
  ambient: number;
  /** Own rise of the energised relay coil above its ambient [K]. */
  coil_rise: number;
  suppression: Suppression | null;
  /** In the wire that triggers it [V]. */
  trigger_drop: number;
  /** Width of the flat tabs [mm]. */
  tab: number | null;
  /** Largest make current [A]. */
  make: number | null;
}

export interface Wire {
  /** "main", or "branch.1" where a run has one conductor for each coil. */
  id: string;
  /** Index in `runs`. */
  run: number;
  /** Indices in `coils`. */
  coils: number[];
  /** [m] */
  length: number;
}
