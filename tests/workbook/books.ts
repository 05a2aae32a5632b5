/** Workbooks of designs, as bytes and as the evaluation that they were made from. */
import { address } from '../../src/basis/address.ts';
import type { At } from '../../src/basis/quantity.ts';
import type { Design } from '../../src/design/design.ts';
import { cellOf } from '../../src/engine/cells.ts';
import type { QuantityName } from '../../src/model/model.ts';
import { type LaidResult, runLaid } from '../../src/run-laid.ts';
import { show, toWorkbook } from '../../src/writers/workbook/workbook.ts';
import { demo, design } from '../design/helpers.ts';

export const demoPath = (name: string): string =>
  new URL(`../../workbooks/${name}.yaml`, import.meta.url).pathname;
export const demoDesign = (name: string): Design => design(demo(name));

export interface Book {
  result: LaidResult;
  bytes: Uint8Array;
}

/** The last few that were made: many files of tests look at the same demos, and a workbook takes a second or two. */
const made = new Map<string, Book>();
const KEPT = 4;

/** Nobody writes over inputs of a book, or over its bytes. */
export async function bookOf(of: Design): Promise<Book> {
  const key = JSON.stringify(of);
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
