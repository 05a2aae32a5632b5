/**
 * The whole pipeline.
 *
 *   text ─► readDesign ─► Design ─► evaluate ─► Evaluation ─► findings ─► Result ─► report, JSON, workbook
 *                                       ▲
 *                     the quantities of the model, laid out as cells
 */
import type { Design } from './design/design.ts';
import type { Sheet } from './engine/cells.ts';
import { type Extra, evaluate } from './engine/evaluate.ts';
import { findings, overall } from './findings/read.ts';
import type { Result } from './findings/result.ts';
import { JUDGED, judgedSheet } from './findings/sheet.ts';
import type { OnRequest } from './model/model.ts';

/**
 * Evaluates and judges a design. `show` adds sheets that present the results, `asked` subjects of the model that are
 * laid out on request only.
 */
export function run(design: Design, show?: Extra, asked: readonly OnRequest[] = []): Result {
  const extra: Extra = (grid, d) =>
    new Map<string, Sheet>([[JUDGED, judgedSheet(grid, d)], ...(show ? show(grid, d) : [])]);
  const evaluation = evaluate(design, extra, asked);
  const found = findings(evaluation);
  return { evaluation, findings: found, verdict: overall(found) };
}
