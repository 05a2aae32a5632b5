/** The sheet of the inputs as a page: what of it applies, what is grey, how wide the columns are. */
import { address } from '../../basis/address.ts';
import type { Design } from '../../design/design.ts';
import { inputValue, type Sheet } from '../../engine/cell.ts';
import { cellOf, members } from '../../engine/cells.ts';
import { deviceOf } from '../../engine/entered/check.ts';
import { type Block, firstRow, INPUT_HEADINGS, titleRow } from '../../engine/layout.ts';
import { INPUTS } from '../../engine/sheets.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { OWN_NOTES } from '../../saved/mark.ts';
import { entriesByKey } from './assumed.ts';
import { breaksOf } from './breaks.ts';
import type { Page } from './page.ts';

/** With more columns of entries than this they are narrower, for the sake of the print. */
const MANY = 5;
/** Widths of label, unit and range; of notes, check, and what there is to know. */
const LEFT = [58, 6.5, 13];
const RIGHT = [16, 14, 90];

export function inputsPage(grid: Grid, design: Design, cells: Sheet): Page {
  const { count, notes, check } = grid.placement.columns;
  const widths = [...LEFT, ...Array.from({ length: count }, () => (count > MANY ? 9.5 : 14)), ...RIGHT];
  const hidden = idle(grid, design, cells);
  const page = { cells, widths, frozen: [INPUT_HEADINGS + 1, 0], landscape: false, hidden } as const;
  const starts = inputBlocks(grid).flatMap((block) => startsOf(block, grid));
  return {
    ...page,
    name: INPUTS,
    kind: 'inputs',
    breaks: breaksOf({ ...page, widths: widths.slice(0, check + 1) }, starts),
    // What there is to know of the inputs of runs is for the screen.
    printed: check + 1,
    taken: takenIn(grid, design),
    looks: [],
    names: [[OWN_NOTES, `${INPUTS}!${address(INPUT_HEADINGS, notes)}`]],
  };
}

const inputBlocks = (grid: Grid): Block[] => grid.placement.blocks.filter(({ kind }) => kind === 'inputs');

/** Rows before which a page may end: never behind a heading, and not within the table of the runs. */
function startsOf(block: Block, grid: Grid): number[] {
  const { form, rows, quantities } = block;
  const count =
    form === 'entries' ? members(grid.axes, rows).length : form === 'single' ? quantities.length : 1;
  const first = firstRow(block);
  return [titleRow(block), ...Array.from({ length: count - 1 }, (_, i) => first + 1 + i)];
}

/** Whether an input has no place in this design: it would be refused, or another way of saying it was taken. */
function isIdle(design: Design, name: QuantityName): boolean {
  const q = QUANTITIES[name];
  if (q.kind !== 'input') return false;
  const device = deviceOf(q);
  if (device !== null) return design.runs.every((run) => run[device] === null);
  const [root, part] = q.path.split('.');
  if (root === 'sweep') return design.sweep === null;
  if (part === 'sparks') return design.ignition.sparks === null;
  if (part === 'test_point') return design.coil.test_point === null;
  if (name === 'peak_alone') return design.coil.peak === null;
  // Fixed within a workbook.
  return name === 'stroke' || name === 'cylinders';
}

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
