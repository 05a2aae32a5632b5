/** The workbook of a check: its tolerances come back as every other input does. */
import { expect, test } from 'vitest';
import { run } from '../../src/run.ts';
import { show, toWorkbook } from '../../src/writers/workbook/workbook.ts';
import { demo, design } from '../design/helpers.ts';
import { fill, readBack } from './edit.ts';

test('a tolerance that was changed in the workbook of a check is in the design', async () => {
  const result = run(design(demo('pair-four')), show, ['readings']);
  const book = { result, bytes: toWorkbook(result) };
  const read = await readBack(fill(book, ['tolerance_dwell', {}, 2], ['point_supply', { point: 1 }, 13.9]));
  expect(read.said).toEqual([]);
  expect(read.design?.tolerance.dwell).toBe(0.02);
  expect(read.design?.points[1]?.supply).toBe(13.9);
  expect(read.changed.map(({ key }) => key)).toEqual(['tolerance.dwell', 'points[1].supply']);
});
