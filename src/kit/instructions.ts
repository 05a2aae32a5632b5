/** The instructions: what a person holds who fits the kit into a vehicle. */

import { type Delivered, FITTING, type Fitting } from '../design/kit.ts';
import { escaped } from '../pictures/elements.ts';
import { CAUTIONS } from '../writers/cautions.ts';
import { unparted } from './cut.ts';
import { fill, filled } from './fill.ts';
import { document, name, opening, sizeName, table, wireName } from './html.ts';
import type { Job } from './job.ts';
import { type Part, partsList } from './parts.ts';
import type { End, Piece } from './places.ts';
import { warranty } from './shop-block.ts';
import { crimpKinds, crimpOf } from './terminals.ts';
import { blank, kitValue, modelValue, terminal } from './values.ts';
import type { ListName, Words } from './words.ts';

const list = (tag: 'ol' | 'ul', lines: readonly string[], kind = ''): string =>
  `<${tag}${kind === '' ? '' : ` class="${kind}"`}>\n${lines.map((line) => `<li>${line}</li>`).join('\n')}\n</${tag}>`;

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
    list('ul', of('tools'), 'two'),
    '<h2>Fitting</h2>',
    fittings(job),
    // Before the drawing there is room on the page; behind the last step there may be none.
    warranty(job, true),
    `<div class="wide">${diagram}</div>`,
    '<h2>Wires</h2>',
    `<p class="about">${NAMES}${namesTerminals(job) ? ' T: terminal of the list of parts.' : ''}</p>`,
    wires(job),
    '<h2>Step by step</h2>',
    '<div class="two">',
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
    '</div>',
    '<h2>What must stay as it is</h2>',
    list('ul', of('ratings')),
    '<h2>When something is wrong</h2>',
    '<p>The cautions hold here as well: leads on with the ignition off, hands off with the ignition on.</p>',
    table(
      ['What you see', 'Likely cause', 'What to do'],
      words.faults.map(({ sign, cause, act }) => [sign, cause, act].map((text) => fill(text, job))),
    ),
    '<h2>When to stop and ask</h2>',
    `<p>${fill('Ask {contact}.', job)}</p>`,
    list('ul', of('stop'), 'two'),
    '<h2>Back to the original wiring</h2>',
    list('ol', of('back')),
  ].join('\n');
  return document({ title: 'Instructions', job, body });
}

const NAMES =
  'BAT: battery post. F: fuse. K: relay. S: splice. G: common ground point. IGN: original ignition wire. GND: engine ground. In bold: terminal number. A name with a slash and a figure is a piece of that wire.';

const FITTING_TITLES: Readonly<Record<Fitting, string>> = {
  battery_torque: 'Battery terminals, torque',
  ground_torque: 'Ground points, torque',
  heat_shrink: 'Heat-shrink and seals',
  bend_radius: 'Least bend radius',
  clip_spacing: 'Clips, distance',
  fuse_place: 'Place of the fuse',
  relay_place: 'Place of the relay',
  ground_place: 'Place of the ground points',
  trigger_place: 'Place where the ignition wire is picked up',
};

/** What only the shop knows, two to a row; and the pins of the coil connector. */
function fittings(job: Job): string {
  const { kit } = job.result.evaluation.design;
  const text = (value: string | null): string => (value === null ? blank : name(value));
  const all = [
    ...FITTING.map((key) => [escaped(FITTING_TITLES[key]), text(kit.fitting[key])]),
    [
      'Coil connector, pins',
      `supply ${text(kit.pins.supply)}, ground ${text(kit.pins.ground)}, control ${text(kit.pins.control)}`,
    ],
  ];
  const half = Math.ceil(all.length / 2);
  return table(
    ['What', 'How', 'What', 'How'],
    Array.from({ length: half }, (_, i) => [...(all[i] as string[]), ...(all[half + i] ?? ['', ''])]),
  );
}

/** Kinds of parts that are loose in the box, by what was made up before. */
const MADE_UP: Readonly<Record<Delivered, readonly string[]>> = {
  loose: [],
  crimped: ['wire', 'terminal'],
  assembled: [
    'wire',
    'terminal',
    'splice',
    'fuse holder',
    'relay socket',
    'coil connector',
    'sleeve',
    'label',
  ],
};

/** No line breaks between a number and its unit, nor between a count and what it counts. */
const unbroken = (text: string): string =>
  text.replace(/(?<=\d|×) (?=×|\d|AWG|SAE|mm|°C|[VAΩ]\b)/g, '\u00a0');

