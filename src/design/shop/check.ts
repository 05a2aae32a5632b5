/** What no single field of a shop's file can tell: names given twice, prices in two currencies, ranges turned round. */
import { readAccuracy } from '../accuracy.ts';
import type { Partially } from '../draft.ts';
import { SIZES } from '../names.ts';
import { type Path, quote, type Report } from '../problems.ts';
import { seriesOf } from '../spellings.ts';
import type { ShopFile } from './schema.ts';
import { KINDS, type Kind } from './shop.ts';

type Draft = Partially<ShopFile>;

/** Two names that differ in capitals only are one to a spreadsheet. */
const alike = (name: string): string => name.trim().toLowerCase();

export function checkShop(shop: Draft, report: Report): void {
  for (const kind of KINDS) names(shop, kind, report);
  currencies(shop, report);
  for (const kind of ['terminals', 'splices'] as const)
    shop[kind]?.forEach((part, i) => {
      order(part?.smallest, part?.largest, [kind, i, 'largest'], report);
    });
  shop.instruments?.forEach((one, i) => {
    if (one?.kind === undefined || one.accuracy === undefined) return;
    if (readAccuracy(one.accuracy, one.kind) === null)
      report(
        ['instruments', i, 'accuracy'],
        `found ${quote(one.accuracy)}`,
        'takes an error as makers state it: 0.5 % + 2 digits',
      );
  });
}

function names(shop: Draft, kind: Kind, report: Report): void {
  const seen = new Set<string>();
  (shop[kind] ?? []).forEach((part, i) => {
    if (part?.name === undefined) return;
    if (seen.has(alike(part.name)))
      report([kind, i, 'name'], `${quote(part.name)} a second time`, 'give each part a name of its own');
    seen.add(alike(part.name));
  });
}

/** Every price of the file with its place. */
export function pricesOf(shop: Draft): { currency: string; path: Path }[] {
  return (['wire', ...KINDS] as const).flatMap((kind) =>
    (shop[kind] ?? []).flatMap((part, i) => {
      const currency = part !== undefined && 'price' in part ? part.price?.currency : undefined;
      return currency === undefined ? [] : [{ currency, path: [kind, i, 'price'] }];
    }),
  );
}

function currencies(shop: Draft, report: Report): void {
  const prices = pricesOf(shop);
  const own = shop.currency ?? prices[0]?.currency;
  for (const { currency, path } of prices)
    if (currency !== own) report(path, `a price in ${currency}`, `takes prices in one currency, ${own}`);
}

function order(smallest: string | undefined, largest: string | undefined, path: Path, report: Report): void {
  if (smallest === undefined || largest === undefined || seriesOf(smallest) !== seriesOf(largest)) return;
  const names = SIZES[seriesOf(smallest)];
  const [low, high] = [smallest, largest].map((size) => names.indexOf(size.split(' ')[0] as string));
  if ((low as number) > (high as number))
    report(path, `${largest}, below the smallest, ${smallest}`, 'takes a size not below it');
}
