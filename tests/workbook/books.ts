/** Workbooks of designs, as bytes and as the evaluation that they were made from. */
import { readFileSync } from 'node:fs';
import { address } from '../../src/basis/address.ts';
import type { At } from '../../src/basis/quantity.ts';
import type { Design } from '../../src/design/design.ts';
import { cellOf } from '../../src/engine/cells.ts';
import type { QuantityName } from '../../src/model/model.ts';
import { type LaidResult, runLaid } from '../../src/run-laid.ts';
import { show, toWorkbook } from '../../src/writers/workbook/workbook.ts';
import { design } from '../design/helpers.ts';

export const DEMO_NAMES = ['hill-climb-six', 'two-bank-v8', 'pair-four'] as const;

export const demoPath = (name: string): string =>
  new URL(`../../workbooks/${name}.yaml`, import.meta.url).pathname;
export const demoDesign = (name: string): Design => design(readFileSync(demoPath(name), 'utf8'));

export interface Book {
  result: LaidResult;
  bytes: Uint8Array;
}

export async function bookOf(of: Design): Promise<Book> {
  const result = runLaid(of, show);
  return { result, bytes: await toWorkbook(result) };
}

/** Address on the sheet of the inputs, such as `E12`, where a person writes an input. */
export function entryOf({ result }: Book, name: QuantityName, at: At = {}): string {
  const place = result.evaluation.grid.placement.entries.get(name);
  if (place === undefined) throw new Error(`${name} is no input`);
  return address(...cellOf(place, at), false, false);
}
