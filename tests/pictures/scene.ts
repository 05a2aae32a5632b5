/** What stands where in a drawn picture: the texts of the scene with their boxes. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { measureOf } from '../../src/pictures/font.ts';
import type { Picture } from '../../src/pictures/picture.ts';
import { type Letters, viewOf } from '../../src/pictures/svg.ts';

const require = createRequire(import.meta.url);
export const fontFile = (name: string): string => require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);

/** Widths of the fonts that are shipped. */
export const LETTERS: Letters = {
  plain: measureOf(readFileSync(fontFile('DejaVuSans'))),
  bold: measureOf(readFileSync(fontFile('DejaVuSans-Bold'))),
};

export interface Box {
  text: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface Scene {
  texts: Box[];
  warnings: readonly string[];
  /** Size of the picture [px]. */
  width: number;
  height: number;
}

interface Item {
  x?: number;
  y?: number;
  text?: string | string[];
  opacity?: number;
  bounds: { x1: number; y1: number; x2: number; y2: number };
  items?: Mark[];
}
interface Mark {
  marktype: string;
  items: Item[];
}

/** Lays a picture out. */
export async function sceneOf(picture: Picture): Promise<Scene> {
  const { view, warnings } = await viewOf(picture, LETTERS);
  const svg = await view.toSVG();
  const [, width = 0, height = 0] = (/viewBox="0 0 (\d+) (\d+)"/.exec(svg) ?? []).map(Number);
  const [, left = 0, top = 0] = (/<g [^>]*transform="translate\(([\d.]+),([\d.]+)\)"/.exec(svg) ?? []).map(
    Number,
  );
  const texts: Box[] = [];
  const walk = (mark: Mark, x: number, y: number): void => {
    for (const item of mark.items) {
      if (mark.marktype === 'group')
        for (const inner of item.items ?? []) walk(inner, x + (item.x ?? 0), y + (item.y ?? 0));
      const text = Array.isArray(item.text) ? item.text.join(' ') : String(item.text ?? '');
      if (mark.marktype !== 'text' || text === '' || item.opacity === 0) continue;
      const { x1, x2, y1, y2 } = item.bounds;
      texts.push({ text, left: x + x1, right: x + x2, top: y + y1, bottom: y + y2 });
    }
  };
  walk((view.scenegraph() as unknown as { root: Mark }).root, left, top);
  view.finalize();
  return { texts, warnings, width, height };
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

/** Rows of every layer of a picture, in order. */
export function layersOf({ spec }: Picture): Record<string, unknown>[][] {
  const found: Record<string, unknown>[][] = [];
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(walk);
    else if (value !== null && typeof value === 'object') {
      const { data, ...rest } = value as { data?: { values?: Record<string, unknown>[] } };
      if (data?.values) found.push(data.values);
      Object.values(rest).forEach(walk);
    }
  };
  walk(spec);
  return found;
}
