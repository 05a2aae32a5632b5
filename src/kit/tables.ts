/** The tables for machines: parts, cut list, reels, labels, as CSV. */

import { type CsvCell, csv, fixed } from '../writers/csv.ts';
import { cutList, reels } from './cut.ts';
import type { Job } from './job.ts';
import { endName, labels } from './labels.ts';
import { SMALL_PLACES } from './lengths.ts';
import { partsList, terminalFor } from './parts.ts';
import { released } from './release.ts';

/** Titles of the tables, by which a file of ours is known again; a last one says whether to build from it. */
export const PART_TITLES = [
  'Part',
  'At',
  'What it must be',
  'Maker’s number or colour',
  'One kit',
  'of them spare',
  'Batch',
  'Unit',
];
export const CUT_TITLES = [
  'Wire',
  'Size',
  'Insulation',
  'Colour',
  'Cut length [mm]',
  'Strip from [mm]',
  'Strip to [mm]',
  'Terminal from',
  'Terminal to',
  'From',
  'To',
  'Label from',
  'Label to',
  'Pieces in the batch',
  'Note',
];
export const REEL_TITLES = [
  'Size',
  'Insulation',
  'Colour',
  'Pieces in a kit',
  'One kit [m]',
  'Batch with waste [m]',
];
export const LABEL_TITLES = ['Kind', 'Of', 'Stuck at', 'Line 1', 'Line 2', 'Line 3', 'Labels in the batch'];

/** A length [m] in millimetres, to a tenth. */
const mm = (metres: number | null): CsvCell => (metres === null ? null : fixed(metres * 1000, SMALL_PLACES));
const metres = (value: number | null): CsvCell => (value === null ? null : fixed(value, 3));

/** Every row says whether it may be built from: a table is sorted and cut apart. */
const withStatus = (job: Job, titles: readonly string[], rows: readonly (readonly CsvCell[])[]): string => {
  const { words } = released(job.result);
  return csv([[...titles, 'Status'], ...rows.map((row) => [...row, words])]);
};

export const partsTable = (job: Job): string =>
  withStatus(
    job,
    PART_TITLES,
    partsList(job).map((p) => {
      const amount = (value: number | null): CsvCell => (p.unit === 'm' ? metres(value) : value);
      return [p.kind, p.at, p.what, p.order, amount(p.kit), p.spares, amount(p.batch), p.unit];
    }),
  );

export const cutTable = (job: Job): string =>
  withStatus(
    job,
    CUT_TITLES,
    cutList(job).map(({ piece, reel, cut, note }) => [
      piece.id,
      reel.gauge,
      reel.insulation,
      reel.colour,
      mm(cut),
      mm(piece.strip),
      mm(piece.strip),
      terminalFor(piece, 'from', job),
      terminalFor(piece, 'to', job),
      endName(piece.from),
      endName(piece.to),
      `${piece.id} ${endName(piece.from)} → ${endName(piece.to)}`,
      `${piece.id} ${endName(piece.to)} → ${endName(piece.from)}`,
      job.batch,
      note,
    ]),
  );

export const reelTable = (job: Job): string =>
  withStatus(
    job,
    REEL_TITLES,
    reels(job).map(({ reel, pieces, kit, batch }) => [
      reel.gauge,
      reel.insulation,
      reel.colour,
      pieces,
      metres(kit),
      metres(batch),
    ]),
  );

export const labelTable = (job: Job): string =>
  withStatus(
    job,
    LABEL_TITLES,
    labels(job).map(({ kind, of, at, lines: [first = null, second = null, third = null] }) => [
      kind,
      of,
      at,
      first,
      second,
      third,
      job.batch,
    ]),
  );
