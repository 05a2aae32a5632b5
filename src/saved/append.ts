/** Puts a member behind the last one of a list in a text, and leaves every other letter where it is. */
import { isCollection, isMap, isScalar, isSeq, type Node, type Pair, type YAMLSeq } from 'yaml';
import { edited } from './apply.ts';
import { documentOf, type Plain, pairOf } from './document.ts';
import { columnOf, endOf, lineAfter, splice, startOf, written } from './patch.ts';

type Member = Readonly<Record<string, string | number>>;

/** The text with the member in the list of a key of its root, which may be missing; laid out anew only where it must be. */
export function appended(text: string, key: string, member: Member): string {
  const before = documentOf(text).toJS() as Record<string, unknown[] | null> | null;
  const wanted = { ...before, [key]: [...(before?.[key] ?? []), member] };
  const now = put(text, key, member);
  if (now !== null && same(documentOf(now).toJS(), wanted)) return now;
  const count = before?.[key]?.length ?? 0;
  return edited(text, [count === 0 ? { key: [key], value: [member] } : { key: [key, count], value: member }]);
}

/** Keys in one order: a new one stands behind all others. */
const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

function put(text: string, key: string, member: Member): string | null {
  const root = documentOf(text).contents;
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const line = `${written(member as Plain)}`;
  if (root === null || (isScalar(root) && root.value === null))
    return below(text, eol, `${key}:${eol}  - ${line}`);
  if (!isMap(root)) return null;
  const pair = pairOf(root as never, key);
  if (root.flow === true) {
    // JSON stays JSON.
    const json = JSON.stringify(member);
    if (pair !== undefined) return isSeq(pair.value) ? inFlow(text, pair.value, json) : null;
    const end = endOf((root.items.at(-1) as Pair<Node, Node | null> | undefined)?.value);
    return end === null ? null : splice(text, end, end, `, ${JSON.stringify(key)}: [${json}]`);
  }
  if (pair === undefined) return below(text, eol, `${key}:${eol}  - ${line}`);
  const list = pair.value;
  if (!isSeq(list)) return null;
  return list.flow === true ? inFlow(text, list, line) : inBlock(text, eol, list, member);
}

/** Behind all that stands there. */
const below = (text: string, eol: string, block: string): string =>
  `${text}${text === '' || text.endsWith('\n') ? '' : eol}${block}${eol}`;

function inFlow(text: string, list: YAMLSeq, member: string): string | null {
  const last = list.items.at(-1);
  if (last === undefined)
    return list.range ? splice(text, list.range[0], list.range[1], `[${member}]`) : null;
  const end = endOf(last);
  return end === null ? null : splice(text, end, end, `, ${member}`);
}

/** As the member before it: on one line, or a key on each. */
function inBlock(text: string, eol: string, list: YAMLSeq, member: Member): string | null {
  const last = list.items.at(-1);
  if (!isMap(last) || !list.range) return null;
  const dash = columnOf(text, list.range[0]);
  const [whole, at] = [text.endsWith('\n') ? text : text + eol, lineAfter(`${text}\n`, last)];
  if (at === null) return null;
  const first = last.items[0] as Pair<Node, unknown> | undefined;
  const keys = first === undefined ? dash + 2 : columnOf(text, startOf(first.key));
  const lines =
    isCollection(last) && last.flow === true
      ? [written(member as Plain)]
      : Object.entries(member).map(([key, value]) => `${key}: ${written(value)}`);
  const inner = last.flow === true ? dash + 2 : keys;
  const block = lines.map((own, i) =>
    i === 0 ? `${' '.repeat(dash)}-${' '.repeat(inner - dash - 1)}${own}` : `${' '.repeat(inner)}${own}`,
  );
  return splice(whole, at, at, block.map((own) => own + eol).join(''));
}
