/** The build record: one page for each serial number, to be filled in at the bench and kept. */

import { QUANTITIES } from '../model/model.ts';
import { escaped } from '../pictures/elements.ts';
import { dropLimit } from './bench-drop.ts';
import { checks } from './checks.ts';
import { document, name, sizeName, table } from './html.ts';
import { type Job, shortDigest } from './job.ts';
import { released } from './release.ts';
import { wrapText } from './text-size.ts';
import { blank, kitValue } from './values.ts';

/** Tight, so that the largest harness still takes one page of A4 or Letter. */
const STYLE = `
@page{margin:10mm}
body{font-size:8.5pt;line-height:1.2}
h1{font-size:13pt}
h2{font-size:10pt;margin:2mm 0 .8mm}
table{font-size:7.2pt;line-height:1.1;margin:.5mm 0 1mm}
th,td{padding:.45mm .8mm}
p{margin:0 0 .8mm}
.page{height:250mm;display:flex;flex-direction:column}
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
/** What is left of the page for the tests when nothing is cut, and what each row of first pieces takes of it [mm]. */
const ROOM = 150;
const FIRST_ROW = 3.6;
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
const LAYOUTS: readonly Layout[] = [7.2, 6.4, 5.6].flatMap((size) =>
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
    `<h1>Build record ${serial === null ? blank : name(serial)}</h1>`,
    `<p>${name(design.title)} · design <code>${shortDigest(job)}</code></p>`,
    ok ? '' : `<div class="held"><b>${escaped(words)}</b></div>`,
    table(
      ['', 'Name', 'Signature', 'Date'],
      ['Assembled by', 'Tested by', 'Released by'].map((who) => [who, '', '', '']),
    ).replace('<table>', '<table class="sign">'),
    '<h2>First piece of the batch</h2>',
    firstPieces(job),
    '<h2>Every wire</h2>',
    `<p>Continuity from end to end. Insulation: no connection to any other wire and to ground, coils unplugged, relay open and closed. Drop: steady ${kitValue(job, 'test_current', kit.test_current, 'A')} from a supply that limits the current, wire at about <span data-made="">20 °C</span>, from end to end with its fuse and relay contact; not above the limit. Fit the fuse for it, and energise the relay.</p>`,
    tests(job),
    '<h2>Photo</h2>',
    '<div class="photo">Whole harness with its labels, or the number of the photo: ____________________</div>',
    '</section>',
  ].join('\n');
}

const firstPieces = (job: Job): string =>
  table(
    ['Piece', 'Size', 'Cut length', 'Measured', 'Strip', 'Measured', 'Crimp height', 'Pull-out'],
    checks(job).map(({ first, reel }) => [
      name(first.piece.id),
      sizeName(reel.gauge),
      kitValue(job, `cut ${first.piece.id}`, first.cut, 'piece'),
      blank,
      kitValue(job, `strip ${first.piece.id}`, first.piece.strip, 'small'),
      blank,
      blank,
      blank,
    ]),
  );

function tests(job: Job): string {
  const { wires } = job.result.evaluation.design;
  const inOrder = [...new Set(job.harness.pieces.map((piece) => piece.wire))].filter((i) => i !== null);
  const rows = inOrder.map((i) => {
    const { id } = wires[i] as (typeof wires)[number];
    return [name(id), '☐', '☐', kitValue(job, `drop ${id}`, dropLimit(job, i), QUANTITIES.drop_average), ''];
  });
  const relays = job.harness.pieces
    .filter((piece) => piece.wire === null)
    .map((piece) => [name(piece.id), '☐', '☐', '', '']);
  const all = [...rows, ...relays];
  const names = [
    ...inOrder.map((i) => (wires[i] as (typeof wires)[number]).id),
    ...job.harness.pieces.filter((piece) => piece.wire === null).map((piece) => piece.id),
  ];
  const room = ROOM - checks(job).length * FIRST_ROW;
  const { columns, size } =
    LAYOUTS.find((layout) => heightOf(names, layout) <= room) ?? (LAYOUTS.at(-1) as Layout);
  const each = Math.ceil(all.length / columns);
  const parts = Array.from({ length: columns }, (_, i) =>
    table(['Wire', 'Cont.', 'Ins.', 'Drop ≤', 'Measured'], all.slice(i * each, (i + 1) * each)),
  );
  return `<div class="tests" style="grid-template-columns:repeat(${columns},minmax(0,1fr));font-size:${size}pt">${parts.join('\n')}</div>`;
}
