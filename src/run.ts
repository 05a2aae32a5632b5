/**
 * The whole pipeline.
 *
 *   text ─► readDesign ─► Design ─► evaluate ─► Evaluation ─► findings ─► Result ─► report, JSON
 *                                       ▲
 *                         the quantities of the model, compiled
 *
 * Where a workbook is to be written, `run-laid.ts` has the same quantities laid out as cells beside it.
 */
import type { Design } from './design/design.ts';
import { type Evaluation, evaluate } from './engine/evaluate.ts';
import { findings, overall } from './findings/read.ts';
import type { Result } from './findings/result.ts';
import type { OwnFound } from './own/found.ts';

/** Evaluates and judges a design. */
export const run = (design: Design): Result => judge(evaluate(design));

/** The same with values and rules of the author, which count as the tool’s own findings do. */
export const withOwn = (result: Result, own: readonly OwnFound[]): Result => ({
  ...result,
  own,
  verdict: overall([...result.findings, ...own]),
});

/** Judges what is evaluated, with the inputs that it has at the moment. */
export function judge(evaluation: Evaluation): Result {
  const found = findings(evaluation);
  return { evaluation, findings: found, verdict: overall(found) };
}
