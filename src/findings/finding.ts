/** What a finding is: data. Its words are made from it in `words.ts`. */
import type { At } from '../basis/quantity.ts';
import type { Citation } from '../basis/sources.ts';
import type { RuleId, Sense } from './rules.ts';

/** Verdicts in the order in which findings are told; advice is sound, and worth saying to whoever builds the feed. */
export const VERDICTS = ['fail', 'unknown', 'advice', 'pass'] as const;
export type Verdict = (typeof VERDICTS)[number];
/** The verdict on the whole: advice does not change it. */
export type Overall = Exclude<Verdict, 'advice'>;

export interface Finding {
  readonly rule: RuleId;
  /** Name of the run or point, or `feed` for the whole. */
  readonly subject: string;
  readonly at: At;
  readonly verdict: Verdict;
  /** In the unit `unit`; null when it is not known. */
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  readonly sense: Sense;
  /** Distance to the limit as a share of it; negative when it is broken; null when that means nothing. */
  readonly margin: number | null;
  /** Passes, but within 10 % of the limit. */
  readonly marginal: boolean;
  readonly source: Citation;
}

/** Whether the finding keeps the design from passing. */
export const open = ({ verdict }: Finding): boolean => verdict === 'fail' || verdict === 'unknown';

/** A pass closer to its limit than this, as a share of the limit, is marked. An arbitrary choice. */
export const MARGINAL = 0.1;
