/** Pictures as files: fonts are read from the package that ships them, PNG is drawn by a native library. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Evaluation } from '../engine/evaluate.ts';
import { picturesOf } from '../pictures/all.ts';
import type { Picture } from '../pictures/chart.ts';
import { widthsOf } from '../pictures/font.ts';
import type { Measure } from '../pictures/look.ts';
import { markedPng } from '../pictures/mark.ts';
import { toSvg } from '../pictures/svg.ts';
import { explain, Refusal, shown } from './files.ts';
import type { Output } from './write.ts';

const ENDINGS = ['svg', 'png'] as const;
export type PictureEnding = (typeof ENDINGS)[number];

/** Ending of a name that a picture can have; null for another one. */
export const pictureEnding = (path: string): PictureEnding | null => {
  const lower = path.toLowerCase();
  return ENDINGS.find((ending) => lower.endsWith(`.${ending}`)) ?? null;
};

/** Pixels of a PNG for each of the picture: sharp on a dense screen and in print. */
const ZOOM = 2;

interface Fonts {
  readonly measure: Measure;
  readonly files: readonly string[];
}

let fonts: Fonts | null = null;

function fontsOf(): Fonts {
  if (fonts !== null) return fonts;
  const require = createRequire(import.meta.url);
  const find = (name: string): string => {
    try {
      return require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);
    } catch {
      throw new Refusal(
        'The package dejavu-fonts-ttf, which brings the letters of pictures, is missing; run "npm ci".',
        3,
      );
    }
  };
  const files = [find('DejaVuSans'), find('DejaVuSans-Bold')] as const;
  const read = (file: string) => {
    try {
      return widthsOf(readFileSync(file));
    } catch (error) {
      throw explain(error, `"${file}"`);
    }
  };
  const [plain, bold] = [read(files[0]), read(files[1])];
  fonts = { measure: (text, size, isBold) => (isBold ? bold : plain)(text, size), files };
  return fonts;
}

/** A picture as the bytes of a file of each ending. The same picture gives the same bytes. */
export async function drawn<E extends PictureEnding>(
  picture: Picture,
  endings: readonly E[],
): Promise<{ readonly ending: E; readonly bytes: Uint8Array }[]> {
  const svg = toSvg(picture, fontsOf().measure);
  const bytes = (ending: E) => (ending === 'svg' ? new TextEncoder().encode(svg) : toPng(svg));
  return Promise.all(endings.map(async (ending) => ({ ending, bytes: await bytes(ending) })));
}

async function toPng(svg: string): Promise<Uint8Array> {
  const { Resvg } = await import('@resvg/resvg-js').catch(() => {
    throw new Refusal(
      'PNG needs the package @resvg/resvg-js for this machine; write .svg, or run "npm ci".',
      3,
    );
  });
  const font = {
    fontFiles: [...fontsOf().files],
    // Fonts of the machine would make the picture depend on it.
    loadSystemFonts: false,
    defaultFontFamily: 'DejaVu Sans',
  };
  return markedPng(new Resvg(svg, { font, fitTo: { mode: 'zoom', value: ZOOM } }).render().asPng());
}

/** One picture as a file; the ending of `path` says how. */
export async function asFile(path: string, picture: Picture): Promise<Output> {
  const [file] = await drawn(picture, [pictureEnding(path) ?? 'svg']);
  return { path, bytes: file?.bytes as Uint8Array };
}

/** Every picture that the design supports as files of a folder, SVG and PNG; and which, and which not and why. */
export async function plotsOf(folder: string, e: Evaluation): Promise<{ files: Output[]; told: string }> {
  const { pictures, left } = picturesOf(e);
  const files: Output[] = [];
  for (const picture of pictures)
    for (const { ending, bytes } of await drawn(picture, ENDINGS))
      files.push({ path: join(folder, `${picture.name}.${ending}`), bytes });
  const names = pictures.map(({ name }) => name).join(', ') || 'none';
  const told = [
    `Pictures in ${shown(folder)}, each as .svg and .png: ${names}`,
    ...left.map(({ name, why }) => `No picture "${name}": ${why}`),
  ];
  return { files, told: told.join('\n') };
}
