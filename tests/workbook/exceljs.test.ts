/** The workbooks of the demos as ExcelJS reads them: every value, formula, name and validation as it was laid out. */
import type ExcelJS from 'exceljs';
import { beforeAll, describe, expect, test } from 'vitest';
import { address } from '../../src/basis/address.ts';
import type { Axis, Quantity } from '../../src/basis/quantity.ts';
import { asEntered } from '../../src/engine/cell.ts';
import { cellOf, members } from '../../src/engine/cells.ts';
import type { Place } from '../../src/engine/layout.ts';
import { QUANTITIES, type QuantityName } from '../../src/model/model.ts';
import { quantityOf } from '../../src/views/view.ts';
import { LOAD, WIRE } from '../../src/views/views.ts';
import { pages } from '../../src/writers/workbook/pages.ts';
import { DEMOS } from '../design/helpers.ts';
import { type Book, bookOf, demoDesign } from './books.ts';
import { compared, readWorkbook } from './exceljs.ts';

const books = new Map<string, Book & { read: ExcelJS.Workbook }>();
const of = (name: string) => books.get(name) as Book & { read: ExcelJS.Workbook };

beforeAll(async () => {
  for (const name of DEMOS) {
    const book = await bookOf(demoDesign(name));
    const read = await readWorkbook(book.bytes);
    books.set(name, { ...book, read });
  }
});

/** The cells that a quantity takes, `Inputs!C5`, one for each of its members. */
function cellsOf({ result }: Book, name: QuantityName, place: Place): string[] {
  const { per = [], across }: Quantity = QUANTITIES[name];
  const axes: Axis[] = across === undefined ? [...per] : [...per, across];
  return [...members(result.evaluation.grid.axes, axes)].map(
    (at) => `${place.sheet}!${address(...cellOf(place, at), false, false)}`,
  );
}

/** The cells of a range such as `Inputs!$C$5:$D$9`, in order. */
function inRange(read: ExcelJS.Workbook, range: string): ExcelJS.Cell[] {
  const [name = '', cells = ''] = range.split('!');
  const sheet = read.getWorksheet(name);
  const [first = '', last = first] = cells.replaceAll('$', '').split(':');
  const [from, to] = [sheet?.getCell(first), sheet?.getCell(last)];
  const found: ExcelJS.Cell[] = [];
  for (let row = Number(from?.row); row <= Number(to?.row); row++)
    for (let column = Number(from?.col); column <= Number(to?.col); column++)
      found.push((sheet as ExcelJS.Worksheet).getCell(row, column));
  return found;
}

