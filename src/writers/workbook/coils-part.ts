/** What the coils get: the charge on a stiff supply, what the worst coil is left with, and where the drop arises. */

import { address } from '../../basis/address.ts';
import type { Design } from '../../design/design.ts';
import { put } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import type { Chart } from '../../ooxml/chart.ts';
import { COIL, POINT, SHARE } from '../../views/views.ts';
import { heads, putView, row as rowOf } from './figures.ts';
import { cellFor, indexed, labels } from './links.ts';
import { type On, type Part, words } from './page.ts';

/** Rows that the chart takes at least. */
const CHART_TALL = 12;

/** Puts it at `top` of the sheet `name`, whose tables are `wide` columns wide. */
export function coilsPart(grid: Grid, design: Design, { name, cells, wide }: On, top: number): Part {
  let row = putView(
    cells,
    top,
    POINT.title,
    wide,
    heads(design, ['Point'], POINT),
    design.points.map(({ name }, point) => [
      words(name),
      ...rowOf(grid, design, POINT, { point, speed: point }),
    ]),
  );
  const bound = cellFor(grid, 'bound', {});
  put(cells, row - 1, 0, {
    role: 'about',
    formula: `IF(${bound}=1,"Only a peak current is known: all currents are an upper bound, and energies are unknown.","")`,
  });
  const coil = indexed(labels(grid, 'coil_no'), cellFor(grid, 'worst_coil', {}));
  row = putView(
    cells,
    row + 1,
    COIL.title,
    wide,
    heads(design, ['Point', 'Coil'], COIL),
    design.points.map(({ name }, point) => [
      words(name),
      { role: 'formula', formula: coil },
      ...rowOf(grid, design, COIL, { point }),
    ]),
  );
  const second = row;
  row = putView(
    cells,
    row,
    SHARE.title,
    wide,
    heads(design, ['Run'], SHARE),
    design.runs.map(({ name }, run) => [words(name), ...rowOf(grid, design, SHARE, { run })]),
  );

  // Runs take a row each, behind which one is left free.
  const [first, last] = [row - 1 - design.runs.length, row - 2];
  // The chart stands beside the table, which may be short.
  const end = Math.max(row, second + CHART_TALL);
  const chart: Chart = {
    kind: 'bars',
    title: SHARE.title,
    name: `${name}!${address(first - 2, 2)}`,
    names: `${name}!${address(first, 0)}:${address(last, 0)}`,
    values: `${name}!${address(first, 2)}:${address(last, 2)}`,
    axis: { title: 'Share of the drop of the worst path [%]', least: 0, format: '0.0' },
    rows: [second + 1, end - 1],
    columns: [4, wide],
  };
  return { row: end + 1, charts: [chart], starts: [top, second] };
}
