/**
 * Changes one value in the text of a design and leaves every other letter where it is. What would need more than
 * that is left to the layout of the whole text: the answer is then null.
 */
import {
  type Document,
  isCollection,
  isMap,
  isScalar,
  type Node,
  type Pair,
  Scalar,
  type YAMLMap,
} from 'yaml';
import type { Path } from '../design/problems.ts';
import { documentOf, type Edit, nodeAt, type Plain, pairOf } from './document.ts';

/** The text with the change, or null. */
export function patch(text: string, { key, value }: Edit): string | null {
  const doc = documentOf(text);
  if (value === undefined) return without(text, doc, key);
  const node = nodeAt(doc, key);
  if (node !== undefined) return replaced(text, node, value);
  let known = key.length - 1;
  while (known > 0 && nodeAt(doc, key.slice(0, known)) === undefined) known -= 1;
  const map = nodeAt(doc, key.slice(0, known));
  if (!isMap(map)) return null;
  const inner = key.slice(known + 1).reduceRight<Plain>((of, step) => ({ [step]: of }), value);
  return inserted(text, map, `${word(String(key[known]))}: ${written(inner)}`);
}

export const splice = (text: string, from: number, to: number, put: string): string =>
  text.slice(0, from) + put + text.slice(to);

/** A value as it stands in a line. */
export function written(value: Plain): string {
  if (typeof value === 'number') return String(value);
  if (typeof value === 'string') return word(value);
  if (Array.isArray(value)) return `[${value.map(written).join(', ')}]`;
  return `{ ${Object.entries(value)
    .map(([key, of]) => `${word(key)}: ${written(of)}`)
    .join(', ')} }`;
}

/** A text without quotes where it cannot be taken for anything else. */
function word(text: string): string {
  const plain = /^[A-Za-z0-9.+-][A-Za-z0-9 ./%_+-]*$/.test(text) && text.trim() === text;
  return plain && documentOf(text).toJS() === text ? text : JSON.stringify(text);
}

/** Blocks of text below their key have an indentation of their own. */
const isBlock = (node: unknown): boolean =>
  isScalar(node)
    ? node.type === Scalar.BLOCK_FOLDED || node.type === Scalar.BLOCK_LITERAL
    : isCollection(node) && node.flow !== true;

/** The value in the place of another one. */
function replaced(text: string, node: unknown, value: Plain): string | null {
  const place = placeFor(node, value);
  return place === null ? null : splice(text, place.from, place.to, place.put);
}

/** Where a value goes in the place of another one, and how it is written there. */
export function placeFor(node: unknown, value: Plain): { from: number; to: number; put: string } | null {
  if ((!isScalar(node) && !isCollection(node)) || !node.range || isBlock(node)) return null;
  const quoted = isScalar(node) && (node.type === Scalar.QUOTE_DOUBLE || node.type === Scalar.QUOTE_SINGLE);
  const put = quoted && typeof value === 'string' ? JSON.stringify(value) : written(value);
  return { from: node.range[0], to: node.range[1], put };
}

/** End of what belongs to a node, without the blanks and comments behind it. */
export function endOf(node: unknown): number | null {
  if (isCollection(node) && node.flow !== true) {
    const last = node.items.at(-1);
    return endOf(isScalar(last) || isCollection(last) ? last : ((last as Pair | undefined)?.value ?? null));
  }
  return (isScalar(node) || isCollection(node)) && node.range ? node.range[1] : null;
}

/** Behind the line in which a node ends. */
export function lineAfter(text: string, node: unknown): number | null {
  const end = endOf(node);
  if (end === null) return null;
  if (text[end - 1] === '\n') return end;
  const line = text.indexOf('\n', end);
  return line < 0 ? null : line + 1;
}

export const columnOf = (text: string, at: number): number => at - (text.lastIndexOf('\n', at - 1) + 1);
export const startOf = (node: Node): number => node.range?.[0] ?? 0;

/** A new pair behind the last one of a map. */
function inserted(text: string, map: YAMLMap, pair: string): string | null {
  const last = map.items.at(-1) as Pair<Node, Node | null> | undefined;
  if (last === undefined) return map.range ? splice(text, map.range[0], map.range[1], `{ ${pair} }`) : null;
  if (map.flow === true) {
    const end = endOf(last.value);
    return end === null ? null : splice(text, end, end, `, ${pair}`);
  }
  const at = lineAfter(text, last.value);
  if (at === null) return null;
  const first = map.items[0] as Pair<Node, Node | null>;
  return splice(text, at, at, `${' '.repeat(columnOf(text, startOf(first.key)))}${pair}\n`);
}

/** The text without a pair, and without the maps around it that would be empty then. */
function without(text: string, doc: Document, key: Path): string | null {
  const parent = nodeAt(doc, key.slice(0, -1));
  if (!isMap(parent)) return null;
  if (parent.items.length === 1 && key.length > 1) return without(text, doc, key.slice(0, -1));
  const pair = pairOf(parent, key.at(-1) as string);
  // Nothing to take out.
  if (pair === undefined) return text;
  const index = parent.items.indexOf(pair);
  const [before, next] = [parent.items[index - 1], parent.items[index + 1]] as (
    | Pair<Node, Node | null>
    | undefined
  )[];
  if (parent.flow === true) {
    const [end, from] = [endOf(pair.value), before ? endOf(before.value) : startOf(pair.key)];
    const to = before ? end : next ? startOf(next.key) : null;
    return from === null || to === null ? null : splice(text, from, to, '');
  }
  const from = startOf(pair.key) - columnOf(text, startOf(pair.key));
  const to = lineAfter(text, pair.value);
  // A pair behind the dash of a list does not begin its line.
  return to === null || text.slice(from, startOf(pair.key)).trim() !== '' ? null : splice(text, from, to, '');
}
