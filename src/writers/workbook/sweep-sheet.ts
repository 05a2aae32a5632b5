/** The first feed run over engine speed, as a table and as charts. */

import { address } from '../../basis/address.ts';
import type { Design } from '../../design/design.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import type { QuantityName } from '../../model/model.ts';
import type { Axis, Chart, Series } from '../../ooxml/chart.ts';
import type { Look } from '../../pictures/chart.ts';
import { labelOf } from '../../views/print.ts';
import { quantityOf } from '../../views/view.ts';
import { SWEEP } from '../../views/views.ts';
import { charted } from './charted-sheet.ts';
import { heading, shown } from './links.ts';
import { lineIn } from './look.ts';
import { opening, type Page, table, warned, words } from './page.ts';

export const OVER_SPEED = 'Sweep';
const FIGURES = SWEEP.read.map(quantityOf);
const TABLE_WIDTHS = [5, ...FIGURES.map(() => 10)];
/** Columns under the charts, and rows that each of them takes. */
const CHART_WIDTHS = [2, ...Array.from({ length: 8 }, () => 10)];
const TALL = 17;
/** Speeds on a page at a size that can be read. */
const PER_PAGE = 40;

/** Nothing when the design has no sweep. */
export function sweepPage(grid: Grid, design: Design): Page | null {
  if (design.sweep === null) return null;
  const cells: Sheet = [];
  const run = design.runs[0]?.name ?? '';
  const top = opening(
    cells,
    OVER_SPEED,
    `Current in the first conductor of the feed, run “${run}”, over engine speed. The number of speeds is fixed in this workbook.`,
  );
  warned(cells);
  table(
    cells,
    top,
    [{ title: 'Row' }, ...FIGURES.map((name) => ({ title: headOf(name), unit: heading(name) }))],
    Array.from({ length: design.sweep.rows }, (_, i) => [
      words(String(i + 1)),
      ...FIGURES.map((name) => shown(grid, name, { speed: design.points.length + i })),
    ]),
  );
  const first = top + 2;
  const charts = chartsOf(grid, design, design.sweep.rows, first);
  // Within the area that is printed.
  put(cells, Math.max(first + charts.length * (TALL + 1), cells.length - 1), 0, { role: 'text', value: '' });
  return {
    name: OVER_SPEED,
    kind: 'shown',
    cells,
    widths: [...TABLE_WIDTHS, ...CHART_WIDTHS],
    frozen: [first, 0],
    repeated: 2,
    landscape: true,
    tall: Math.ceil(design.sweep.rows / PER_PAGE),
    looks: [],
    charts,
  };
}

/** The same figures are told of the run and of one coil. */
const headOf = (name: QuantityName): string =>
  `${labelOf(name)}${name.startsWith('main_') ? ', run' : ['peak', 'energy'].includes(name) ? ', coil' : ''}`;

const titleOf = (name: QuantityName): string => `${labelOf(name)} [${heading(name)}]`;
const SPEED: Axis = { title: titleOf('speed'), format: '0' };

function chartsOf(grid: Grid, design: Design, count: number, first: number): Chart[] {
  const of = (name: QuantityName): string => {
    const at = 1 + FIGURES.indexOf(name);
    return `${OVER_SPEED}!${address(first, at)}:${address(first + count - 1, at)}`;
  };
  const title = (name: QuantityName): string =>
    `${OVER_SPEED}!${address(first - 2, 1 + FIGURES.indexOf(name))}`;
  const curve = (what: QuantityName, look: Look, style = 0): Series => ({
    name: title(what),
    x: of('speed'),
    y: of(what),
    ...lineIn(look, style),
  });
  const { line } = charted(grid, design);
  const run = design.runs[0];
  const left = TABLE_WIDTHS.length + 1;
  const place = (i: number) => ({
    rows: [first + i * (TALL + 1), first + i * (TALL + 1) + TALL] as const,
    columns: [left, left + CHART_WIDTHS.length - 1] as const,
  });
  const currents: Chart = {
    kind: 'lines',
    title: `Current of run “${run?.name}” over engine speed`,
    x: SPEED,
    y: { title: 'Current [A]', least: 0, format: '0' },
    series: [
      curve('main_average', 'plain', 3),
      curve('main_effective', 'strong'),
      curve('main_peak', 'plain', 1),
      ...(run?.fuse === null ? [] : [{ ...line('fuse_rating'), ...lineIn('limit', 4) }]),
      { ...line('ampacity'), ...lineIn('limit', 2) },
    ],
    ...place(0),
  };
  const energy: Chart = {
    kind: 'lines',
    title: 'Energy of one coil on a stiff supply over engine speed',
    x: SPEED,
    y: { title: titleOf('energy'), least: 0, format: '0' },
    series: [curve('energy', 'strong')],
    ...place(1),
  };
  // Of a coil of which only a peak is known there is no energy to draw.
  const bound = design.coil.inductance === null && design.coil.test_point === null;
  return bound ? [currents] : [currents, energy];
}
