/** What the page answers is what the command line says of the same text; a text that cannot be read changes nothing. */
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { Live } from '../../src/page/worker/live.ts';
import { run } from '../../src/run.ts';
import { edited } from '../../src/saved/apply.ts';
import type { Plain } from '../../src/saved/document.ts';
import { fromShelf } from '../../src/shop/choose.ts';
import { toJson } from '../../src/writers/json.ts';
import { DEMOS, demo, stated } from '../design/helpers.ts';

/** The JSON of the command line. */
function afresh(text: string): unknown {
  const read = readDesign(text, 'design');
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.key} ${p.found}`).join('\n'));
  return toJson(run(read.design));
}

const given = (text: string) => ({ text, file: 'design', shop: null });

function answered(live: Live, text: string) {
  const answer = live.answer(given(text));
  if (answer.problems.length > 0 || answer.answered === null)
    throw new Error(answer.problems.map((p) => `${p.key} ${p.found}`).join('\n'));
  return answer.answered.view;
}

const change = (text: string, key: (string | number)[], value: Plain | undefined): string =>
  edited(text, [{ key, value }]);

/** Changes of entries, each on top of the one before: numbers, words, sizes, names of things that count nothing. */
const ENTRIES: [string, (string | number)[], Plain][] = [
  ['a title, which has no cell', ['title'], 'Another title'],
  ['the resistance of the coil', ['coil', 'resistance'], '0.37 ohm'],
  ['a temperature in another unit', ['coil', 'temperature'], '-4 degF'],
  ['a length in another unit', ['feed', 0, 'length'], '55 in'],
  ['an ambient', ['feed', 1, 'ambient'], '101 degC'],
  ['a drop budget', ['limits', 'drop'], '0.42 V'],
  ['an insulation', ['feed', 0, 'insulation'], 'D'],
  ['a bundle', ['feed', 1, 'bundle'], 5],
  ['a supply', ['points', 0, 'supply'], '9.1 V'],
  ['an engine speed', ['points', 3, 'rpm'], '7000 rpm'],
  ['the type of a fuse', ['feed', 0, 'fuse', 'type'], 'F'],
  ['a rating of a relay', ['feed', 0, 'relay', 'rating'], '70 A'],
  ['a limit of the coil', ['coil', 'current_limit'], '18 A'],
  ['the drop back to what it was', ['limits', 'drop'], '0.5 V'],
];

test('changed entries, one after the other', () => {
  const live = new Live();
  let text = stated('pair-four');
  expect(answered(live, text).json).toEqual(afresh(text));
  for (const [what, key, value] of ENTRIES) {
    text = change(text, key, value);
    const { json } = answered(live, text);
    expect(json, what).toEqual(afresh(text));
  }
});

test('parts of the shop, one after the other', () => {
  const live = new Live();
  let text = demo('pair-four');
  for (const [key, value] of [
    [['title'], 'The van with its shop'],
    [['coil', 'use'], 'hill climb'],
    [['coil', 'resistance'], '0.4 ohm'],
    [['feed', 0, 'relay', 'use'], 'power 50'],
    [['shop', 'coils', 0, 'inductance'], '2.2 mH'],
    [['shop', 'wire', 20, 'price'], '9 EUR/m'],
  ] as const) {
    text = change(text, [...key], value);
    expect(answered(live, text).json, key.join('.')).toEqual(afresh(text));
  }
});

test.each(DEMOS)('%s: several entries at once, and back', (name) => {
  const live = new Live();
  const text = stated(name);
  const { json: before } = answered(live, text);
  const other = ENTRIES.reduce((now, [, key, value]) => change(now, key, value), text);
  const { json } = answered(live, other);
  expect(json).toEqual(afresh(other));
  expect(json).not.toEqual(before);
  // Nothing of the others stays behind.
  expect(answered(live, text).json).toEqual(before);
});

/** What changes the cells themselves. */
const OTHERS: [string, (text: string) => string][] = [
  ['a size stated', (text) => change(text, ['feed', 1, 'gauge'], '8 AWG')],
  ['a point more', (text) => change(text, ['points', 4], { name: 'more', rpm: '500 rpm', supply: '13 V' })],
  ['a point less', (text) => change(text, ['points', 3], undefined)],
  ['no relay', (text) => change(text, ['feed', 0, 'relay'], undefined)],
  ['no limit of duty', (text) => change(text, ['coil', 'max_duty'], undefined)],
  ['a finer sweep', (text) => change(text, ['sweep', 'step'], '100 rpm')],
  ['a point by another name', (text) => change(text, ['points', 0, 'name'], 'starting')],
  ['firing unevenly', (text) => change(text, ['engine', 'firing_angles'], [0, 170, 360, 530])],
];

test.each(OTHERS)('%s is evaluated anew, and right', (_, alter) => {
  const live = new Live();
  const text = stated('pair-four');
  answered(live, text);
  const other = alter(text);
  expect(other).not.toBe(text);
  const { json } = answered(live, other);
  expect(json).toEqual(afresh(other));
});

test('a text that cannot be read leaves the last answer alone, and the next one is right', () => {
  const live = new Live();
  const text = stated('pair-four');
  answered(live, text);
  const wrong = live.answer(given(change(text, ['coil', 'resistance'], '0.5 kg')));
  expect(wrong.answered).toBe(null);
  expect(wrong.problems.map(({ key }) => key)).toEqual(['coil.resistance']);
  expect(live.evaluation.design.coil.resistance).toBe(0.55);
  const next = change(text, ['coil', 'resistance'], '0.6 ohm');
  const { json } = answered(live, next);
  expect(json).toEqual(afresh(next));
});

/** What is wrong, beside a change that is right; and the change that the answer must follow: all but what is wrong. */
const HELD: [string, [(string | number)[], Plain | undefined], string, string][] = [
  ['a value of another kind', [['coil', 'resistance'], '0.5 kg'], 'coil.resistance', '0.55 ohm'],
  ['a value that is empty', [['feed', 0, 'length'], ''], 'feed[0].length', '2.2 m'],
  ['a key that is gone', [['ignition', 'dwell'], undefined], 'ignition.dwell', 'as it was'],
  ['a key that is unknown', [['coil', 'resistence'], '1 ohm'], 'coil.resistence', ''],
  ['a second way to say the same', [['coil', 'peak'], '12 A'], 'coil.peak', ''],
  ['a run that is not whole', [['feed', 2], { run: 'new' }], 'feed', 'as it was'],
  // The order is then as wrong as the number: both are held, as the part that they stand in.
  ['a number that other values do not go with', [['engine', 'cylinders'], 6], 'engine', 'as it was'],
];

test.each(HELD)(
  '%s is held at its last good value, and the rest is followed',
  (_, [key, value], held, was) => {
    const live = new Live();
    const good = stated('pair-four');
    const other = change(good, ['limits', 'drop'], '0.45 V');
    const { problems, held: kept, answered: answer } = live.answer(given(change(other, key, value)), good);
    expect(problems.length).toBeGreaterThan(0);
    expect(kept).toEqual([{ key: held, value: was }]);
    // As the command line answers the same text without what is wrong.
    expect(answer?.view.json).toEqual(afresh(other));
  },
);

test('what no YAML is holds nothing', () => {
  const good = stated('pair-four');
  const { held, answered: answer } = new Live().answer(given('coilfeed: 1\ntitle: ['), good);
  expect([held, answer]).toEqual([[], null]);
});

test('a relay of the shop and the least price, as the command takes them', () => {
  const text = [
    { key: ['feed', 0, 'relay'], value: { rating: 'auto', ambient: '60 degC' } },
    { key: ['sizes', 'aim'], value: 'price' },
  ].reduce((now, { key, value }) => change(now, key, value), demo('hill-climb-six'));
  const read = readDesign(text, 'design');
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.key} ${p.found}`).join('\n'));
  const { json } = answered(new Live(), text);
  const design = fromShelf(read.design, run);
  expect(json).toEqual(toJson(run(design)));
  // The cheapest of its relays that pulls in as the design needs it.
  expect(design.used.some(({ path }) => path === 'feed[0].relay')).toBe(true);
  expect(json.shop?.price?.total).toBeGreaterThan(0);
});
