/** The list of texts of a workbook: each different one once, cells point to them. */
import { HEAD, MAIN, textElement } from './xml.ts';

export class StringTable {
  readonly #numbers = new Map<string, number>();
  #uses = 0;

  of(text: string): number {
    this.#uses += 1;
    const found = this.#numbers.get(text) ?? this.#numbers.size;
    this.#numbers.set(text, found);
    return found;
  }

  xml(): string {
    const items = [...this.#numbers.keys()].map((text) => `<si>${textElement('t', text)}</si>`);
    return (
      `${HEAD}<sst xmlns="${MAIN}" count="${this.#uses}" ` +
      `uniqueCount="${items.length}">${items.join('')}</sst>`
    );
  }
}
