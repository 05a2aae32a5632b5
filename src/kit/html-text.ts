/** Texts of persons in the markup of a paper, and in its style. */
import { escaped } from '../pictures/elements.ts';

/** Text of a person: its direction is its own, so that it cannot turn what stands around it. */
export const name = (text: string): string => `<bdi>${escaped(text)}</bdi>`;

/** A text as a string of CSS, with whatever could end it, or the style, written as its number. */
export const cssText = (text: string): string =>
  `"${[...text].map((c) => (/[A-Za-z0-9 .,:()_-]/.test(c) ? c : `\\${(c.codePointAt(0) ?? 0x20).toString(16)} `)).join('')}"`;
