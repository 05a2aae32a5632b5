/** The cut list as a sheet: lengths are formulas over the lengths of the design and the allowances on top. */

import { address } from '../../basis/address.ts';
import type { Cell, Sheet } from '../../engine/cell.ts';
import { put } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { cellFor } from '../../writers/workbook/links.ts';
import { type Column, section, table, words } from '../../writers/workbook/page.ts';
import { cutList, reels } from '../cut.ts';
import type { Job } from '../job.ts';
import { endName } from '../labels.ts';
import type { Piece } from '../places.ts';
import { terminalFor } from '../terminals.ts';
import { AT_WRITING, begin, formula, given, open, size } from './cells.ts';

const CUT: Column[] = [
  { title: 'Wire', unit: '' },
  { title: 'Size', unit: '' },
  { title: 'Insulation', unit: '' },
  { title: 'Colour', unit: '' },
  { title: 'Length of the design', unit: 'm' },
  { title: 'Cut length', unit: 'mm' },
  { title: 'Strip both ends', unit: 'mm' },
  { title: 'From', unit: '' },
  { title: 'Terminal', unit: '' },
  { title: 'To', unit: '' },
  { title: 'Terminal', unit: '' },
  { title: 'In the batch', unit: '' },
];

/** Where the allowances stand on the sheet of cuts, and what reads them. */
const ALLOWANCES = ['allowance', 'end_allowance', 'waste', 'batch'] as const;
type Allowance = (typeof ALLOWANCES)[number];
const SETTINGS: Readonly<Record<Allowance, [string, string]>> = {
  allowance: ['Extra length of each piece', '%'],
  end_allowance: ['Extra at each end', 'mm'],
  waste: ['Wire of a reel that is lost', '%'],
  batch: ['Kits in the batch', 'count'],
};

export function cutSheet(job: Job, grid: Grid) {
  const cells: Sheet = [];
  const { design } = job.result.evaluation;
  const top = begin(cells, 'Cut list', AT_WRITING, job, grid, 8);
  const values: Record<Allowance, number> = {
    allowance: design.kit.allowance * 100,
    end_allowance: design.kit.end_allowance * 1000,
    waste: design.kit.waste * 100,
    batch: job.batch,
  };
  ALLOWANCES.forEach((key, i) => {
    const [title, unit] = SETTINGS[key];
    put(cells, top + i, 0, { role: 'member', value: title, span: 2 });
    put(cells, top + i, 2, { role: 'entry', value: values[key], unit });
    put(cells, top + i, 3, { role: 'unit', value: unit === 'count' ? '' : unit });
  });
  const at = (key: Allowance): string => address(top + ALLOWANCES.indexOf(key), 2);
  const first = top + ALLOWANCES.length + 1;
  const cuts = cutList(job);
  const end = table(
    cells,
    first,
    CUT,
    cuts.map(({ piece }, i) => {
      const length = lengthFormula(job, grid, piece);
      const own = address(first + 2 + i, 4, false);
      return [
        words(piece.id),
        sizeCell(job, grid, piece),
        words(piece.insulation ?? ''),
        piece.colour === null ? open : words(piece.colour),
        length ?? open,
        formula(
          `IF(ISNUMBER(${own}),${own}*1000*(1+${at('allowance')}/100)+2*${at('end_allowance')},"")`,
          'mm',
        ),
        piece.strip === null ? open : given(piece.strip * 1000, 'mm'),
        words(endName(piece.from)),
        words(terminalFor(piece, 'from', job) ?? 'splice'),
        words(endName(piece.to)),
        words(terminalFor(piece, 'to', job) ?? 'splice'),
        formula(at('batch'), 'count'),
      ];
    }),
  );
  const row = section(cells, end, 'Reels', 8);
  table(
    cells,
    row,
    [
      { title: 'Size', unit: '' },
      { title: 'Insulation', unit: '' },
      { title: 'Colour', unit: '' },
      { title: 'Pieces in a kit', unit: '' },
      { title: 'One kit', unit: 'm' },
      { title: 'Samples of the batch', unit: 'm' },
      { title: 'Batch with waste and samples', unit: 'm' },
    ],
    reels(job).map(({ reel, pieces, samples }, i) => {
      const kit = address(row + 2 + i, 4, false);
      const own = cuts.filter(
        (cut) =>
          cut.reel.gauge === reel.gauge &&
          cut.reel.insulation === reel.insulation &&
          cut.reel.colour === reel.colour,
      );
      return [
        size(reel.gauge),
        words(reel.insulation ?? ''),
        reel.colour === null ? open : words(reel.colour),
        given(pieces, 'count'),
        reelFormula(
          grid,
          own.map((cut) => cut.piece),
          at,
        ),
        given(samples, 'm'),
        formula(`IF(ISNUMBER(${kit}),${kit}*${at('batch')}*(1+${at('waste')}/100)+${samples},"")`, 'm'),
      ];
    }),
  );
  return { cells, widths: [18, 10, 12, 12, 11, 11, 10, 12, 28, 12, 28, 9], landscape: true };
}

export const sizeCell = ({ result }: Job, grid: Grid, piece: Piece): Cell => {
  const run = result.evaluation.design.wires[piece.wire ?? -1]?.run;
  return run === undefined
    ? piece.gauge === null
      ? open
      : size(piece.gauge)
    : formula(`SUBSTITUTE(${cellFor(grid, 'gauge', { run })},"mm2","mm²")`);
};

/** The whole conductor by the model; its last piece is what the others leave. Null where that is not known. */
function lengthFormula({ harness }: Job, grid: Grid, piece: Piece): Cell | null {
  if (piece.length === null) return null;
  if (piece.wire === null) return given(piece.length, 'm');
  const own = harness.pieces.filter((p) => p.wire === piece.wire);
  const whole = cellFor(grid, 'wire_length', { wire: piece.wire });
  if (own.at(-1) !== piece) return given(piece.length, 'm');
  const before = own.slice(0, -1).reduce((sum, p) => sum + (p.length ?? 0), 0);
  return formula(
    before === 0 ? `IF(${whole}="","",${whole})` : `IF(ISNUMBER(${whole}),${whole}-${before},"")`,
    'm',
  );
}

/** Length of all conductors of a reel with the allowances; one that is cut at an unknown place counts as a whole. */
function reelFormula(grid: Grid, pieces: readonly Piece[], at: (key: Allowance) => string): Cell {
  const wires = [...new Set(pieces.map((piece) => piece.wire))];
  const lengths: string[] = [];
  for (const wire of wires) {
    if (wire !== null) lengths.push(cellFor(grid, 'wire_length', { wire }));
    else
      for (const piece of pieces.filter((p) => p.wire === null)) {
        if (piece.length === null) return open;
        lengths.push(String(piece.length));
      }
  }
  const ends = `2*${pieces.length}*${at('end_allowance')}/1000`;
  return formula(`SUM(${lengths.join(',')})*(1+${at('allowance')}/100)+${ends}`, 'm');
}
