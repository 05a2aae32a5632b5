/** The build record of one kit as a sheet; the limits of the drop follow the model. */

import { address } from '../../basis/address.ts';
import type { Sheet } from '../../engine/cell.ts';
import { put } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { cellFor } from '../../writers/workbook/links.ts';
import { table, words } from '../../writers/workbook/page.ts';
import { dropFormula, ofKit, ofModel } from '../bench-drop.ts';
import type { Job } from '../job.ts';
import { begin, formula, open } from './cells.ts';

const MILLIVOLTS = 1000;

export function recordSheet(job: Job, grid: Grid) {
  const cells: Sheet = [];
  const { kit, wires } = job.result.evaluation.design;
  let row = begin(
    cells,
    'Build record',
    'For one kit. Drop: steady test current from end to end, about 20 °C, not above the limit.',
    job,
    grid,
    6,
  );
  for (const title of ['Serial number', 'Assembled by, date', 'Tested by, date', 'Released by, date']) {
    put(cells, row, 0, { role: 'member', value: title });
    put(cells, row, 1, { ...open, span: 3 });
    row += 1;
  }
  put(cells, row, 0, { role: 'member', value: 'Test current' });
  put(cells, row, 1, { role: 'entry', value: kit.test_current, unit: 'A' });
  put(cells, row, 2, { role: 'unit', value: 'A' });
  const current = address(row, 1);
  row += 2;
  const inOrder = [...new Set(job.harness.pieces.map((piece) => piece.wire))].filter((i) => i !== null);
  table(
    cells,
    row,
    [
      { title: 'Wire' },
      { title: 'Continuity' },
      { title: 'Insulation' },
      { title: 'Drop at most', unit: 'mV' },
      { title: 'Drop, measured', unit: 'mV' },
    ],
    inOrder.map((wire) => {
      const known = ofModel(job, wire, (name, at) => cellFor(grid, name, at));
      const limit = dropFormula({ ...ofKit(job, wire), ...known, current, scale: MILLIVOLTS });
      return [words(wires[wire]?.id ?? ''), open, open, formula(limit, 'mV'), open];
    }),
  );
  return { cells, widths: [24, 12, 12, 12, 12, 12], landscape: false };
}
