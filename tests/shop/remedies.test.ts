/** Remedies and other ways to feed the same coils, over random feeds and shelves: from the shelf, or said to be ordered. */
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { alternativesOf } from '../../src/remedies/alternatives.ts';
import type { Remedy } from '../../src/remedies/remedy.ts';
import { remediesOf } from '../../src/remedies/tried.ts';
import { run } from '../../src/run.ts';
import { design as designOf } from '../design/helpers.ts';
import { dice, feedDesign } from '../protection/random.ts';
import { SERIES } from '../protection/truth.ts';
import { EIGHT } from '../remedies/eight.ts';
import { samples } from '../samples.ts';

const INSULATIONS = ['A', 'B', 'C', 'D', 'F', 'H', 'GPT', 'TXL'];
const SAE = ['GPT', 'TXL'];
const RATINGS = {
  C: [5, 7.5, 10, 15, 20, 25, 30, 40],
  E: [20, 30, 40, 50, 60, 70, 80, 100],
  F: [5, 10, 15, 20, 25, 30],
};

/** Half of all wire, a third of all fuses, two relays. */
function shelf(seed: number, series: string): object {
  const d = dice(seed * 41);
  const wire = INSULATIONS.flatMap((insulation) => {
    const own = SAE.includes(insulation) && series === 'AWG' ? 'SAE' : series;
    return ((SERIES as Record<string, readonly string[]>)[own] ?? []).flatMap((size) =>
      d.chance(0.5) ? [{ size, insulation }] : [],
    );
  });
  const fuses = Object.entries(RATINGS).flatMap(([type, all]) =>
    all.flatMap((rating) =>
      d.chance(1 / 3) ? [{ name: `${type} ${rating}`, type, rating: `${rating} A` }] : [],
    ),
  );
  return {
    wire,
    fuses: [...fuses, { name: 'E 90', type: 'E', rating: '90 A' }],
    relays: [
      { name: 'small', rating: '30 A', pull_in: '7 V' },
      { name: 'large', rating: `${d.one([50, 70])} A`, pull_in: '6 V' },
    ],
  };
}

/** What a remedy takes that the shelf has not, and says nothing of ordering it. */
function missing({ design, says }: Remedy, before: Remedy['design']): string[] {
  const e = run(design).evaluation;
  const { shop } = design;
  const ordered = says.some((text) => text.startsWith('to order: '));
  const found = design.runs.flatMap(({ gauge, insulation, fuse, relay }, i) => {
    const was = before.runs[i];
    const size = String(e.value('gauge', { run: i }));
    const rating = e.number('fuse_rating', { run: i });
    return [
      ...(gauge !== was?.gauge &&
      !shop?.wire?.some((one) => one.size === size && one.insulation === insulation)
        ? [`${size} ${insulation}`]
        : []),
      ...(fuse &&
      (fuse.type !== was?.fuse?.type || fuse.rating !== was.fuse.rating) &&
      !shop?.fuses?.some((one) => one.type === fuse.type && one.rating === rating)
        ? [`${fuse.type} ${rating}`]
        : []),
      ...(relay &&
      relay !== was?.relay &&
      !shop?.relays?.some((one) => one.rating === relay.rating && one.pull_in === relay.pull_in)
        ? [`relay ${relay.rating}`]
        : []),
    ];
  });
  return ordered ? [] : found;
}

test('random feeds and shelves: what a remedy takes is there, or is said to be ordered', () => {
  let [told, orders] = [0, 0];
  const wrong: string[] = [];
  for (let seed = 1; seed <= samples(40); seed++) {
    const text = feedDesign(seed) as { sizes: { series: string }; feed: { gauge: string }[] };
    const read = readDesign(JSON.stringify({ ...text, shop: shelf(seed, text.sizes.series) }), '');
    // A type to choose of which the shop has none is refused.
    if (!read.ok) continue;
    for (const remedy of remediesOf(run(read.design), run)) {
      told += 1;
      if (remedy.says.some((one) => one.startsWith('to order: '))) orders += 1;
      wrong.push(
        ...missing(remedy, read.design).map((part) => `${seed}: ${part}: ${remedy.says.join('; ')}`),
      );
    }
  }
  expect(wrong).toEqual([]);
  expect(told).toBeGreaterThan(10);
  expect(orders).toBeGreaterThan(0);
  expect(orders).toBeLessThan(told);
});

const eight = (shop: string) => designOf(`${EIGHT}shop: ${shop}\n`);
const saysOf = (shop: string): string[] => {
  const design = eight(shop);
  return remediesOf(run(design), run).flatMap(({ says }) => says);
};

test('eight coils on thin branches: from the shelf where it has what is needed, else to order', () => {
  const wire = ['8 SAE', '14 SAE', '12 SAE'].map((size) => `{ size: ${size}, insulation: TXL }`).join(', ');
  const there = saysOf(
    `{ wire: [${wire}], fuses: [{ name: blade 10, type: C, rating: 10 A }, { name: bolted, type: E, rating: 50 A }] }`,
  );
  expect(there.length).toBeGreaterThan(0);
  expect(there.filter((text) => text.startsWith('to order'))).toEqual([]);
  const none = saysOf(
    '{ wire: [{ size: 22 AWG, insulation: E }], fuses: [{ name: bolted, type: SF30, rating: 500 A }] }',
  );
  expect(none.length).toBeGreaterThan(0);
  expect(none.filter((text) => !text.startsWith('to order') && /AWG|SAE|fuse, type/.test(text))).toEqual([]);
});

test('a relay of the shop is told by its name, another one is to be ordered', () => {
  const small = EIGHT.replace('relay: { rating: 50 A', 'relay: { rating: 10 A')
    .replaceAll('gauge: 20 AWG', 'gauge: 12 AWG')
    .replaceAll('gauge: 16 AWG', 'gauge: 12 AWG');
  const says = (relays: string): string =>
    remediesOf(run(designOf(`${small}shop: { relays: [${relays}] }\n`)), run)
      .flatMap((one) => one.says)
      .join('; ');
  expect(says('{ name: power 60, rating: 60 A, pull_in: 6.5 V }')).toContain('the relay “power 60” in main');
  expect(says('{ name: tiny, rating: 5 A, pull_in: 6.5 V }')).toMatch(/to order: a \d+ A relay in main/);
});

test('other ways to feed the coils: fuses of types of the shop, and any size only where it is said to be ordered', () => {
  const wire = ['8 SAE', '14 SAE'].map((size) => `{ size: ${size}, insulation: TXL }`).join(', ');
  const ways = alternativesOf(
    designOf(
      `${EIGHT.replaceAll('gauge: 20 AWG', 'gauge: auto')}shop: { wire: [${wire}], fuses: [{ name: F 15, type: F, rating: 15 A }] }\n`,
    ),
    run,
  );
  for (const { name, what, result } of ways) {
    const { design } = result.evaluation;
    if (design.shelf === null) expect(what).toContain('to order');
    else
      for (const [i, { gauge }] of design.runs.entries())
        if (gauge === 'auto' && result.evaluation.number('solved') === 1)
          expect(['8 SAE', '14 SAE']).toContain(result.evaluation.value('gauge', { run: i }));
    if (name === 'fuse for each coil') expect(design.runs[1]?.fuse?.type).toBe('F');
  }
  expect(ways.map(({ name }) => name)).toContain('any size');
});
