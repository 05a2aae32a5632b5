/** The file as a zip archive: what the library leaves wrong is put right, and the same design gives the same bytes. */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';

type Parts = Record<string, Uint8Array>;

/**
 * The date of every entry: fields of a calendar, without a time zone, since the format stores them so. Any fixed day
 * would do; noon exists in every zone.
 */
const DAY = new Date(2000, 0, 1, 12, 0, 0);

/** Puts the parts of a workbook right and packs them again. `names` are defined names and what they stand for. */
export function repack(workbook: Uint8Array, names: readonly [string, string][]): Uint8Array {
  const parts = unzipSync(workbook);
  edit(parts, 'xl/styles.xml', (xml) => orderFonts(plainFont(xml)));
  edit(parts, 'xl/workbook.xml', (xml) => withNames(xml, names));
  // The list of parts comes first, as readers of streams expect it; the rest in the order of the names.
  const list = '[Content_Types].xml';
  const order = [
    list,
    ...Object.keys(parts)
      .filter((name) => name !== list && !name.endsWith('/'))
      .sort(),
  ];
  return zipSync(Object.fromEntries(order.map((name) => [name, part(parts, name)])), {
    level: 6,
    mtime: DAY,
  });
}

function part(parts: Parts, name: string): Uint8Array {
  const found = parts[name];
  if (found === undefined) throw new Error(`the workbook has no part ${name}`);
  return found;
}

function edit(parts: Parts, name: string, change: (xml: string) => string): void {
  parts[name] = strToU8(change(strFromU8(part(parts, name))));
}

/** The order that the schema wants for what describes a font; the library has another one. */
const FONT_ORDER = [
  'b',
  'i',
  'strike',
  'outline',
  'shadow',
  'u',
  'vertAlign',
  'sz',
  'color',
  'name',
  'family',
  'charset',
  'scheme',
];

const orderFonts = (xml: string): string =>
  xml.replace(/<font>(.*?)<\/font>/gs, (_, inner: string) => {
    const elements = inner.match(/<[^>]+>/g) ?? [];
    const rank = (element: string): number => FONT_ORDER.indexOf(/\w+/.exec(element)?.[0] ?? '');
    return `<font>${elements.sort((a, b) => rank(a) - rank(b)).join('')}</font>`;
  });

/** The first font is that of empty cells, and widths of columns are counted in its digits. */
const plainFont = (xml: string): string =>
  xml.replace(/<font>.*?<\/font>/s, '<font><sz val="10"/><name val="Arial"/><family val="2"/></font>');

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

function withNames(xml: string, names: readonly [string, string][]): string {
  const own = names.map(([name, to]) => `<definedName name="${name}">${escaped(to)}</definedName>`).join('');
  if (!xml.includes('</definedNames>'))
    throw new Error('the library wrote no defined names, not even print areas');
  return xml.replace('</definedNames>', `${own}</definedNames>`);
}
