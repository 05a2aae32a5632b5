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

/** loose: wire and terminals apart. crimped: wires cut, with their terminals. assembled: the whole harness. */
export const DELIVERED = ['loose', 'crimped', 'assembled'] as const;
export type Delivered = (typeof DELIVERED)[number];

/** Pins of the coil's connector, as its maker names them. */
export type Pin = 'supply' | 'ground' | 'control';

/** What the shop says about fitting, in its own words. */
export const FITTING = [
  'battery_torque',
  'ground_torque',
  'heat_shrink',
  'bend_radius',
  'clip_spacing',
  'fuse_place',
  'relay_place',
  'ground_place',
  'trigger_place',
] as const;
export type Fitting = (typeof FITTING)[number];

/** Parts as the shop orders them. */
export type PartName =
  | 'fuse'
  | 'fuse_holder'
  | 'relay'
  | 'relay_socket'
  | 'fuse_terminal'
  | 'relay_terminal'
  | 'splice'
  | 'ground'
  | 'coil_connector'
  | 'control_contact'
  | 'sleeve'
  | 'label'
  | 'tie';

/** What is null was left out and stays a blank on paper. Maps go by the name of a run. */
export interface Kit {
  readonly units: Units;
  readonly delivered: Delivered;
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
  /** Crimps pulled apart in a batch, for each terminal on each wire. */
  readonly samples: number;
  /** Wire of one of them [m]. */
  readonly sample_length: number;
  /** By a hand meter [ohm]: at most through a wire, at least between wires that are apart. */
  readonly continuity: number;
  readonly isolation: number;
  /** By an insulation tester [V, ohm]. */
  readonly insulation_test: { readonly voltage: number; readonly least: number };
  /** [A] */
  readonly test_current: number;
  /** [m] */
  readonly strip: ReadonlyMap<string, number>;
  readonly colours: ReadonlyMap<string, string>;
  readonly terminals: ReadonlyMap<string, { readonly from: string | null; readonly to: string | null }>;
  /** From the start of the run [m]. */
  readonly fuse_at: ReadonlyMap<string, number>;
  readonly relay_at: ReadonlyMap<string, number>;
  readonly trigger: KitWire & {
    /** Fuse of the original ignition wire [A]. */
    readonly fuse: number | null;
  };
  readonly relay_ground: KitWire;
  readonly spares: { readonly fuse: number; readonly relay: number; readonly terminals: number };
  readonly pins: Readonly<Record<Pin, string | null>>;
  readonly fitting: Readonly<Record<Fitting, string | null>>;
  readonly parts: Readonly<Record<PartName, string | null>>;
  /** What was not given and filled in. */
  readonly assumed: readonly { readonly path: string; readonly value: string; readonly why: string }[];
}