describe.each(DEMOS)('%s', (name) => {
  test('every cell that was laid out has its formula and its value', () => {
    const { read, result } = of(name);
    const { evaluation } = result;
    const laid = pages(evaluation);
    expect(read.worksheets.map((sheet) => sheet.name)).toEqual(laid.map((page) => page.name));
    const { formulas, wrong } = compared(read, evaluation, laid);
    expect(wrong.slice(0, 5)).toEqual([]);
    expect(formulas).toBe(evaluation.formulas);
  });

  test('the names of a quantity and of its entries stand for the cells of all its members', () => {
    const { read, result } = of(name);
    const names = new Map(read.definedNames.model.map(({ name, ranges }) => [name, ranges]));
    const { places, entries } = result.evaluation.grid.placement;
    const wanted = [
      ...[...places].map(([quantity, place]) => [quantity, quantity, place] as const),
      ...[...entries].map(([quantity, place]) => [`in_${quantity}`, quantity, place] as const),
    ];
    expect(wanted.length).toBeGreaterThan(places.size);
    for (const [defined, quantity, place] of wanted) {
      const due = cellsOf(of(name), quantity, place).sort();
      const ranges = names.get(defined) ?? [];
      // What the design has none of has no cells, and no name.
      expect(ranges, defined).toHaveLength(due.length === 0 ? 0 : 1);
      if (due.length === 0) continue;
      const cells = inRange(read, ranges[0] ?? '').map((cell) => `${cell.worksheet.name}!${cell.address}`);
      expect(cells.sort(), defined).toEqual(due);
    }
  });

  test('the text of the design stands where its name says', () => {
    const { read, result } = of(name);
    const [range = ''] = read.definedNames.model.find((one) => one.name === 'design_text')?.ranges ?? [];
    const lines = inRange(read, range).map(({ value }) => value ?? '');
    expect(lines.join('\n')).toBe(result.evaluation.design.text.toString().trimEnd());
  });

  test('every entry says what is permitted, and what the design gives is', () => {
    const { read, result } = of(name);
    let lists = 0;
    for (const [quantity, place] of result.evaluation.grid.placement.entries) {
      const q: Quantity = QUANTITIES[quantity];
      for (const at of cellsOf(of(name), quantity, place)) {
        const [cell] = inRange(read, at) as [ExcelJS.Cell];
        if (quantity.endsWith('_part') && cell.value === null) {
          // No part of the shop is used here, and none can be named in its place.
          expect(cell.dataValidation, at).toBeUndefined();
          continue;
        }
        // What is not typed over follows the part of the shop that is named, or is empty where that has none.
        const given = cell.formula ? cell.result : cell.value;
        const value = given === '' || given === undefined ? null : given;
        const { type, formulae, prompt = '', error = '', ...rest } = cell.dataValidation;
        expect(rest, at).toMatchObject({
          errorStyle: 'warning',
          allowBlank: true,
          showInputMessage: true,
          showErrorMessage: true,
        });
        const [label = ''] = q.label.split(' (empty');
        // The format cuts a prompt at 255 characters and an error at 225.
        expect(prompt.slice(0, 100), at).toContain(label.slice(0, 90));
        expect(error.slice(0, 100), at).toContain(label.slice(0, 90));
        if (type === 'list') {
          lists += 1;
          const choices = inRange(read, String(formulae[0])).map(({ value }) => value);
          // A shop's wire is there of the insulations of the runs alone, its coils for the connector of the one that is used:
          // both may be one.
          if (quantity === 'run_insulation')
            expect(new Set(choices), at).toEqual(new Set(demoDesign(name).runs.map((run) => run.insulation)));
          else expect(new Set(choices).size, at).toBeGreaterThan(quantity === 'coil_part' ? 0 : 1);
          expect(choices, at).not.toContain(null);
          if (value !== null) expect(choices, at).toContain(value);
        } else {
          expect(type, at).toBe('decimal');
          expect(formulae, at).toEqual(q.range?.map((end) => asEntered(end, q)));
          if (value === null) continue;
          expect(value, at).toBeGreaterThanOrEqual(formulae[0]);
          expect(value, at).toBeLessThanOrEqual(formulae[1]);
        }
      }
    }
    expect(lists).toBeGreaterThan(0);
  });

  test('a result names its quantity while its cell is chosen: what stands under a heading is what the message says', () => {
    const { read, result } = of(name);
    const { design } = result.evaluation;
    const sheet = read.getWorksheet('Runs') as ExcelJS.Worksheet;
    const wrong: string[] = [];
    let told = 0;
    for (const view of [WIRE, LOAD])
      for (const id of view.read.map(quantityOf)) {
        const q: Quantity = QUANTITIES[id];
        const rows = design.runs.length * (view === LOAD ? design.points.length : 1);
        const own: string[] = [];
        sheet.eachRow((row) => {
          row.eachCell((cell) => {
            const { prompt = '', promptTitle = '' } = cell.dataValidation ?? {};
            // A title has 32 characters.
            if (promptTitle === `${q.symbol} (${id})`.slice(0, 32) && prompt.startsWith(`${q.label}.`))
              own.push(cell.address);
          });
        });
        told += own.length;
        // A sheet may have it in a second table.
        if (own.length === 0 || own.length % rows !== 0) wrong.push(`${id}: ${own.length} cells of ${rows}`);
      }
    expect(wrong).toEqual([]);
    expect(told).toBeGreaterThan(0);
  });
});
