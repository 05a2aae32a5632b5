/** From a picture to SVG. The libraries that draw are loaded when the first one is drawn. */
import type { LoggerInterface } from 'vega';
import type { Measure } from './font.ts';
import { SVG_MARK } from './mark.ts';
import type { Picture } from './picture.ts';

/** Widths of the letters that a picture has, by weight. */
export interface Letters {
  readonly plain: Measure;
  readonly bold: Measure;
}

/** What the libraries say about a text that is to be measured. */
interface TextItem {
  readonly fontSize?: number;
  readonly fontWeight?: string | number;
}

/**
 * The picture laid out: the view of the drawing library, without a page. `letters` measure what a page would measure by
 * itself. Also what the libraries found to warn of.
 */
export async function viewOf(picture: Picture, letters?: Letters) {
  const [vega, { compile }] = await Promise.all([import('vega'), import('vega-lite')]);
  const warnings: string[] = [];
  const keep = (...texts: readonly unknown[]): LoggerInterface => {
    warnings.push(texts.join(' '));
    return logger;
  };
  const logger: LoggerInterface = { ...vega.logger(vega.None), warn: keep, error: keep };
  if (letters) measureBy(vega, letters);
  const { spec } = compile(picture.spec, { logger });
  const view = new vega.View(vega.parse(spec), { renderer: 'none', logger });
  await view.runAsync();
  return { view, warnings, vega };
}

/** Its declarations leave out the object by which it measures; the library has it for such replacements. */
const measureBy = (vega: object, { plain, bold }: Letters): void => {
  const { textMetrics } = vega as { textMetrics: object };
  Object.assign(textMetrics, {
    width: (item: TextItem, text: unknown): number =>
      (item.fontWeight === 'bold' ? bold : plain)(lineText(text), item.fontSize ?? 11),
  });
};

const lineText = (text: unknown): string =>
  Array.isArray(text) ? String(text[0] ?? '') : String(text ?? '');

/** The picture as SVG, with title, description and the mark of this tool. The same picture gives the same text. */
export async function toSvg(picture: Picture, letters?: Letters): Promise<string> {
  const { view, vega } = await viewOf(picture, letters);
  // Numbers of clipping paths and the like count on from one picture to the next.
  vega.resetSVGDefIds();
  const svg = (await view.toSVG()).replace(NOT_XML, '\ufffd');
  view.finalize();
  const head = /^<svg [^>]*>/.exec(svg)?.[0];
  if (head === undefined) throw new Error('what was drawn is no SVG');
  const opened = head.replace('<svg ', '<svg role="img" aria-labelledby="title desc" ');
  return (
    `${opened}<title id="title">${escaped(picture.title)}</title><desc id="desc">${escaped(picture.description)}</desc>` +
    `<metadata>${SVG_MARK}</metadata>${svg.slice(head.length)}\n`
  );
}

/** What a text may hold and XML may not. */
const NOT_XML = /[\ufffe\uffff]|\p{Cs}/gu;

const escaped = (text: string): string =>
  text.replace(NOT_XML, '\ufffd').replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
