/** Reads a shop's own file: its parts with the places where they stand, or every problem with it. */
import * as z from 'zod';
import { salvage } from '../draft.ts';
import { reportIssues, valueAt } from '../issues.ts';
import { keyText, type Path, type Problem, type Report, sortProblems } from '../problems.ts';
import { readTree, type Tree } from '../tree.ts';
import { fileName, type ShopText } from './beside.ts';
import { checkShop, pricesOf } from './check.ts';
import { ShopFile } from './schema.ts';
import type { Shop } from './shop.ts';

/** A shop's file with its places. `base` is where it stands in the tree: at its root, or within a design. */
export interface Shelf {
  readonly file: string;
  readonly tree: Tree;
  readonly base: Path;
  /** As it is written. */
  readonly raw: unknown;
  /** Null when something of it cannot be read. */
  readonly shop: Shop | null;
}

/** The part of a tree below a path, as a tree of its own. */
const below = (tree: Tree, base: Path): Tree => ({
  ...tree,
  value: valueAt(tree.value, base),
  has: (path) => tree.has([...base, ...path]),
  place: (path, on) => tree.place([...base, ...path], on),
});

/** The shop that was sound last, by what it says: it stays while the design around it changes. */
let known: { readonly says: string; readonly shop: ShopFile } | null = null;

/** Reads what stands at `base` of a tree as a shop's file. `say` takes its problems. */
export function shelfOf(file: string, whole: Tree, base: Path, say: (problem: Problem) => void): Shelf {
  const tree = below(whole, base);
  const says = JSON.stringify(tree.value);
  const shop = known?.says === says ? known.shop : judged(file, tree, base, say);
  known = shop === null ? known : { says, shop };
  return {
    file,
    tree: whole,
    base,
    raw: tree.value,
    shop: shop && {
      ...shop,
      file: shop.file ?? fileName(file),
      currency: shop.currency ?? pricesOf(shop)[0]?.currency ?? null,
    },
  };
}

/** Null when something of it cannot be read. */
function judged(file: string, tree: Tree, base: Path, say: (problem: Problem) => void): ShopFile | null {
  const report: Report = (path, found, taken, on = 'value') =>
    say({ file, ...tree.place(path, on), key: keyText([...base, ...path]), found, taken });
  let sound = true;
  const noted: Report = (...problem) => {
    sound = false;
    report(...problem);
  };
  const parsed = z.safeParse(ShopFile, tree.value);
  if (!parsed.success) reportIssues(ShopFile, parsed.error.issues, tree, noted);
  checkShop((salvage(ShopFile, tree.value) ?? {}) as ShopFile, noted);
  return parsed.success && sound ? parsed.data : null;
}

let last: {
  readonly given: ShopText;
  readonly shelf: Shelf | null;
  readonly problems: readonly Problem[];
} | null = null;

/** The shelf of a file by itself; null, and its problems said, when it is no YAML. The one read last is known: it stays while a design changes. */
export function shelfIn(given: ShopText, say: (problem: Problem) => void): Shelf | null {
  const { text, file } = given;
  if (last?.given.text !== text || last.given.file !== file) {
    const tree = readTree(text, file);
    const problems = [...tree.problems];
    const shelf = tree.sound ? shelfOf(file, tree, [], (problem) => problems.push(problem)) : null;
    last = { given: { text, file }, shelf, problems };
  }
  for (const problem of last.problems) say(problem);
  return last.shelf;
}

/** Reads a shop's file by itself: the shop and its places, or every problem. */
export function readShop(
  given: ShopText,
): { ok: true; shop: Shop; shelf: Shelf } | { ok: false; problems: Problem[] } {
  const problems: Problem[] = [];
  const shelf = shelfIn(given, (problem) => problems.push(problem));
  return shelf?.shop && problems.length === 0
    ? { ok: true, shop: shelf.shop, shelf }
    : { ok: false, problems: sortProblems(problems) };
}
