/** The bench sheet: what is cut, stripped and crimped, and what is proved once for the batch. */

import { inUnit } from '../basis/shown.ts';
import { printCitation } from '../basis/sources.ts';
import { crimp } from '../data/crimps.ts';
import { DROP_TEST } from '../data/drop.ts';
import { escaped } from '../pictures/elements.ts';
import { printWritten } from '../views/print.ts';
import { checks, type Force, forceOf } from './checks.ts';
import { type Cut, cutList, pulled, type Reel, reels } from './cut.ts';
import { document, name, opening, sizeName, table, wireName } from './html.ts';
import type { Job } from './job.ts';
import { endName } from './labels.ts';
import { resolution } from './lengths.ts';
import { warranty } from './shop-block.ts';
import { type Crimp, crimpKinds, crimpOf, stripOf } from './terminals.ts';
import { blank, kitValue } from './values.ts';

const STYLE = `
@page{size:landscape;margin:14mm 11mm 13mm}
@media screen{body{max-width:265mm}}
.write td{height:8mm}
`;

const text = (value: string | null): string => (value === null ? blank : name(value));
const reelName = ({ gauge, insulation, colour }: Reel): string[] => [
  sizeName(gauge),
  text(insulation),
  text(colour),
];

/** `board` is the formboard as SVG. */
export function bench(job: Job, board: string): string {
  const { kit } = job.result.evaluation.design;
  const count = (what: string, value: number): string => kitValue(job, what, value, 'count');
  const kinds = crimpKinds(job);
  const body = [
    opening('Bench sheet', job),
    `<p>Batch of ${count('batch', job.batch)}, delivered ${kit.delivered}. ${lengthWords(job)}. Cut to ± ${kitValue(job, 'cut_tolerance', kit.cut_tolerance, 'small')}, strip to ± ${kitValue(job, 'strip_tolerance', kit.strip_tolerance, 'small')}.</p>`,
    '<p>Eye protection at cutter, stripper and crimp press; guards closed. Hot air and solder burn: let it cool. Cut no strand when you strip.</p>',
    '<h2>Cut list, reel by reel</h2>',
    cuts(job, kinds),
    '<h2>Reels</h2>',
    table(
      [
        'Size',
        'Insulation',
        'Colour',
        'Pieces in a kit',
        'One kit',
        'Samples of the batch',
        'Batch with waste and samples',
      ],
      reels(job).map((r, i) => [
        ...reelName(r.reel),
        count(`pieces ${i}`, r.pieces),
        kitValue(job, `reel ${i}`, r.kit, 'reel'),
        kitValue(job, `samples ${i}`, r.samples, 'reel'),
        kitValue(job, `batch ${i}`, r.batch, 'reel'),
      ]),
      [3, 4, 5, 6],
    ),
    `<p class="about">Waste ${kitValue(job, 'waste', kit.waste, '%')} of what is cut. Samples: ${count('pulled', pulled(job))} crimps of each terminal, ${kitValue(job, 'sample_length', kit.sample_length, 'small')} of wire for each one. Cut and crimp them first, from the same reels.</p>`,
    '<h2>First piece of each reel, once for the batch</h2>',
    first(job),
    '<h2>First crimp and samples, once for the batch: each terminal on each wire with its die</h2>',
    pull(job, kinds),
    `<p class="about">Crimp height as the terminal maker gives it for terminal, wire and die. Pull-out: hold the force for one minute; the forces are minimums. Pull apart the first crimp and ${count('samples', kit.samples)} samples: from the start, the middle and the end of the batch. Where no value is listed, NASA-STD-8739.4 asks for at least <span data-made="">${crimp.crimp_share.value * 100} %</span> of the wire’s tensile strength (${escaped(printCitation(crimp.crimp_share.source))}). One that fails stops the batch: reset the press, and check everything since the last good one.</p>`,
    table(
      ['Set up by', 'Checked by', 'Date', 'Press', 'Reel lots', 'Sheet no.'],
      [['', '', '', '', '', '']],
      [],
      'write',
    ),
    `<p class="about">On any feed, by a meter and under full load, these drops count as good at most: ${DROP_TEST.rows
      .map(({ part, drop }) => `${part} <span data-made="">${drop} V</span>`)
      .join(', ')} (${escaped(printCitation(DROP_TEST.source))}). The test card has those of this feed.</p>`,
    '<h2>What was taken where the design says nothing</h2>',
    assumed(job),
    warranty(job),
    `<div class="wide">${board}</div>`,
  ].join('\n');
  return document({ title: 'Bench sheet', job, body, style: STYLE });
}

