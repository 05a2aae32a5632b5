/** What comes of a design: the evaluated model, what was found, and the verdict on the whole. */
import type { Evaluation } from '../engine/evaluate.ts';
import type { OwnFound } from '../own/found.ts';
import type { Finding, Overall } from './finding.ts';

export interface Result {
  readonly evaluation: Evaluation;
  readonly findings: readonly Finding[];
  /** Of the whole, with the rules of the author. */
  readonly verdict: Overall;
  /** Values and rules of the author; none where nobody evaluated them. */
  readonly own?: readonly OwnFound[];
}
