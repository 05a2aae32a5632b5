/**
 * Reads a design file:
 *
 *     text ── tree ── parts of the shop ──┬── schema ── issues ──┐
 *                                         └── draft ─── checks ──┴── problems, or ── normalise ── design
 *
 * The checks run on whatever is valid, so that one pass over the file shows everything that is wrong with it.
 */
import { Carried, carriedText } from './carried.ts';
import { checkCoil, checkPoints } from './checks-coil.ts';
import { checkEngine, checkIgnition } from './checks-engine.ts';
import { checkKit } from './checks-kit.ts';
import { checkMeasured } from './checks-measured.ts';
import { checkRuns } from './checks-runs.ts';
import type { Design } from './design.ts';
import { type Draft, draftOf } from './draft.ts';
import { reportIssues } from './issues.ts';
import { normalise } from './normalise.ts';
import { keyText, type Path, type Problem, quote, type Report, sortProblems } from './problems.ts';
import { DesignFile } from './schema.ts';
import { fileName, isMeant, type ShopText } from './shop/beside.ts';
import { checkListed } from './shop/fuses.ts';
import { inlined } from './shop/inlined.ts';
import { checkTerminals } from './shop/limits.ts';
import { type Shelf, shelfIn, shelfOf } from './shop/read.ts';
import { useShop } from './shop/use.ts';
import { readTree, type Tree } from './tree.ts';

export type ReadResult = { ok: true; design: Design } | { ok: false; problems: Problem[] };

/**
 * Reads the text of a design, YAML 1.2 or JSON. `file` is its name in messages. `shop` is the shop's file that it names, if it
 * names it so, or one that takes the place of what it names.
 * Returns the design in the units of `Design`, or every problem in the order of the file. Never throws on account
 * of the text.
 */
export function readDesign(text: string, file: string, shop?: ShopText): ReadResult {
  const written = readTree(text, file);
  const problems: Problem[] = [...written.problems];
  if (!written.sound) return { ok: false, problems: sortProblems(problems) };
  // What the tree could not read is missing for schema and checks: once said is enough.
  const said = new Set(written.problems.map((p) => p.key));
  const reportIn =
    (tree: Tree, silent: (path: Path) => boolean = () => false): Report =>
    (path, found, taken, on = 'value') => {
      const key = keyText(path);
      if ((key === '' || !said.has(key)) && !silent(path))
        problems.push({ file, key, ...tree.place(path, on), found, taken });
    };
  const shelf = shelfFor(written, file, shop, reportIn(written), (problem) => problems.push(problem));
  const { tree, used, open } = useShop(written, shelf, reportIn(written));
  // Of a part that is not known only what stands beside its name can be judged.
  const report = reportIn(tree, (path) =>
    open.some(
      (at) =>
        keyText(path.slice(0, at.length)) === keyText(at) && !(path.length > at.length && tree.has(path)),
    ),
  );

  const parsed = DesignFile.safeParse(tree.value);
  if (!parsed.success) reportIssues(DesignFile, parsed.error.issues, tree, report);

  const own = { shop: shelf?.shop ?? null, used };
  if (tree.whole) {
    const draft = draftOf(DesignFile, tree.value);
    check(draft, tree, report);
    checkTerminals(draft, own, report);
    checkListed(draft, own.shop, report);
  }

  if (!parsed.success || problems.length > 0) return { ok: false, problems: sortProblems(problems, file) };
  const whole = new Carried(() =>
    carriedText(
      !shelf || shelf.tree === written ? text : inlined(text, written.value as object, named(shelf)),
      !shelf ? tree.value : { ...(written.value as object), shop: named(shelf) },
    ),
  );
  return { ok: true, design: normalise(parsed.data, whole, own) };
}

/** What the file says, with its name. */
const named = ({ raw, file }: Shelf): object =>
  Object.hasOwn(raw as object, 'file') ? (raw as object) : { file: fileName(file), ...(raw as object) };

/** The shop's file of a design: the one that is given, or what stands within the design; null when there is none. Undefined where the design names none, null where it cannot be read. */
function shelfFor(
  tree: Tree,
  file: string,
  given: ShopText | undefined,
  report: Report,
  say: (problem: Problem) => void,
): Shelf | null | undefined {
  const own = (tree.value as { shop?: unknown } | null)?.shop;
  if (given !== undefined && isMeant(given, own)) return shelfIn(given, say);
  if (typeof own === 'object' && own !== null && !Array.isArray(own))
    return shelfOf(file, tree, ['shop'], say);
  if (typeof own === 'string' && DesignFile.shape.shop.safeParse(own).success)
    report(['shop'], `the shop’s file ${quote(own)}, which was not given`, 'give it beside the design');
  return own === undefined ? undefined : null;
}

/** The shop's file that the text of a design names; null when it names none. */
export function shopNamed(text: string): string | null {
  if (!/\bshop\b/.test(text)) return null;
  const own = (readTree(text, '').value as { shop?: unknown } | null | undefined)?.shop;
  return typeof own === 'string' && own.trim() !== '' ? own.trim() : null;
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
