/** The bench sheet: what is cut, stripped and crimped, and how the first pieces are checked. */

import { printCitation } from '../basis/sources.ts';
import { crimp } from '../data/crimps.ts';
import { escaped } from '../pictures/elements.ts';
import { type CheckRow, checks, type Force } from './checks.ts';
import { type Cut, cutList, type Reel, reels } from './cut.ts';
import { document, name, opening, sizeName, table } from './html.ts';
import type { Job } from './job.ts';
import { endName } from './labels.ts';
import { terminalFor } from './parts.ts';
import { blank, kitValue } from './values.ts';

const STYLE = `
@page{size:landscape;margin:11mm}
@media screen{body{max-width:265mm}}
.write td{height:9mm}
`;

const text = (value: string | null): string => (value === null ? blank : name(value));
const reelName = ({ gauge, insulation, colour }: Reel): string[] => [
  sizeName(gauge),
  text(insulation),
  text(colour),
];

export function bench(job: Job): string {
  const { kit } = job.result.evaluation.design;
  const count = (what: string, value: number): string => kitValue(job, what, value, 'count');
  const body = [
    opening('Bench sheet', job),
    `<p>Batch of ${count('batch', job.batch)}. Cut length = length of the design + ${kitValue(job, 'allowance', kit.allowance, '%')} + ${kitValue(job, 'end_allowance', kit.end_allowance, 'small')} at each end. Cut to ± ${kitValue(job, 'cut_tolerance', kit.cut_tolerance, 'small')}, strip to ± ${kitValue(job, 'strip_tolerance', kit.strip_tolerance, 'small')}.</p>`,
    '<p>Eye protection at cutter, stripper and crimp press; guards closed. Hot air and solder burn: let it cool. Cut no strand when you strip.</p>',
    '<h2>Cut list, reel by reel</h2>',
    cuts(job),
    '<h2>Reels</h2>',
    table(
      ['Size', 'Insulation', 'Colour', 'Pieces in a kit', 'One kit', 'Batch with waste'],
      reels(job).map((r, i) => [
        ...reelName(r.reel),
        count(`pieces ${i}`, r.pieces),
        kitValue(job, `reel ${i}`, r.kit, 'reel'),
        kitValue(job, `batch ${i}`, r.batch, 'reel'),
      ]),
      [3, 4, 5],
    ),
    `<p class="about">Waste ${kitValue(job, 'waste', kit.waste, '%')} of what is cut.</p>`,
    '<h2>First cut piece, before the run starts</h2>',
    first(job),
    '<h2>First crimp, and the series</h2>',
    pull(job),
    `<p class="about">Crimp height as the terminal maker gives it for terminal, wire and die. Pull-out: hold the force for one minute; the forces are minimums. Of each size ${count('samples', kit.samples)} crimps of the batch are pulled apart, made with wire of the same reel and the same set-up: at the start, in the middle, at the end. Where no value is listed, NASA-STD-8739.4 asks for at least <span data-made="">${crimp.crimp_share.value * 100} %</span> of the wire’s tensile strength (${escaped(printCitation(crimp.crimp_share.source))}). One that fails stops the batch: set the press anew, and check everything since the last good one.</p>`,
    table(['Set up by', 'Checked by', 'Date', 'Press and die', 'Reel lots'], [['', '', '', '', '']]).replace(
      '<table>',
      '<table class="write">',
    ),
  ].join('\n');
  return document({ title: 'Bench sheet', job, body, style: STYLE });
}

function cuts(job: Job): string {
  const rows = cutList(job).map((cut: Cut) => {
    const { piece } = cut;
    const end = (which: 'from' | 'to'): string =>
      `${name(endName(piece[which]))}<br><span data-made="">${escaped(terminalFor(piece, which, job) ?? 'into the splice')}</span>`;
    return [
      `<b>${name(piece.id)}</b>`,
      ...reelName(cut.reel),
      kitValue(job, `cut ${piece.id}`, cut.cut, 'piece') +
        (cut.note === '' ? '' : `<br><span data-made="">${escaped(cut.note)}</span>`),
      kitValue(job, `strip ${piece.id}`, piece.strip, 'small'),
      end('from'),
      kitValue(job, `strip ${piece.id}`, piece.strip, 'small'),
      end('to'),
      kitValue(job, 'batch', job.batch, 'count'),
    ];
  });
  return table(
    [
      'Wire',
      'Size',
      'Insulation',
      'Colour',
      'Cut length',
      'Strip',
      'From, terminal',
      'Strip',
      'To, terminal',
      'Batch',
    ],
    rows,
    [9],
  );
}

const first = (job: Job): string => {
  const { kit } = job.result.evaluation.design;
  return table(
    [
      'Piece',
      'Size',
      'Insulation',
      'Colour',
      'Cut length',
      '±',
      'Measured',
      'Strip',
      '±',
      'Measured',
      'Strands whole',
    ],
    checks(job).map(({ first: cut, reel }) => [
      name(cut.piece.id),
      ...reelName(reel),
      kitValue(job, `cut ${cut.piece.id}`, cut.cut, 'piece'),
      kitValue(job, 'cut_tolerance', kit.cut_tolerance, 'small'),
      blank,
      kitValue(job, `strip ${cut.piece.id}`, cut.piece.strip, 'small'),
      kitValue(job, 'strip_tolerance', kit.strip_tolerance, 'small'),
      blank,
      '☐',
    ]),
  );
};

const forceCell = (job: Job, which: string, { pounds, source }: Force): string =>
  pounds === null
    ? `${blank}<br>no value for this size`
    : `${kitValue(job, which, pounds, 'force')}<br><span data-made="">${escaped(source)}</span>`;

const pull = (job: Job): string =>
  table(
    [
      'Size',
      'Insulation',
      'Colour',
      'Crimp height, maker',
      'Measured',
      'UL 486A',
      'MIL-T-7928',
      'First',
      'Samples',
    ],
    checks(job).map((row: CheckRow) => [
      ...reelName(row.reel),
      blank,
      blank,
      forceCell(job, `ul ${row.reel.gauge}`, row.ul),
      forceCell(job, `mil ${row.reel.gauge}`, row.mil),
      blank,
      Array.from({ length: row.samples }, () => blank).join(' '),
    ]),
  );
