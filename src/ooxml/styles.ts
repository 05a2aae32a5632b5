/** The list of styles of a workbook: each different font, ground, border and format once, cells point to them. */
import type { Border, Edge, Font, Look, Style } from './book.ts';
import { escaped, HEAD, MAIN } from './xml.ts';

const NAME = 'Arial';
const MONO = 'Courier New';
/** Formats that every program knows by number; own ones are counted from 164. */
const KNOWN: Readonly<Record<string, number>> = { General: 0, '0': 1, '0.00': 2 };
const OWN = 164;

/** Each different text once, with its number in the order of first use. */
class Numbered {
  readonly #numbers = new Map<string, number>();
  constructor(...first: readonly string[]) {
    for (const text of first) this.of(text);
  }
  of(text: string): number {
    const found = this.#numbers.get(text) ?? this.#numbers.size;
    this.#numbers.set(text, found);
    return found;
  }
  list(element: string): string {
    return `<${element} count="${this.#numbers.size}">${[...this.#numbers.keys()].join('')}</${element}>`;
  }
  get keys(): readonly string[] {
    return [...this.#numbers.keys()];
  }
}

export class StyleTable {
  // The first font is that of empty cells, and widths of columns are counted in its digits.
  readonly #fonts = new Numbered();
  // The format reserves the first two.
  readonly #fills = new Numbered(
    '<fill><patternFill patternType="none"/></fill>',
    '<fill><patternFill patternType="gray125"/></fill>',
  );
  readonly #borders = new Numbered(borderXml({}));
  readonly #formats = new Numbered();
  readonly #cells = new Numbered('<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>');
  readonly #looks = new Map<Look, number>();
  readonly #known = new Map<Style, number>();

  /** Size of the plain font [pt]. */
  constructor(size: number) {
    this.#fonts.of(`<font><sz val="${size}"/><name val="${NAME}"/><family val="2"/></font>`);
  }

  /** Number of a style, to be put at a cell. */
  of(style: Style): number {
    const found = this.#known.get(style) ?? this.#added(style);
    this.#known.set(style, found);
    return found;
  }

  /** Number of what a condition lays over a cell. */
  look(look: Look): number {
    const found = this.#looks.get(look) ?? this.#looks.size;
    this.#looks.set(look, found);
    return found;
  }

  #added(style: Style): number {
    const { format, vertical, horizontal, indent, wrap, locked } = style;
    const number = KNOWN[format] ?? OWN + this.#formats.of(format);
    const fill = style.fill === undefined ? 0 : this.#fills.of(fillXml('fgColor', style.fill));
    return this.#cells.of(
      `<xf numFmtId="${number}" fontId="${this.#fonts.of(fontXml(style.font))}" fillId="${fill}" ` +
        `borderId="${this.#borders.of(borderXml(style.border ?? {}))}" xfId="0" applyNumberFormat="1" applyFont="1" ` +
        'applyFill="1" applyBorder="1" applyAlignment="1" applyProtection="1">' +
        `<alignment horizontal="${horizontal}" vertical="${vertical}"${wrap ? ' wrapText="1"' : ''}${indent ? ' indent="1"' : ''}/>` +
        `<protection locked="${locked ? 1 : 0}"/></xf>`,
    );
  }

  /** The part of the file. */
  xml(): string {
    const formats = this.#formats.keys.map(
      (code, i) => `<numFmt numFmtId="${OWN + i}" formatCode="${escaped(code)}"/>`,
    );
    return (
      `${HEAD}<styleSheet xmlns="${MAIN}">` +
      (formats.length === 0 ? '' : `<numFmts count="${formats.length}">${formats.join('')}</numFmts>`) +
      this.#fonts.list('fonts') +
      this.#fills.list('fills') +
      this.#borders.list('borders') +
      '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
      this.#cells.list('cellXfs') +
      '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>' +
      `<dxfs count="${this.#looks.size}">${[...this.#looks.keys()].map(lookXml).join('')}</dxfs></styleSheet>`
    );
  }
}

const fontXml = ({ bold, italic, mono, size, color }: Font): string =>
  `<font>${bold ? '<b/>' : ''}${italic ? '<i/>' : ''}<sz val="${size}"/><color rgb="${color}"/>` +
  `<name val="${mono ? MONO : NAME}"/><family val="${mono ? 3 : 2}"/></font>`;

const lookXml = ({ bold, italic, color, fill }: Look): string =>
  `<dxf><font>${bold ? '<b/>' : ''}${italic ? '<i/>' : ''}<color rgb="${color}"/></font>` +
  `${fill ? fillXml('bgColor', fill) : ''}</dxf>`;

/** A condition's ground has its colour as background, where a cell's has it as foreground. */
const fillXml = (where: 'fgColor' | 'bgColor', color: string): string =>
  `<fill><patternFill patternType="solid"><${where} rgb="${color}"/></patternFill></fill>`;

function borderXml({ around, bottom = around }: Border): string {
  const side = (name: string, edge: Edge | undefined): string =>
    edge === undefined
      ? `<${name}/>`
      : `<${name} style="${edge.style}"><color rgb="${edge.color}"/></${name}>`;
  return `<border>${side('left', around)}${side('right', around)}${side('top', around)}${side('bottom', bottom)}<diagonal/></border>`;
}
