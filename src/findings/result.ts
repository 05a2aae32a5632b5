/** What comes of a design: the evaluated model, what was found, and the verdict on the whole. */
import type { Evaluation } from '../engine/evaluate.ts';
import type { Finding, Overall } from './finding.ts';

export interface Result {
  readonly evaluation: Evaluation;
  readonly findings: readonly Finding[];
  readonly verdict: Overall;
}
