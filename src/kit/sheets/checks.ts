/** First piece and series as a sheet, with open cells for what is measured. */
import type { Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { table, words } from '../../writers/workbook/page.ts';
import { checks } from '../checks.ts';
import type { Job } from '../job.ts';
import { begin, given, open } from './cells.ts';
import { sizeCell } from './cuts.ts';

export function checkSheet(job: Job, grid: Grid) {
  const cells: Sheet = [];
  const { kit } = job.result.evaluation.design;
  const row = begin(
    cells,
    'First piece and series',
    'Crimp height as the terminal maker gives it. Pull-out force held for one minute, at least. Measured values go into the open cells.',
    job,
    grid,
    8,
  );
  table(
    cells,
    row,
    [
      { title: 'Piece', unit: '' },
      { title: 'Size', unit: '' },
      { title: 'Cut to ±', unit: 'mm' },
      { title: 'Cut, measured', unit: 'mm' },
      { title: 'Strip to ±', unit: 'mm' },
      { title: 'Strip, measured', unit: 'mm' },
      { title: 'Crimp height, maker', unit: 'mm' },
      { title: 'Crimp height, measured', unit: 'mm' },
      { title: 'UL 486A', unit: 'lbf' },
      { title: 'MIL-T-7928', unit: 'lbf' },
      { title: 'First, measured', unit: 'lbf' },
      { title: 'Samples in the batch', unit: '' },
      { title: 'Seen', unit: '' },
    ],
    checks(job).map(({ first, ul, mil, samples }) => [
      words(first.piece.id),
      sizeCell(job, grid, first.piece),
      given(kit.cut_tolerance * 1000, 'mm'),
      open,
      given(kit.strip_tolerance * 1000, 'mm'),
      open,
      open,
      open,
      ul.pounds === null ? open : given(ul.pounds, 'count'),
      mil.pounds === null ? open : given(mil.pounds, 'count'),
      open,
      given(samples, 'count'),
      { role: 'source', value: [ul.source, mil.source].filter(Boolean).join('; ') },
    ]),
  );
  return { cells, widths: [18, 10, 9, 12, 10, 12, 10, 12, 10, 12, 12, 10, 36], landscape: true };
}
