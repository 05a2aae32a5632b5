/** From the schema's findings to problems with their place and their words. */
import * as z from 'zod';
import { nearest } from './nearest.ts';
import { keyText, type Path, quote, type Report, show } from './problems.ts';
import type { Tree } from './tree.ts';

type Issue = z.core.$ZodIssue;

/** The value at a path of plain data. */
export function valueAt(root: unknown, path: Path): unknown {
  let at: unknown = root;
  for (const step of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return undefined;
    at = (at as Record<string | number, unknown>)[step];
  }
  return at;
}

/** The schemas that may stand behind one: its alternatives, without the wrapping of an optional field. */
export function alternatives(schema: z.core.$ZodType): z.core.$ZodType[] {
  if (schema instanceof z.ZodOptional) return alternatives(schema.unwrap());
  if (schema instanceof z.ZodUnion) return schema.options.flatMap(alternatives);
  return [schema];
}

/** The keys that a map at this path may have. */
function keysAt(schema: z.core.$ZodType, path: Path): string[] {
  let at = alternatives(schema);
  for (const step of path) {
    at = at.flatMap((one) => {
      if (one instanceof z.ZodArray) return alternatives(one.element);
      const inner = one instanceof z.ZodObject ? one.shape[step] : undefined;
      return inner ? alternatives(inner) : [];
    });
  }
  return at.flatMap((one) => (one instanceof z.ZodObject ? Object.keys(one.shape) : []));
}

/** Issues of an alternative that is not meant: another kind of value stands there. */
const OTHER_KIND = ['invalid_type', 'invalid_value', 'invalid_union'];

/**
 * Issues of a union are those of the one alternative that takes this kind of value (a list where a list was
 * written); where none does, the union speaks for itself.
 */
function unfold(issue: Issue, base: Path): { issue: Issue; path: Path }[] {
  const path: Path = [...base, ...(issue.path as (string | number)[])];
  if (issue.code === 'invalid_union') {
    const meant = issue.errors.find(
      (errors) => !errors.some((e) => e.path.length === 0 && OTHER_KIND.includes(e.code)),
    );
    if (meant) return meant.flatMap((e) => unfold(e as Issue, path));
  }
  return [{ issue, path }];
}

/** Reports every issue of the schema; a key that is missing because it is misspelled is one problem and not two. */
export function reportIssues(schema: z.ZodType, issues: readonly Issue[], tree: Tree, report: Report): void {
  const all = issues.flatMap((issue) => unfold(issue, []));
  const meant = new Set<string>();
  for (const { issue, path } of all) {
    if (issue.code !== 'unrecognized_keys') continue;
    const known = keysAt(schema, path);
    for (const key of issue.keys) {
      const near = nearest(key, known);
      if (near !== null) meant.add(keyText([...path, near]));
      report([...path, key], `unknown key ${quote(key)}`, keyTaken(key, near, known), 'key');
    }
  }
  for (const { issue, path } of all) {
    if (issue.code === 'unrecognized_keys') continue;
    if (tree.has(path)) report(path, `found ${show(valueAt(tree.value, path))}`, issue.message);
    else if (!meant.has(keyText(path))) report(path, 'missing', issue.message);
  }
}

const keyTaken = (key: string, near: string | null, known: readonly string[]): string =>
  /^\d/.test(key)
    ? 'in braces a comma ends the value: write it with a point, or in quotes'
    : near === null
      ? `takes: ${known.join(', ')}`
      : `did you mean "${near}"?`;
