/** Currents, temperatures, drops, and what the worst coil is left with. */
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { cellFor, heading, labels, picked, shown } from './links.ts';
import { type Column, opening, type Page, section, table, words } from './page.ts';
import { worstOf } from './worst.ts';

const WIDTHS = [20, 19, 13, 11, 11, 11, 11, 11, 11, 11];
const WIDE = WIDTHS.length;

/** A column of numbers: its title, and the quantity that stands in it. */
type Figure = readonly [string, QuantityName];

const columns = (first: readonly string[], figures: readonly Figure[]): Column[] => [
  ...first.map((title) => ({ title, unit: '' })),
  ...figures.map(([title, name]) => ({ title, unit: heading(name) })),
];

export function resultsPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  let row = opening(
    cells,
    'Results',
    'Of each run the conductor that carries most is shown; the workings have all of them.',
  );
  for (const [title, make] of PARTS) {
    const [heads, rows] = make(grid, design);
    if (rows.length === 0) continue;
    row = section(cells, row, title, WIDE);
    row = table(cells, row, heads, rows);
    if (make === charges) {
      const bound = cellFor(grid, 'bound', {});
      put(cells, row - 1, 0, {
        role: 'about',
        formula: `IF(${bound}=1,"Only a peak current is known: all currents are a bound, energies are unknown.","")`,
      });
      row += 1;
    }
  }
  return {
    name: 'Results',
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [2, 0],
    landscape: false,
    looks: [],
  };
}

type Part = (grid: Grid, design: Design) => [Column[], Cell[][]];

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

const LOAD: readonly Figure[] = [
  ['Average current', 'average'],
  ['Effective current', 'effective'],
  ['Peak current', 'peak_current'],
  ['Average drop (meter)', 'drop_average'],
  ['Peak drop (scope)', 'drop_peak'],
];

const nameOf = (run: number): Cell => ({ role: 'formula', formula: worstOf(run, 'name') });

const loads: Part = (grid, design) => [
  columns(['Run', 'Conductor', 'Point'], LOAD),
  design.runs.flatMap((r, run) =>
    design.points.map((p, point) => {
      const row = `(${worstOf(run, 'worst')}-1)*${design.points.length}+${point + 1}`;
      return [words(r.name), nameOf(run), words(p.name), ...LOAD.map(([, name]) => picked(grid, name, row))];
    }),
  ),
];

const CONDUCTOR: readonly Figure[] = [
  ['Area', 'area'],
  ['Ampacity at its place', 'ampacity'],
  ['Effective current', 'worst_effective'],
  ['Ambient', 'run_ambient'],
  ['At most', 'wire_T'],
  ['Resistance', 'wire_ohm'],
];

/** A quantity of the run, or of its worst conductor. */
const ofRun = (grid: Grid, run: number, name: QuantityName): Cell =>
  QUANTITIES[name].per?.[0] === 'run'
    ? shown(grid, name, { run })
    : picked(grid, name, worstOf(run, 'worst'));

const conductors: Part = (grid, design) => [
  columns(['Run', 'Conductor', 'Size'], CONDUCTOR),
  design.runs.map((r, run) => [
    words(r.name),
    nameOf(run),
    { role: 'formula', formula: `SUBSTITUTE(${cellFor(grid, 'gauge', { run })},"mm2","mm²")` },
    ...CONDUCTOR.map(([, name]) => ofRun(grid, run, name)),
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

const FUSE: readonly Figure[] = [
  ['Rating', 'fuse_rating'],
  ['Load of the rating', 'fuse_load'],
  ['Ambient', 'fuse_ambient'],
];

const fuses: Part = (grid, design) => [
  columns(['Run', 'Type'], FUSE),
  design.runs.flatMap((r, run) =>
    r.fuse === null
      ? []
      : [
          [
            words(r.name),
            shown(grid, 'fuse_type', { run }),
            ...FUSE.map(([, name]) => ofRun(grid, run, name)),
          ],
        ],
  ),
];

const RELAY: readonly Figure[] = [
  ['Rating', 'relay_rating'],
  ['Load of the rating', 'relay_load'],
  ['Ambient', 'relay_ambient'],
  ['Pulls in hot at', 'relay_pull_in'],
  ['Has while cranking', 'relay_supply'],
  ['Drop of the contact', 'contact_drop'],
  ['Heat in the contact', 'contact_heat'],
];

const relays: Part = (grid, design) => [
  columns(['Run'], RELAY),
  design.runs.flatMap((r, run) =>
    r.relay === null ? [] : [[words(r.name), ...RELAY.map(([, name]) => ofRun(grid, run, name))]],
  ),
];

const PARTS: readonly [string, Part][] = [
  ['Charge of one coil on a stiff supply', charges],
  ['Currents and drops', loads],
  ['Conductors', conductors],
  ['Worst coil behind this feed', worstCoil],
  ['Fuses', fuses],
  ['Relays', relays],
];
