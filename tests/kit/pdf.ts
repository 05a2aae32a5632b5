/** Every word of a PDF with its place [mm], by poppler. */
import { execFileSync } from 'node:child_process';

export interface Word {
  page: number;
  text: string;
  right: number;
  bottom: number;
  left: number;
  top: number;
}

export interface Printed {
  /** Width and height. */
  pages: [number, number][];
  words: Word[];
}

export function wordsOf(pdf: string): Printed {
  const html = execFileSync('pdftotext', ['-bbox', pdf, '-'], { encoding: 'utf8', maxBuffer: 64e6 });
  const mm = (points: string | undefined): number => (Number(points) * 25.4) / 72;
  const pages: [number, number][] = [];
  const words: Word[] = [];
  for (const [, width, height, xMin, yMin, xMax, yMax, text] of html.matchAll(
    /<page width="([\d.]+)" height="([\d.]+)">|<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/g,
  )) {
    if (width !== undefined) pages.push([mm(width), mm(height)]);
    else
      words.push({
        page: pages.length,
        text: text ?? '',
        left: mm(xMin),
        top: mm(yMin),
        right: mm(xMax),
        bottom: mm(yMax),
      });
  }
  return { pages, words };
}
