/** The workbook of a check: its tolerances come back as every other input does. */
import { expect, test } from 'vitest';
import { measuredOn } from '../../src/readings/from-card.ts';
import { runLaid } from '../../src/run-laid.ts';
import { readSaved } from '../../src/saved/read.ts';
import { show, toWorkbook } from '../../src/writers/workbook/workbook.ts';
import { demo, design } from '../design/helpers.ts';
import { changedPart, fill, readBack, sheetPart } from './edit.ts';

test('a tolerance that was changed in the workbook of a check is in the design', async () => {
  const result = runLaid(design(demo('pair-four')), show, ['readings']);
  const book = { result, bytes: toWorkbook(result) };
  const read = await readBack(fill(book, ['tolerance_dwell', {}, 2], ['point_supply', { point: 1 }, 13.9]));
  expect(read.said).toEqual([]);
  expect(read.design?.tolerance.dwell).toBe(0.02);
  expect(read.design?.points[1]?.supply).toBe(13.9);
  expect(read.changed.map(({ key }) => key)).toEqual(['points[1].supply', 'tolerance.dwell']);
});

test('readings that were entered on the card come back, in the unit of their row', async () => {
  const d = design(
    `${demo('pair-four')}measured:\n  - { what: drop, run: main, point: idle, meter: 17 mV }\n`,
  );
  const bytes = toWorkbook(runLaid(d, show, ['readings']));
  // The first rows: the battery at rest, the least while cranking, the posts at the fastest point, the last one. I is the
  // column of what was measured.
  const edited = changedPart(
    bytes,
    (parts) => sheetPart(parts, 'TestCard'),
    (xml) =>
      ['12.5', '9.5', '14.1'].reduce(
        (sheet, value, i) =>
          sheet.replace(new RegExp(`<c( r="I${5 + i}"[^>]*?)/>`), `<c$1><v>${value}</v></c>`),
        xml,
      ),
  );
  const read = await readSaved(edited, 'card.xlsx');
  if (!read.ok) throw new Error('the workbook is refused');
  const { measured, wrong } = measuredOn(read.design, read.card ?? []);
  expect(wrong).toEqual([]);
  expect(measured.map(({ what, instrument, point, value }) => [what, instrument, point, value])).toEqual([
    ['resting', 'meter', null, 12.5],
    ['supply', 'least', 0, 9.5],
    ['supply', 'meter', d.points.length - 1, 14.1],
    ['drop', 'meter', 1, 0.017],
  ]);
});

test('what is no number on the card is named with its cell', () => {
  const d = design(demo('pair-four'));
  const cell = (value: string | number) => ({
    cell: 'TestCard!I5',
    found: { is: typeof value === 'number' ? 'number' : 'text', value },
  });
  expect(measuredOn(d, [cell('12 V')]).wrong).toEqual([{ cell: 'TestCard!I5', found: '"12 V"' }]);
  expect(measuredOn(d, [cell(-3)]).wrong).toEqual([{ cell: 'TestCard!I5', found: '-3' }]);
});
