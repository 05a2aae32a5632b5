/** Places in the design: what stands there, and what is wrong with it. */
import { keyText, type Path, type Problem } from '../design/problems.ts';

/** The value at a place of plain data. */
export function valueAt(root: unknown, path: Path): unknown {
  let at = root;
  for (const step of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return undefined;
    at = (at as Record<string | number, unknown>)[step];
  }
  return at;
}

/** The path of a key that `keyText` wrote. */
export const pathOf = (key: string): Path =>
  [...key.matchAll(/([A-Za-z_]\w*)|\[(\d+)\]|\[("(?:[^"\\]|\\.)*")\]/g)].map(([, word, index, quoted]) =>
    word !== undefined
      ? word
      : index !== undefined
        ? Number(index)
        : (JSON.parse(quoted as string) as string),
  );

/** The problems of one place; with `inner` also those of what lies inside it. */
export function problemsAt(problems: readonly Problem[], path: Path, inner = false): Problem[] {
  const key = keyText(path);
  return problems.filter(
    (p) => p.key === key || (inner && (p.key.startsWith(`${key}[`) || p.key.startsWith(`${key}.`))),
  );
}

/** Id of the field of a place, for labels and for the way from a problem to its field. */
export const idOf = (path: Path): string => `field-${keyText(path).replace(/[^\w-]/g, '_')}`;

/** `source_resistance` as a label: `source resistance`. */
export const labelOf = (key: string | number): string => String(key).replaceAll('_', ' ');

/**
 * The place of a field by its keys alone, as the records of the model name it: runs of feed, return and original are `run`,
 * and so are their conductors.
 */
export function placeOf(path: Path): string {
  const words = path.filter((step): step is string => typeof step === 'string');
  if (words[0] === 'original') words.shift();
  if (['feed', 'return', 'runs', 'wires'].includes(words[0] ?? '')) words[0] = 'run';
  return words.join('.');
}
