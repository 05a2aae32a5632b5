/** What contradicts itself in a shop's file: one case each, and a sound one. */
import { expect, test } from 'vitest';
import { readShop } from '../../src/design/shop/read.ts';
import { judgeShop } from '../../src/shop/judge.ts';

const doubts = (text: string): string[] => {
  const read = readShop({ text, file: 'shop.yaml' });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return judgeShop(read.shop).map(({ path, words }) => `${path.join('.')}: ${words}`);
};
const terminal = (crimps: string, range = 'smallest: 16 AWG, largest: 12 AWG'): string =>
  `terminals: [{ name: ring, ${range}, crimps: [${crimps}] }]`;

test.each([
  // (13.5 V − 1 V) / 0.5 ohm are 25 A.
  [
    'a bench test within',
    'coils: [{ name: A, resistance: 0.5 ohm, driver_drop: 1 V, test_point: { supply: 13.5 V, dwell: 3 ms, peak: 24.9 A } }]',
    [],
  ],
  [
    'a bench test beyond',
    'coils: [{ name: A, resistance: 0.5 ohm, driver_drop: 1 V, test_point: { supply: 13.5 V, dwell: 3 ms, peak: 25.1 A } }]',
    ['coils.0.test_point: its bench test reads 25.1 A, where 0.5 Ω let 25 A through at most'],
  ],
  [
    'no way to charge',
    'coils: [{ name: A, resistance: 0.5 ohm }]',
    ['coils.0: nothing tells how it charges: inductance, test_point or peak'],
  ],
  [
    'two ways',
    'coils: [{ name: A, resistance: 0.5 ohm, inductance: 2 mH, peak: 9 A }]',
    ['coils.0: several of inductance, test_point and peak: a design takes exactly one'],
  ],
  // 14 AWG is 2.081 mm²; 0.017241 ohm mm²/m · 1.02 / 2.081 mm² are 8.45 mohm/m. 5 % above are 8.87, 10 % below 7.61.
  ['a measured wire that is its size', 'wire: [{ size: 14 AWG, insulation: C, resistance: 8.8 mohm/m }]', []],
  [
    'one that is thinner',
    'wire: [{ size: 14 AWG, insulation: C, resistance: 9.3 mohm/m }]',
    ['wire.0.resistance: 10 % above what 14 AWG has: thinner than its size, or no copper'],
  ],
  [
    'one that is thicker',
    'wire: [{ size: 14 AWG, insulation: C, resistance: 7.2 mohm/m }]',
    ['wire.0.resistance: 15 % below copper of 14 AWG: thicker than its size, or a slip'],
  ],
  // 14 SAE holds 3702 cmil, 1.876 mm²: 9.375 mohm/m.
  [
    'a type sold by SAE number is judged as such',
    'wire: [{ size: 14 AWG, insulation: TXL, resistance: 9.3 mohm/m }]',
    [],
  ],
  [
    'two prices',
    'wire: [{ size: 14 AWG, insulation: C, price: 1 EUR/m }, { size: 14 AWG, insulation: C, price: 2 EUR/m }]',
    ['wire.1.price: listed before at another price: the lower one is taken'],
  ],
  [
    'a curve that falls',
    'fuses: [{ name: F, type: C, rating: 20 A, curve: [{ current: 27 A, within: 600 s }, { current: 40 A, within: 5 s }] }]',
    [],
  ],
  [
    'a curve that rises',
    'fuses: [{ name: F, type: C, rating: 20 A, curve: [{ current: 27 A, within: 5 s }, { current: 40 A, within: 6 s }] }]',
    ['fuses.0.curve: its curve rises: 6 s at 40 A after 5 s'],
  ],
  [
    'a curve within the rating',
    'fuses: [{ name: F, type: C, rating: 20 A, curve: [{ current: 20 A, within: 5 s }] }]',
    ['fuses.0.curve: its curve starts at 20 A, not above its rating'],
  ],
  [
    'all crimps',
    terminal('{ size: 16 AWG, height: 1.2 mm }, { size: 14 AWG, height: 1.5 mm }, { size: 12 AWG }'),
    [],
  ],
  [
    'a hole',
    terminal('{ size: 16 AWG }, { size: 12 AWG }'),
    ['terminals.0.crimps: no crimp for 14 AWG within its range'],
  ],
  [
    'a crimp beyond',
    terminal('{ size: 16 AWG }, { size: 14 AWG }, { size: 12 AWG }, { size: 10 AWG }'),
    ['terminals.0.crimps: a crimp for 10 AWG, beyond its range'],
  ],
  [
    'a height that does not rise',
    terminal('{ size: 16 AWG, height: 1.5 mm }, { size: 14 AWG, height: 1.4 mm }, { size: 12 AWG }'),
    ['terminals.0.crimps: the crimp of 14 AWG is not higher than that of 16 AWG'],
  ],
] as const)('%s', (_, text, said) => {
  expect(doubts(text)).toEqual(said);
});
