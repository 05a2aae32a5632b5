/** What a remedy is: changes of the design that were evaluated together, with which a rule passes that fails without. */
import type { Design } from '../design/design.ts';
import type { Overall } from '../findings/finding.ts';
import type { Result } from '../findings/result.ts';

/** Evaluates and judges a design. */
export type Judge = (design: Design) => Result;

/** What is changed: of each kind one remedy is told. */
export type Kind =
  | 'unit'
  | 'place'
  | 'fuse'
  | 'relay'
  | 'fuse added'
  | 'fuse and size'
  | 'size'
  | 'joints'
  | 'length';

/** A change of the design. */
export interface Change {
  readonly kind: Kind;
  readonly design: Design;
  /** What to do, in words, from the design with it, evaluated: what was left open has its value there. */
  readonly says: (result: Result) => string;
  /** How much it asks of whoever builds the feed; only to be compared. Arbitrary. */
  readonly effort: number;
  /** Parts that it adds. */
  readonly parts: readonly string[];
}

export interface Remedy {
  /** What to do: one thing, or several that are needed together. */
  readonly says: readonly string[];
  /** Findings that fail without it and pass with it. */
  readonly mends: readonly { readonly rule: string; readonly subject: string }[];
  /** The verdict on the whole with it, and how many findings then fail. */
  readonly verdict: Overall;
  readonly failing: number;
  /** By how much it changes the copper [kg] and the drop of the worst path [V]; null when either is not known. */
  readonly copper: number | null;
  /** Where no sizes were found without it: those that are chosen with it, `14 AWG for branch`, and all copper [kg]. */
  readonly chosen: readonly string[];
  readonly copperInAll: number | null;
  readonly drop: number | null;
  readonly parts: readonly string[];
  /** The design with it. */
  readonly design: Design;
}
