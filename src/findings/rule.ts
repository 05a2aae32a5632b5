/** What a rule is, and what a design must have for one to apply. */
import type { Axis } from '../basis/quantity.ts';
import type { Citation } from '../basis/sources.ts';
import type { Design, Run } from '../design/design.ts';
import type { QuantityName } from '../model/model.ts';

/** How the value must stand to the limit. */
export type Sense = 'at most' | 'at least' | 'below' | 'above';

export const SIGNS: Readonly<Record<Sense, string>> = {
  'at most': '≤',
  'at least': '≥',
  below: '<',
  above: '>',
};

export interface Rule {
  /** What there is one finding for; nothing when the whole feed has one. */
  readonly per?: Extract<Axis, 'run' | 'point' | 'feed'>;
  readonly value: QuantityName;
  readonly sense: Sense;
  readonly limit: QuantityName;
  /** Of the limit where the design does not state it. */
  readonly source: Citation;
  /** Path of what the design may state of a limit that is no input itself. */
  readonly stated?: string;
  /** A count or a yes or no: a distance to the limit says nothing. */
  readonly plain?: true;
  /** What would fail, or is not known, is advice: it does not change the verdict on the whole. */
  readonly advice?: true;
  /** Whether the design has what the rule is about; `index` is the run or point. */
  readonly applies?: (design: Design, index: number) => boolean;
  /**
   * The same over quantities, where an input decides it: a workbook has a row for every subject for which there is `room`, and
   * leaves it empty while this is not so.
   */
  readonly when?: string;
  readonly room?: (design: Design, index: number) => boolean;
}

/** The rules of one subject. */
export type Rules = Readonly<Record<string, Rule>>;

export const run = (design: Design, index: number): Run | undefined => design.runs[index];
export const fused = (design: Design, index: number): boolean => Boolean(run(design, index)?.fuse);
export const relayed = (design: Design, index: number): boolean => Boolean(run(design, index)?.relay);
