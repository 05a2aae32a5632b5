/** The sheet of the inputs as a page: what of it applies, what is grey, how wide the columns are. */
import { address } from '../../basis/address.ts';
import type { Design } from '../../design/design.ts';
import { inputValue, type Sheet } from '../../engine/cell.ts';
import { cellOf, members } from '../../engine/cells.ts';
import { deviceOf } from '../../engine/entered/check.ts';
import { deviceNamed, offered, withPart } from '../../engine/entered/parts.ts';
import { type Block, firstRow, INPUT_HEADINGS, titleRow } from '../../engine/layout.ts';
import { INPUTS } from '../../engine/sheets.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { LABELS, OWN_NOTES } from '../../saved/mark.ts';
import { entriesByKey } from './assumed.ts';
import { breaksOf, scaleOf } from './breaks.ts';
import type { Page } from './page.ts';

/** With more columns of entries than this they are narrower, for the sake of the print. */
const MANY = 5;
/** Widths of labels. The wider, the fewer of them take two lines, and the smaller is all of it on paper. */
const LABEL_WIDTHS = Array.from({ length: 21 }, (_, i) => 37 + 2 * i);
/** Widths of unit and notes; and of what is for the screen: check, range, what there is to know of runs. */
const UNIT = 6;
const NOTES = 12;
const RIGHT = [40, 36, 110];
/** On paper letters of 10 pt are not made smaller than by this for the sake of two pages, or of standing upright. */
const LEAST = 0.63;

export function inputsPage(grid: Grid, design: Design, cells: Sheet): Page {
  const { count, label: labels, notes } = grid.placement.columns;
  const entries = Array.from({ length: count }, () => (count > MANY ? 9 : 14));
  const hidden = idle(grid, design, cells);
  const starts = (parted: boolean): number[] =>
    inputBlocks(grid).flatMap((block) => startsOf(block, grid, parted ? hidden : null));
  const frozen = [INPUT_HEADINGS + 1, 0] as const;
  // The headings alone.
  const repeated = 1;
  const lying = (label: number, parted: boolean): Lying => {
    const printed = [label, UNIT, ...entries, NOTES];
    const landscape = scaleOf(printed, false) < LEAST;
    return {
      printed,
      landscape,
      breaks: breaksOf({ cells, widths: printed, frozen, repeated, landscape, hidden }, starts(parted)),
    };
  };
  // On as few pages as it goes; of those with the largest letters.
  const { printed, landscape, breaks } = LABEL_WIDTHS.flatMap((label) => [
    lying(label, false),
    lying(label, true),
  ])
    .filter((one, _, all) => one.landscape === all[0]?.landscape)
    .reduce((best, one) => (one.breaks.length < best.breaks.length ? one : best));
  return {
    cells,
    widths: [...printed, ...RIGHT],
    frozen,
    repeated,
    landscape,
    hidden,
    name: INPUTS,
    kind: 'inputs',
    breaks,
    printed: printed.length,
    taken: takenIn(grid, design),
    looks: [],
    names: [
      [OWN_NOTES, `${INPUTS}!${address(INPUT_HEADINGS, notes)}`],
      [LABELS, `${INPUTS}!${address(INPUT_HEADINGS, labels)}`],
    ],
  };
}

/** How it would lie on paper with labels of one width. */
interface Lying {
  readonly printed: readonly number[];
  readonly landscape: boolean;
  readonly breaks: readonly number[];
}

const inputBlocks = (grid: Grid): Block[] => grid.placement.blocks.filter(({ kind }) => kind === 'inputs');

/** Rows of a table of members, and of a list of single inputs, that stay together at both of its ends. */
const TOGETHER = { entries: 4, single: 2 } as const;

/**
 * Rows before which a page may end: before a block, and within a long table of members; within a list of single inputs, whose
 * headings are repeated, where the rows that are not in sight are given.
 */
function startsOf(block: Block, grid: Grid, hidden: ReadonlySet<number> | null): number[] {
  const { form, quantities, rows } = block;
  if (form !== 'entries' && (form !== 'single' || hidden === null)) return [titleRow(block)];
  const count = form === 'single' ? quantities.length : members(grid.axes, rows).length;
  const seen = Array.from({ length: count }, (_, i) => firstRow(block) + i).filter(
    (row) => !hidden?.has(row),
  );
  return [titleRow(block), ...seen.slice(TOGETHER[form], 1 - TOGETHER[form])];
}

/** Whether an input has no place in this design: it would be refused, or another way of saying it was taken. */
function isIdle(design: Design, name: QuantityName): boolean {
  const q = QUANTITIES[name];
  if (q.kind !== 'input') return false;
  const named = deviceNamed(name);
  if (named !== undefined) return offered(design, named) === null;
  const device = deviceOf(q);
  if (device !== null) return design.runs.every((run) => run[device] === null);
  const [root, part] = q.path.split('.');
  if (root === 'sweep') return design.sweep === null;
  if (part === 'sparks') return design.ignition.sparks === null;
  if (part === 'test_point') return coils(design).every((own) => own.test_point === null);
  if (name === 'peak_alone') return coils(design).every((own) => own.peak === null);
  // Fixed within a workbook.
  return name === 'stroke' || name === 'cylinders';
}

/** The coil, and those of the shop that may be chosen in its place. */
const coils = (design: Design): Design['coil'][] => [
  design.coil,
  ...(offered(design, 'coil')?.free ?? []).map((name) => withPart(design, 'coil', {}, name).coil),
];

/** Rows that are not in sight: of inputs that have no place, and the headings of blocks that have only such. */
function idle(grid: Grid, design: Design, cells: Sheet): ReadonlySet<number> {
  const rows = new Set<number>();
  const blocks = inputBlocks(grid);
  blocks.forEach((block, i) => {
    const none = block.quantities.filter((name) => isIdle(design, name));
    const next = blocks[i + 1];
    const end = next ? titleRow(next) : cells.length;
    if (none.length === block.quantities.length)
      for (let row = titleRow(block); row < end; row++) rows.add(row);
    else if (block.form !== 'entries')
      for (const name of none) rows.add(firstRow(block) + block.quantities.indexOf(name));
  });
  return rows;
}

/** Entries that hold what was taken where the design says nothing. */
function takenIn(grid: Grid, design: Design): NonNullable<Page['taken']> {
  const entries = entriesByKey(grid, design);
  return design.assumed.flatMap(({ path }) => {
    const entry = entries.get(path);
    const place = entry && grid.placement.entries.get(entry.name);
    const q = entry && QUANTITIES[entry.name];
    if (!place || q?.kind !== 'input') return [];
    const value = inputValue(design, q, entry.at, grid.placement.entering.system);
    const [row, column] = cellOf(place, entry.at);
    return value === null ? [] : [{ row, column, value }];
  });
}