/** How a cut length comes about. */
function lengthWords(job: Job): string {
  const { allowance, end_allowance, units } = job.result.evaluation.design.kit;
  const more = [
    ...(allowance > 0 ? [kitValue(job, 'allowance', allowance, '%')] : []),
    ...(end_allowance > 0 ? [`${kitValue(job, 'end_allowance', end_allowance, 'small')} at each end`] : []),
  ];
  return `Cut length = ${['length of the design', ...more].join(' + ')}, to <span data-made="">${resolution(units)}</span>`;
}

function cuts(job: Job, kinds: readonly Crimp[]): string {
  const rows = cutList(job).map((cut: Cut) => {
    const { piece } = cut;
    const end = (which: 'from' | 'to'): string[] => {
      const kind = crimpOf(kinds, piece, which, job);
      return [
        `<span class="whole">${name(endName(piece[which]))}</span>`,
        kind === null ? 'splice' : name(kind.code),
        kitValue(job, `strip ${piece.id} ${which}`, stripOf(kind, piece, job), 'small'),
      ];
    };
    return [
      wireName(piece.id),
      ...reelName(cut.reel),
      kitValue(job, `cut ${piece.id}`, cut.cut, 'piece') +
        (cut.note === '' ? '' : `<br><span data-made="">${escaped(cut.note)}</span>`),
      ...end('from'),
      ...end('to'),
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
      'From',
      'Terminal',
      'Strip',
      'To',
      'Terminal',
      'Strip',
      'Batch',
    ],
    rows,
    [11],
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

/** The shop’s own figure where it has one; else those of the tables by size, each with where it is from. */
const forces = (job: Job, { code, gauge, pull: own }: Crimp): string => {
  if (own !== null) return `${kitValue(job, `pull ${code}`, inUnit(own, 'N', 'lbf'), 'force')}, shop’s file`;
  const listed = (['ul', 'mil'] as const)
    .map((which) => forceOf(gauge, which))
    .flatMap((force: Force) =>
      force.pounds === null
        ? []
        : [
            `${kitValue(job, `pull ${code}`, force.pounds, 'force')} <span data-made="">${escaped(force.source)}</span>`,
          ],
    );
  return listed.length === 0 ? `${blank} no value for this size` : listed.join('<br>');
};

const pull = (job: Job, kinds: readonly Crimp[]): string =>
  table(
    [
      '',
      'Terminal',
      'Size',
      'Insulation',
      'Takes up to',
      'In a kit',
      'Die',
      'Crimp height',
      'Measured',
      'Pull-out, at least',
      'First',
      'Samples',
    ],
    kinds.map((kind) => [
      `<b class="whole">${name(kind.code)}</b>`,
      `<span data-made="">${escaped(kind.what)}</span>`,
      sizeName(kind.gauge),
      text(kind.insulation),
      kind.largest === null ? blank : sizeName(kind.largest),
      kitValue(job, `count ${kind.code}`, kind.count, 'count'),
      text(kind.tool),
      kitValue(job, `height ${kind.code}`, kind.height, 'height'),
      blank,
      forces(job, kind),
      blank,
      Array.from({ length: job.result.evaluation.design.kit.samples }, () => blank).join(' '),
    ]),
  );

/** Longest key that is never broken [characters]. */
const LONGEST_KEY = 40;

/** Units by their signs, in texts that are written as a design is. */
const signed = (text: string): string =>
  text.replace(/(\d) degC\b/g, '$1 °C').replace(/(\d) (m?)ohm\b/g, '$1 $2Ω');

const assumed = ({ result }: Job): string => {
  const { assumed: model, kit } = result.evaluation.design;
  const rows = [...model, ...kit.assumed].map(({ path, value, why }) => [
    `<code${path.length > LONGEST_KEY ? '' : ' class="whole"'}>${escaped(path)}</code>`,
    `<span data-made="">${escaped(signed(printWritten(value, kit.units)))}</span>`,
    `<span data-made="">${escaped(signed(why))}</span>`,
  ]);
  return rows.length === 0 ? '<p>Nothing.</p>' : table(['Key', 'Taken', 'Why'], rows);
};
