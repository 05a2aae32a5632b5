/** `coilfeed kit DESIGN --out DIR`: writes what the shop and its customer hold in their hands. */
import { extname, join, resolve } from 'node:path';
import type { Design } from '../design/design.ts';
import { withCopy } from '../design/shop/copy.ts';
import { harnessOf } from '../kit/harness.ts';
import { type Job, LOGOS } from '../kit/job.ts';
import { FILES, papers } from '../kit/papers.ts';
import { priceTable, priceWords } from '../kit/prices.ts';
import { readWords } from '../kit/read-words.ts';
import { released } from '../kit/release.ts';
import { readBatch, readSerials } from '../kit/serials.ts';
import { WORDS, type Words } from '../kit/words.ts';
import { run as pipeline, withOwn } from '../run.ts';
import { sha256 } from '../saved/seal/digest.ts';
import { argsOf } from './args.ts';
import { nameOf, Refusal, readInput, refused, shown, textOf } from './files.ts';
import { type Given, oneDesign, readGiven } from './given.ts';
import { wrap } from './help.ts';
import { working } from './progress.ts';
import { reserveFolder, writeFiles } from './write.ts';

/** For the shop alone, and so none of the papers. */
const PRICES = 'prices.csv';

/** Returns the exit status: 0 nothing fails, 1 something fails or is unknown, 2 the design or the words cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const { positionals, values } = argsOf(argv, {
    one: ['shop', 'out', 'batch', 'serials', 'words'],
    many: ['set'],
    flags: ['force', 'ascii', 'bom'],
  });
  const file = oneDesign(positionals, 'kit');
  const { out, force = false, ascii = false, bom: mark = false } = values;
  if (out === undefined) throw new Refusal('"kit" needs a folder: --out DIR. See "coilfeed help kit".');
  const serials = serialsOf(values.serials);
  const batch = batchOf(values.batch, serials.length);

  const given = await readGiven(file, { set: values.set ?? [], shop: values.shop });
  if (given === null) return 2;
  const { design } = given;
  const read = await wordsOf(values.words);
  if (read === null) return 2;
  const { words, literals } = read;

  const undo = reserveFolder(out, [...Object.keys(FILES), PRICES]);
  try {
    const logo = await logoOf(design, given.beside);
    const { job, files } = await made(given, words, { batch, serials, logo, csv: { ascii, mark } });
    await writeFiles(
      files.map(([name, bytes]) => ({ path: join(out, name), bytes })),
      { force, inputs: [file, ...(values.words === undefined ? [] : [values.words])] },
    );
    process.stdout.write(report(out, job, literals));
    return job.result.verdict === 'pass' ? 0 : 1;
  } catch (error) {
    undo();
    throw error;
  }
}

type Files = [string, string | Uint8Array][];

async function made(
  { design, own }: Given,
  words: Words,
  about: Pick<Job, 'batch' | 'serials' | 'logo' | 'csv'>,
): Promise<{ job: Job; files: Files }> {
  const { kitPages } = await import('../kit/sheets.ts');
  const { show, toWorkbook } = await import('../writers/workbook/workbook.ts');
  const { runLaid } = await import('../run-laid.ts');
  // As it stands in the workbook.
  const digest = await sha256(withCopy(design).text.toString());
  return working('Making the papers', async () => {
    const result = withOwn(pipeline(design), own);
    const job: Job = { result, harness: harnessOf(result.evaluation), digest, ...about };
    // Once more, now with the sheets of the kit, whose rows follow from the first result.
    const pages = kitPages(job);
    const whole = runLaid(design, (grid, d) => new Map([...show(grid, d), ...pages.sheets(grid)]));
    const prices = priceTable(job);
    const files: Files = [
      ...papers(job, words),
      ['kit.xlsx', toWorkbook(whole, pages.pages(whole.evaluation))],
      ...(prices === null ? [] : [[PRICES, prices] as [string, string]]),
    ];
    return { job, files };
  });
}

async function wordsOf(
  file: string | undefined,
): Promise<{ words: Words; literals: readonly string[] } | null> {
  if (file === undefined) return { words: WORDS, literals: [] };
  const read = readWords(textOf(await readInput(file), file), file === '-' ? 'stdin' : file);
  if (read.ok) return read;
  return refused(read.problems);
}

function serialsOf(text: string | undefined): readonly string[] {
  if (text === undefined) return [];
  const read = readSerials(text);
  if (!read.ok) throw new Refusal(`--serials: ${read.why}; takes A001-A025 or A001,A007.`);
  return read.serials;
}

function batchOf(text: string | undefined, serials: number): number {
  const read = readBatch(text, serials);
  if (!read.ok) throw new Refusal(`--batch ${read.why}.`);
  return read.batch;
}

/** The shop's logo as a data URL, from the file beside the shop's own; null where none is named. */
async function logoOf({ shop }: Design, beside: string): Promise<string | null> {
  const logo = shop?.shop?.logo;
  if (logo === undefined) return null;
  const path = resolve(beside, logo);
  const type = LOGOS[extname(path).slice(1).toLowerCase()];
  if (type === undefined)
    throw new Refusal(`The shop's logo ${nameOf(path)} is no picture; takes .png, .jpg or .svg.`);
  return `data:${type};base64,${Buffer.from(await readInput(path)).toString('base64')}`;
}

function report(folder: string, job: Job, literals: readonly string[]): string {
  const { result, batch, harness } = job;
  const prices = priceWords(job);
  const { ok, words, open, broken } = released(result);
  const names = Object.entries(FILES).map(([name, what]) => `  ${name.padEnd(19)} ${what}`);
  const blanks = harness.pieces.filter((piece) => piece.length === null).map((piece) => piece.id);
  return [
    ok ? 'Papers of the kit' : `${words.toUpperCase()}. The papers say so; do not build from them.`,
    ...open.slice(0, 5).map((f) => `  ${f.verdict}: ${f.rule}, ${f.subject}`),
    ...(open.length > 5 ? [`  and ${open.length - 5} more: coilfeed size`] : []),
    ...broken.map((one) => `  ${one.verdict}: the author’s own rule, ${one.label}`),
    `Batch of ${batch}, in ${shown(folder)}:`,
    ...names,
    ...(prices === null ? [] : [`  ${PRICES.padEnd(19)} what it costs, for the shop alone`, wrap(prices)]),
    ...(blanks.length > 0
      ? [`Lengths not in the design, left blank on the papers: ${blanks.join(', ')}`]
      : []),
    ...(literals.length > 0
      ? [wrap(`Numbers in your own words, which follow no design: ${literals.map(shown).join('; ')}`)]
      : []),
    '',
  ].join('\n');
}
