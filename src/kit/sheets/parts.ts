/** The parts list as a sheet; ratings follow the model. */
import type { Cell, Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { shown } from '../../writers/workbook/links.ts';
import { type Column, table, words } from '../../writers/workbook/page.ts';
import type { Job } from '../job.ts';
import { partsList } from '../parts.ts';
import { AT_WRITING, begin, given, open, ruler } from './cells.ts';

export function partsSheet(job: Job, grid: Grid) {
  const cells: Sheet = [];
  const row = begin(cells, 'Parts', AT_WRITING, job, grid, 8);
  const reel = ruler(job, 'reel');
  const amount = (value: number | null, unit: 'pcs' | 'm'): Cell =>
    unit === 'm' ? reel.cell(value) : value === null ? open : given(value, 'count');
  const columns: Column[] = [
    { title: 'Part' },
    { title: 'At' },
    { title: 'What it must be' },
    { title: 'Rating now, A' },
    { title: 'Maker’s number or colour' },
    { title: 'One kit' },
    { title: 'of them spare' },
    { title: 'Batch' },
    { title: 'Unit' },
  ];
  table(
    cells,
    row,
    columns,
    partsList(job).map((part) => [
      words(part.kind),
      words(part.at),
      { role: 'text', value: part.what },
      ratingOf(job, grid, part.kind, part.at),
      part.order === null ? open : words(part.order),
      amount(part.kit, part.unit),
      given(part.spares, 'count'),
      amount(part.batch, part.unit),
      words(part.unit === 'm' ? reel.unit : part.unit),
    ]),
  );
  return { cells, widths: [15, 12, 52, 11, 20, 10, 9, 10, 6], landscape: true };
}

/** The rating of a fuse or relay as the model has it at the moment. */
function ratingOf(job: Job, grid: Grid, kind: string, at: string): Cell {
  if (kind !== 'fuse' && kind !== 'relay') return words('');
  const spot = job.harness.spots.find(({ id }) => id === at.split(', ')[0]);
  const run = job.result.evaluation.design.wires[spot?.wire ?? -1]?.run ?? 0;
  return shown(grid, kind === 'fuse' ? 'fuse_rating' : 'relay_rating', { run });
}
