/** The cut list as a sheet: lengths are formulas over the lengths of the design and the allowances on top. */

import { address } from '../../basis/address.ts';
import type { Cell, Sheet } from '../../engine/cell.ts';
import { put } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { cellFor } from '../../writers/workbook/links.ts';
import { section, table, words } from '../../writers/workbook/page.ts';
import { cutList, reelKey, reels } from '../cut.ts';
import type { Job } from '../job.ts';
import { endName } from '../labels.ts';
import type { Piece } from '../places.ts';
import { crimpKinds, crimpOf, stripOf } from '../terminals.ts';
import { AT_WRITING, begin, formula, given, open, ruler, size } from './cells.ts';

/** Where the allowances stand on the sheet of cuts, and what reads them. */
const ALLOWANCES = ['allowance', 'end_allowance', 'waste', 'batch'] as const;
type Allowance = (typeof ALLOWANCES)[number];
/** Columns of the design's length and of the cut, and of one kit's wire. */
const [LENGTH, CUT, KIT] = [4, 5, 4];

export function cutSheet(job: Job, grid: Grid) {
  const cells: Sheet = [];
  const { kit } = job.result.evaluation.design;
  const [piece, small, reel] = [ruler(job, 'piece'), ruler(job, 'small'), ruler(job, 'reel')];
  const top = begin(cells, 'Cut list', AT_WRITING, job, grid, 8);
  const settings: Readonly<Record<Allowance, [title: string, unit: string, cell: Cell]>> = {
    allowance: ['Extra length of each piece', '%', given(kit.allowance * 100, '%')],
    end_allowance: ['Extra at each end', piece.unit, piece.cell(kit.end_allowance)],
    waste: ['Wire of a reel that is lost', '%', given(kit.waste * 100, '%')],
    batch: ['Kits in the batch', '', given(job.batch, 'count')],
  };
  ALLOWANCES.forEach((key, i) => {
    const [title, unit, cell] = settings[key];
    put(cells, top + i, 0, { role: 'member', value: title, span: 2 });
    put(cells, top + i, 2, { ...cell, role: 'entry' });
    put(cells, top + i, 3, { role: 'unit', value: unit });
  });
  const at = (key: Allowance): string => address(top + ALLOWANCES.indexOf(key), 2);
  const first = top + ALLOWANCES.length + 1;
  const cuts = cutList(job);
  const kinds = crimpKinds(job);
  const terminal = (own: Piece, end: 'from' | 'to'): Cell[] => {
    const kind = crimpOf(kinds, own, end, job);
    return [
      words(endName(own[end])),
      words(kind === null ? 'splice' : `${kind.code}: ${kind.what}`),
      small.cell(stripOf(kind, own, job)),
    ];
  };
  const end = table(
    cells,
    first,
    [
      { title: 'Wire' },
      { title: 'Size' },
      { title: 'Insulation' },
      { title: 'Colour' },
      { title: 'Length of the design', unit: piece.unit },
      { title: 'Cut length', unit: piece.unit },
      { title: 'From' },
      { title: 'Terminal' },
      { title: 'Strip', unit: small.unit },
      { title: 'To' },
      { title: 'Terminal' },
      { title: 'Strip', unit: small.unit },
      { title: 'Batch' },
    ],
    cuts.map(({ piece: own }, i) => {
      const length = lengthFormula(job, grid, own);
      const whole = address(first + 2 + i, LENGTH, false);
      return [
        words(own.id),
        sizeCell(job, grid, own),
        words(own.insulation ?? ''),
        own.colour === null ? open : words(own.colour),
        length === null ? open : formula(`IFERROR(${piece.of(`(${length})`)},"")`, piece.shown),
        formula(
          `IF(ISNUMBER(${whole}),${whole}*(1+${at('allowance')}/100)+2*${at('end_allowance')},"")`,
          piece.shown,
        ),
        ...terminal(own, 'from'),
        ...terminal(own, 'to'),
        formula(at('batch'), 'count'),
      ];
    }),
  );
  const row = section(cells, end, 'Reels', 8);
  table(
    cells,
    row,
    [
      { title: 'Size' },
      { title: 'Insulation' },
      { title: 'Colour' },
      { title: 'Pieces in a kit' },
      { title: 'One kit', unit: reel.unit },
      { title: 'Samples of the batch', unit: reel.unit },
      { title: 'Batch with waste and samples', unit: reel.unit },
    ],
    reels(job).map(({ reel: own, pieces, samples }, i) => {
      const [one, more] = [KIT, KIT + 1].map((column) => address(row + 2 + i, column, false));
      const all = cuts.filter((cut) => reelKey(cut.reel) === reelKey(own)).map((cut) => cut.piece);
      const length = reelLength(grid, all);
      const ends = `2*${all.length}*${at('end_allowance')}`;
      // The allowance of an end stands in the unit of a piece.
      const inReel = reel.unit === 'ft' ? `${ends}/12` : `${ends}/1000`;
      return [
        size(own.gauge),
        words(own.insulation ?? ''),
        own.colour === null ? open : words(own.colour),
        given(pieces, 'count'),
        length === null
          ? open
          : formula(`${reel.of(length)}*(1+${at('allowance')}/100)+${inReel}`, reel.shown),
        reel.cell(samples),
        formula(`IF(ISNUMBER(${one}),${one}*${at('batch')}*(1+${at('waste')}/100)+${more},"")`, reel.shown),
      ];
    }),
  );
  return { cells, widths: [18, 11.5, 12, 12, 11, 11, 13, 26, 8, 11, 26, 8, 8], landscape: true };
}

/** Where the cut length of a piece stands, for other sheets of the kit. The sheet is laid out alike each time. */
export function cutCell(job: Job, grid: Grid, piece: Piece): string {
  const first = begin([], '', '', job, grid, 1) + ALLOWANCES.length + 1;
  const i = cutList(job).findIndex((cut) => cut.piece === piece);
  return `Cuts!${address(first + 2 + i, CUT)}`;
}

export const sizeCell = ({ result }: Job, grid: Grid, piece: Piece): Cell => {
  const run = result.evaluation.design.wires[piece.wire ?? -1]?.run;
  return run === undefined
    ? piece.gauge === null
      ? open
      : size(piece.gauge)
    : formula(`SUBSTITUTE(${cellFor(grid, 'gauge', { run })},"mm2","mm²")`);
};

/** The whole conductor by the model, its last piece what the others leave [m]. Null where that is not known. */
function lengthFormula({ harness }: Job, grid: Grid, piece: Piece): string | null {
  if (piece.length === null) return null;
  const own = harness.pieces.filter((p) => p.wire === piece.wire);
  if (piece.wire === null || own.at(-1) !== piece) return String(piece.length);
  const before = own.slice(0, -1).reduce((sum, p) => sum + (p.length ?? 0), 0);
  return `${cellFor(grid, 'wire_length', { wire: piece.wire })}${before === 0 ? '' : `-${before}`}`;
}

/** Length of all conductors of a reel [m]; one that is cut at an unknown place counts as a whole. Null where it is not known. */
function reelLength(grid: Grid, pieces: readonly Piece[]): string | null {
  const loose = pieces.filter((piece) => piece.wire === null).map(({ length }) => length);
  if (loose.includes(null)) return null;
  const wires = [...new Set(pieces.map((piece) => piece.wire))].filter((wire) => wire !== null);
  return `SUM(${[...wires.map((wire) => cellFor(grid, 'wire_length', { wire })), ...loose].join(',')})`;
}
