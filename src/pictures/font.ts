/**
 * Widths of letters, read from a TrueType font: what draws the picture has no other way to measure a text outside of a
 * browser, and would guess. Format: OpenType, tables head, hhea, hmtx and cmap (format 4: the first 65536 characters).
 */

/** Width of a text at a size [px], in one font. */
export type Width = (text: string, size: number) => number;

/** Reads a font. Throws when the bytes are no TrueType font with those tables. */
export function widthsOf(font: Uint8Array): Width {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const tables = tablesOf(view);
  const at = (tag: string): number => {
    const found = tables.get(tag);
    if (found === undefined) throw new Error(`the font has no table ${tag}`);
    return found;
  };
  const perEm = view.getUint16(at('head') + 18);
  const counted = view.getUint16(at('hhea') + 34);
  const glyphs = glyphsOf(view, at('cmap'));
  const hmtx = at('hmtx');
  const widths = new Map<string, number>();
  const advance = (letter: string): number => {
    const known = widths.get(letter);
    if (known !== undefined) return known;
    const glyph = glyphs(letter.codePointAt(0) ?? 0);
    const width = view.getUint16(hmtx + 4 * Math.min(glyph, counted - 1)) / perEm;
    widths.set(letter, width);
    return width;
  };
  return (text, size) => [...text].reduce((sum, letter) => sum + advance(letter), 0) * size;
}

function tablesOf(view: DataView): Map<string, number> {
  const count = view.getUint16(4);
  return new Map(
    Array.from({ length: count }, (_, i) => {
      const entry = 12 + 16 * i;
      const tag = String.fromCharCode(...[0, 1, 2, 3].map((k) => view.getUint8(entry + k)));
      return [tag, view.getUint32(entry + 8)];
    }),
  );
}

/** Number of the glyph of a character; 0, the box, for one that the font lacks. */
function glyphsOf(view: DataView, cmap: number): (character: number) => number {
  const count = view.getUint16(cmap + 2);
  const offsets = Array.from({ length: count }, (_, i) => cmap + view.getUint32(cmap + 4 + 8 * i + 4));
  const table = offsets.find((offset) => view.getUint16(offset) === 4);
  if (table === undefined) throw new Error('the font has no characters that can be read');
  const segments = view.getUint16(table + 6) / 2;
  const field = (row: number, segment: number): number =>
    table + 14 + 2 * (row * segments + segment) + (row > 0 ? 2 : 0);
  return (character) => {
    for (let s = 0; s < segments; s++) {
      if (character > view.getUint16(field(0, s))) continue;
      const start = view.getUint16(field(1, s));
      if (character < start) return 0;
      const delta = view.getUint16(field(2, s));
      const range = view.getUint16(field(3, s));
      if (range === 0) return (character + delta) & 0xffff;
      const glyph = view.getUint16(field(3, s) + range + 2 * (character - start));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };
}
