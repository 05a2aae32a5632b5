/** The tables for machines: parts, cut list, reels, labels, as CSV. */

import { inUnit } from '../basis/shown.ts';
import { type CsvCell, csv, fixed } from '../writers/csv.ts';
import { cutList, reels } from './cut.ts';
import { type Job, shortDigest } from './job.ts';
import { endName, labels, wireLines } from './labels.ts';
import { placesOf, systemOf } from './lengths.ts';
import { partsList } from './parts.ts';
import type { Piece } from './places.ts';
import { released } from './release.ts';
import { shopText } from './shop-block.ts';
import { type Crimp, crimpKinds, crimpOf, stripOf } from './terminals.ts';

/** Title and value of each column. */
type Columns<R> = readonly (readonly [title: string, of: (row: R) => CsvCell])[];

/** Signs beyond ASCII that stand in our own texts, for machines that know no others. */
const ASCII: Readonly<Record<string, string>> = {
  '→': '->',
  '−': '-',
  '–': '-',
  '’': "'",
  '×': 'x',
  '²': '2',
  '°': ' deg ',
  Ω: 'ohm',
  '±': '+/-',
  '…': '...',
  '\u00a0': ' ',
};
const plainSigns = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: what is not ASCII is looked for
  text.replace(/[^\u0000-\u007f]/gu, (sign) => ASCII[sign] ?? '?');

/** A line to write on has no place in a table for machines: what is not known is nothing. */
const unblanked = (cell: CsvCell): CsvCell =>
  typeof cell === 'string'
    ? cell
        .replace(/\s*_{2,}(?: mm| °C| V| Ω)?/g, '')
        .replace(/(?:, )?\b(?:hole|takes up to|size|suppression|insulation)(?=,|$)/g, '')
        .replace(/^, |, $/g, '') || null
    : cell;

/** Every row says what it belongs to and whether it may be built from: a table is sorted and cut apart. */
function written<R>(job: Job, rows: readonly R[], columns: Columns<R>): string {
  const { words } = released(job.result);
  const { title } = job.result.evaluation.design;
  const { revision } = shopText(job);
  const about = [title, shortDigest(job), unblanked(revision), words];
  const cells = [
    [...columns.map(([name]) => name), 'Design', 'Digest', 'Revision', 'Status'],
    ...rows.map((row) => [...columns.map(([, of]) => unblanked(of(row))), ...about]),
  ];
  const { ascii = false, mark = false } = job.csv ?? {};
  const text = csv(
    ascii
      ? cells.map((row) => row.map((cell) => (typeof cell === 'string' ? plainSigns(cell) : cell)))
      : cells,
  );
  return mark ? `\ufeff${text}` : text;
}

/** A length [m] in the unit of a form, with the decimals of the sheet. */
function lengths(job: Job, form: 'piece' | 'small' | 'height' | 'reel') {
  const { unit, places } = placesOf(form, systemOf(job.result.evaluation.design.kit.units));
  return {
    unit,
    cell: (metres: number | null): CsvCell =>
      // Rounded as on the sheet, where a cut stands in metres.
      metres === null
        ? null
        : fixed(
            form === 'piece' && unit === 'mm' ? Number(metres.toFixed(3)) * 1000 : inUnit(metres, 'm', unit),
            places,
          ),
  };
}

export function partsTable(job: Job): string {
  const { unit, cell } = lengths(job, 'reel');
  const amount = (value: number | null, of: 'pcs' | 'm'): CsvCell => (of === 'm' ? cell(value) : value);
  return written(job, partsList(job), [
    ['Part', ({ kind }) => kind],
    ['At', ({ at }) => at],
    ['What it must be', ({ what }) => what],
    ['Maker’s number or colour', ({ order }) => order],
    ['One kit', (part) => amount(part.kit, part.unit)],
    ['of them spare', ({ spares }) => spares],
    ['Batch', (part) => amount(part.batch, part.unit)],
    ['Unit', (part) => (part.unit === 'm' ? unit : part.unit)],
  ]);
}

export function cutTable(job: Job): string {
  const kinds = crimpKinds(job);
  const { cut_tolerance } = job.result.evaluation.design.kit;
  const piece = lengths(job, 'piece');
  const small = lengths(job, 'small');
  const height = lengths(job, 'height');
  const of =
    (which: 'from' | 'to', value: (kind: Crimp | null, piece: Piece) => CsvCell) => (row: { piece: Piece }) =>
      value(crimpOf(kinds, row.piece, which, job), row.piece);
  const ends = (['from', 'to'] as const).flatMap(
    (which): Columns<{ piece: Piece }> => [
      [which === 'from' ? 'From' : 'To', ({ piece: own }) => endName(own[which])],
      [`Terminal ${which}`, of(which, (kind) => kind?.what ?? 'splice')],
      [`Terminal code ${which}`, of(which, (kind) => kind?.code ?? null)],
      [`Strip ${which} [${small.unit}]`, of(which, (kind, own) => small.cell(stripOf(kind, own, job)))],
      [`Crimp height ${which} [${height.unit}]`, of(which, (kind) => height.cell(kind?.height ?? null))],
      [`Die ${which}`, of(which, (kind) => kind?.tool ?? null)],
    ],
  );
  return written(job, cutList(job), [
    ['Wire', ({ piece: own }) => own.id],
    ['Size', ({ reel }) => reel.gauge],
    ['Insulation', ({ reel }) => reel.insulation],
    ['Colour', ({ reel }) => reel.colour],
    [`Cut length [${piece.unit}]`, ({ cut }) => piece.cell(cut)],
    [`Tolerance ± [${small.unit}]`, () => small.cell(cut_tolerance)],
    ...ends,
    ['Label from', ({ piece: own }) => wireLines(own, 'from').join(' ')],
    ['Label to', ({ piece: own }) => wireLines(own, 'to').join(' ')],
    ['Pieces in the batch', () => job.batch],
    ['Note', ({ note }) => note],
  ]);
}

export function reelTable(job: Job): string {
  const { unit, cell } = lengths(job, 'reel');
  return written(job, reels(job), [
    ['Size', ({ reel }) => reel.gauge],
    ['Insulation', ({ reel }) => reel.insulation],
    ['Colour', ({ reel }) => reel.colour],
    ['Pieces in a kit', ({ pieces }) => pieces],
    [`One kit [${unit}]`, ({ kit }) => cell(kit)],
    [`Samples of the batch [${unit}]`, ({ samples }) => cell(samples)],
    [`Batch with waste and samples [${unit}]`, ({ batch }) => cell(batch)],
  ]);
}

/** One set for a kit; the label of the kit itself once for each serial number. */
export const labelTable = (job: Job): string =>
  written(job, labels(job), [
    ['Kind', ({ kind }) => kind],
    ['Of', ({ of }) => of],
    ['Stuck at', ({ at }) => at],
    ['Line 1', ({ lines: [first] }) => first ?? null],
    ['Line 2', ({ lines: [, second] }) => second ?? null],
    ['Line 3', ({ lines: [, , third] }) => third ?? null],
    ['Line 4', ({ lines: [, , , fourth] }) => fourth ?? null],
    ['Serial', ({ kind, of }) => (kind === 'kit' ? of : null)],
    ['Labels in the batch', ({ kind }) => (kind === 'kit' && job.serials.length > 0 ? 1 : job.batch)],
  ]);
