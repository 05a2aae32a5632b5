/**
 * A workbook from outside, as the few cells that are asked for.
 *
 *   bytes ─► archive, checked ─► names and sheets ─► only the sheets that are meant, packed anew ─► the reader ─► cells
 *
 * The reader of the cells is a library; it sees nothing but those sheets and the lists that belong to them: no
 * links, no macros, no drawings, nothing larger than a workbook of ours can be. Results that are stored beside
 * formulas are never taken.
 */
import { strFromU8, zipSync } from 'fflate';
import { OURS } from '../engine/sheets.ts';
import { filled } from '../own/formula.ts';
import type { Archive } from './archive.ts';
import { PAGE } from './mark.ts';
import { type Area, namedAreas, sheetParts } from './parts.ts';
import { sumOf } from './sum.ts';

/** What stands in a cell. Never the stored result of a formula. */
export type Found =
  | { readonly is: 'empty' }
  | { readonly is: 'number'; readonly value: number }
  | { readonly is: 'text'; readonly value: string }
  | { readonly is: 'formula'; readonly value: string }
  | { readonly is: 'other'; readonly value: string };

export interface Book {
  readonly names: ReadonlyMap<string, Area | null>;
  /** Names of all sheets. */
  readonly sheets: readonly string[];
  /** Cells of sheets, counted from 0. Empty for a cell that is not there. */
  cell(sheet: string, row: number, column: number): Found;
  /** Every cell of a sheet that is not empty, and lies within the bounds. */
  cells(sheet: string): readonly Filled[];
  /** The stored result of a formula: only to learn what the program that saved it made of it. Null for none. */
  stored(sheet: string, row: number, column: number): number | string | null;
}

/** A cell with its place, counted from 0. */
export interface Filled {
  readonly row: number;
  readonly column: number;
  readonly found: Found;
}

/** Largest parts [byte]: some ten times those of the largest workbook of ours. */
const MOST = {
  workbook: 4_000_000,
  relations: 1_000_000,
  strings: 8_000_000,
  styles: 4_000_000,
  sheet: 8_000_000,
};
/** Tags in a part that is read into a tree; each takes some hundred bytes there. */
const MOST_TAGS = 150_000;
/** Cells of one sheet that are looked at, as a rectangle from its first cell. */
const MOST_ROWS = 5000;
const MOST_COLUMNS = 200;

const WORKBOOK = 'xl/workbook.xml';
const RELATIONS = 'xl/_rels/workbook.xml.rels';
const STRINGS = 'xl/sharedStrings.xml';
const STYLES = 'xl/styles.xml';

/** Opens the sheets that these names lie on, and all whose cells none of ours are; else what is wrong, as the end of a sentence. */
export async function openBook(archive: Archive, wanted: (name: string) => boolean): Promise<Book | string> {
  const parts = new Map<string, Uint8Array>();
  const take = (name: string, most: number): string | null => {
    const part = archive.read(name, most);
    if (typeof part === 'string') return part;
    if (tags(part) > MOST_TAGS) return `has a part ${name} of more than ${MOST_TAGS} elements`;
    parts.set(name, part);
    return null;
  };
  const text = (name: string): string => strFromU8(parts.get(name) ?? new Uint8Array());

  const wrong = take(WORKBOOK, MOST.workbook) ?? take(RELATIONS, MOST.relations);
  if (wrong !== null) return wrong;
  const names = namedAreas(text(WORKBOOK));
  const areas = [...names].flatMap(([name, area]) => (wanted(name) && area !== null ? [area] : []));
  const far = areas.find(({ bottom, right }) => bottom >= MOST_ROWS || right >= MOST_COLUMNS);
  if (far !== undefined) return `has names of cells beyond row ${MOST_ROWS} or column ${MOST_COLUMNS}`;

  const sheets = sheetParts(text(WORKBOOK), text(RELATIONS));
  const strange = strangeIn(names, [...sheets.keys()]);
  const asked = [...new Set([...areas.map(({ sheet }) => sheet), ...strange])].filter((sheet) =>
    sheets.has(sheet),
  );
  for (const sheet of asked) {
    const found = take(sheets.get(sheet) as string, MOST.sheet);
    if (found !== null) return found;
  }
  for (const [name, most] of [
    [STRINGS, MOST.strings],
    [STYLES, MOST.styles],
  ] as const) {
    const found = archive.has(name) ? take(name, most) : null;
    if (found !== null) return found;
  }
  return readCells(packed(parts, sheets, asked, strange), names, asked, [...sheets.keys()]);
}

/** Sheets that are none of ours: each of those has a name that tells it. */
export function strangeIn(names: Book['names'], sheets: readonly string[]): string[] {
  const own = new Set(
    [...names].flatMap(([name, area]) => (name.startsWith(PAGE) && area !== null ? [area.sheet] : [])),
  );
  return sheets.filter((sheet) => !own.has(sheet) && !(own.size === 0 && OURS.includes(sheet)));
}

/** Elements of a part, and attributes, at least. */
function tags(part: Uint8Array): number {
  let count = 0;
  for (const byte of part) if (byte === 0x3c || byte === 0x3d) count += 1;
  return count / 2;
}

const TYPES = 'http://schemas.openxmlformats.org/package/2006';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');

