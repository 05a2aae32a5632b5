/** What a design took from the shop's own file, as lines and as JSON. */
import type { Kind, Shop, Used } from '../design/shop/shop.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { type Bill, feedBill, money } from '../shop/prices.ts';
import { fold, WIDTH } from './columns.ts';

const PART: Readonly<Record<Kind, string>> = {
  coils: 'coil',
  fuses: 'fuse',
  holders: 'holder',
  relays: 'relay',
  terminals: 'terminal',
  splices: 'splice',
  sleeves: 'sleeve',
  labels: 'label',
  instruments: 'instrument',
};

/** `coil “race twenty”, from the maker’s sheet of 2031` */
const partOf = ({ kind, name, from }: Used): string =>
  `${PART[kind]} “${name}”${from === null ? '' : `, from ${from}`}`;

/** A line for each part, with the keys where it stands and what the design states otherwise. */
export function usedLines(used: readonly Used[]): string[] {
  const parts = new Map<string, Used[]>();
  for (const one of used) {
    const line = `${partOf(one)}${one.beside.length === 0 ? '' : `; the design states otherwise: ${one.beside.join(', ')}`}`;
    parts.set(line, [...(parts.get(line) ?? []), one]);
  }
  return [...parts].map(([line, all]) => `${all.map(({ path }) => path).join(', ')}: ${line}`);
}

/** `23.10 EUR: wire, fuses and relays. No price: …` */
export function priceLine(e: Evaluation): string[] {
  const bill = feedBill(e);
  if (bill === null) return [];
  const open = bill.open.length === 0 ? '' : `; no price: ${bill.open.join('; ')}`;
  return [fold(`Price of wire, fuses and relays: ${money(bill.total, bill.currency)}${open}`, WIDTH, '  ')];
}

/** `shop` of the JSON result. */
export const shopJson = ({ file, currency }: Shop, used: readonly Used[], price: Bill | null) => ({
  file,
  currency,
  price: price && {
    total: price.total,
    lines: price.lines.map(({ what, count, unit, each }) => ({ what, count, unit, each })),
    without: price.open,
  },
  used: used.map(({ path, kind, name, from, beside }) => ({ path, part: PART[kind], name, from, beside })),
});
