/**
 * How wide a text is, without a font at hand: the widths of DejaVu Sans, which is wider than the other fonts that the
 * drawing names, so that what fits here fits with them as well.
 */

/** Widths in ems of groups of characters; what is in no group counts as `OTHER`. */
const GROUPS: readonly [string, number][] = [
  ["iIjl.,:;'|!", 0.34],
  [' \u00a0()[]-/\\frt', 0.42],
  ['acesz0123456789bdghknopquvxyJLTFE°–×−·', 0.64],
  ['ABCDGHKNOPQRSUVXYZw&+=<>', 0.84],
  ['mMW%@Ω', 1.0],
];
const WIDTHS = new Map(GROUPS.flatMap(([letters, width]) => [...letters].map((l) => [l, width] as const)));
/** Other letters of alphabets. */
const OTHER = 0.85;
/** Ideographs, emoji and the like. */
const WIDE = 1.4;
const FIRST_WIDE = 0x2e80;

const charWidth = (character: string): number =>
  WIDTHS.get(character) ?? ((character.codePointAt(0) ?? 0) >= FIRST_WIDE ? WIDE : OTHER);

/** Width in ems. */
export const textWidth = (text: string): number =>
  [...text].reduce((sum, character) => sum + charWidth(character), 0);

/** Lines of at most `room` ems: whole words where they fit, longer words cut; a no-break space keeps a value together. */
export function wrapText(text: string, room: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/[ \t\n]+/).filter(Boolean)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer) <= room) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const character of word) {
      if (textWidth(line + character) > room && line !== '') {
        lines.push(line);
        line = '';
      }
      line += character;
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}
