/**
 * The sheet on which what the shop's parts bring with them stands, a row for each, and the formulas that look it up there by
 * the name in an input.
 */
import { address } from '../../basis/address.ts';
import { type At, bareLabel, type Quantity } from '../../basis/quantity.ts';
import { printUnit } from '../../basis/units.ts';
import type { Design } from '../../design/design.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { TABLE_AXES } from '../../model/tables.ts';
import { entryUnit, put, type Sheet } from '../cell.ts';
import { entering } from '../entering.ts';
import {
  DEVICES,
  type Device,
  followed,
  heldFor,
  isFixed,
  keyOf,
  type Offered,
  offered,
  usedAs,
  withPart,
} from './parts.ts';

export const SHELF = 'Shelf';
const TOP = 3;

/** Parts of one kind, below each other; an empty row ends those that may be chosen, and all of them. */
interface Block extends Offered {
  readonly device: Device;
  /** Row of the titles: the units stand below them, then the parts. */
  readonly top: number;
  /** First column of each quantity; one that goes across has several. */
  readonly columns: ReadonlyMap<QuantityName, number>;
}

const known = new WeakMap<Design, readonly Block[]>();

/** None where the design uses no part of the shop by name. */
function blocksOf(design: Design): readonly Block[] {
  const before = known.get(design);
  if (before !== undefined) return before;
  const blocks: Block[] = [];
  let top = TOP;
  for (const device of DEVICES) {
    const parts = offered(design, device);
    if (parts === null) continue;
    const columns = new Map<QuantityName, number>();
    let next = 1;
    for (const name of Object.keys(QUANTITIES) as QuantityName[]) {
      if (keyOf(name)?.[0] !== device) continue;
      columns.set(name, next);
      next += widthOf(name);
    }
    blocks.push({ device, top, columns, ...parts });
    top += 2 + parts.free.length + 1 + parts.fixed.length + 2;
  }
  known.set(design, blocks);
  return blocks;
}

const widthOf = (name: QuantityName): number => {
  const { across } = QUANTITIES[name];
  return across === undefined ? 1 : (TABLE_AXES[across]?.length ?? 1);
};

/** Whether any part may be chosen by its name. */
export const hasShelf = (design: Design): boolean => blocksOf(design).length > 0;

const blockOf = (design: Design, device: Device): Block =>
  blocksOf(design).find((block) => block.device === device) as Block;

const range = (column: number, first: number, last: number): string =>
  `${SHELF}!${address(first, column)}:${address(last, column)}`;

/** All of a column, with the empty row behind it: not every program looks anything up in a single cell. */
const columnOf = ({ top, free, fixed }: Block, column: number): string =>
  range(column, top + 2, top + 2 + free.length + 1 + fixed.length);

/** `Shelf!$A$6:$A$8`: the names that may be chosen in a run, or for the coil; null where it uses none. */
export function namesFor(design: Design, device: Device, at: At): string | null {
  const used = usedAs(design, device, at);
  if (used === undefined) return null;
  const { top, free, fixed } = blockOf(design, device);
  const row = top + 2 + free.length + 1 + fixed.indexOf(used.name);
  return isFixed(design, device, used) ? range(0, row, row) : range(0, top + 2, top + 1 + free.length);
}

/** What the part that is named in a cell has for a quantity, as a formula; empty where it has nothing. */
export function lookedUp(design: Design, name: QuantityName, at: At, named: string): string | null {
  const found = followed(design, name, at);
  if (found === null) return null;
  const block = blockOf(design, found.device);
  const column = (block.columns.get(name) as number) + (at.hot ?? 0);
  const value = `INDEX(${columnOf(block, column)},MATCH(${named},${columnOf(block, 0)},0),1)`;
  return `IFERROR(IF(${value}="","",${value}),"")`;
}

export function shelfSheet(design: Design): Sheet {
  const sheet: Sheet = [];
  const { system } = entering(design);
  put(sheet, 0, 0, { role: 'heading', value: 'Parts of the shop' });
  put(sheet, 1, 0, {
    role: 'about',
    value: 'What the parts bring with them that may be chosen by name on Inputs, in the units of Inputs.',
  });
  for (const { device, top, free, fixed, columns } of blocksOf(design)) {
    const rows = [...free, null, ...fixed];
    const at: At =
      device === 'coil' ? {} : { run: design.runs.findIndex((_, run) => usedAs(design, device, { run })) };
    put(sheet, top, 0, { role: 'label', value: TITLES[device] });
    rows.forEach((name, i) => {
      if (name !== null) put(sheet, top + 2 + i, 0, { role: 'given', value: name });
    });
    for (const [name, column] of columns) {
      const q: Quantity = QUANTITIES[name];
      const width = widthOf(name);
      const span = width > 1 ? { span: width } : {};
      put(sheet, top, column, { role: 'label', value: bareLabel(q.label), ...span });
      const unit = entryUnit(q, system);
      put(sheet, top + 1, column, { role: 'unit', value: unit === 'text' ? '' : printUnit(unit), ...span });
      rows.forEach((part, i) => {
        if (part === null) return;
        const own = withPart(design, device, at, part);
        for (let hot = 0; hot < width; hot++)
          put(sheet, top + 2 + i, column + hot, {
            role: 'given',
            value: heldFor(own, name, { ...at, hot }, system),
            unit,
          });
      });
    }
  }
  return sheet;
}

const TITLES: Readonly<Record<Device, string>> = { coil: 'Coils', fuse: 'Fuses', relay: 'Relays' };
