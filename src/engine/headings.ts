/** What stands above and beside the values: titles, labels, symbols, units, sources. */
import { capital } from '../basis/print.ts';
import { labelParts, type Quantity } from '../basis/quantity.ts';
import { AS_STATED, plainCitation, printCitation } from '../basis/sources.ts';
import { printUnit } from '../basis/units.ts';
import type { Design } from '../design/design.ts';
import { wasFilled } from '../design/filled.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { boundsOf, type Cell, entryUnit, put, type Sheet } from './cell.ts';
import { type Checked, changedFormula } from './entered/sheet.ts';
import {
  type Block,
  ENTRY_HEADINGS,
  firstRow,
  HEADINGS,
  INPUT_HEADINGS,
  type InputColumns,
  type Place,
  SCALAR_COLUMNS,
  titleRow,
} from './layout.ts';
import { cellOf, memberName, members } from './places.ts';
import { INPUTS, type SheetOf } from './sheets.ts';
import type { Grid } from './translate.ts';

const label = (value: string, span = 1): Cell => ({ role: 'label', value, ...(span > 1 ? { span } : {}) });
const unitOf = (unit: string): string => (unit === 'text' ? '' : printUnit(unit));
const sourceOf = (q: Quantity): string => (q.source ? printCitation(q.source) : '');
/** An input has its source only where the design leaves it out. */
const inputSource = (q: Quantity, design: Design): string =>
  !q.source ? '' : plainCitation(q.kind === 'input' && !wasFilled(design, q.path) ? AS_STATED : q.source);

/**
 * Why inputs stand as they do, as long as nobody changes those that were not stated when the workbook was made; and what
 * there is to know of them.
 */
function reason(grid: Grid, design: Design, checked: Checked, names: readonly QuantityName[]): Cell {
  const all = names.map((name): Quantity => QUANTITIES[name]);
  const each = (of: (q: Quantity) => string): string => [...new Set(all.map(of).filter(Boolean))].join('; ');
  const value = each((q) => inputSource(q, design));
  // What an empty cell means stands in the label.
  const note = [...all.map(({ label }) => labelParts(label).empty), ...all.map((q) => q.note)];
  const stated = plainCitation(AS_STATED);
  const both = (source: string): string =>
    [...new Set([capital(source), ...note])].filter(Boolean).join('. ');
  if (value === '' || value === stated) return { role: 'source', value: both(value) };
  const changed = names.map((name) =>
    changedFormula(checked, name, members(grid.axes, QUANTITIES[name].per ?? [])),
  );
  const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
  return {
    role: 'source',
    formula: `IF(${changed.join('+')}>0,${quoted(both(stated))},${quoted(both(value))})`,
  };
}

/** Title and explanation of a sheet, and the legend of the inputs. */
export function sheetHeading({ sheet: name, title, about }: SheetOf, c: InputColumns, sheet: Sheet): void {
  put(sheet, 0, 0, { role: 'heading', value: title });
  put(sheet, 1, 0, { role: 'about', value: about });
  if (name !== INPUTS) return;
  const titles = { label: 'Input', unit: 'Unit', value: 'Value' } as const;
  for (const key of Object.keys(titles) as (keyof typeof titles)[])
    put(sheet, INPUT_HEADINGS, c[key], label(titles[key]));
  put(sheet, INPUT_HEADINGS, c.value + 1, label('Why, and what to know', c.count - 1));
  besideHeading(c, INPUT_HEADINGS, sheet);
}

/** Above what stands to the right of the values. */
function besideHeading(c: InputColumns, row: number, sheet: Sheet): void {
  put(sheet, row, c.notes, label('Your notes'));
  put(sheet, row, c.check, label('Check'));
  put(sheet, row, c.range, label('Allowed'));
}

/** Headings of a working sheet's block; in a list what describes a value stands beside it. */
export function blockHeading(grid: Grid, block: Block, sheet: Sheet): void {
  const c = SCALAR_COLUMNS;
  if (block.form === 'list') {
    const titles = {
      label: 'Quantity',
      symbol: 'Symbol',
      value: 'Value',
      unit: 'Unit',
      source: 'Source',
      note: 'Note',
    };
    for (const key of Object.keys(titles) as (keyof typeof titles)[])
      put(sheet, block.top, c[key], label(titles[key]));
    for (const name of block.quantities) {
      const q = QUANTITIES[name];
      const { row } = grid.placement.places.get(name) as Place;
      put(sheet, row, c.label, { role: 'member', value: q.label });
      put(sheet, row, c.symbol, { role: 'symbol', value: q.symbol });
      put(sheet, row, c.unit, { role: 'unit', value: unitOf(q.unit) });
      put(sheet, row, c.source, { role: 'source', value: sourceOf(q) });
      put(sheet, row, c.note, { role: 'source', value: q.note ?? '' });
    }
    return;
  }
  for (const name of block.quantities) {
    const q = QUANTITIES[name];
    const { column } = grid.placement.places.get(name) as Place;
    const members = q.across === undefined ? [] : grid.axes[q.across];
    const above = (row: number, cell: Cell): void =>
      put(sheet, block.top + row, column, members.length > 1 ? { ...cell, span: members.length } : cell);
    above(HEADINGS.label, label(q.label));
    above(HEADINGS.symbol, { role: 'symbol', value: q.symbol });
    above(HEADINGS.unit, { role: 'unit', value: unitOf(q.unit) });
    above(HEADINGS.source, { role: 'source', value: sourceOf(q) });
    members.forEach((value, j) => {
      put(sheet, block.top + HEADINGS.member, column + j, { role: 'member', value });
    });
  }
}

