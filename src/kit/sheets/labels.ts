/** The labels as a sheet. */
import type { Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { table, words } from '../../writers/workbook/page.ts';
import type { Job } from '../job.ts';
import { labels } from '../labels.ts';
import { begin } from './cells.ts';

export function labelSheet(job: Job, grid: Grid) {
  const cells: Sheet = [];
  const row = begin(cells, 'Labels', 'One set for one kit.', job, grid, 6);
  table(
    cells,
    row,
    [
      { title: 'Kind' },
      { title: 'Of' },
      { title: 'Stuck at' },
      { title: 'Line 1' },
      { title: 'Line 2' },
      { title: 'Line 3' },
    ],
    labels(job).map(({ kind, of, at, lines: [a = '', b = '', c = ''] }) =>
      [kind, of, at, a, b, c].map(words),
    ),
  );
  return { cells, widths: [10, 20, 14, 22, 32, 22], landscape: true };
}
