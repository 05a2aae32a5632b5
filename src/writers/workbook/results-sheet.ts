/** What the coils get: the charge on a stiff supply, what the worst coil is left with, and where the drop arises. */

import { address } from '../../basis/address.ts';
import type { Design } from '../../design/design.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import type { Chart } from '../../ooxml/chart.ts';
import { COIL, POINT, SHARE } from '../../views/views.ts';
import { breaksOf } from './breaks.ts';
import { heads, putView, row as rowOf } from './figures.ts';
import { cellFor, indexed, labels } from './links.ts';
import { opening, type Page, warned, words } from './page.ts';

const NAME = 'Results';
const WIDTHS = [20, 13, 13, 13, 13, 13, 13, 13, 13];
const WIDE = WIDTHS.length;

export function resultsPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  let row = opening(cells, NAME, 'What each coil draws on a stiff supply, and what this feed leaves of it.');
  warned(cells);
  row = putView(
    cells,
    row,
    POINT.title,
    WIDE,
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
    WIDE,
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
    WIDE,
    heads(design, ['Run'], SHARE),
    design.runs.map(({ name }, run) => [words(name), ...rowOf(grid, design, SHARE, { run })]),
  );

  // Runs take a row each, behind which one is left free.
  const [first, last] = [row - 1 - design.runs.length, row - 2];
  const tall = 6 + Math.ceil(1.5 * design.runs.length);
  const chart: Chart = {
    kind: 'bars',
    title: SHARE.title,
    name: `${NAME}!${address(first - 2, 2)}`,
    names: `${NAME}!${address(first, 0)}:${address(last, 0)}`,
    values: `${NAME}!${address(first, 2)}:${address(last, 2)}`,
    axis: { title: 'Share of the drop of the worst path [%]', least: 0, format: '0.0' },
    rows: [row, row + tall],
    columns: [0, WIDE],
  };
  // The chart lies within the area that is printed.
  put(cells, row + tall, 0, { role: 'text', value: '' });
  const laid = { cells, widths: WIDTHS, frozen: [2, 0], landscape: false } as const;
  return {
    name: NAME,
    kind: 'shown',
    tall: 1,
    ...laid,
    looks: [],
    charts: [chart],
    breaks: breaksOf(laid, [3, second, row]),
  };
}
