/** The build record: one page for each serial number, to be filled in at the bench and kept. What is proved once for a batch is on the bench sheet. */

import type { Delivered } from '../design/kit.ts';
import { QUANTITIES } from '../model/model.ts';
import { escaped } from '../pictures/elements.ts';
import { dropLimit } from './bench-drop.ts';
import { cutList } from './cut.ts';
import { document, name, table } from './html.ts';
import type { Job } from './job.ts';
import { endName } from './labels.ts';
import { type Net, nets } from './nets.ts';
import type { End } from './places.ts';
import { released } from './release.ts';
import { shopHead, warranty } from './shop-block.ts';
import { wrapText } from './text-size.ts';
import { blank, kitValue } from './values.ts';

/** Tight, so that the largest harness still takes one page of A4 or Letter. */
const STYLE = `
@page{margin:13mm 10mm 12mm}
body{font-size:8.5pt;line-height:1.2}
h1{font-size:13pt}
h2{font-size:10pt;margin:2mm 0 .8mm}
table{font-size:8pt;line-height:1.1;margin:.5mm 0 1mm}
th,td{padding:.45mm .8mm}
p{margin:0 0 .8mm}
.page{height:246mm;display:flex;flex-direction:column}
.sign td{height:8mm}
.tests{display:grid;gap:2mm;align-items:start}
.tests table{min-width:0;font-size:inherit}
td:first-child{min-width:0}
.photo{flex:1 1 auto;min-height:12mm;border:.3mm solid #000;padding:1mm}
.held{padding:1mm 2mm;margin:0 0 1.5mm}
.held b{font-size:11pt}
`;

/** Width of the page between its margins [mm]. */
const ACROSS = 190;
/** What is left of the page for the tests without the rows of the nets, and what each of those takes of it [mm]. */
const ROOM = 138;
const NET_ROW = 5;
/** A point [mm], the height of a line over its letters, and what a row has around its lines [mm]. */
const POINT = 25.4 / 72;
const LINE = 1.1;
const AROUND = 1.1;
/** Part of a column that the name of the wire takes. */
const NAME = 0.32;

interface Layout {
  readonly columns: number;
  /** [pt] */
  readonly size: number;
}
/** As few columns and as large letters as the page takes; the last one when it takes none. */
const LAYOUTS: readonly Layout[] = [8, 7.2, 6.4, 5.6].flatMap((size) =>
  [1, 2, 3, 4].map((columns) => ({ columns, size })),
);

/** Height of the tests with these names [mm]. */
function heightOf(names: readonly string[], { columns, size }: Layout): number {
  const room = ((ACROSS / columns) * NAME - 2) / (size * POINT);
  const each = Math.ceil(names.length / columns);
  const rows = names.map((n) => wrapText(n, room).length * size * POINT * LINE + AROUND);
  const sums = Array.from({ length: columns }, (_, i) =>
    rows.slice(i * each, (i + 1) * each).reduce((sum, row) => sum + row, 0),
  );
  return Math.max(...sums);
}

export function record(job: Job): string {
  const serials = job.serials.length > 0 ? job.serials : [null];
  return document({
    title: 'Build record',
    job,
    body: serials.map((serial) => page(job, serial)).join('\n'),
    style: STYLE,
  });
}

function page(job: Job, serial: string | null): string {
  const { design } = job.result.evaluation;
  const { kit } = design;
  const { ok, words } = released(job.result);
  return [
    '<section class="page">',
    shopHead(job),
    `<h1>Build record ${serial === null ? blank : name(serial)}</h1>`,
    `<p>${name(design.title)}, delivered ${kit.delivered}. Bench sheet of the batch, with first pieces and crimps: no. ${blank}, all passed ☐</p>`,
    ok ? '' : `<div class="held"><b>${escaped(words)}</b></div>`,
    table(
      ['', 'Name', 'Signature', 'Date'],
      [kit.delivered === 'assembled' ? 'Assembled by' : 'Packed by', 'Tested by', 'Released by'].map(
        (who) => [who, '', '', ''],
      ),
      [],
      'sign',
    ),
    '<h2>Every wire</h2>',
    `<p>${ABOUT[kit.delivered](job)}</p>`,
    tests(job),
    kit.delivered === 'assembled' ? insulation(job) : '',
    '<h2>Box</h2>',
    `<p>${BOX.map((what) => `<span class="whole">☐ ${what}</span>`).join(' &nbsp; ')}</p>`,
    '<h2>Photo</h2>',
    '<div class="photo">Whole kit with its labels, or the number of the photo: ____________________</div>',
    warranty(job),
    '</section>',
  ].join('\n');
}

