/** Fills the places with cells: values, and one formula for each member of a formula's quantity. */

import { address } from '../basis/address.ts';
import type { At, Axis, Input, Quantity } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import { listOf } from '../design/spelled.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { type Cell, entryUnit, inputValue, put, type Role, type Sheet, turned } from './cell.ts';
import { deviceOf } from './entered/check.ts';
import { followed, PART_OF, usedAs } from './entered/parts.ts';
import { CHECKS, type Checked, checkedOf, checksSheet, spellingOf, wrongInRow } from './entered/sheet.ts';
import { hasShelf, lookedUp, SHELF, shelfSheet } from './entered/shelf.ts';
import { SPELLINGS, soldFormula, spellingsSheet, wordFormula } from './entered/spellings.ts';
import { blockHeading, inputHeading, sheetHeading } from './headings.ts';
import { type Block, firstRow, type Place } from './layout.ts';
import { cellOf, memberName, members } from './places.ts';
import { remarkName } from './remarks.ts';
import { INPUTS } from './sheets.ts';
import { type Grid, translate } from './translate.ts';

export type { Cell, Role, Sheet } from './cell.ts';
export { cellOf, members } from './places.ts';

/** Every working sheet of a design, by name. */
export function workings(grid: Grid, design: Design): Map<string, Sheet> {
  const sheets = new Map<string, Sheet>();
  const checked = checkedOf(grid, design);
  for (const [name, about] of grid.placement.sheets) {
    const sheet: Sheet = [];
    sheetHeading(about, grid.placement.columns, sheet);
    sheets.set(name, sheet);
  }
  for (const block of grid.placement.blocks) {
    const sheet = sheets.get(block.sheet) as Sheet;
    if (block.kind === 'inputs') inputHeading(grid, design, block, sheet, checked);
    else blockHeading(grid, block, sheet);
    if (block.form === 'table') memberNames(grid, block, sheet);
    for (const name of block.quantities) values(grid, design, block, name, sheet, checked);
    if (block.kind === 'inputs') checkColumn(grid, design, block, sheet, checked);
  }
  sheets.set(CHECKS, checksSheet(grid, design, checked));
  sheets.set(SPELLINGS, spellingsSheet());
  if (hasShelf(design)) sheets.set(SHELF, shelfSheet(design));
  return sheets;
}

/** What is wrong in each row of a block of inputs, and room for a note. */
function checkColumn(grid: Grid, design: Design, block: Block, sheet: Sheet, checked: Checked): void {
  const { notes, check } = grid.placement.columns;
  const first = block.quantities[0] as QuantityName;
  const place = grid.placement.entries.get(first) as Place;
  const rows: [number, string][] =
    block.form === 'entries'
      ? members(grid.axes, block.rows).map((at) => {
          return [cellOf(place, at)[0], remarkName(first, memberName(grid.axes, block.rows, at))];
        })
      : block.quantities.map((name, i) => [firstRow(block) + i, name]);
  for (const [row, name] of rows) {
    put(sheet, row, notes, { role: 'remark', value: design.remarks.get(name) ?? null });
    put(sheet, row, check, { role: 'warning', formula: wrongInRow(checked, row) });
  }
}

function values(
  grid: Grid,
  design: Design,
  block: Block,
  name: QuantityName,
  sheet: Sheet,
  checked: Checked,
): void {
  const entry = block.kind === 'inputs';
  const place = (entry ? grid.placement.entries : grid.placement.places).get(name) as Place;
  const content = filler(grid, design, name, entry, place.sheet, checked);
  const { across } = QUANTITIES[name];
  for (const at of members(grid.axes, block.rows)) {
    const each = across === undefined ? [at] : grid.axes[across].map((_, j) => ({ ...at, [across]: j }));
    for (const one of each) put(sheet, ...cellOf(place, one), content(one));
  }
}

/** The names of the members beside their rows. */
function memberNames(grid: Grid, block: Block, sheet: Sheet): void {
  members(grid.axes, block.rows).forEach((at, i) => {
    block.rows.forEach((axis, j) => {
      put(sheet, firstRow(block) + i, j, {
        role: 'member',
        value: grid.axes[axis][at[axis] as number] as string,
      });
    });
  });
}

