/**
 * What a quantity is: one record, declared once, from which engine, workbook, report and reference page are made.
 *
 * A quantity may exist once, or once for each member of one or more axes (`per`: a point, a run, a firing, …).
 * `across` lays a last axis out in columns. A formula is one string for all members. In it a name stands for
 *   - the one value, or the value that belongs to the same members (`dwell` inside a quantity per point),
 *   - the value of the owner: inside a quantity per wire, a quantity per run means that wire's run,
 *   - `name[axis]`: all members along that axis, as a range,
 *   - `name[wire of run]`: those members that belong to the run at hand,
 *   - `name[feed of run]`: the feed run that the run at hand is; the empty text for a return run,
 *   - `name[event=event2]`: the member that the other axis points to,
 *   - `name[lag-1]`, `name[run+1]`: the member before or after; where there is none it is the empty text,
 *   - `name[wire ahead]`: the conductors between the battery and this one, as a list of cells; 0 when there are none,
 *   - `name[run guard]`: the run whose fuse protects the conductor at hand; the empty text when there is none.
 */
import { capital } from './print.ts';
import type { Citation } from './sources.ts';

/** Everything that a design has several of. The second firing axis is for pairs. */
export const AXES = [
  'point',
  'speed',
  'dwell_row',
  'coil',
  'event',
  'event2',
  'lag',
  'burst',
  'run',
  'turn',
  'wire',
  'candidate',
  'size',
  'amps_row',
  'amps_column',
  'insulation',
  'fuse_size',
  'fuse_type',
  'bundle_row',
  'relay_size',
  'hot',
  'tab',
  'opening',
  'feed',
  'grid',
  'window',
  'spread',
] as const;
export type Axis = (typeof AXES)[number];

/** A member of each axis at hand: its index. */
export type At = Partial<Record<Axis, number>>;

interface Common {
  /** Symbol as it is printed, Greek and subscripts welcome. */
  readonly symbol: string;
  readonly label: string;
  /** The label above a column, where the table around it says the rest. */
  readonly short?: string;
  /** Unit inside formulas; '1' for a plain number, 'text' for words. */
  readonly unit: string;
  /** Unit in which a person reads it, when that is another one. */
  readonly shown?: string;
  readonly per?: readonly Axis[];
  readonly across?: Axis;
  readonly source?: Citation;
  /** Taken from a list or a count: printed without zeros that say nothing. */
  readonly exact?: true;
  /** 1 stands for yes and 0 for no; people read the word. */
  readonly flag?: true;
  /** The number of a member of this axis; people read its name. */
  readonly names?: Axis;
  /** What was neglected, where it holds, what to know. */
  readonly note?: string;
  /** Where the relation or the input makes sense, in `unit`. */
  readonly range?: readonly [number, number];
}

/** A value that stays: a constant of nature, a published number, a choice of ours. */
export interface Constant extends Common {
  readonly value: number | string;
}

/** A column of a published table: one value for each member of its axis. */
export interface Column extends Common {
  readonly values: readonly (number | string | null)[] | readonly (readonly (number | string | null)[])[];
}

/** What the layout of the feed fixes and no formula works out: who carries whom, which row this is. */
export interface Structure extends Common {
  readonly value: (at: Readonly<Required<At>>, layout: Layout) => number | string;
}

/** A value that the design gives; null leaves the cell empty. `path` walks the design, `{run}` is an index. */
export interface Input extends Common {
  readonly path: string;
}

/** A value that follows from others. */
export interface Formula extends Common {
  readonly formula: string;
}

interface Kinds {
  readonly constant: Constant;
  readonly column: Column;
  readonly structure: Structure;
  readonly input: Input;
  readonly formula: Formula;
}

/** A record as a file declares it: of what kind it is follows from what it has. */
export type Declared = Kinds[keyof Kinds];
export type OfKind<K extends keyof Kinds> = Kinds[K] & { readonly kind: K };
export type Quantity = { readonly [K in keyof Kinds]: OfKind<K> }[keyof Kinds];
export type Quantities = Readonly<Record<string, Declared>>;

const LABEL =
  /^((?:Relay|Fuse|Data sheet|Sweep|Dwell table|Bench test instead|Further sparks): )?(.*?)(?: \((empty\b.*)\))?$/;

/**
 * What a label says: `Relay: make current (empty: not known)` is "Relay: make current" by itself, "Make current" under the
 * title of its group, and "Empty: not known" of an empty cell.
 */
export function labelParts(label: string): {
  readonly bare: string;
  readonly within: string;
  readonly empty: string | null;
} {
  const [, group = '', name = label, empty] = LABEL.exec(label) ?? [];
  return { bare: group + name, within: capital(name), empty: empty === undefined ? null : capital(empty) };
}

/** A label without what it says of an empty cell. */
export const bareLabel = (label: string): string => labelParts(label).bare;

function kindOf(q: Declared): keyof Kinds {
  if ('formula' in q) return 'formula';
  if ('path' in q) return 'input';
  if ('values' in q) return 'column';
  return typeof q.value === 'function' ? 'structure' : 'constant';
}

export const quantity = (declared: Declared): Quantity =>
  ({ kind: kindOf(declared), ...declared }) as Quantity;

/** What a structure may look at: firings and conductors, by index. */
export interface Layout {
  readonly points: readonly { name: string }[];
  readonly ignition: { readonly sparks: { readonly count: number } | null };
  readonly coil: { readonly series_resistor: { readonly bypassed_at: readonly string[] } | null };
  readonly coils: readonly { id: string }[];
  readonly events: readonly { coil: number }[];
  readonly sizes: { readonly stock: readonly string[] | null };
  /** `measured`: resistance of one metre [ohm], the temperature at which it was measured [degC], and who says so. */
  readonly shelf:
    | readonly {
        readonly size: string;
        readonly insulation: string;
        readonly measured?: {
          readonly ohm: number;
          readonly at: number;
          readonly from: string | null;
        } | null;
      }[]
    | null;
  /** Sizes to which runs are held. */
  readonly pins: readonly (string | null)[] | null;
  /** Fuses of the shop from which one is chosen. */
  readonly shop: { readonly fuses?: readonly { type: string; rating: number }[] | undefined } | null;
  readonly runs: readonly {
    name: string;
    side: 'feed' | 'return';
    /** `curve`: the maker's longest clearing times [A, s], rising currents; `rerating`: share of the rating by degC. */
    fuse: {
      readonly curve: readonly { current: number; within: number }[] | null;
      readonly rerating: readonly { at: number; share: number }[] | null;
    } | null;
    relay: { readonly derating: readonly { at: number; rating: number }[] | null } | null;
    insulation: string;
    gauge: string;
    /** Name of the run whose size it takes, `none` for a size of its own, null where nothing is said. */
    like: string | null;
  }[];
  /** `length` in m. */
  readonly wires: readonly { id: string; run: number; coils: readonly number[]; length: number }[];
}
