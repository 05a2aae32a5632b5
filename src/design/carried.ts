/** The text of a design in the form in which a workbook can carry it. */

/** Lines that a sheet of a workbook should have at most; a full design has some hundred. */
const MOST_LINES = 2000;
/** What the cells of a workbook cannot hold: control characters and halves of characters. */
const ODD =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that are meant.
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** The text of a design for a workbook to carry: made when somebody asks for it, and most of the times that a design is read nobody does. */
export class Carried {
  #make: (() => string) | null;
  #text = '';

  constructor(make: () => string) {
    this.#make = make;
  }

  toString(): string {
    if (this.#make !== null) this.#text = this.#make();
    this.#make = null;
    return this.#text;
  }
}

/**
 * The author's text with plain line ends, also behind the last line; where a sheet could not hold that, the same values on one line of JSON.
 * `value` is what the text stands for, as plain values.
 */
export function carriedText(text: string, value: unknown): string {
  const plain = text
    .replace(/^\ufeff/, '')
    .replace(/\r\n?/g, '\n')
    .replace(/(?<!\n)$/, '\n');
  if (plain.search(ODD) < 0 && plain.split('\n').length <= MOST_LINES) return plain;
  return `${JSON.stringify(value).replace(ODD, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`)}\n`;
}
