/**
 * A small reader of .xlsx files for tests: values and formulas of all cells, and the change of one number.
 * It is for files that this project, its library or LibreOffice wrote; a stranger's file may look otherwise.
 */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';

export type Value = number | string | boolean | null | { error: string };

export interface Cell {
  /** The result that is stored in the file, whether it was computed well or not. */
  value: Value;
  /** Without the equals sign; null for a cell without a formula. */
  formula: string | null;
}

/** By sheet name, then by address such as `B7`. */
export type Cells = Map<string, Map<string, Cell>>;

type Parts = Record<string, Uint8Array>;

/** Reads every cell of a workbook. Throws on what it does not know rather than leave it out. */
export function readCells(xlsx: Uint8Array): Cells {
  const parts = unzipSync(xlsx);
  const strings = sharedStrings(parts);
  const cells: Cells = new Map();
  for (const [name, path] of sheetPaths(parts)) {
    const sheet = new Map<string, Cell>();
    for (const { address, kind, inner } of cellsOf(part(parts, path)))
      sheet.set(address, { value: storedIn(kind, inner, strings), formula: formulaOf(inner, address) });
    cells.set(name, sheet);
  }
  return cells;
}

/**
 * Puts a number into a cell that holds a number or nothing, as a person would who opens the file, and leaves the
 * stored results of all formulas as they are: old ones, until a spreadsheet program computes them.
 * Throws when there is no such cell or when it holds a formula or words.
 */
export function editCell(xlsx: Uint8Array, sheet: string, address: string, number: number): Uint8Array {
  const parts = unzipSync(xlsx);
  const path = sheetPaths(parts).get(sheet);
  if (path === undefined) throw new Error(`there is no sheet "${sheet}"`);
  const xml = part(parts, path);
  const cell = cellsOf(xml).find((one) => one.address === address);
  if (!cell) throw new Error(`there is no cell ${sheet}!${address}`);
  if (/<f\b/.test(cell.inner)) throw new Error(`${sheet}!${address} holds a formula`);
  const old = storedIn(cell.kind, cell.inner, sharedStrings(parts));
  if (old !== null && typeof old !== 'number') throw new Error(`${sheet}!${address} holds no number`);
  const attributes = cell.attributes.replace(/\st="[^"]*"/, '');
  const changed = `<c${attributes}><v>${number}</v></c>`;
  return zipSync({
    ...parts,
    [path]: strToU8(xml.slice(0, cell.start) + changed + xml.slice(cell.start + cell.length)),
  });
}

interface RawCell {
  address: string;
  /** The `t` of the file format: n, s, str, inlineStr, b, e. */
  kind: string;
  attributes: string;
  inner: string;
  start: number;
  length: number;
}

function cellsOf(xml: string): RawCell[] {
  // The `c` must be followed by a space: `<col …/>` and `<cols>` are other elements.
  return [...xml.matchAll(/<c(\s[^>]*?)(?:\/>|>([\s\S]*?)<\/c>)/g)].map((match) => {
    const [whole, attributes = '', inner = ''] = match;
    const address = attribute(attributes, 'r');
    if (address === null) throw new Error(`a cell without an address: ${whole}`);
    const kind = attribute(attributes, 't') ?? 'n';
    return { address, kind, attributes, inner, start: match.index, length: whole.length };
  });
}

function storedIn(kind: string, inner: string, strings: readonly string[]): Value {
  if (kind === 'inlineStr') return texts(inner);
  const raw = /<v(?:\s[^>]*)?>([\s\S]*?)<\/v>/.exec(inner)?.[1];
  if (raw === undefined) return kind === 'str' ? '' : null;
  switch (kind) {
    case 'n':
      return Number(raw);
    case 's': {
      const text = strings[Number(raw)];
      if (text === undefined) throw new Error(`there is no shared string ${raw}`);
      return text;
    }
    case 'str':
      return decode(raw);
    case 'b':
      return raw === '1' || raw === 'true';
    case 'e':
      return { error: decode(raw) };
    default:
      throw new Error(`cells of type "${kind}" are not known here`);
  }
}

/** Stands for a formula that another cell holds for several; other programs write them so. */
const SHARED = 'as in another cell';

function formulaOf(inner: string, address: string): string | null {
  const match = /<f(\s[^>]*?)?(?:\/>|>([\s\S]*?)<\/f>)/.exec(inner);
  if (!match) return null;
  if (!match[2] && /\st="shared"/.test(match[1] ?? '')) return SHARED;
  if (!match[2]) throw new Error(`${address} shares its formula with another cell; that is not read here`);
  return decode(match[2]);
}

/** Sheet names in the workbook's order, and the part that holds each. */
function sheetPaths(parts: Parts): Map<string, string> {
  const targets = new Map<string, string>();
  for (const [, attributes = ''] of part(parts, 'xl/_rels/workbook.xml.rels').matchAll(
    /<Relationship(\s[^>]*?)\/?>/g,
  )) {
    const target = attribute(attributes, 'Target') ?? '';
    targets.set(attribute(attributes, 'Id') ?? '', target.startsWith('/') ? target.slice(1) : `xl/${target}`);
  }
  const paths = new Map<string, string>();
  for (const [, attributes = ''] of part(parts, 'xl/workbook.xml').matchAll(/<sheet(\s[^>]*?)\/?>/g)) {
    const path = targets.get(attribute(attributes, 'r:id') ?? '');
    const name = attribute(attributes, 'name');
    if (path === undefined || name === null) throw new Error(`a sheet without a part: ${attributes}`);
    paths.set(name, path);
  }
  return paths;
}

function sharedStrings(parts: Parts): string[] {
  const path = 'xl/sharedStrings.xml';
  if (!parts[path]) return [];
  return [...part(parts, path).matchAll(/<si(?:\s[^>]*)?(?:\/>|>([\s\S]*?)<\/si>)/g)].map(([, inner = '']) =>
    texts(inner),
  );
}

/** Text of all runs together; marks of pronunciation are not part of it. */
const texts = (xml: string): string =>
  [...xml.replace(/<rPh\b[\s\S]*?<\/rPh>/g, '').matchAll(/<t(?:\s[^>]*)?>([\s\S]*?)<\/t>/g)]
    .map(([, text = '']) => decode(text))
    .join('');

function part(parts: Parts, path: string): string {
  const bytes = parts[path];
  if (!bytes) throw new Error(`the file has no part ${path}`);
  return strFromU8(bytes);
}

function attribute(attributes: string, name: string): string | null {
  const text = new RegExp(`\\s${name}="([^"]*)"`).exec(attributes)?.[1];
  return text === undefined ? null : decode(text);
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

const decode = (text: string): string =>
  text
    .replace(/&(?:#x([0-9a-fA-F]+)|#(\d+)|(\w+));/g, (whole, hex, decimal, name) =>
      hex || decimal
        ? String.fromCodePoint(hex ? Number.parseInt(hex, 16) : Number(decimal))
        : (ENTITIES[name] ?? whole),
    )
    .replace(/_x([0-9A-Fa-f]{4})_/g, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16)));