/** What stands in the cell of each member. */
function filler(
  grid: Grid,
  design: Design,
  name: QuantityName,
  entry: boolean,
  sheet: string,
  checked: Checked,
): (at: At) => Cell {
  const q: Quantity = QUANTITIES[name];
  const { system } = grid.placement.entering;
  const common = { quantity: name, unit: q.unit };
  switch (q.kind) {
    case 'constant':
      return () => ({ role: 'given', value: q.value, ...common });
    case 'column':
      return (at) => {
        const along = q.values[at[(q.per as readonly Axis[])[0] as Axis] as number];
        const value = Array.isArray(along) ? along[at[q.across as Axis] as number] : along;
        return { role: 'given', value: (value ?? null) as number | string | null, ...common };
      };
    case 'structure':
      return (at) => {
        const formula = ofShelf(grid, design, name, at, true);
        return formula === null
          ? { role: 'given', value: q.value(at as Required<At>, design), ...common }
          : { role: 'formula', formula, ...common };
      };
    case 'input':
      return entry
        ? (at) => {
            const formula = ofShelf(grid, design, name, at);
            return {
              role: roleOf(design, name, q, at),
              ...(formula === null ? { value: inputValue(design, q, at, system) } : { formula }),
              quantity: name,
              entry,
              unit: entryUnit(q, system),
            };
          }
        : (at) => {
            const cell = entryAddress(grid, name, at);
            const formula =
              spelled(checked, name, q.path, at, cell) ?? scaled(cell, entryUnit(q, system), q.unit);
            return { role: 'formula', formula, ...common };
          };
    case 'formula': {
      const home = { rows: q.per ?? [], sheet, ...(q.across === undefined ? {} : { across: q.across }) };
      const formula = translate(grid, q.formula, home);
      return (at) => ({ role: 'formula', formula: formula(at), ...common });
    }
  }
}

/** Formula of what the part of the shop has that is named on Inputs; `away` from another sheet. Null for what follows none. */
function ofShelf(grid: Grid, design: Design, name: QuantityName, at: At, away = false): string | null {
  const found = followed(design, name, at);
  if (found === null) return null;
  const part = PART_OF[found.device];
  const [row, column] = cellOf(grid.placement.entries.get(part) as Place, at);
  return lookedUp(design, name, at, away ? entryAddress(grid, part, at) : address(row, column, true, false));
}

/** A run without a fuse or a relay has no frames for one; in a feed run one can still be entered. */
function roleOf(design: Design, name: QuantityName, q: Input, at: At): Role {
  const [device, of] = [deviceOf(q), design.runs[at.run ?? -1]];
  if (device !== null && name === PART_OF[device] && !usedAs(design, device, at)) return 'member';
  if (device === null || of?.[device] != null) return 'entry';
  return of?.side === 'feed' ? 'spare' : 'member';
}

/** Formula of the word that an entry stands for; null for an input without words. */
function spelled(checked: Checked, name: QuantityName, path: string, at: At, cell: string): string | null {
  const list = listOf(path);
  if (list === null) return null;
  const row = spellingOf(checked, name, at);
  const word = wordFormula(list, row);
  const otherwise = `IF(${cell}="","",${cell})`;
  if (!/^runs\.\{run\}\.(?:gauge|smallest|largest)$/.test(path)) return `IF(${row}>0,${word},${otherwise})`;
  // Types of SAE are sold by SAE number, whatever the design calls it.
  const type = spellingOf(checked, 'run_insulation', at);
  const isSae = `IF(${type}>0,${soldFormula('insulation', type)},0)`;
  return `IF(${row}>0,IF(${isSae}=1,${soldFormula(list, row)},${word}),${otherwise})`;
}

/**
 * Formula of a cell's value in another unit; what is not known stays the empty text. In the same unit a word such as
 * `auto` stays what it is.
 */
function scaled(cell: string, from: string, to: string): string {
  const formula = turned(cell, from, to);
  return formula === cell ? `IF(${cell}="","",${cell})` : formula;
}

/** Address of the cell in which a person writes an input. */
export function entryAddress(grid: Grid, name: QuantityName, at: At): string {
  const place = grid.placement.entries.get(name) as Place;
  const [row, column] = cellOf(place, at);
  return `${INPUTS}!${address(row, column)}`;
}
