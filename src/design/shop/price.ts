/** Prices as a shop writes them: `1.20 EUR`, `0.85 EUR/m`, `42 USD/100 ft`, `9.50 EUR/100` for a hundred pieces. */
import { readValue } from '../../basis/read-value.ts';
import { convert } from '../../basis/units.ts';
import { spelled } from '../fields.ts';
import type { Price } from './shop.ts';

/** Beyond it a point or a comma was slipped. Arbitrary. */
const MOST = 1e6;

const PRICE = /^(\S+)\s*([A-Za-z]{3})(?:\s*\/\s*(?:(\d{1,5})\s*)?(m|ft|pcs|each)?)?$/;

/** Null for what is no price, and for one of the other kind. */
export function readPrice(text: string, per: 'piece' | 'length'): Price | null {
  const [, number = '', currency = '', count, unit] = PRICE.exec(text.trim()) ?? [];
  const read = readValue(number, '1');
  const long = unit === 'm' || unit === 'ft';
  if (!read.ok || read.value < 0 || read.value > MOST || Number(count ?? 1) === 0) return null;
  if (long !== (per === 'length') || (text.includes('/') && count === undefined && unit === undefined))
    return null;
  const metres = long ? convert(unit, 'm') : 1;
  return { amount: read.value / (Number(count ?? 1) * metres), currency: currency.toUpperCase() };
}

const field = (per: 'piece' | 'length', description: string, takes: string) =>
  spelled(takes, (text) => readPrice(text, per), { description });

/** Price of a piece. */
export const pieces = () =>
  field(
    'piece',
    'Price of a piece, in the currency of the shop: 1.20 EUR, or 9.50 EUR/100 for a hundred.',
    'takes a price with its currency: 1.20 EUR, or 9.50 EUR/100 for a hundred pieces',
  ).optional();

/** Price of what is sold by length. */
export const metres = () =>
  field(
    'length',
    'Price by length, in the currency of the shop: 0.85 EUR/m, 42 EUR/100 m, 0.30 USD/ft.',
    'takes a price by length with its currency: 0.85 EUR/m, 42 EUR/100 m or 0.30 USD/ft',
  ).optional();

/** `EUR`: three letters; null for what is none. */
export const readCurrency = (text: string): string | null =>
  /^[A-Za-z]{3}$/.test(text.trim()) ? text.trim().toUpperCase() : null;
