/**
 * Changes values in the text of a design and leaves the rest as the author wrote it. Where each change only puts
 * another value into the place of one, the text around stays letter for letter; where keys come or go, the text is
 * laid out anew, with its comments.
 */
import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  Scalar,
  visit,
  type YAMLMap,
} from 'yaml';
import type { Path } from '../design/problems.ts';

export type Plain = string | number | readonly Plain[] | { readonly [key: string]: Plain };

export interface Edit {
  readonly key: Path;
  /** Undefined takes the key out. */
  readonly value: Plain | undefined;
  /** The members of `value` that are new, where the text has a place for each of them: then only they change. */
  readonly parts?: readonly Edit[];
}

/** The text with these changes. It must be sound. */
export function edited(text: string, edits: readonly Edit[]): string {
  const doc = documentOf(text);
  const whole = edits.flatMap((edit) =>
    edit.parts?.every(({ key }) => isScalar(nodeAt(doc, key))) ? edit.parts : [edit],
  );
  return patched(doc, text, whole) ?? laidOut(doc, whole);
}

/** A design on one line or in brackets, such as JSON, as an author would lay it out; other texts as they are. */
export function asYaml(text: string): string {
  const doc = documentOf(text);
  if (!isCollection(doc.contents) || doc.contents.flow !== true) return text;
  return printed(doc);
}

const documentOf = (text: string): Document =>
  parseDocument(text, { schema: 'core', uniqueKeys: false, prettyErrors: false });

/** The pair of a map; keys may be written as numbers. */
const pairOf = (map: YAMLMap, key: string | number): Pair<Node, Node | null> | undefined =>
  map.items.find(({ key: own }) => isScalar(own) && String(own.value) === String(key)) as
    | Pair<Node, Node | null>
    | undefined;

function nodeAt(doc: Document, path: Path): unknown {
  let at: unknown = doc.contents;
  for (const step of path) {
    if (isMap(at)) at = pairOf(at, step)?.value;
    else if (isSeq(at)) at = at.items[step as number];
    else return undefined;
  }
  return at;
}

/** Null when not every change is another value in the place of one. */
function patched(doc: Document, text: string, edits: readonly Edit[]): string | null {
  let shared = false;
  visit(doc, {
    Alias() {
      shared = true;
      return visit.BREAK;
    },
  });
  if (shared) return null;
  const patches: { from: number; to: number; put: string }[] = [];
  for (const { key, value } of edits) {
    const node = nodeAt(doc, key);
    if (!isScalar(node) || !node.range || (typeof value !== 'string' && typeof value !== 'number'))
      return null;
    if (node.type === Scalar.BLOCK_FOLDED || node.type === Scalar.BLOCK_LITERAL) return null;
    const quoted = node.type === Scalar.QUOTE_DOUBLE || node.type === Scalar.QUOTE_SINGLE;
    const put = typeof value === 'number' ? String(value) : quoted ? JSON.stringify(value) : word(value);
    patches.push({ from: node.range[0], to: node.range[1], put });
  }
  return patches
    .sort((a, b) => b.from - a.from)
    .reduce((out, { from, to, put }) => out.slice(0, from) + put + out.slice(to), text);
}

/** A text without quotes where it cannot be taken for anything else. */
const word = (text: string): string =>
  /^[A-Za-z0-9.+-][A-Za-z0-9 ./%_+-]*(?<! )$/.test(text) && typeof parseDocument(text).toJS() === 'string'
    ? text
    : JSON.stringify(text);

function laidOut(doc: Document, edits: readonly Edit[]): string {
  // A part that stands in several places must be able to change in one of them.
  visit(doc, {
    Alias: (_, alias) => alias.resolve(doc)?.clone() as Node | undefined,
  });
  visit(doc, {
    Node: (_, node) => {
      if (!isAlias(node)) delete node.anchor;
    },
  });
  for (const { key, value } of edits)
    if (value === undefined) take(doc.contents, key);
    else put(doc, key, value);
  return printed(doc);
}

function put(doc: Document, path: Path, value: Plain): void {
  let at: unknown = doc.contents;
  path.forEach((step, i) => {
    const last = i === path.length - 1;
    const made = (): Node => {
      const node = doc.createNode(last ? value : {}) as Node;
      if (last && isCollection(node)) node.flow = true;
      return node;
    };
    if (isSeq(at)) {
      if (last) at.items[step as number] = made();
      at = at.items[step as number];
    } else if (isMap(at)) {
      const pair = pairOf(at, step);
      const old = pair?.value;
      if (pair === undefined) at.items.push(doc.createPair(String(step), made()) as Pair<Node, Node>);
      else if (last || !isCollection(old)) {
        const node = made();
        if (old?.comment != null) node.comment = old.comment;
        pair.value = node;
      }
      at = pairOf(at, step)?.value;
    }
  });
}

/** Takes a key out, and the maps around it that are then empty. */
function take(node: unknown, [step, ...rest]: Path): void {
  if (step === undefined) return;
  if (isSeq(node)) take(node.items[step as number], rest);
  if (!isMap(node)) return;
  const pair = pairOf(node, step);
  if (pair === undefined) return;
  take(pair.value, rest);
  if (rest.length === 0 || (isMap(pair.value) && pair.value.items.length === 0))
    node.items.splice(node.items.indexOf(pair), 1);
}

/** In the style of the designs that come with the tool: maps of plain values on one line, all others below each other. */
function printed(doc: Document): string {
  if (isCollection(doc.contents) && doc.contents.flow === true) {
    visit(doc, {
      Scalar(_, scalar) {
        scalar.type = Scalar.PLAIN;
      },
      Collection(_, node) {
        const inner = node.items.map((item) =>
          isScalar(item) || isCollection(item) ? item : (item as Pair).value,
        );
        node.flow = node !== doc.contents && !inner.some(isCollection) && inner.length <= SHORT;
      },
    });
  }
  return doc.toString({ lineWidth: 0 });
}

/** Values that stand on one line. */
const SHORT = 6;
