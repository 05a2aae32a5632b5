/** The instructions: what a person holds who fits the kit into a vehicle. */

import { escaped } from '../pictures/elements.ts';
import { CAUTIONS } from '../writers/cautions.ts';
import { fill, filled } from './fill.ts';
import { document, name, opening, sizeName, table } from './html.ts';
import type { Job } from './job.ts';
import { type Part, partsList } from './parts.ts';
import type { End, Piece } from './places.ts';
import { blank, kitValue, modelValue, terminal } from './values.ts';
import type { ListName, Words } from './words.ts';

const list = (tag: 'ol' | 'ul', lines: readonly string[]): string =>
  `<${tag}>\n${lines.map((line) => `<li>${line}</li>`).join('\n')}\n</${tag}>`;

/** `diagram` is the drawing as SVG. */
export function instructions(job: Job, words: Words, diagram: string): string {
  const of = (part: ListName): string[] => filled(words[part], job);
  const steps = (title: string, part: ListName): string =>
    of(part).length === 0 ? '' : `<h3>${escaped(title)}</h3>\n${list('ol', of(part))}`;
  const body = [
    opening('Instructions', job),
    '<div class="box"><h2>Cautions first</h2>',
    list('ul', [...CAUTIONS.map(escaped), ...of('cautions')]),
    '</div>',
    ...of('about').map((text) => `<p>${text}</p>`),
    '<h2>In the box</h2>',
    box(job),
    '<h2>Tools and materials</h2>',
    list('ul', of('tools')),
    '<h2>Wires</h2>',
    '<p class="about">BAT: battery post. F: fuse. K: relay. S: splice. G: common ground point. IGN: original ignition wire. GND: engine ground. In bold: terminal number. A name with a stroke and a figure is a piece of that wire.</p>',
    wires(job),
    `<div class="wide">${diagram}</div>`,
    '<h2>Step by step</h2>',
    steps('Before you start', 'prepare'),
    steps('Fuse and relay', 'mount'),
    steps('Wires', 'route'),
    steps('Crimps and splices', 'crimp'),
    steps('Grounds', 'ground'),
    steps('What switches the feed on', 'trigger'),
    steps('Coils, relay and battery', 'connect'),
    steps('Measure before there is power', 'measure'),
    steps('Power', 'power'),
    steps('First start', 'first_start'),
    '<h2>What must stay as it is</h2>',
    list('ul', of('ratings')),
    '<h2>When something is wrong</h2>',
    '<p>Battery and plugs can hurt: the cautions hold here as well.</p>',
    table(
      ['What you see', 'Likely cause', 'What to do'],
      words.faults.map(({ sign, cause, act }) => [sign, cause, act].map((text) => fill(text, job))),
    ),
    '<h2>When to stop and ask</h2>',
    list('ul', of('stop')),
    '<h2>Back to the original wiring</h2>',
    list('ol', of('back')),
    '<h2>What was assumed where the design says nothing</h2>',
    assumed(job),
  ].join('\n');
  return document({ title: 'Instructions', job, body });
}

function box(job: Job): string {
  const { kit } = job.result.evaluation.design;
  const amount = (part: Part): string =>
    kitValue(job, `part ${part.kind} ${part.at}`, part.kit, part.unit === 'm' ? 'reel' : 'count');
  const rows = partsList(job).map((part) => [
    `<span data-made="">${escaped(part.kind)}${part.at === '' ? '' : ` ${name(part.at)}`}</span>`,
    `<span data-made="">${escaped(part.what)}</span>`,
    part.order === null ? blank : name(part.order),
    amount(part) +
      (part.spares === 0
        ? ''
        : `<br>of them ${kitValue(job, `spares ${part.kind}`, part.spares, 'count')} spare`),
  ]);
  const note = `<p class="about">Wire is counted with ${kitValue(job, 'allowance', kit.allowance, '%')} of its length and ${kitValue(job, 'end_allowance', kit.end_allowance, 'small')} at each end beyond the design.</p>`;
  return table(['Part', 'What it must be', 'Maker’s number or colour', 'Quantity'], rows, [3]) + note;
}

/** `coil 3`, terminal 15 */
const endOf = ({ spot, terminal: number }: End): string =>
  `${name(spot.id)}${number === null ? '' : `, ${terminal(number)}`}`;

function wires(job: Job): string {
  const { evaluation: e } = job.result;
  const rows = job.harness.pieces.map((piece: Piece) => {
    const run = e.design.wires[piece.wire ?? -1]?.run;
    const spec = e.design.runs[run ?? -1];
    return [
      `<b>${name(piece.id)}</b>`,
      endOf(piece.from),
      endOf(piece.to),
      run === undefined ? sizeName(piece.gauge) : modelValue(e, 'gauge', { run }),
      piece.insulation === null ? blank : name(piece.insulation),
      piece.colour === null ? blank : name(piece.colour),
      lengthOf(job, piece),
      run === undefined ? '' : modelValue(e, 'run_ambient', { run }),
      spec === undefined ? '' : modelValue(e, 'run_bundle', { run: run as number }),
    ];
  });
  return table(
    [
      'Wire',
      'From',
      'To',
      'Size',
      'Insulation',
      'Colour',
      'Length, fitted',
      'Not hotter than',
      'In a bundle, at most',
    ],
    rows,
  );
}

/** Of a conductor in one piece the model’s own length; of others what the kit knows, or the sum of what it does not. */
function lengthOf(job: Job, piece: Piece): string {
  const { evaluation: e } = job.result;
  const { wire } = piece;
  if (wire === null || piece.length !== null)
    return wire !== null && piece.length === e.number('wire_length', { wire })
      ? modelValue(e, 'wire_length', { wire })
      : kitValue(job, `length ${piece.id}`, piece.length, 'piece');
  const open = job.harness.pieces.filter((p) => p.wire === wire && p.length === null);
  const known = job.harness.pieces
    .filter((p) => p.wire === wire)
    .reduce((sum, p) => sum + (p.length ?? 0), 0);
  const left = (e.design.wires[wire]?.length ?? 0) - known;
  return `${blank}, with ${open
    .filter((p) => p !== piece)
    .map((p) => name(p.id))
    .join(', ')} ${kitValue(job, `rest ${wire}`, left, 'piece')}`;
}

const assumed = ({ result }: Job): string => {
  const { assumed: model, kit } = result.evaluation.design;
  const rows = [...model, ...kit.assumed].map(({ path, value, why }) => [
    `<code>${escaped(path)}</code>`,
    `<span data-made="">${escaped(value)}</span>`,
    `<span data-made="">${escaped(why)}</span>`,
  ]);
  return rows.length === 0 ? '<p>Nothing.</p>' : table(['Key', 'Taken', 'Why'], rows);
};
