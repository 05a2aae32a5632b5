/** The text of a design with the shop's file within it: it then stands for itself, in a workbook and in every thread. */
import { isMap, isScalar, parseDocument, stringify } from 'yaml';

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * `value` is what the text stands for, as plain values, `shop` what is to stand under its key `shop`. The author's text
 * stays letter for letter, but for that key; where that cannot be, the same values come on one line of JSON.
 */
export function inlined(text: string, value: object, shop: unknown): string {
  const wanted = { ...value, shop };
  const made = within(text, shop);
  return made !== null && same(sorted(read(made)), sorted(wanted)) ? made : `${JSON.stringify(wanted)}\n`;
}

const OPTIONS = { schema: 'core', uniqueKeys: false, prettyErrors: false } as const;
const read = (text: string): unknown => {
  const doc = parseDocument(text, OPTIONS);
  return doc.errors.length > 0 ? null : doc.toJS({ maxAliasCount: -1 });
};

/** Keys in one order: where `shop` stands among them makes no difference. */
const sorted = (value: unknown): unknown =>
  typeof value !== 'object' || value === null || Array.isArray(value)
    ? value
    : Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));

function within(text: string, shop: unknown): string | null {
  const root = parseDocument(text, OPTIONS).contents;
  if (!isMap(root) || root.flow === true) return null;
  const block = stringify(shop, { lineWidth: 0, schema: 'core' })
    .trimEnd()
    .split('\n')
    .map((line) => (line === '' ? '' : `  ${line}`))
    .join('\n');
  const pair = root.items.find(({ key }) => isScalar(key) && key.value === 'shop');
  if (pair === undefined) return `${text.replace(/\n*$/, '\n')}\nshop:\n${block}\n`;
  const range = (pair.value as { range?: readonly number[] | null } | null)?.range;
  if (!range) return null;
  const [from = 0, to = 0] = range;
  const rest = text.slice(to);
  // A comment keeps a line of its own: behind a block of text it would become part of it.
  const gap = /^[ \t]*(?:[\r\n]|$)/.test(rest) ? '' : '\n';
  return `${text.slice(0, from).trimEnd()}\n${block}${gap}${rest}`;
}