/** A small workbook of the sheets that were asked for, in their order; `added` are a person's. */
function packed(
  parts: ReadonlyMap<string, Uint8Array>,
  sheets: ReadonlyMap<string, string>,
  asked: readonly string[],
  added: readonly string[],
): Uint8Array {
  const out: Record<string, Uint8Array> = Object.create(null);
  const put = (name: string, xml: string): void => {
    out[name] = new TextEncoder().encode(xml);
  };
  put('[Content_Types].xml', `<Types xmlns="${TYPES}/content-types"/>`);
  put(
    '_rels/.rels',
    `<Relationships xmlns="${TYPES}/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="${WORKBOOK}"/></Relationships>`,
  );
  const listed = asked.map(
    (name, i) => `<sheet name="${escaped(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`,
  );
  put(WORKBOOK, `<workbook xmlns:r="${OFFICE}"><sheets>${listed.join('')}</sheets></workbook>`);
  const relation = (id: string, type: string, target: string): string =>
    `<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;
  const relations = asked.map((_, i) => relation(`rId${i + 1}`, 'worksheet', `worksheets/sheet${i + 1}.xml`));
  for (const [name, type] of [
    [STRINGS, 'sharedStrings'],
    [STYLES, 'styles'],
  ] as const) {
    const part = parts.get(name);
    if (part === undefined) continue;
    out[name] = part;
    relations.push(relation(type, type, name.slice('xl/'.length)));
  }
  put(RELATIONS, `<Relationships xmlns="${TYPES}/relationships">${relations.join('')}</Relationships>`);
  asked.forEach((name, i) => {
    const sheet = strFromU8(parts.get(sheets.get(name) as string) as Uint8Array);
    const cells = cellsOnly(sheet);
    // Without its format a number that is shown as a date is a number, as it is to the formulas of the workbook.
    const plain = added.includes(name) ? cells : cells.replace(/(<(?:\w+:)?c\b[^>]*?)\ss="\d+"/g, '$1');
    put(`xl/worksheets/sheet${i + 1}.xml`, `<worksheet>${plain}</worksheet>`);
  });
  return zipSync(out, { level: 0 });
}

/** The cells of a sheet without what else stands in it: ranges there may be huge, and nothing of it is needed. */
function cellsOnly(sheet: string): string {
  const begin = /<(?:[A-Za-z0-9_]{1,20}:)?sheetData[\s>]/.exec(sheet)?.index ?? sheet.length;
  const end = /<\/(?:[A-Za-z0-9_]{1,20}:)?sheetData\s*>/.exec(sheet);
  return end === null ? '' : sheet.slice(begin, end.index + end[0].length);
}

async function readCells(
  xlsx: Uint8Array,
  names: Book['names'],
  asked: readonly string[],
  all: readonly string[],
): Promise<Book | string> {
  const { readXlsx } = await import('hucre/xlsx');
  let read: Awaited<ReturnType<typeof readXlsx>>;
  try {
    read = await readXlsx(xlsx, { range: `A1:GR${MOST_ROWS}` });
  } catch {
    // Whatever the library says of a damaged part is about its XML, and not for a person.
    return 'has a damaged sheet';
  }
  const sheets = new Map(asked.map((name, i) => [name, read.sheets[i]]));
  // A formula that fills several cells is written once, and the others name it by a number.
  const shared = new Map<string, { row: number; column: number; formula: string }>();
  for (const [name, sheet] of sheets)
    for (const [key, { formula = '', formulaSharedIndex: index }] of sheet?.cells ?? []) {
      const [row = 0, column = 0] = key.split(',').map(Number);
      if (index !== undefined && formula !== '') shared.set(`${name} ${index}`, { row, column, formula });
    }
  return {
    names,
    sheets: all,
    stored(sheet, row, column) {
      const value: unknown = sheets.get(sheet)?.rows[row]?.[column];
      return typeof value === 'number' || typeof value === 'string' ? value : null;
    },
    cells: (sheet) => {
      const own = sheets.get(sheet);
      const places = (own?.rows ?? []).flatMap((row, r) =>
        Array.from(row ?? [], (_, c): [number, number] => [r, c]),
      );
      return places.flatMap(([row, column]) => {
        const found = cell(sheet, row, column);
        return found.is === 'empty' ? [] : [{ row, column, found }];
      });
    },
    cell,
  };
  function cell(sheet: string, row: number, column: number): Found {
    const of = sheets.get(sheet);
    const own = of?.cells?.get(`${row},${column}`);
    const start = own?.formula === '' ? shared.get(`${sheet} ${own.formulaSharedIndex}`) : undefined;
    if (start !== undefined) return constant(filled(start.formula, row - start.row, column - start.column));
    if (own?.formula !== undefined) return constant(own.formula);
    const value: unknown = of?.rows[row]?.[column];
    if (value === null || value === undefined || value === '') return { is: 'empty' };
    if (typeof value === 'number') return { is: 'number', value };
    if (value instanceof Date) return { is: 'other', value: 'a date' };
    if (typeof value === 'string')
      return ERROR.test(value) ? { is: 'other', value: `the error ${value}` } : { is: 'text', value };
    return { is: 'other', value: String(value).toUpperCase() };
  }
}

const ERROR = /^#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A)$/;

/** A formula that is nothing but arithmetic with numbers, or a text, stands for its value. */
function constant(formula: string): Found {
  const plain = formula.replace(/^=/, '').trim();
  const value = sumOf(plain);
  if (value !== null) return { is: 'number', value };
  const words = /^"((?:[^"]|"")*)"$/.exec(plain)?.[1];
  if (words !== undefined) {
    const value = words.replaceAll('""', '"');
    return value === '' ? { is: 'empty' } : { is: 'text', value };
  }
  return { is: 'formula', value: plain };
}
