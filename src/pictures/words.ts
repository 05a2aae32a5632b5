/** Words inside pictures: lines, what fits, and names of files. */
import type { Measure } from './look.ts';

/** Breaks a text into lines that are not wider than `width` [px]. A value keeps its unit; a longer word is cut. */
export function wrapped(text: string, width: number, size: number, measure: Measure, bold = false): string[] {
  const lines: string[] = [];
  for (const word of text.split(/(?<!\d)\s+/).map((one) => fitted(one, width, size, measure, bold))) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && measure(longer, size, bold) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** A text cut so that it is not wider than `width` [px]. */
export function fitted(text: string, width: number, size: number, measure: Measure, bold = false): string {
  if (measure(text, size, bold) <= width) return text;
  const letters = [...text];
  while (letters.length > 1 && measure(`${letters.join('')}…`, size, bold) > width) letters.pop();
  return `${letters.join('')}…`;
}

/** A name shortened to `most` letters. */
export const shortened = (text: string, most: number): string => {
  const letters = [...text];
  return letters.length <= most ? text : `${letters.slice(0, most - 1).join('')}…`;
};

/** A part of a file's name: small ASCII letters, digits and `-`. */
export const slug = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');

/** Slugs of several names, told apart by a number where they would be the same or empty. */
export function slugs(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name, i) => {
    let found = slug(name) || String(i + 1);
    while (taken.has(found)) found = `${found}-${i + 1}`;
    taken.add(found);
    return found;
  });
}
