/** First piece of each reel, first crimp and samples of each terminal on each wire, as a sheet with open cells for what is measured. */

import { inUnit } from '../../basis/shown.ts';
import type { Cell, Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { section, table, words } from '../../writers/workbook/page.ts';
import { checks, forceOf } from '../checks.ts';
import type { Job } from '../job.ts';
import { systemOf } from '../lengths.ts';
import { crimpKinds } from '../terminals.ts';
import { begin, formula, given, open, ruler, size } from './cells.ts';
import { cutCell, sizeCell } from './cuts.ts';

const named = (text: string | null): Cell => (text === null ? open : words(text));

/** Of the columns before the samples. */
const WIDTHS = [30, 10, 11.5, 11, 10, 14, 11, 11, 12, 12, 13, 10];

export function checkSheet(job: Job, grid: Grid) {
  const cells: Sheet = [];
  const { kit } = job.result.evaluation.design;
  const [piece, small, height] = [ruler(job, 'piece'), ruler(job, 'small'), ruler(job, 'height')];
  const newton = systemOf(kit.units) === 'us' ? 'lbf' : 'N';
  const force = (value: number | null | undefined, unit: 'N' | 'lbf'): Cell =>
    value == null ? open : given(inUnit(value, unit, newton), newton);
  const row = begin(
    cells,
    'First piece of each reel, once for the batch',
    'Measured values go into the open cells.',
    job,
    grid,
    8,
  );
  const end = table(
    cells,
    row,
    [
      { title: 'Piece' },
      { title: 'Size' },
      { title: 'Insulation' },
      { title: 'Colour' },
      { title: 'Cut length', unit: piece.unit },
      { title: '±', unit: small.unit },
      { title: 'Measured', unit: piece.unit },
      { title: 'Strip', unit: small.unit },
      { title: '±', unit: small.unit },
      { title: 'Measured', unit: small.unit },
      { title: 'Strands whole' },
    ],
    checks(job).map(({ first, reel }) => [
      words(first.piece.id),
      sizeCell(job, grid, first.piece),
      named(reel.insulation),
      named(reel.colour),
      formula(cutCell(job, grid, first.piece), piece.shown),
      small.cell(kit.cut_tolerance),
      open,
      small.cell(first.piece.strip),
      small.cell(kit.strip_tolerance),
      open,
      open,
    ]),
  );
  const next = section(
    cells,
    end,
    'First crimp and samples, once for the batch: each terminal on each wire with its die',
    8,
  );
  table(
    cells,
    next,
    [
      { title: 'Terminal' },
      { title: 'Size' },
      { title: 'Insulation' },
      { title: 'Takes up to' },
      { title: 'In a kit' },
      { title: 'Die' },
      { title: 'Crimp height', unit: height.unit },
      { title: 'Measured', unit: height.unit },
      { title: 'Pull-out, shop’s file', unit: newton },
      { title: 'Pull-out, UL 486A', unit: newton },
      { title: 'Pull-out, MIL-T-7928', unit: newton },
      { title: 'First', unit: newton },
      ...Array.from({ length: kit.samples }, (_, i) => ({ title: `Sample ${i + 1}`, unit: newton })),
      { title: 'Where the forces are from' },
    ],
    crimpKinds(job).map((kind) => {
      const [ul, mil] = [forceOf(kind.gauge, 'ul'), forceOf(kind.gauge, 'mil')];
      return [
        words(`${kind.code}: ${kind.what}`),
        kind.gauge === null ? open : size(kind.gauge),
        named(kind.insulation),
        kind.largest === null ? open : size(kind.largest),
        given(kind.count, 'count'),
        named(kind.tool),
        height.cell(kind.height),
        open,
        force(kind.pull, 'N'),
        // As on the bench sheet: the shop's own figure takes the place of those by size alone.
        kind.pull === null ? force(ul.pounds, 'lbf') : words(''),
        kind.pull === null ? force(mil.pounds, 'lbf') : words(''),
        open,
        ...Array.from({ length: kit.samples }, () => open),
        {
          role: 'source',
          value: kind.pull === null ? [ul.source, mil.source].filter(Boolean).join('; ') : 'shop’s file',
        },
      ];
    }),
  );
  return {
    cells,
    widths: [...WIDTHS, ...Array.from({ length: kit.samples }, () => 10), 36],
    landscape: true,
  };
}
