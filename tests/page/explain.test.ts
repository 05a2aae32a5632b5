/** Where a number of the page comes from: the tree that the worker gives is that of the very number on the page. */
import { expect, test } from 'vitest';
import { UNITS } from '../../src/basis/shown.ts';
import type { Told } from '../../src/explain/tree.ts';
import type { Figure, Nothing, Shown } from '../../src/page/protocol.ts';
import { explained } from '../../src/page/worker/explain.ts';
import { Live } from '../../src/page/worker/live.ts';
import { edited } from '../../src/saved/apply.ts';
import { demo } from '../design/helpers.ts';

function opened(text: string) {
  const live = new Live();
  const answer = live.answer({ text, file: 'design', shop: null });
  if (answer.answered === null) throw new Error(answer.problems.map(({ key }) => key).join());
  return { live, view: answer.answered.view };
}

const told = (answer: Told | Nothing): Told => {
  if ('why' in answer) throw new Error(answer.why);
  return answer;
};

test('every number in tables and findings leads to its own tree, in the units of the reader', () => {
  const { live, view } = opened(demo('two-bank-v8'));
  const wrong: string[] = [];
  let compared = 0;
  for (const units of UNITS) {
    const hold = (of: Figure, text: string): void => {
      const answer = told(explained(live.evaluation, { ...of, units }));
      compared += 1;
      if (answer.id !== of.quantity || !(answer.text === text || answer.text.startsWith(`${text} `)))
        wrong.push(`${units} ${of.quantity} ${JSON.stringify(of.at)}: ${text} leads to ${answer.text}`);
    };
    const { feed, tables, findings } = view.shown[units] as Shown;
    for (const { heads, rows, members } of [feed, ...Object.values(tables)])
      rows.forEach((cells, row) => {
        heads.forEach(({ quantity, unit }, i) => {
          // In both units a column has them above it, a tree beside each number.
          if (quantity !== null && (units !== 'both' || unit === ''))
            hold({ quantity, at: members[row] ?? {} }, cells[i] as string);
        });
      });
    for (const { origins, value } of findings)
      if (value !== '' && units !== 'both') hold(origins.value, value);
  }
  expect(wrong).toEqual([]);
  // A finding for each rule and subject, 300 cells of tables; none was left out.
  expect(compared).toBeGreaterThan(700);
});

test('the tree passes to the page as it is, the ampacity of the main run with its four factors', () => {
  const { live } = opened(demo('two-bank-v8'));
  const answer = structuredClone(
    told(
      explained(live.evaluation, {
        quantity: 'ampacity',
        at: { run: 0, wire: 0, point: 3 },
        units: 'metric',
      }),
    ),
  );
  expect(answer.of).toBe('main');
  const names = (one: Told): string[] => [one.id, ...one.parts.flatMap((part) => part.told.flatMap(names))];
  expect(names(answer)).toEqual(
    expect.arrayContaining(['size_amps', 'rating_factor', 'ambient_factor', 'bundle_factor', 'amps_table']),
  );
});

test('a number whose run is gone says so', () => {
  const text = demo('pair-four');
  const { live } = opened(text);
  const last = live.evaluation.design.points.length - 1;
  const asked = { quantity: 'total_average', at: { point: last }, units: 'metric' } as const;
  expect(told(explained(live.evaluation, asked)).text).toMatch(/ A$/);
  live.answer({
    text: edited(text, [{ key: ['points', last], value: undefined }]),
    file: 'design',
    shop: null,
  });
  expect(explained(live.evaluation, asked)).toEqual({ why: expect.stringContaining('has changed') });
});
