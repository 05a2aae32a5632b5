/**
 * What holds where nothing stands in a field: the shop's part that it uses, what the shop's part has that its own part uses,
 * else what the answer took for it.
 */
import { keyText, type Path } from '../../design/problems.ts';
import { isMeant, type ShopText } from '../../design/shop/beside.ts';
import { DROPS, type Kind } from '../../design/shop/shop.ts';
import { readTree } from '../../design/tree.ts';
import { placeOf, valueAt } from '../place.ts';
import type { View } from '../protocol.ts';
import { asTyped } from './written.ts';

export interface Taken {
  readonly value: string;
  /** Where it is from, as the end of a sentence. */
  readonly why: string;
  /** Whether it is that of a part of the shop. */
  readonly part: boolean;
}

const KINDS: Readonly<Record<string, Kind>> = { coil: 'coils', 'run.fuse': 'fuses', 'run.relay': 'relays' };

/** `root` is the design as it is written, with the shop's file in it or beside it. */
export function takenAt(
  root: unknown,
  path: Path,
  shop: ShopText | null,
  view: View | null,
  us: boolean,
): Taken | null {
  const use = valueAt(root, [...path, 'use']);
  if (typeof use === 'string') return { value: use, why: 'a part of the shop’s file', part: true };
  const part = ofPart(root, path, shop);
  if (part !== null) return part;
  const key = keyText(path);
  const assumed = view?.shown[us ? 'us' : 'metric']?.assumed ?? view?.design.assumed;
  const found = assumed?.find((one) => one.path === key);
  return found === undefined ? null : { ...found, part: false };
}

function ofPart(root: unknown, path: Path, shop: ShopText | null): Taken | null {
  const length = path.findIndex((_, i) => KINDS[placeOf(path.slice(0, i))] !== undefined);
  if (length < 0) return null;
  const [at, inner] = [path.slice(0, length), path.slice(length)];
  const own = valueAt(root, at);
  const kind = KINDS[placeOf(at)] as Kind;
  const name = valueAt(own, ['use']);
  if (typeof name !== 'string' || inner[0] === 'use') return null;
  const dropped = Object.keys(own as object).some((key) => DROPS[kind]?.[key]?.includes(String(inner[0])));
  const parts = dropped ? null : valueAt(shelfOf(root, shop), [kind]);
  if (!Array.isArray(parts)) return null;
  const part: unknown = parts.find((one) => String(valueAt(one, ['name'])).trim() === name.trim());
  const value = asTyped(valueAt(part, inner));
  return value === '' ? null : { value, why: `“${name.trim()}” of the shop’s file`, part: true };
}

/** The file that was read last, as plain data. */
let last: { readonly text: string; readonly value: unknown } | null = null;

function shelfOf(root: unknown, shop: ShopText | null): unknown {
  const within = valueAt(root, ['shop']);
  if (shop === null || !isMeant(shop, within)) return within;
  if (last?.text !== shop.text) last = { text: shop.text, value: readTree(shop.text, shop.file).value };
  return last.value;
}
