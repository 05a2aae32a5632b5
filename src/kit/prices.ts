/** What a kit and a batch cost, part by part, by the shop's file. */
import { type Bill, billOf, money } from '../shop/prices.ts';
import { type CsvCell, csv, fixed } from '../writers/csv.ts';
import type { Job } from './job.ts';
import { type Part, partsList } from './parts.ts';

/** What one kit costs, and what the batch does; null where the shop states no prices. */
export function kitBills(job: Job): { readonly kit: Bill; readonly batch: Bill } | null {
  const currency = job.result.evaluation.design.shop?.currency ?? null;
  if (currency === null) return null;
  const bill = (of: 'kit' | 'batch'): Bill =>
    billOf(
      currency,
      partsList(job).map((part) => ({
        what: nameOf(part),
        // What the papers leave blank has no number to multiply.
        count: part[of] ?? 0,
        unit: part.unit,
        each: part[of] === null ? null : part.each,
      })),
    );
  return { kit: bill('kit'), batch: bill('batch') };
}

/** Enough of a part to tell it from others on a list. */
const nameOf = ({ kind, what, order }: Part): string => {
  const short = what.split(/[,;](?! \d)/)[0] ?? what;
  return `${kind}: ${order ?? short}${kind === 'wire' && order !== null ? `, ${short}` : ''}`;
};

/** Prices as a table for the shop itself; it is not among the papers of a customer. */
export function priceTable(job: Job): string | null {
  const bills = kitBills(job);
  if (bills === null) return null;
  const { currency } = bills.kit;
  const sum = (count: number | null, each: number | null): CsvCell =>
    count === null || each === null ? null : fixed(count * each, 2);
  const rows = partsList(job).map(({ kind, what, order, kit, batch, unit, each }) => [
    kind,
    what,
    order,
    unit,
    each === null ? null : fixed(each, 4),
    kit === null ? null : fixed(kit, unit === 'm' ? 3 : 0),
    sum(kit, each),
    batch === null ? null : fixed(batch, unit === 'm' ? 3 : 0),
    sum(batch, each),
  ]);
  return csv([
    [
      'Part',
      'What it must be',
      'Maker’s number or colour',
      'Unit',
      `Price of one [${currency}]`,
      'One kit',
      `One kit [${currency}]`,
      'Batch',
      `Batch [${currency}]`,
    ],
    ...rows,
    [
      'Sum of what has a price',
      null,
      null,
      null,
      null,
      null,
      fixed(bills.kit.total, 2),
      null,
      fixed(bills.batch.total, 2),
    ],
  ]);
}

/** `One kit 61.20 EUR, the batch of 10 590.00 EUR; 3 of 20 parts have no price.` */
export function priceWords(job: Job): string | null {
  const bills = kitBills(job);
  if (bills === null) return null;
  const { kit, batch } = bills;
  const all = partsList(job);
  const without = all.filter(({ each }) => each === null).length;
  const open = without === 0 ? '' : `; ${without} of ${all.length} parts have no price, or no number`;
  return `One kit ${money(kit.total, kit.currency)}, the batch of ${job.batch} ${money(batch.total, kit.currency)}${open}.`;
}
