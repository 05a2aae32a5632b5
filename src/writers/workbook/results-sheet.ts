/** What the coils get: the charge on a stiff supply, what the worst coil is left with, and where the drop arises. */

import { address } from '../../basis/address.ts';
import type { Design } from '../../design/design.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import type { Chart } from '../../ooxml/chart.ts';
import { breaksOf } from './breaks.ts';
import { charted } from './charted-sheet.ts';
import { columns, type Figure, type Part, putPart } from './figures.ts';
import { cellFor, labels, picked, shown } from './links.ts';
import { opening, type Page, words } from './page.ts';

const NAME = 'Results';
const WIDTHS = [20, 13, 13, 13, 13, 13, 13, 13, 13];
const WIDE = WIDTHS.length;

export function resultsPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  let row = opening(cells, NAME, 'What each coil draws on a stiff supply, and what this feed leaves of it.');
  row = putPart(cells, row, 'Charge of one coil on a stiff supply', WIDE, charges(grid, design));
  const bound = cellFor(grid, 'bound', {});
  put(cells, row - 1, 0, {
    role: 'about',
    formula: `IF(${bound}=1,"Only a peak current is known: all currents are a bound, energies are unknown.","")`,
  });
  row = putPart(cells, row + 1, 'Worst coil behind this feed', WIDE, worstCoil(grid, design));
  const second = row;
  row = putPart(
    cells,
    row,
    'Where the drop of the worst coil’s path arises, worst point',
    WIDE,
    drops(grid, design),
  );

  // Runs take a row each, behind which one is left free.
  const [first, last] = [row - 1 - design.runs.length, row - 2];
  const tall = 6 + Math.ceil(1.5 * design.runs.length);
  const chart: Chart = {
    kind: 'bars',
    title: 'Share of the drop by run',
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
    ...laid,
    looks: [],
    charts: [chart],
    breaks: breaksOf(laid, [3, second, row]),
  };
}

const CHARGE: readonly Figure[] = [
  ['Engine speed', 'speed'],
  ['Supply', 'supply'],
  ['Dwell asked for', 'dwell_asked'],
  ['Dwell given', 'dwell'],
  ['Duty', 'duty'],
  ['Peak current', 'peak'],
  ['Energy', 'energy'],
];

const charges: Part = (grid, design) => [
  [...columns(['Point'], CHARGE), { title: 'Dwell cut short', unit: '' }],
  design.points.map((p, speed) => [
    words(p.name),
    ...CHARGE.map(([, name]) => shown(grid, name, { speed })),
    { role: 'formula', formula: `IF(${cellFor(grid, 'clipped', { speed })}=1,"yes","no")` },
  ]),
];

const COIL: readonly Figure[] = [
  ['Drop of its path', 'coil_drop'],
  ['Supply at the coil', 'coil_supply'],
  ['Peak current', 'coil_peak'],
  ['Energy', 'coil_energy'],
  ['Energy kept', 'energy_kept'],
  ['Dwell that wins it back', 'coil_winning_dwell'],
];

const worstCoil: Part = (grid, design) => [
  columns(['Point', 'Coil'], COIL),
  design.points.map((p, point) => {
    const coil = cellFor(grid, 'worst_coil', {});
    const row = `(${coil}-1)*${design.points.length}+${point + 1}`;
    return [
      words(p.name),
      { role: 'formula', formula: `INDEX(${labels(grid, 'coil_no')},${coil},1)` },
      ...COIL.map(([, name]) => picked(grid, name, row)),
    ];
  }),
];

/** The drops of all runs together are the drop of the worst path. */
const drops: Part = (grid, design) => {
  const { dropsOf } = charted(grid, design);
  const total = cellFor(grid, 'worst_drop', {});
  return [
    [
      { title: 'Run', unit: '' },
      { title: 'Drop', unit: 'mV' },
      { title: 'Share', unit: '%' },
    ],
    design.runs.map((r, run) => [
      words(r.name),
      { role: 'formula', formula: `SUM(${dropsOf(run)})*1000`, unit: 'mV' },
      { role: 'formula', formula: `IF(${total}>0,SUM(${dropsOf(run)})/${total}*100,0)`, unit: '%' },
    ]),
  ];
};
