/** A design's text as a tree of YAML with places, and the way to a node by its key. */
import {
  type Document,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  type YAMLMap,
} from 'yaml';
import type { Path } from '../design/problems.ts';

export type Plain = string | number | readonly Plain[] | { readonly [key: string]: Plain };

export interface Edit {
  readonly key: Path;
  /** Undefined takes the key, or the member of a list, out. */
  readonly value: Plain | undefined;
  /** The members of `value` that are new, where the text has a place for each of them: then only they change. */
  readonly parts?: readonly Edit[];
}

export const documentOf = (text: string): Document =>
  parseDocument(text, { schema: 'core', uniqueKeys: false, prettyErrors: false });

/** The pair of a map; keys may be written as numbers. */
export const pairOf = (map: YAMLMap, key: string | number): Pair<Node, Node | null> | undefined =>
  map.items.find(({ key: own }) => isScalar(own) && String(own.value) === String(key)) as
    | Pair<Node, Node | null>
    | undefined;

/** The node of a key; undefined when there is none. Aliases are not followed. */
export function nodeAt(doc: Document, path: Path): unknown {
  let at: unknown = doc.contents;
  for (const step of path) {
    if (isMap(at)) at = pairOf(at, step)?.value;
    else if (isSeq(at)) at = at.items[step as number];
    else return undefined;
  }
  return at;
}
