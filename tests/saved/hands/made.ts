/** The designs of the edits: small ones, since a program opens each of them many times. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { printProblem } from '../../../src/design/problems.ts';
import { readDesign } from '../../../src/design/read.ts';
import { run } from '../../../src/run.ts';
import { fromShelf } from '../../../src/shop/choose.ts';
import { bookOf } from '../../workbook/books.ts';
import { inputsOf, type Spot } from './sheet.ts';

const here = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');

/** In US units, and failing; a relay for each bank, of a shop's parts; further sparks, a formula of the author's own. */
export const NAMES = ['us-twin', 'banks', 'pulses'] as const;
export type Name = (typeof NAMES)[number];

export interface Made {
  readonly name: Name;
  /** Where the workbook lies. */
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly spots: readonly Spot[];
}

export async function madeIn(folder: string, name: Name): Promise<Made> {
  const text = here(`${name}.yaml`);
  const shop = /^shop: /m.test(text) ? { text: here('shop.yaml'), file: 'shop.yaml' } : undefined;
  const read = readDesign(text, name, shop);
  if (!read.ok) throw new Error(read.problems.map(printProblem).join('\n'));
  const { bytes } = await bookOf(fromShelf(read.design, run));
  const file = join(folder, `${name}.xlsx`);
  writeFileSync(file, bytes);
  return { name, file, bytes, spots: inputsOf(bytes) };
}
