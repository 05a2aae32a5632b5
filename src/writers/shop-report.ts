/** A shop's file by itself: what is in it, what is doubtful. */
import { printInsulation, printValue } from '../basis/print.ts';
import { sizesInOrder } from '../design/shop/limits.ts';
import type { Price, Shop, ShopTerminal } from '../design/shop/shop.ts';
import type { Doubt } from '../shop/judge.ts';
import { bullet, columns, fold, WIDTH } from './columns.ts';

/** A doubt with its place in the file. */
export type Placed = Doubt & { readonly line: number; readonly column: number; readonly key: string };

const FORMAT = 'coilfeed-shop/1';

const priceText = (price: Price | undefined, per = ''): string =>
  price === undefined ? '' : `${price.amount.toFixed(per === '' ? 2 : 3)} ${price.currency}${per}`;

/** A table under its title; nothing where there is no row. */
const table = (title: string, heads: readonly string[], rows: readonly (readonly string[])[]): string[] => {
  if (rows.length === 0) return [];
  const kept = heads.map((_, i) => i).filter((i) => i === 0 || rows.some((row) => row[i] !== ''));
  return [
    `${title}\n${columns(
      kept.map((i) => ({ title: heads[i] as string })),
      rows.map((row) => kept.map((i) => row[i] ?? '')),
    )}`,
  ];
};

const range = ({ smallest, largest }: { smallest?: string | undefined; largest?: string | undefined }) =>
  smallest === undefined && largest === undefined ? '' : `${smallest ?? '…'} to ${largest ?? '…'}`;

/** How a coil is known to charge. */
const charges = ({ inductance, test_point: test, peak }: NonNullable<Shop['coils']>[number]): string =>
  inductance !== undefined
    ? printValue(inductance, 'H', 'mH')
    : test !== undefined
      ? `${printValue(test.peak, 'A')} on the bench`
      : peak === undefined
        ? ''
        : `${printValue(peak, 'A')}, a bound`;

export function shopReport(file: string, shop: Shop, doubts: readonly Placed[]): string {
  const wires = new Map<string, string[]>();
  for (const { size, insulation, price, resistance: ohm } of sizesInOrder(shop.wire ?? [])) {
    const measured = ohm === undefined ? '' : ` (measured: ${printValue(ohm, 'ohm', 'mohm')}/m)`;
    const own = `${price === undefined ? size : `${size} ${priceText(price, '/m')}`}${measured}`;
    wires.set(insulation, [...(wires.get(insulation) ?? []), own]);
  }
  const who = shop.shop;
  const head = [
    who === undefined ? `Shop’s file ${file}` : who.name,
    ...(who?.revision === undefined ? [] : [`Revision ${who.revision}`]),
  ].join(', ');
  const sections = [
    fold(head, WIDTH, ''),
    ...table(
      'Coils',
      ['Coil', 'Primary', 'Charges', 'Price', 'From'],
      (shop.coils ?? []).map((coil) => [
        coil.name,
        coil.resistance === undefined ? '' : printValue(coil.resistance, 'ohm', 'ohm'),
        charges(coil),
        priceText(coil.price),
        coil.from ?? '',
      ]),
    ),
    ...(wires.size === 0
      ? []
      : [
          `Wire\n${[...wires]
            .map(([name, sizes]) => bullet(`${printInsulation(name)}: ${sizes.join(', ')}`))
            .join('\n')}`,
        ]),
    ...table(
      'Fuses',
      ['Fuse', 'Type', 'Rating', 'Curve', 'Price'],
      (shop.fuses ?? []).map(({ name, type, rating, curve, price }) => [
        name,
        type,
        `${rating} A`,
        curve === undefined ? 'of its standard' : `${curve.length} points`,
        priceText(price),
      ]),
    ),
    ...table(
      'Relays',
      ['Relay', 'Rating', 'At', 'Price'],
      (shop.relays ?? []).map(({ name, rating, rated_at, price }) => [
        name,
        `${rating} A`,
        rated_at === undefined ? '' : `${rated_at} °C`,
        priceText(price),
      ]),
    ),
    ...table(
      'Terminals and splices',
      ['Part', 'Wire', 'Stud or tab', 'Price'],
      [...(shop.terminals ?? []), ...(shop.splices ?? [])].map((part: ShopTerminal) => [
        part.name,
        range(part),
        part.stud ?? (part.tab === undefined ? '' : `${part.tab} mm`),
        priceText(part.price),
      ]),
    ),
    ...table(
      'Instruments',
      ['Instrument', 'Kind', 'Error', 'Calibrated'],
      (shop.instruments ?? []).map(({ name, kind, accuracy, calibrated }) => [
        name,
        kind,
        accuracy,
        calibrated ?? '',
      ]),
    ),
    ...others(shop),
    doubts.length === 0
      ? 'Nothing in it contradicts itself.'
      : `Doubtful\n${doubts
          .map(({ part, words, line, column, key }) =>
            bullet(`${part}: ${words} (${file}:${line}:${column} ${key})`),
          )
          .join('\n')}`,
  ];
  return `${sections.join('\n\n')}\n`;
}

const OTHERS = ['holders', 'sleeves', 'labels', 'tools'] as const;
const others = (shop: Shop): string[] => {
  const lines = OTHERS.flatMap((kind) => {
    const names = (shop[kind] ?? []).map(({ name }) => name);
    return names.length === 0 ? [] : [bullet(`${kind}: ${names.join(', ')}`)];
  });
  return lines.length === 0 ? [] : [`Besides\n${lines.join('\n')}`];
};

/** The same for machines. */
export const shopJson = ({ file, shop, currency, ...parts }: Shop, doubts: readonly Placed[]) => ({
  format: FORMAT,
  file,
  shop: shop?.name ?? null,
  currency,
  counts: Object.fromEntries(
    Object.entries(parts).map(([kind, list]) => [kind, Array.isArray(list) ? list.length : 0]),
  ),
  doubts: doubts.map(({ part, key, line, column, words }) => ({ part, key, line, column, words })),
});