function box(job: Job): string {
  const { kit } = job.result.evaluation.design;
  const amount = (part: Part): string =>
    kitValue(job, `part ${part.kind} ${part.at}`, part.kit, part.unit === 'm' ? 'reel' : 'count');
  const made = MADE_UP[kit.delivered];
  const pieces = job.harness.pieces.length;
  const harness =
    kit.delivered === 'loose'
      ? []
      : [
          [
            kit.delivered === 'crimped' ? 'wires' : 'harness',
            kit.delivered === 'crimped'
              ? 'Cut, with their terminals and labels; the table of wires names each one'
              : 'Made up and tested: wires with terminals and labels, splices, fuse holder, relay socket, coil connectors; pins of the control wires open',
            blank,
            kitValue(job, 'pieces', kit.delivered === 'crimped' ? pieces : 1, 'count'),
          ],
        ];
  const rows = partsList(job)
    .filter((part) => !made.includes(part.kind))
    .map((part) => [
      `<span data-made="">${escaped(part.kind)}${part.at === '' ? '' : ` ${name(part.at)}`}</span>`,
      `<span data-made="">${escaped(unbroken(part.what))}</span>`,
      part.order === null ? blank : name(part.order),
      amount(part) +
        (part.spares === 0
          ? ''
          : `\u00a0(${kitValue(job, `spares ${part.kind}`, part.spares, 'count')}\u00a0spare)`),
    ]);
  const note =
    kit.delivered !== 'loose'
      ? ''
      : `<p class="about">Wire is counted with ${kitValue(job, 'allowance', kit.allowance, '%')} of its length and ${kitValue(job, 'end_allowance', kit.end_allowance, 'small')} at each end beyond the design.</p>`;
  return (
    table(['Part', 'What it must be', 'Maker’s number or colour', 'Quantity'], [...harness, ...rows], [3]) +
    note
  );
}

/** `coil 3`, terminal 15 */
const endOf = ({ spot, terminal: number }: End): string =>
  `${name(spot.id)}${number === null ? '' : `, ${terminal(number)}`}`;

/** Who crimps the wires has to know which terminal goes where. */
const namesTerminals = ({ result }: Job): boolean => result.evaluation.design.kit.delivered === 'loose';

function wires(job: Job): string {
  const { evaluation: e } = job.result;
  const kinds = crimpKinds(job);
  const end = (piece: Piece, which: 'from' | 'to'): string => {
    const code = namesTerminals(job) ? crimpOf(kinds, piece, which, job)?.code : undefined;
    return `${endOf(piece[which])}${code === undefined ? '' : ` · ${name(code)}`}`;
  };
  const whole = (html: string): string => `<span class="whole">${html}</span>`;
  const rows = job.harness.pieces.map((piece: Piece) => {
    const run = e.design.wires[piece.wire ?? -1]?.run;
    return [
      wireName(piece.id),
      whole(end(piece, 'from')),
      whole(end(piece, 'to')),
      run === undefined ? sizeName(piece.gauge) : modelValue(e, 'gauge', { run }),
      piece.insulation === null ? blank : name(piece.insulation),
      piece.colour === null ? blank : name(piece.colour),
      lengthOf(job, piece),
      run === undefined ? '' : modelValue(e, 'run_ambient', { run }),
      run === undefined ? '' : modelValue(e, 'run_bundle', { run }),
    ];
  });
  return table(
    [
      'Wire',
      'From',
      'To',
      'Size',
      'Insul.',
      'Colour',
      'Length, fitted',
      'Not hotter than',
      'Bundle, at most',
    ],
    rows,
  );
}

/** Of a conductor in one piece the model’s own length; of others what the kit knows, or the sum of what it does not. */
function lengthOf(job: Job, piece: Piece): string {
  const { evaluation: e } = job.result;
  const { wire } = piece;
  const open = piece.length === null ? unparted(piece, job) : null;
  if (open === null)
    return wire !== null && piece.length === e.number('wire_length', { wire })
      ? modelValue(e, 'wire_length', { wire })
      : kitValue(job, `length ${piece.id}`, piece.length, 'piece');
  return `${blank}, with ${open.pieces
    .filter((p) => p !== piece)
    .map((p) => name(p.id))
    .join(', ')} ${kitValue(job, `rest ${wire}`, open.left, 'piece')}`;
}
