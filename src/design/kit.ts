/** What the papers of the kit need beyond the calculation. Nothing of it enters the model. */

import type { Units } from '../basis/shown.ts';

export type { Units };

/** A wire of the relay coil, as far as it is known: size, insulation, length [m], colour. */
export interface KitWire {
  readonly gauge: string | null;
  readonly insulation: string | null;
  readonly length: number | null;
  readonly colour: string | null;
}

/** Parts as the shop orders them. */
export type PartName =
  | 'fuse'
  | 'fuse_holder'
  | 'relay'
  | 'relay_socket'
  | 'splice'
  | 'ground'
  | 'coil_connector'
  | 'sleeve'
  | 'label'
  | 'tie';

/** What is null was left out and stays a blank on paper. Maps go by the name of a run. */
export interface Kit {
  readonly units: Units;
  /** Share of the length [1]. */
  readonly allowance: number;
  /** At each end [m]. */
  readonly end_allowance: number;
  /** Either way [m]. */
  readonly cut_tolerance: number;
  /** Either way [m]. */
  readonly strip_tolerance: number;
  /** Share of what is cut [1]. */
  readonly waste: number;
  /** Crimps pulled apart in a batch, for each size. */
  readonly samples: number;
  /** [A] */
  readonly test_current: number;
  /** [m] */
  readonly strip: ReadonlyMap<string, number>;
  readonly colours: ReadonlyMap<string, string>;
  readonly terminals: ReadonlyMap<string, { readonly from: string | null; readonly to: string | null }>;
  /** From the start of the run [m]. */
  readonly fuse_at: ReadonlyMap<string, number>;
  readonly relay_at: ReadonlyMap<string, number>;
  readonly trigger: KitWire;
  readonly relay_ground: KitWire;
  readonly spares: { readonly fuse: number; readonly relay: number; readonly terminals: number };
  readonly parts: Readonly<Record<PartName, string | null>>;
  /** What was not given and filled in. */
  readonly assumed: readonly { readonly path: string; readonly value: string; readonly why: string }[];
}
