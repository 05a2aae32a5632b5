/** The papers of a kit, as the command writes them. */
import { strToU8, zipSync } from 'fflate';
import type { Design } from '../../design/design.ts';
import { withCopy } from '../../design/shop/copy.ts';
import { unknownIn } from '../../design/unknown.ts';
import type { Result } from '../../findings/result.ts';
import { harnessOf } from '../../kit/harness.ts';
import type { Job } from '../../kit/job.ts';
import { FILES, papers } from '../../kit/papers.ts';
import { priceTable } from '../../kit/prices.ts';
import { released } from '../../kit/release.ts';
import { readBatch, readSerials } from '../../kit/serials.ts';
import { kitPages } from '../../kit/sheets.ts';
import { WORDS } from '../../kit/words.ts';
import { ownOf } from '../../own/evaluate.ts';
import { hasOwn, hasRules, type OwnFound } from '../../own/found.ts';
import { run, withOwn } from '../../run.ts';
import { runLaid } from '../../run-laid.ts';
import { sha256 } from '../../saved/seal/digest.ts';
import { show, toWorkbook } from '../../writers/workbook/workbook.ts';
import type { Lot, Nothing, Papers, Tell } from '../protocol.ts';
import { STAGES, staged } from './stages.ts';

/** Times of an archive say nothing here: the same design gives the same bytes. A ZIP starts in 1980. */
const NO_TIME = '1980-01-01T12:00:00Z';

async function jobOf(result: Result, { kits, serials: given }: Lot): Promise<Job | Nothing> {
  const { evaluation, own = [] } = result;
  const unknown = unknownIn(evaluation.design);
  if (unknown !== null) return { why: unknown };
  // Nobody may take papers for released whose rules were not asked.
  if (hasRules(evaluation.design) && own.length === 0)
    return { why: 'The author’s own rules could not be worked out: no papers are made.' };
  const read = given.trim() === '' ? { ok: true as const, serials: [] } : readSerials(given);
  if (!read.ok) return { why: `Serial numbers: ${read.why}; takes A001-A025 or A001,A007.` };
  const { serials } = read;
  const lot = readBatch(kits.trim() || undefined, serials.length);
  if (!lot.ok) return { why: `Kits made at a time: ${lot.why}.` };
  return {
    result,
    harness: harnessOf(evaluation),
    digest: await sha256(withCopy(evaluation.design).text.toString()),
    batch: lot.batch,
    serials,
  };
}

/** `logo`, a data URL, stands on the papers where the shop's file names one. */
export async function papersOf(
  design: Design,
  lot: Lot,
  logo: string | null,
  own: readonly OwnFound[] = [],
): Promise<Papers | Nothing> {
  const made = await jobOf(withOwn(run(design), own), lot);
  if ('why' in made) return made;
  const job: Job = { ...made, logo: design.shop?.shop?.logo === undefined ? null : logo };
  const { ok, words } = released(job.result);
  const texts = [...papers(job, WORDS)];
  const prices = priceTable(job);
  return {
    released: ok,
    words,
    files: [
      ...texts.map(([name, text]) => ({ name, what: FILES[name], text })),
      // Not among what goes to the customer, and so not in the archive.
      ...(prices === null ? [] : [{ name: 'prices.csv', what: 'for the shop alone', text: prices }]),
    ],
    zip: zipSync(Object.fromEntries(texts.map(([name, text]) => [name, strToU8(text)])), {
      mtime: NO_TIME,
    }),
  };
}

export async function kitBook(design: Design, lot: Lot, tell: Tell): Promise<Uint8Array> {
  tell(STAGES.design);
  const result = run(design);
  const own = hasOwn(design) ? ownOf(result.evaluation).found : [];
  const job = await jobOf(withOwn(result, own), lot);
  if ('why' in job) throw new Error(job.why);
  const pages = kitPages(job);
  const whole = runLaid(
    design,
    staged((grid, d) => new Map([...show(grid, d), ...pages.sheets(grid)]), tell),
  );
  tell(STAGES.file);
  return toWorkbook(whole, pages.pages(whole.evaluation));
}
