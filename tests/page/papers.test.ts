/** The papers that the page makes: as the command’s, with the logo that was opened. */
import { expect, test } from 'vitest';
import { papersOf } from '../../src/page/worker/papers.ts';
import { design } from '../design/helpers.ts';
import { shop, straight } from '../kit/designs.ts';

const LOGO = 'data:image/svg+xml;base64,PHN2Zy8+';
const IMAGE = `<img alt="" src="${LOGO}">`;
/** How often the logo stands on each paper that is a page. */
const logos = async (text: string, logo: string | null): Promise<number[]> => {
  const made = await papersOf(design(text), 'A1-A2', logo);
  if ('why' in made) throw new Error(made.why);
  return made.files
    .filter(({ name }) => name.endsWith('.html'))
    .map(({ text: html }) => html.split(IMAGE).length - 1);
};

test('the logo stands on every paper, on each page of the build record, where the shop’s file names one', async () => {
  const shopped = `${straight(2)}${shop('None.')}`;
  // Instructions, test card, bench sheet, two records, labels.
  expect(await logos(shopped, LOGO)).toEqual([1, 1, 1, 2, 1]);
  expect(await logos(shopped, null)).toEqual([0, 0, 0, 0, 0]);
  expect(await logos(straight(2), LOGO)).toEqual([0, 0, 0, 0, 0]);
  expect(await logos(shopped.replace('    logo: logo.svg\n', ''), LOGO)).toEqual([0, 0, 0, 0, 0]);
});
