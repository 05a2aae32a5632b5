/**
 * The whole pipeline.
 *
 *   text ─► readDesign ─► Design ─► evaluate ─► Evaluation ─► findings ─► Result ─► report, JSON, workbook
 *                                       ▲
 *                     the quantities of the model, laid out as cells
 */
import type { Design } from './design/design.ts';
import type { Sheet } from './engine/cells.ts';
import { type Evaluation, type Extra, evaluate } from './engine/evaluate.ts';
import { moved } from './engine/moved.ts';
import { findings, overall } from './findings/read.ts';
import type { Result } from './findings/result.ts';
import { JUDGED, judged, judgedSheet } from './findings/sheet.ts';
import type { OnRequest } from './model/model.ts';

/**
 * Evaluates and judges a design. `show` adds sheets that present the results, `asked` subjects of the model that are
 * laid out on request only.
 */
export function run(design: Design, show?: Extra, asked: readonly OnRequest[] = []): Result {
  const extra: Extra = (grid, d) =>
    new Map<string, Sheet>([[JUDGED, judgedSheet(grid, d)], ...(show ? show(grid, d) : [])]);
  return judge(evaluate(design, extra, asked));
}

/**
 * The result of another design by way of the cells of an earlier one, which are then its own: much quicker, and the
 * same numbers. Null when the designs differ in more than entries; the earlier result then stays as it was.
 * Whatever `show` added shows the earlier design.
 */
export function rerun({ evaluation }: Result, design: Design): Result | null {
  const { grid } = evaluation;
  const entries = moved(evaluation, design);
  if (entries === null) return null;
  if (JSON.stringify(judged(grid, evaluation.design)) !== JSON.stringify(judged(grid, design))) return null;
  evaluation.setAll(entries);
  return judge({ ...evaluation, design });
}

function judge(evaluation: Evaluation): Result {
  const found = findings(evaluation);
  return { evaluation, findings: found, verdict: overall(found) };
}
