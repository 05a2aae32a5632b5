/** Values of a design changed by their paths: where they land, and what is said of those that land nowhere. */
import { expect, test } from 'vitest';
import { printProblem } from '../../src/design/problems.ts';
import { type Setting, settingOf, withSettings } from '../../src/saved/set.ts';
import { demo, design } from '../design/helpers.ts';

const v8 = design(demo('two-bank-v8'));

const set = (...texts: string[]) =>
  withSettings(
    v8,
    texts.map((text) => settingOf(text) as Setting),
  );
const changed = (...texts: string[]) => {
  const read = set(...texts);
  if (!read.ok) throw new Error(read.problems.map(printProblem).join('\n'));
  return read.design;
};
const refused = (text: string): string => {
  const read = set(text);
  return read.ok ? 'taken' : read.problems.map(printProblem).join('\n');
};

test('runs, points and coils go by their names, lists by number', () => {
  expect(changed('feed.main.length=4m').wires[0]?.length).toBe(4);
  expect(changed('return.left strap.gauge=4 AWG').runs[5]?.gauge).toBe('4 AWG');
  expect(changed('feed[0].joints=7').runs[0]?.joints).toBe(7);
  expect(changed('points.idle.supply=13.1 V').points[1]?.supply).toBe(13.1);
  expect(changed('ignition.dwell[1].dwell=5 ms').ignition.dwell[1]?.dwell).toBe(0.005);
  expect(changed('feed.branch.length.3=55 in').wires.find(({ id }) => id === 'branch.3')?.length).toBe(1.397);
});

test('what is left out is put in, and an empty value takes a part out', () => {
  expect(changed('tolerance.length=20 %').tolerance.length).toBe(0.2);
  expect(changed('feed.main.relay=').runs[0]?.relay).toBeNull();
  expect(changed('engine.firing_order=[1, 2, 3, 4, 5, 6, 7, 8]').engine.firing_order[1]).toBe(2);
});

test('several at once, in the text that a workbook would carry', () => {
  const two = changed('feed.main.length=4 m', 'title=Longer');
  expect([two.title, two.wires[0]?.length]).toEqual(['Longer', 4]);
  expect(two.text.toString()).toContain('length: 4 m');
  // The rest of the author's text stays, comments and all.
  expect(two.text.toString()).toContain('# One trunk to each bank.');
});

test.each([
  ['feed.mian.length=4m', 'feed.mian.length: feed has no "mian"; did you mean "main"?'],
  ['feed.main.lenght=4m', 'feed.main.lenght: feed[0] has no "lenght"; did you mean "length"?'],
  ['fed.main.length=4m', 'fed.main.length: a design has no "fed"; did you mean "feed"?'],
  [
    'ignition.dwell.x=4',
    'ignition.dwell has no "x"; name a member of this list by its number: ignition.dwell[0]',
  ],
  ['feed.main.length=4 kg', 'feed.main.length feed[0].length: found "4 kg"; takes'],
  ['points.idle.supply=90 V', 'points.idle.supply points[1].supply: found "90 V"; allowed: 1 to 60 V'],
])('%s is refused with what was meant', (text, says) => {
  expect(refused(text)).toContain(says);
});

test('a text without an equals sign sets nothing', () => {
  expect([settingOf('feed.main.length'), settingOf('=4')]).toEqual([null, null]);
});
