/**
 * The pipeline of whatever writes a workbook: the model is evaluated as cells as well, and a result that differs from that
 * of the compiled model stops it. Loaded only where a workbook is asked for, since the spreadsheet engine is large.
 */
import type { Design } from './design/design.ts';
import { withCopy } from './design/shop/copy.ts';
import type { Sheet } from './engine/cell.ts';
import { evaluate, ModelError } from './engine/evaluate.ts';
import { type Extra, type Laid, lay } from './engine/spreadsheet.ts';
import { laidOut } from './findings/judged.ts';
import type { Result } from './findings/result.ts';
import { JUDGED, JUDGED_COLUMNS, JUDGED_TOP, judgedSheet } from './findings/sheet.ts';
import type { OnRequest } from './model/model.ts';
import { ownOf } from './own/evaluate.ts';
import { hasOwn } from './own/found.ts';
import { theirs } from './own/names-in.ts';
import { judge } from './run.ts';

/** A result that can be written as a workbook. */
export type LaidResult = Result & { readonly evaluation: Laid };

/**
 * Evaluates and judges a design. `show` adds sheets that present the results, `asked` subjects of the model that are
 * laid out on request only. The design is left with what of the shop's file a workbook holds. Throws a `ModelError` where the two ways to evaluate differ, or something of the author’s own
 * cannot be taken.
 */
export function runLaid(given: Design, show?: Extra, asked: readonly OnRequest[] = []): LaidResult {
  const design = withCopy(given);
  if (hasOwn(design))
    for (const { cell, found } of ownOf(evaluate(design)).wrong) throw new ModelError(`${cell}: ${found}`);
  const extra: Extra = (grid, d) =>
    new Map<string, Sheet>([[JUDGED, judgedSheet(grid, d)], ...(show ? show(grid, d) : [])]);
  const evaluation = lay(design, extra, asked, theirs(design));
  const result = judge(evaluation);
  laidOut(evaluation.grid, design).forEach(({ rule, subject }, i) => {
    const cell = evaluation.cached(JUDGED, JUDGED_TOP + i, JUDGED_COLUMNS.verdict);
    const found = result.findings.find((f) => f.rule === rule && f.subject === subject)?.verdict ?? null;
    if (cell !== found) throw new ModelError(`${rule}, ${subject}: ${cell} as a cell, ${found} compiled`);
  });
  return { ...result, evaluation };
}
