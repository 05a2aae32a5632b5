/** What a harness is made of: places, ends of wires, pieces of wire. */

export type PlaceKind =
  | 'plus'
  | 'fuse'
  | 'relay'
  | 'splice'
  | 'coil'
  | 'ground'
  | 'minus'
  | 'trigger'
  | 'chassis';

/** A part or a point at which wires end. */
export interface Spot {
  /** Designation on drawing and labels: `F1`, `K1`, `S1`, `G1`, `BAT+`. */
  readonly id: string;
  readonly kind: PlaceKind;
  /** Index of the conductor that holds a fuse or a relay. */
  readonly wire: number | null;
  /** Index of a coil. */
  readonly coil: number | null;
}

export interface End {
  readonly spot: Spot;
  /** Terminal number of DIN 72552 where the part has one. */
  readonly terminal: string | null;
}

/** One piece of wire. */
export interface Piece {
  /** `branch.1`, or `main/2` when the conductor is cut into several. */
  readonly id: string;
  /** Index of the conductor, null for the wires of a relay coil, which are no part of the calculation. */
  readonly wire: number | null;
  readonly run: string;
  readonly from: End;
  readonly to: End;
  readonly gauge: string | null;
  readonly insulation: string | null;
  readonly colour: string | null;
  /** [m]; null when the design does not say where the conductor is cut. */
  readonly length: number | null;
  readonly strip: number | null;
  readonly fromTerminal: string | null;
  readonly toTerminal: string | null;
}

/** Ends that meet without a wire of their own in the design. */
export interface Link {
  readonly from: Spot;
  readonly to: Spot;
  /** True where the design has no return, and the way back is not known. */
  readonly open: boolean;
}

export interface Harness {
  readonly spots: readonly Spot[];
  readonly pieces: readonly Piece[];
  readonly links: readonly Link[];
}
