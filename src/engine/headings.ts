/** What stands above and beside the values: titles, labels, symbols, units, sources. */
import type { Quantity } from '../basis/quantity.ts';
import { AS_STATED, printCitation } from '../basis/sources.ts';
import { printUnit } from '../basis/units.ts';
import type { Design } from '../design/design.ts';
import { wasFilled } from '../design/filled.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { asEntered, type Cell, put, type Sheet } from './cell.ts';
import { type Checked, changedFormula } from './entered/sheet.ts';
import { type Block, firstRow, HEADINGS, type InputColumns, type Place, SCALAR_COLUMNS } from './layout.ts';
import { members } from './places.ts';
import { INPUTS, type SheetOf } from './sheets.ts';
import type { Grid } from './translate.ts';

const label = (value: string, span = 1): Cell => ({ role: 'label', value, ...(span > 1 ? { span } : {}) });
const unitOf = (unit: string): string => (unit === 'text' ? '' : printUnit(unit));
const sourceOf = (q: Quantity): string => (q.source ? printCitation(q.source) : '');
/** An input has its source only where the design leaves it out. */
const inputSource = (q: Quantity, design: Design): string =>
  q.kind === 'input' && q.source && !wasFilled(design, q.path) ? printCitation(AS_STATED) : sourceOf(q);

/** The source of inputs that were not stated when the workbook was made, as long as nobody changes them. */
function sourceNow(grid: Grid, design: Design, checked: Checked, names: readonly QuantityName[]): Cell {
  const said = [...new Set(names.map((name) => inputSource(QUANTITIES[name], design)).filter(Boolean))];
  const value = said.join('; ');
  const stated = printCitation(AS_STATED);
  if (value === '' || value === stated) return { role: 'source', value };
  const changed = names.map((name) =>
    changedFormula(checked, name, members(grid.axes, QUANTITIES[name].per ?? [])),
  );
  return {
    role: 'source',
    formula: `IF(${changed.join('+')}>0,"${stated}","${value.replaceAll('"', '""')}")`,
  };
}

/** Title and explanation of a sheet, and the legend of the inputs. */
export function sheetHeading({ sheet: name, title, about }: SheetOf, c: InputColumns, sheet: Sheet): void {
  put(sheet, 0, 0, { role: 'heading', value: title });
  put(sheet, 1, 0, { role: 'about', value: about });
  if (name !== INPUTS) return;
  put(sheet, 2, 0, {
    role: 'about',
    value: 'Fill in the framed cells; an empty one means: not known, or none.',
  });
  put(sheet, 2, c.value, { role: 'entry', value: null });
  put(sheet, 3, 0, {
    role: 'about',
    value:
      'Coils, runs, conductors, points and rows are as many as the design had. For another number change the design file and write a new workbook.',
  });
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

/** Headings of a block of inputs: label, symbol, unit and permitted range of every entry, its source and note. */
export function inputHeading(grid: Grid, design: Design, block: Block, sheet: Sheet, checked: Checked): void {
  const c = grid.placement.columns;
  put(sheet, block.top - 1, 0, { role: 'title', value: block.title, span: c.note + 1 });
  if (block.form === 'entries') {
    entriesHeading(grid, design, block, sheet, checked);
    return;
  }
  const titles = {
    label: 'Input',
    symbol: 'Symbol',
    unit: 'Unit',
    range: 'Allowed',
    check: 'Check',
    source: 'Source',
    note: 'Note',
  };
  for (const key of Object.keys(titles) as (keyof typeof titles)[])
    put(sheet, block.top, c[key], label(titles[key]));
  const columns = block.form === 'list' ? ['Value'] : grid.axes[block.rows[0] as 'run'];
  for (let i = 0; i < c.count; i++) put(sheet, block.top, c.value + i, label(columns[i] ?? ''));
  block.quantities.forEach((name, i) => {
    const q = QUANTITIES[name];
    const row = firstRow(block) + i;
    put(sheet, row, c.label, { role: 'member', value: q.label });
    put(sheet, row, c.symbol, { role: 'symbol', value: q.symbol });
    put(sheet, row, c.unit, { role: 'unit', value: unitOf(q.shown ?? q.unit) });
    put(sheet, row, c.range, { role: 'unit', value: permitted(q) });
    put(sheet, row, c.source, sourceNow(grid, design, checked, [name]));
    put(sheet, row, c.note, { role: 'source', value: q.note ?? '' });
  });
}

/** A table of inputs: members go down, inputs to the right, and what describes an input stands above it. */
function entriesHeading(grid: Grid, design: Design, block: Block, sheet: Sheet, checked: Checked): void {
  const c = grid.placement.columns;
  const names = { label: 'Input', symbol: 'Symbol', unit: 'Unit', range: 'Allowed' };
  for (const key of Object.keys(names) as (keyof typeof names)[])
    put(sheet, block.top + HEADINGS[key], 0, {
      role: key === 'label' ? 'label' : 'unit',
      value: names[key],
      span: c.value,
    });
  for (let i = block.quantities.length; i < c.count; i++) put(sheet, block.top, c.value + i, label(''));
  put(sheet, block.top, c.check, label('Check'));
  put(sheet, block.top, c.source, label('Source'));
  put(sheet, block.top, c.note, label('Note'));
  block.quantities.forEach((name, i) => {
    const q = QUANTITIES[name];
    const column = c.value + i;
    put(sheet, block.top + HEADINGS.label, column, label(q.label));
    put(sheet, block.top + HEADINGS.symbol, column, { role: 'symbol', value: q.symbol });
    put(sheet, block.top + HEADINGS.unit, column, { role: 'unit', value: unitOf(q.shown ?? q.unit) });
    put(sheet, block.top + HEADINGS.range, column, { role: 'unit', value: permitted(q) });
  });
  const said = block.quantities.map((name): Quantity => QUANTITIES[name]);
  const text = (of: (q: Quantity) => string): string => [...new Set(said.map(of).filter(Boolean))].join('; ');
  put(sheet, block.top + 1, c.source, sourceNow(grid, design, checked, block.quantities));
  put(sheet, block.top + 1, c.note, { role: 'source', value: text((q) => q.note ?? '') });
  const axis = block.rows[0] as 'point';
  grid.axes[axis].forEach((value, i) => {
    put(sheet, firstRow(block) + i, 0, { role: 'member', value, span: c.value });
  });
}

/** `0.001 … 100`, in the unit in which it is written. */
function permitted(q: Quantity): string {
  return q.range ? q.range.map((end) => String(asEntered(end, q)).replace('-', '−')).join(' … ') : '';
}
