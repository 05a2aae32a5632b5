/** A relay to be chosen becomes the first of the shop's that serves, over random lists: each of them is tried by its name. */
import { expect, test } from 'vitest';
import { run } from '../../src/run.ts';
import { fromShelf } from '../../src/shop/choose.ts';
import { base, design } from '../design/helpers.ts';
import { dice } from '../protection/random.ts';

interface Relay {
  readonly name: string;
  readonly rating: number;
  readonly price: number;
  readonly keys: string;
}

/** Some too small, some that pull in too late, some whose sheet says little. */
function relays(seed: number): Relay[] {
  const d = dice(seed * 13);
  return Array.from({ length: d.one([1, 2, 4]) }, (_, i) => {
    const rating = d.one([5, 10, 20, 30, 40, 50, 70]);
    const coil = d.chance(0.8) ? ', coil: 90 ohm, coil_rise: 20 K' : '';
    const suppression = d.chance(0.5) ? ', suppression: resistor' : '';
    const pull = d.chance(0.8) ? d.one([6.5, 10.4, 10.8]) : null;
    const keys = `${coil}${suppression}${pull === null ? '' : `, pull_in: ${pull} V`}`;
    return { name: `relay ${i}`, rating, price: 1 + i + d.one([0, 4, 8]), keys };
  });
}

const fed = (list: readonly Relay[], relay: string, aim: string) =>
  design(
    `${base(['relay: { rating: 40 A, pull_in: 7.2 V }', `relay: { ${relay} }`])}sizes: { aim: ${aim} }
shop:
  wire: [{ size: 12 AWG, insulation: C, price: 1 EUR/m }, { size: 14 AWG, insulation: TXL, price: 1 EUR/m }]
  relays: [${list.map(({ name, rating, price, keys }) => `{ name: ${name}, rating: ${rating} A, price: ${price} EUR${keys} }`).join(', ')}]
`,
  );

/** What is said of the relay where the design names it: fail, unknown, or neither. */
function said(list: readonly Relay[], name: string, aim: string): 'fail' | 'unknown' | 'good' {
  const verdicts = run(fed(list, `use: ${name}`, aim))
    .findings.filter(({ rule }) => rule.startsWith('relay'))
    .map(({ verdict }) => verdict);
  return verdicts.includes('fail') ? 'fail' : verdicts.includes('unknown') ? 'unknown' : 'good';
}

test.each(['copper', 'price'])('the first that serves, for the least %s', (aim) => {
  const wrong: string[] = [];
  const met = { good: 0, unknown: 0, none: 0 };
  for (let seed = 1; seed <= 40; seed++) {
    const list = relays(seed);
    const order = list.toSorted((a, b) =>
      aim === 'price' ? a.price - b.price || a.rating - b.rating : a.rating - b.rating || a.price - b.price,
    );
    const told = new Map(order.map(({ name }) => [name, said(list, name, aim)]));
    // One that serves; else one of which only something is not known; else none.
    const best =
      order.find(({ name }) => told.get(name) === 'good') ??
      order.find(({ name }) => told.get(name) === 'unknown');
    met[best === undefined ? 'none' : (told.get(best.name) as 'good' | 'unknown')] += 1;
    const made = fromShelf(fed(list, 'rating: auto', aim), run);
    const used = made.used.find(({ kind }) => kind === 'relays')?.name;
    if (used !== best?.name) wrong.push(`${seed}: ${used} where ${best?.name} serves`);
  }
  expect(wrong).toEqual([]);
  // Every end of it has been met.
  expect(Math.min(...Object.values(met)), JSON.stringify(met)).toBeGreaterThan(0);
});
