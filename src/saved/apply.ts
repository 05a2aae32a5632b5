/**
 * Changes values in the text of a design and leaves the rest as the author wrote it: letter for letter where that can
 * be, else laid out anew, with its comments.
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
  Scalar,
  visit,
} from 'yaml';
import type { Path } from '../design/problems.ts';
import { documentOf, type Edit, nodeAt, type Plain, pairOf } from './document.ts';
import { patch, placeFor } from './patch.ts';

/** Changes that need the text to be read again for each; more of them, and the whole is laid out anew. */
const MOST_PATCHES = 40;

/** The text with these changes. It must be sound. `doc` is how it reads, where that is known. */
export function edited(text: string, edits: readonly Edit[], doc = documentOf(text)): string {
  const whole = edits.flatMap((edit) =>
    edit.parts?.every(({ key }) => isScalar(nodeAt(doc, key))) ? edit.parts : [edit],
  );
  return (isShared(doc) ? null : patched(doc, text, whole)) ?? laidOut(documentOf(text), whole);
}

/** A design on one line or in brackets, such as JSON, as an author would lay it out; other texts as they are. */
export function asYaml(text: string): string {
  const doc = documentOf(text);
  return isCollection(doc.contents) && doc.contents.flow === true ? printed(doc) : text;
}

/** Whether a part stands in several places. */
function isShared(doc: Document): boolean {
  let shared = false;
  visit(doc, {
    Alias() {
      shared = true;
      return visit.BREAK;
    },
  });
  return shared;
}

/** First the values that take the place of others, all at once; then the keys that come or go, one by one. */
function patched(doc: Document, text: string, edits: readonly Edit[]): string | null {
  const places = edits.map(({ key, value }) =>
    value === undefined ? null : placeFor(nodeAt(doc, key), value),
  );
  const rest = edits.filter((_, i) => places[i] === null);
  if (rest.length > MOST_PATCHES) return null;
  const now = places
    .filter((place) => place !== null)
    .sort((a, b) => b.from - a.from)
    .reduce((out, { from, to, put }) => out.slice(0, from) + put + out.slice(to), text);
  return rest.reduce<string | null>((out, edit) => (out === null ? null : patch(out, edit)), now);
}

function laidOut(doc: Document, edits: readonly Edit[]): string {
  // A part that stands in several places must be able to change in one of them.
  visit(doc, { Alias: (_, alias) => alias.resolve(doc)?.clone() as Node | undefined });
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

/** Takes a key or a member of a list out, and the maps around it that are then empty. */
function take(node: unknown, [step, ...rest]: Path): void {
  if (step === undefined) return;
  if (isSeq(node)) {
    if (rest.length === 0) node.items.splice(step as number, 1);
    else take(node.items[step as number], rest);
  }
  if (!isMap(node)) return;
  const pair = pairOf(node, step);
  if (pair === undefined) return;
  take(pair.value, rest);
  if (rest.length === 0 || (isMap(pair.value) && pair.value.items.length === 0))
    node.items.splice(node.items.indexOf(pair), 1);
}

/** Values that stand on one line. */
const SHORT = 6;

/** In the style of the designs that come with the tool: maps of plain values on one line, all others below each other. */
function printed(doc: Document): string {
  if (isCollection(doc.contents) && doc.contents.flow === true)
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
  // An empty line before every block.
  if (isMap(doc.contents))
    for (const { key, value } of doc.contents.items.slice(1))
      if (isScalar(key) && isCollection(value)) key.spaceBefore = true;
  return doc.toString({ lineWidth: 0 });
}
