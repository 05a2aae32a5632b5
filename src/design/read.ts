/**
 * Reads a design file:
 *
 *     text ── tree ──┬── schema ── issues ──┐
 *                    └── draft ─── checks ──┴── problems, or ── normalise ── design
 *
 * The checks run on whatever is valid, so that one pass over the file shows everything that is wrong with it.
 */
import { carriedText } from './carried.ts';
import { checkCoil, checkPoints } from './checks-coil.ts';
import { checkEngine, checkIgnition } from './checks-engine.ts';
import { checkKit } from './checks-kit.ts';
import { checkMeasured } from './checks-measured.ts';
import { checkRuns } from './checks-runs.ts';
import type { Design } from './design.ts';
import { type Draft, draftOf } from './draft.ts';
import { reportIssues } from './issues.ts';
import { normalise } from './normalise.ts';
import { keyText, type Problem, type Report, sortProblems } from './problems.ts';
import { DesignFile } from './schema.ts';
import { readTree, type Tree } from './tree.ts';

export type ReadResult = { ok: true; design: Design } | { ok: false; problems: Problem[] };

/**
 * Reads the text of a design, YAML 1.2 or JSON. `file` is its name in messages.
 * Returns the design in the units of `Design`, or every problem in the order of the file. Never throws on account
 * of the text.
 */
export function readDesign(text: string, file: string): ReadResult {
  const tree = readTree(text, file);
  const problems: Problem[] = [...tree.problems];
  if (!tree.sound) return { ok: false, problems: sortProblems(problems) };
  // What the tree could not read is missing for schema and checks: once said is enough.
  const said = new Set(tree.problems.map((p) => p.key));
  const report: Report = (path, found, taken, on = 'value') => {
    const key = keyText(path);
    if (key === '' || !said.has(key)) problems.push({ file, ...tree.place(path, on), key, found, taken });
  };

  const parsed = DesignFile.safeParse(tree.value);
  if (!parsed.success) reportIssues(DesignFile, parsed.error.issues, tree, report);

  if (tree.whole) check(draftOf(DesignFile, tree.value), tree, report);

  if (parsed.success && problems.length === 0)
    return { ok: true, design: normalise(parsed.data, carriedText(text, tree.value)) };
  return { ok: false, problems: sortProblems(problems) };
}

/** What no single field can tell, of whatever is valid. */
function check(draft: Draft, tree: Tree, report: Report): void {
  const firings = checkEngine(draft, tree, report);
  const coils = checkIgnition(draft, firings, tree, report);
  checkCoil(draft, tree, report);
  checkPoints(draft, report);
  checkRuns(draft, coils, tree, report);
  // The other feed is judged as if it were the only one.
  if (draft.original) {
    const { feed, return: back } = draft.original;
    checkRuns({ points: draft.points, feed, return: back }, coils, tree, report, ['original']);
  }
  // With a list of runs that could not be read, any name may be meant.
  if (!draft.feed || (tree.has(['return']) && !draft.return)) return;
  checkKit(draft, report);
  checkMeasured(draft, coils, tree, report);
}
