/** Workbooks of designs, as bytes and as the evaluation that they were made from. */
import { address } from '../../src/basis/address.ts';
import type { At } from '../../src/basis/quantity.ts';
import type { Design } from '../../src/design/design.ts';
import { cellOf } from '../../src/engine/cells.ts';
import type { Laid } from '../../src/engine/spreadsheet.ts';
import type { QuantityName } from '../../src/model/model.ts';
import { write } from '../../src/ooxml/write.ts';
import { type LaidResult, runLaid } from '../../src/run-laid.ts';
import { definedNames } from '../../src/writers/workbook/names.ts';
import { PLAIN_SIZE } from '../../src/writers/workbook/styles.ts';
import { show, toWorkbook } from '../../src/writers/workbook/workbook.ts';
import { workingPage } from '../../src/writers/workbook/working-page.ts';
import { sheetOf } from '../../src/writers/workbook/worksheet.ts';
import { demo, design } from '../design/helpers.ts';

export const demoPath = (name: string): string =>
  new URL(`../../workbooks/${name}.yaml`, import.meta.url).pathname;
export const demoDesign = (name: string): Design => design(demo(name));

/** To be changed by a test; a copy of the text itself is none. */
export const copyOf = (of: Design): Design => ({ ...structuredClone(of), text: of.text });

export interface Book {
  result: LaidResult;
  bytes: Uint8Array;
}

/** The last few that were made: many files of tests look at the same demos, and a workbook takes a second or two. */
const made = new Map<string, Book>();
const KEPT = 4;

/** Nobody writes over inputs of a book, or over its bytes. */
export async function bookOf(of: Design): Promise<Book> {
  const key = of.text.toString() + JSON.stringify(of);
  const known = made.get(key);
  if (known !== undefined) return known;
  const result = runLaid(of, show);
  const book = { result, bytes: await toWorkbook(result) };
  made.set(key, book);
  for (const oldest of [...made.keys()].slice(0, -KEPT)) made.delete(oldest);
  return book;
}

/** Address on the sheet of the inputs, such as `E12`, where a person writes an input. */
export function entryOf({ result }: Book, name: QuantityName, at: At = {}): string {
  const place = result.evaluation.grid.placement.entries.get(name);
  if (place === undefined) throw new Error(`${name} is no input`);
  return address(...cellOf(place, at), false, false);
}

/** The sheets of an evaluation as they are, as a file. */
export function modelBook(e: Laid): Uint8Array {
  const pages = [...e.sheets].map(([name, cells]) => workingPage(name, cells, 1, 1));
  return write({
    title: e.design.title,
    creator: 'coilfeed',
    keywords: '',
    size: PLAIN_SIZE,
    sheets: pages.map((page) => ({ ...sheetOf(page, e, true), validations: [] })),
    names: definedNames(e.grid),
  });
}
