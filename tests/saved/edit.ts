/** Changes a workbook as a person does who types into cells of the sheet of the inputs and saves it. */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import type { At } from '../../src/basis/quantity.ts';
import { printProblem } from '../../src/design/problems.ts';
import type { QuantityName } from '../../src/model/model.ts';
import { type Changed, readSaved } from '../../src/saved/read.ts';
import { type Book, entryOf } from '../workbook/books.ts';

export type Typed = number | string | boolean | null | { formula: string } | { error: string };
export type Parts = Record<string, Uint8Array>;

/** Part of the sheet with this name. */
export function sheetPart(parts: Parts, sheet: string): string {
  const xml = (name: string): string => strFromU8(parts[name] as Uint8Array);
  const id = new RegExp(`<sheet [^>]*name="${sheet}"[^>]*r:id="([^"]+)"`).exec(xml('xl/workbook.xml'))?.[1];
  const target = [...xml('xl/_rels/workbook.xml.rels').matchAll(/<Relationship [^>]*>/g)].find(([tag]) =>
    tag.includes(`Id="${id}"`),
  )?.[0];
  return `xl/${/Target="\/?(?:xl\/)?([^"]+)"/.exec(target ?? '')?.[1]}`;
}

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

function cellXml(attributes: string, value: Typed): string {
  if (value === null) return `<c${attributes}/>`;
  if (typeof value === 'number') return `<c${attributes}><v>${value}</v></c>`;
  if (typeof value === 'boolean') return `<c${attributes} t="b"><v>${value ? 1 : 0}</v></c>`;
  if (typeof value === 'string')
    return `<c${attributes} t="inlineStr"><is><t xml:space="preserve">${escaped(value)}</t></is></c>`;
  if ('error' in value) return `<c${attributes} t="e"><v>${value.error}</v></c>`;
  // The stored result is a trap: it must never be taken.
  return `<c${attributes}><f>${escaped(value.formula)}</f><v>1</v></c>`;
}

/** The workbook with these cells of a sheet typed over; throws when there is no such cell. */
export function typed(
  bytes: Uint8Array,
  cells: Readonly<Record<string, Typed>>,
  sheet = 'Inputs',
): Uint8Array {
  return changedPart(
    bytes,
    (parts) => sheetPart(parts, sheet),
    (xml) =>
      Object.entries(cells).reduce((text, [address, value]) => {
        const cell = new RegExp(`<c( r="${address}"[^>]*?)(/>|>.*?</c>)`, 's');
        if (!cell.test(text)) throw new Error(`no cell ${address}`);
        return text.replace(cell, (_, attributes: string) =>
          cellXml(attributes.replace(/ t="\w+"/, ''), value),
        );
      }, xml),
  );
}

/** The workbook with the text of one part changed. Throws when nothing changes. */
export function changedPart(
  bytes: Uint8Array,
  of: (parts: Parts) => string,
  change: (xml: string) => string,
): Uint8Array {
  const parts = unzipSync(bytes);
  const name = of(parts);
  const before = strFromU8(parts[name] as Uint8Array);
  const after = change(before);
  if (after === before) throw new Error(`nothing changed in ${name}`);
  return zipSync({ ...parts, [name]: strToU8(after) });
}

/** Types into the cells of inputs. */
export const fill = (book: Book, ...cells: [QuantityName, At, Typed][]): Uint8Array =>
  typed(book.bytes, Object.fromEntries(cells.map(([name, at, value]) => [entryOf(book, name, at), value])));

/** What came of reading: the design with its changes, or the problems as they are printed. */
export async function readBack(bytes: Uint8Array) {
  const read = await readSaved(bytes, 'edited.xlsx');
  return read.ok
    ? { design: read.design, changed: read.changed as readonly Changed[], said: [] as string[] }
    : { design: null, changed: [] as readonly Changed[], said: read.problems.map(printProblem) };
}

/** The problems; throws when there are none. */
export async function refusals(bytes: Uint8Array): Promise<string[]> {
  const { design, said } = await readBack(bytes);
  if (design !== null) throw new Error('the workbook was read');
  return said;
}
