/** Which conductor of each run carries most: the pages show that one. */

import { address } from '../../basis/address.ts';
import type { Design } from '../../design/design.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { cellFor, indexed, labels } from './links.ts';
import { opening, words } from './page.ts';

export const WORST = 'Worst';
const TOP = 4;
const COLUMNS = { first: 1, worst: 2, name: 3 } as const;

/** Address of the worst conductor's number, or of its name. */
export const worstOf = (run: number, what: 'worst' | 'name'): string =>
  `${WORST}!${address(TOP + run, COLUMNS[what])}`;

export function worstSheet(grid: Grid, design: Design): Sheet {
  const sheet: Sheet = [];
  opening(
    sheet,
    'Worst conductors',
    'The conductor of each run with the largest effective current; Results shows these.',
  );
  ['Run', 'Its first conductor', 'Worst conductor', 'Name'].forEach((value, i) => {
    put(sheet, TOP - 1, i, { role: 'label', value });
  });
  design.runs.forEach((run, i) => {
    const own = design.wires.flatMap((w, j) => (w.run === i ? [j] : []));
    const [first, last] = [own[0] as number, own.at(-1) as number];
    const load = (wire: number): string => cellFor(grid, 'worst_effective', { wire });
    const loads = `${load(first)}:${load(last).split('!')[1]}`;
    const row = TOP + i;
    put(sheet, row, 0, words(run.name));
    put(sheet, row, COLUMNS.first, { role: 'given', value: first + 1 });
    put(sheet, row, COLUMNS.worst, {
      role: 'formula',
      formula: `${address(row, COLUMNS.first)}-1+MATCH(${cellFor(grid, 'run_effective', { run: i })},${loads},0)`,
    });
    put(sheet, row, COLUMNS.name, {
      role: 'formula',
      formula: indexed(labels(grid, 'wire_ohm'), address(row, COLUMNS.worst)),
    });
  });
  return sheet;
}
