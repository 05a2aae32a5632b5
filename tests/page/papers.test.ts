/** The papers that the page makes: as the command’s, with the logo that was opened. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { evaluate } from '../../src/engine/evaluate.ts';
import { ownOf } from '../../src/own/evaluate.ts';
import { papersOf } from '../../src/page/worker/papers.ts';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { demo, design } from '../design/helpers.ts';
import { shop, straight } from '../kit/designs.ts';
import { demoPath } from '../workbook/books.ts';

const LOGO = 'data:image/svg+xml;base64,PHN2Zy8+';
const IMAGE = `<img alt="" src="${LOGO}">`;
/** How often the logo stands on each paper that is a page. */
const logos = async (text: string, logo: string | null): Promise<number[]> => {
  const made = await papersOf(design(text), { kits: '', serials: 'A1-A2' }, logo);
  if ('why' in made) throw new Error(made.why);
  return made.files
    .filter(({ name }) => name.endsWith('.html'))
    .map(({ text: html }) => html.split(IMAGE).length - 1);
};

test('the shop gets its prices as a file, which the archive for the customer does not have', async () => {
  const made = async (text: string) => {
    const found = await papersOf(design(text), { kits: '', serials: '' }, null);
    if ('why' in found) throw new Error(found.why);
    return {
      names: found.files.map(({ name }) => name),
      zipped: Object.keys(unzipSync(found.zip)),
      files: found.files,
    };
  };
  const priced = await made(demo('hill-climb-six'));
  expect(priced.names).toContain('prices.csv');
  expect(priced.zipped).toEqual(priced.names.filter((name) => name !== 'prices.csv'));
  // As the command writes it, which puts its seal into a column of its own.
  const out = join(emptyFolder(), 'kit');
  await coilfeed(['kit', demoPath('hill-climb-six'), '--out', out]);
  const written = readFileSync(join(out, 'prices.csv'), 'utf8');
  expect(priced.files.find(({ name }) => name === 'prices.csv')?.text).toBe(
    written.replace(/,(?:coilfeed [0-9a-f]{16})?\r\n/g, '\r\n'),
  );
  expect((await made(straight(2))).names).not.toContain('prices.csv');
});

test('no papers where a rule of the author’s own was not asked, and held ones where it is not met', async () => {
  const text = `${straight(2)}\nown:\n  - { label: Wire in all, formula: "5.4", unit: m, at_most: 2 }\n`;
  const read = design(text);
  const lot = { kits: '', serials: '' };
  expect(await papersOf(read, lot, null)).toEqual({
    why: 'The author’s own rules could not be worked out: no papers are made.',
  });
  const made = await papersOf(read, lot, null, ownOf(evaluate(read)).found);
  expect(made).toMatchObject({
    released: false,
    words: 'NOT RELEASED FOR BUILDING: a rule of the author’s own fails',
  });
});

test('no papers around a part that is not known, as the command refuses it', async () => {
  const file = join(emptyFolder(), 'unknown.yaml');
  const text = straight(2).replace('gauge: 6 AWG', 'gauge: unknown');
  writeFileSync(file, text);
  const refused = await coilfeed(['kit', file, '--out', join(emptyFolder(), 'kit')]);
  const made = await papersOf(design(text), { kits: '', serials: '' }, null);
  const words = 'feed[0].gauge: nothing can be sized or built around an unknown part.';
  expect([refused.status, made]).toEqual([2, { why: words }]);
  expect(refused.err).toContain(words);
});

test('the logo stands on every paper, on each page of the build record, where the shop’s file names one', async () => {
  const shopped = `${straight(2)}${shop('None.')}`;
  // Instructions, test card, bench sheet, two records, labels.
  expect(await logos(shopped, LOGO)).toEqual([1, 1, 1, 2, 1]);
  expect(await logos(shopped, null)).toEqual([0, 0, 0, 0, 0]);
  expect(await logos(straight(2), LOGO)).toEqual([0, 0, 0, 0, 0]);
  expect(await logos(shopped.replace('    logo: logo.svg\n', ''), LOGO)).toEqual([0, 0, 0, 0, 0]);
});
