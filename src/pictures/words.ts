/** Words inside pictures: how wide they are about, lines, and names of files. */

/**
 * Width of a text [px], a little too large: most letters of DejaVu Sans are 0.55 to 0.65 of their size wide. Good
 * enough to break lines and to see whether labels fit; what draws the picture measures exactly.
 */
export const roughWidth = (text: string, size: number): number => [...text].length * size * 0.66;

/** Breaks a text into lines that are not wider than `width` [px]. A value keeps its unit; a longer word is cut. */
export function wrapped(text: string, width: number, size: number): string[] {
  const most = Math.max(8, Math.floor(width / roughWidth('x', size)));
  const lines: string[] = [];
  for (const word of text.split(/(?<!\d)\s+/).flatMap((long) => pieces(long, most))) {
    const last = lines.at(-1);
    if (last !== undefined && [...last].length + 1 + [...word].length <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

const pieces = (word: string, most: number): string[] => {
  const letters = [...word];
  return Array.from({ length: Math.ceil(letters.length / most) }, (_, i) =>
    letters.slice(i * most, (i + 1) * most).join(''),
  );
};

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
