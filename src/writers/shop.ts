/** What a design took from the shop's own file, as lines and as JSON. */
import { printInsulation, printSize } from '../basis/print.ts';
import { type Kind, PART, partOf, type Shop, type Used } from '../design/shop/shop.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { measuredOf } from '../model/tables.ts';
import type { Ordered } from '../shop/orders.ts';
import { feedBill, fusesTaken, money } from '../shop/prices.ts';
import { printQuantity } from '../views/print.ts';
import { fold, WIDTH } from './columns.ts';
import { takenText } from './taken.ts';

const otherwise = ({ beside }: Used): string =>
  beside.length === 0 ? '' : `; the design states otherwise: ${beside.join(', ')}`;

/** A line for each part, with the keys where it stands and what the design states otherwise. */
export function usedLines(used: readonly Used[]): string[] {
  const parts = new Map<string, Used[]>();
  for (const one of used) {
    const line = `${partOf(one)}${otherwise(one)}`;
    parts.set(line, [...(parts.get(line) ?? []), one]);
  }
  return [...parts].map(([line, all]) => `${all.map(({ path }) => path).join(', ')}: ${line}`);
}

/** Kinds whose values move figures; the others are named on the papers of a kit. */
const FIGURES: readonly Kind[] = ['coils', 'fuses', 'relays', 'instruments'];

/** The same in a few words: parts whose values move figures by name, the others by their number; nothing of their sources. */
export function usedShortly(used: readonly Used[]): string {
  const shown = used.filter(({ kind }) => FIGURES.includes(kind));
  const rest = new Set(
    used.filter(({ kind }) => !FIGURES.includes(kind)).map(({ kind, name }) => kind + name),
  );
  const told = [...new Set(shown.map((one) => `${partOf({ ...one, from: null })}${otherwise(one)}`))];
  const parts = rest.size === 1 ? 'a part' : `${rest.size} parts`;
  return [...told, ...(rest.size === 0 ? [] : [`${parts} of the kit`])].join('; ');
}

/** Runs whose wire has the resistance that the shop measured. */
const measuredWire = ({ design, value }: Evaluation) =>
  design.runs.flatMap(({ insulation, name }, run) => {
    const size = String(value('gauge', { run }));
    const own = measuredOf(size, insulation, design.shelf);
    return own === undefined ? [] : [{ run: name, size, insulation, ...own }];
  });

/** `main: wire 12 AWG, class C, 5.45 mΩ/m at 25 °C, from …` */
export const measuredLines = (e: Evaluation): string[] =>
  measuredWire(e).map(
    ({ run, size, insulation, ohm, at, from }) =>
      `${run}: wire ${printSize(size)}, ${printInsulation(insulation)}, ${printQuantity('measured_ohm', ohm, e.design.units)} measured at ` +
      `${printQuantity('measured_T', at, e.design.units)}${from === null ? '' : `, from ${from}`}`,
  );

/** The same in a few words. */
export const measuredShortly = (e: Evaluation): string[] => {
  const sizes = new Set(
    measuredWire(e).map(({ size, insulation }) => `${printSize(size)}, ${printInsulation(insulation)}`),
  );
  return sizes.size === 0 ? [] : [`measured resistance of ${[...sizes].join(' and ')}`];
};

/** `fuse “midi 20”, the cheapest of 2 alike`: of the shop, where the design names none. */
export const takenLines = (e: Evaluation, at: (run: string) => string): string[] => [
  ...new Set(fusesTaken(e).map((taken) => `${at(taken.run)}${takenText(taken)}`)),
];

/** `23.10 EUR: wire, fuses and relays. No price: …` */
export function priceLine(e: Evaluation): string[] {
  const bill = feedBill(e);
  if (bill === null) return [];
  const open = bill.open.length === 0 ? '' : `; no price: ${bill.open.join('; ')}`;
  const { sizes, pins } = e.design;
  const least =
    sizes.aim !== 'price'
      ? ''
      : pins === null
        ? '; sizes for the least copper, a least price was not found'
        : '; no cheaper wire of the shelf keeps the rules';
  return [
    fold(`Price of wire, fuses and relays: ${money(bill.total, bill.currency)}${open}${least}`, WIDTH, '  '),
  ];
}

/** What to order where the shelf has no answer, as lines; `order` is null where that is not asked. */
export function orderLines(order: Ordered | null): string[] {
  if (order === null) return [];
  if (order.orders.length === 0) return ['No size and no fuse beyond the shelf mends it either (tried).'];
  return order.orders.map(({ wire, fuses }) => {
    const parts = [
      ...wire.map(({ size, insulation }) => `wire ${printSize(size)}, ${printInsulation(insulation)}`),
      ...fuses.map(({ type, rating }) => `fuse ${rating} A, type ${type}`),
    ];
    return `${parts.join('; ')}: with ${parts.length === 1 ? 'it' : 'them'} there is an answer (tried)`;
  });
}

/** `shop` of the JSON result. */
export function shopJson({ file, currency }: Shop, e: Evaluation, order: Ordered | null) {
  const price = feedBill(e);
  return {
    file,
    currency,
    price: price && {
      total: price.total,
      lines: price.lines.map(({ what, count, unit, each }) => ({ what, count, unit, each })),
      without: price.open,
    },
    fuses: fusesTaken(e),
    order: order?.orders.map(({ wire, fuses }) => ({ wire, fuses })) ?? null,
    measured: measuredWire(e).map(({ run, size, insulation, ohm, at, from }) => ({
      run,
      size,
      insulation,
      resistance_ohm_per_m: ohm,
      at_degC: at,
      from,
    })),
    used: e.design.used.map(({ path, kind, name, from, beside }) => ({
      path,
      part: PART[kind],
      name,
      from,
      beside,
    })),
  };
}
