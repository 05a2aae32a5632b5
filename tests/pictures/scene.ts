/** What stands where in a drawn picture: its texts with their boxes, read back from the SVG; and its data by kind. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Part, Picture } from '../../src/pictures/chart.ts';
import { widthsOf } from '../../src/pictures/font.ts';
import type { Measure } from '../../src/pictures/look.ts';

const require = createRequire(import.meta.url);
export const fontFile = (name: string): string => require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);

const plain = widthsOf(readFileSync(fontFile('DejaVuSans')));
const bold = widthsOf(readFileSync(fontFile('DejaVuSans-Bold')));
/** Widths of the fonts that are shipped; `files.test.ts` holds them against another reader of the fonts. */
export const measure: Measure = (text, size, isBold) => (isBold ? bold : plain)(text, size);

export interface Box {
  text: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface Scene {
  texts: Box[];
  /** Size of the picture [px]. */
  width: number;
  height: number;
}

/** Letters of DejaVu Sans reach this far above and below the line that they stand on, as shares of their size. */
const [ABOVE, BELOW] = [0.76, 0.24];

const SIGNS: Record<string, string> = { '&lt;': '<', '&gt;': '>', '&quot;': '"', '&amp;': '&' };

/** Reads the texts of a picture. `margin` is that of the whole drawing [px], from its outer group. */
export function sceneOf(svg: string): Scene {
  const [, width = 0, height = 0] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).map(Number);
  const [, dx = 0, dy = 0] = (/<g transform="translate\(([\d.]+) ([\d.]+)\)"/.exec(svg) ?? []).map(Number);
  const texts = [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].map(
    ([, given = '', inside = '']): Box => {
      const values = Object.fromEntries(
        [...given.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, value]),
      );
      const text = inside.replace(/&\w+;/g, (sign) => SIGNS[sign] ?? sign);
      const size = Number(values['font-size']);
      const wide = measure(text, size, values['font-weight'] === 'bold');
      const [x, y] = [dx + Number(values.x ?? 0), dy + Number(values.y)];
      const before = wide * ({ middle: 0.5, end: 1 }[values['text-anchor'] ?? ''] ?? 0);
      // A quarter turn against the clock around its own place: what went right goes up.
      return values.transform?.startsWith('rotate(-90')
        ? {
            text,
            left: x - ABOVE * size,
            right: x + BELOW * size,
            top: y - wide + before,
            bottom: y + before,
          }
        : {
            text,
            left: x - before,
            right: x - before + wide,
            top: y - ABOVE * size,
            bottom: y + BELOW * size,
          };
    },
  );
  return { texts, width, height };
}

/** Pairs of texts whose boxes cover each other by more than `hair` [px] both ways. */
export const overlaps = (texts: readonly Box[], hair: number): string[] =>
  texts.flatMap((a, i) =>
    texts.slice(i + 1).flatMap((b) => {
      const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      return wide > hair && high > hair ? [`"${a.text}" on "${b.text}"`] : [];
    }),
  );

/** Parts of one kind, of all panels. */
export const partsOf = <K extends Part['kind']>(picture: Picture, kind: K): Extract<Part, { kind: K }>[] =>
  picture.stacks
    .flatMap(({ panels }) => panels)
    .flatMap(({ parts }) => parts)
    .filter((part): part is Extract<Part, { kind: K }> => part.kind === kind);
