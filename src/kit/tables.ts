/** The tables for machines: parts, cut list, reels, labels, as CSV. */

import { type CsvCell, csv, fixed } from '../writers/csv.ts';
import { cutList, reels } from './cut.ts';
import type { Job } from './job.ts';
import { endName, labels } from './labels.ts';
import { SMALL_PLACES } from './lengths.ts';
import { partsList } from './parts.ts';
import { released } from './release.ts';
import { terminalFor } from './terminals.ts';

/** Title and value of each column. */
type Columns<R> = readonly (readonly [title: string, of: (row: R) => CsvCell])[];

/** A length [m] in millimetres, to a tenth. */
const mm = (metres: number | null): CsvCell => (metres === null ? null : fixed(metres * 1000, SMALL_PLACES));
const metres = (value: number | null): CsvCell => (value === null ? null : fixed(value, 3));

/** Every row says whether it may be built from: a table is sorted and cut apart. */
function written<R>(job: Job, rows: readonly R[], columns: Columns<R>): string {
  const { words } = released(job.result);
  return csv([
    [...columns.map(([title]) => title), 'Status'],
    ...rows.map((row) => [...columns.map(([, of]) => of(row)), words]),
  ]);
}

export const partsTable = (job: Job): string =>
  written(job, partsList(job), [
    ['Part', ({ kind }) => kind],
    ['At', ({ at }) => at],
    ['What it must be', ({ what }) => what],
    ['Maker’s number or colour', ({ order }) => order],
    ['One kit', ({ kit, unit }) => (unit === 'm' ? metres(kit) : kit)],
    ['of them spare', ({ spares }) => spares],
    ['Batch', ({ batch, unit }) => (unit === 'm' ? metres(batch) : batch)],
    ['Unit', ({ unit }) => unit],
  ]);

export const cutTable = (job: Job): string =>
  written(job, cutList(job), [
    ['Wire', ({ piece }) => piece.id],
    ['Size', ({ reel }) => reel.gauge],
    ['Insulation', ({ reel }) => reel.insulation],
    ['Colour', ({ reel }) => reel.colour],
    ['Cut length [mm]', ({ cut }) => mm(cut)],
    ['Strip from [mm]', ({ piece }) => mm(piece.strip)],
    ['Strip to [mm]', ({ piece }) => mm(piece.strip)],
    ['Terminal from', ({ piece }) => terminalFor(piece, 'from', job)],
    ['Terminal to', ({ piece }) => terminalFor(piece, 'to', job)],
    ['From', ({ piece: { from } }) => endName(from)],
    ['To', ({ piece: { to } }) => endName(to)],
    ['Label from', ({ piece: { id, from, to } }) => `${id} ${endName(from)} → ${endName(to)}`],
    ['Label to', ({ piece: { id, from, to } }) => `${id} ${endName(to)} → ${endName(from)}`],
    ['Pieces in the batch', () => job.batch],
    ['Note', ({ note }) => note],
  ]);

export const reelTable = (job: Job): string =>
  written(job, reels(job), [
    ['Size', ({ reel }) => reel.gauge],
    ['Insulation', ({ reel }) => reel.insulation],
    ['Colour', ({ reel }) => reel.colour],
    ['Pieces in a kit', ({ pieces }) => pieces],
    ['One kit [m]', ({ kit }) => metres(kit)],
    ['Samples of the batch [m]', ({ samples }) => metres(samples)],
    ['Batch with waste and samples [m]', ({ batch }) => metres(batch)],
  ]);

export const labelTable = (job: Job): string =>
  written(job, labels(job), [
    ['Kind', ({ kind }) => kind],
    ['Of', ({ of }) => of],
    ['Stuck at', ({ at }) => at],
    ['Line 1', ({ lines: [first] }) => first ?? null],
    ['Line 2', ({ lines: [, second] }) => second ?? null],
    ['Line 3', ({ lines: [, , third] }) => third ?? null],
    ['Labels in the batch', () => job.batch],
  ]);