const BOX = [
  'Parts counted against the list',
  'Fuse rating and type',
  'Labels at both ends',
  'Label with serial number and design',
  'Instructions, diagram and test card of this design',
];

const ABOUT: Readonly<Record<Delivered, (job: Job) => string>> = {
  loose: () => 'Wires cut and labelled; the fitter trims and crimps them.',
  crimped: () =>
    'Wires cut, crimped and labelled. Continuity from terminal to terminal; pull at every crimp by hand.',
  assembled: (job) =>
    `Continuity from end to end. Drop: steady ${kitValue(job, 'test_current', job.result.evaluation.design.kit.test_current, 'A')} from a supply that limits the current, wire at about <span data-made="">20 °C</span>, from end to end with its fuse and relay contact; not above the limit. Fit the fuse for it, and energise the relay.`,
};

/** Branches of one net are joined at their splices: what can be told apart are the nets. */
function insulation(job: Job): string {
  const { insulation_test } = job.result.evaluation.design.kit;
  return (
    `<p>Insulation: fuse out, relay out, coils unplugged. ${kitValue(job, 'volts', insulation_test.voltage, 'V')} direct voltage from each net to all others joined together and to the clamp of the shield or bench: at least ${kitValue(job, 'least', insulation_test.least, 'ohm')}. Branches of one net are joined: no test parts them, so look at each for damage. Keep hands off during the test and discharge the net after it.</p>` +
    table(
      ['Net', 'Insulation', 'Measured', 'Net', 'Insulation', 'Measured'],
      pairs(nets(job.harness).map((net) => [name(netName(net)), '☐', ''])),
    )
  );
}

/** Two rows beside each other. */
const pairs = (rows: readonly string[][]): string[][] => {
  const half = Math.ceil(rows.length / 2);
  return rows.slice(0, half).map((row, i) => [...row, ...(rows[half + i] ?? ['', '', ''])]);
};

/** Its first end, and how many others it has. */
const netName = ({ pieces, ends }: Net): string =>
  pieces.length === 1
    ? (pieces[0] as string)
    : `${pieces[0]} and ${pieces.length - 1} more, from ${endName(ends[0] as End)}`;

function tests(job: Job): string {
  const { wires, kit } = job.result.evaluation.design;
  const rows =
    kit.delivered === 'assembled'
      ? [
          ...[...new Set(job.harness.pieces.map((piece) => piece.wire))]
            .filter((i) => i !== null)
            .map((i) => {
              const { id } = wires[i] as (typeof wires)[number];
              return {
                id,
                cells: ['☐', kitValue(job, `drop ${id}`, dropLimit(job, i), QUANTITIES.drop_average), ''],
              };
            }),
          ...job.harness.pieces
            .filter((piece) => piece.wire === null)
            .map(({ id }) => ({ id, cells: ['☐', '', ''] })),
        ]
      : cutList(job).map(({ piece, cut }) => ({
          id: piece.id,
          cells: [
            kitValue(job, `cut ${piece.id}`, cut, 'piece'),
            ...(kit.delivered === 'loose' ? [] : ['☐']),
            '☐',
          ],
        }));
  const heads = {
    loose: ['Wire', 'Length', 'Labels'],
    crimped: ['Wire', 'Length', 'Cont.', 'Crimps'],
    assembled: ['Wire', 'Cont.', 'Drop ≤', 'Measured'],
  }[kit.delivered];
  const room =
    ROOM - (kit.delivered === 'assembled' ? 14 + Math.ceil(nets(job.harness).length / 2) * NET_ROW : 0);
  const names = rows.map(({ id }) => id);
  const { columns, size } =
    LAYOUTS.find((layout) => heightOf(names, layout) <= room) ?? (LAYOUTS.at(-1) as Layout);
  const each = Math.ceil(rows.length / columns);
  const parts = Array.from({ length: columns }, (_, i) =>
    table(
      heads,
      rows.slice(i * each, (i + 1) * each).map(({ id, cells }) => [name(id), ...cells]),
    ),
  );
  return `<div class="tests" style="grid-template-columns:repeat(${columns},minmax(0,1fr));font-size:${size}pt">${parts.join('\n')}</div>`;
}