/** Headings of a block of inputs: label, unit and permitted range of every entry, and why it stands as it does. */
export function inputHeading(grid: Grid, design: Design, block: Block, sheet: Sheet, checked: Checked): void {
  const c = grid.placement.columns;
  const first = titleRow(block);
  if (first > INPUT_HEADINGS + 1) put(sheet, first - 1, 0, { role: 'gap' });
  if (block.form === 'single') put(sheet, first, 0, { role: 'title', value: block.title, span: c.notes + 1 });
  if (block.form === 'entries') {
    entriesHeading(grid, design, block, sheet, checked);
    return;
  }
  if (block.form === 'beside') {
    const [runs, titles] = [grid.axes[block.rows[0] as 'run'], { label: block.title, unit: 'Unit' }];
    for (const key of Object.keys(titles) as (keyof typeof titles)[])
      put(sheet, block.top, c[key], label(titles[key]));
    for (let i = 0; i < c.count; i++) put(sheet, block.top, c.value + i, label(runs[i] ?? ''));
    besideHeading(c, block.top, sheet);
    put(sheet, block.top, c.source, label('Why, and what to know'));
  }
  block.quantities.forEach((name, i) => {
    const q = QUANTITIES[name];
    const row = firstRow(block) + i;
    put(sheet, row, c.label, { role: 'member', value: ownLabel(q) });
    put(sheet, row, c.unit, { role: 'unit', value: entered(grid, q) });
    put(sheet, row, c.range, { role: 'source', value: permitted(grid, q) });
    const why = reason(grid, design, checked, [name]);
    if (block.form === 'beside') put(sheet, row, c.source, why);
    else put(sheet, row, c.value + 1, { ...why, span: c.count - 1 });
  });
}

/** A table of inputs: members go down, inputs to the right, and what describes an input stands above it. */
function entriesHeading(grid: Grid, design: Design, block: Block, sheet: Sheet, checked: Checked): void {
  const c = grid.placement.columns;
  put(sheet, block.top + ENTRY_HEADINGS.label, 0, label(block.title, c.value));
  put(sheet, block.top + ENTRY_HEADINGS.unit, 0, { role: 'source', value: 'Unit', span: c.value });
  besideHeading(c, block.top, sheet);
  block.quantities.forEach((name, i) => {
    const q = QUANTITIES[name];
    const column = c.value + i;
    put(sheet, block.top + ENTRY_HEADINGS.label, column, label(q.short ?? ownLabel(q)));
    put(sheet, block.top + ENTRY_HEADINGS.unit, column, { role: 'unit', value: entered(grid, q) });
  });
  const allowed = block.quantities.map((name) => permitted(grid, QUANTITIES[name])).join('; ');
  put(sheet, block.top + ENTRY_HEADINGS.unit, c.range, { role: 'source', value: allowed });
  const free = c.count - block.quantities.length;
  const why = reason(grid, design, checked, block.quantities);
  // A single column would hold a few letters in a line: then it stands below the title, where the word for units is missed least.
  if (free > 1) put(sheet, block.top, c.value + block.quantities.length, { ...why, span: free });
  else if (why.formula !== undefined || (why.value ?? '') !== '')
    put(sheet, block.top + ENTRY_HEADINGS.unit, 0, { ...why, span: c.value });
  const place = grid.placement.entries.get(block.quantities[0] as QuantityName) as Place;
  members(grid.axes, block.rows).forEach((at) => {
    const value = memberName(grid.axes, block.rows, at);
    put(sheet, cellOf(place, at)[0], 0, { role: 'member', value, span: c.value });
  });
}

/** Its label without what the title of its group says. */
const ownLabel = ({ label: text }: Quantity): string => labelParts(text).within;

/** Unit in which it is entered. */
const entered = ({ placement: { entering } }: Grid, q: Quantity): string =>
  unitOf(entryUnit(q, entering.system));

/** `0.001 … 100`, in the unit in which it is entered. */
const permitted = (grid: Grid, q: Quantity): string =>
  boundsOf(q, grid.placement.entering.system).join(' … ');
