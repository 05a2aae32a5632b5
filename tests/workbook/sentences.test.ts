/** The sentences of the findings in a workbook, put together by formulas, against those of the report, made in process. */
import { expect, test } from 'vitest';
import { sentence } from '../../src/findings/words.ts';
import { design } from '../design/helpers.ts';
import { readCells } from '../peers/cells.ts';
import { EIGHT } from '../remedies/eight.ts';
import { bookOf, demoDesign } from './books.ts';

/** A fuse of each coil whose rating is no whole number, and one main that is too thin. */
const HALVES = EIGHT.replace(
  /gauge: 20 AWG/,
  'gauge: 16 AWG\n    fuse: { type: C, rating: 7.5 A, ambient: 90 degC }',
);

/** Rules whose words in the report depend on more than numbers; the workbook has those that are always true. */
const SHORTER = ['relay_pull_in', 'relay_contact', 'relay_suppression'];

const NUMBER = /−?\d+(?:\.\d+)?/g;
const DESIGNS = {
  'two-bank-v8': () => demoDesign('two-bank-v8'),
  'hill-climb-six': () => demoDesign('hill-climb-six'),
  'thin branches': () => design(EIGHT),
  'fuses of 7.5 A': () => design(HALVES),
  'a main too thin': () => design(HALVES.replace('gauge: 8 AWG', 'gauge: 14 AWG')),
  'US units': () => ({ ...design(EIGHT), units: 'us' as const }),
};

test.each(Object.keys(DESIGNS) as (keyof typeof DESIGNS)[])(
  '%s: the same words, units and numbers',
  async (name) => {
    const { result, bytes } = await bookOf(DESIGNS[name]());
    const cells = readCells(bytes).get('Judged') ?? new Map();
    const text = (at: string): string => String(cells.get(at)?.value ?? '');
    const rows = new Map(
      Array.from({ length: 300 }, (_, i) => [`${text(`A${i + 1}`)} ${text(`B${i + 1}`)}`, text(`N${i + 1}`)]),
    );
    const wrong: string[] = [];
    for (const finding of result.findings) {
      const ours = sentence(finding, result.evaluation).replaceAll('`', '');
      const theirs = rows.get(`${finding.rule} ${finding.subject}`) ?? 'no row';
      const [a, b] = [ours, theirs].map((said) =>
        (said.match(NUMBER) ?? []).map((n) => Number(n.replace('−', '-'))),
      );
      // Both print three digits; the one may leave out zeros.
      const alike = (b ?? []).every((n, i) => Math.abs(n - (a?.[i] ?? Number.NaN)) <= 0.006 * Math.abs(n));
      const [said, shown] = [ours, theirs].map((words) => words.replace(NUMBER, '#'));
      const same = SHORTER.includes(finding.rule)
        ? said?.slice(0, 20) === shown?.slice(0, 20)
        : said === shown;
      if (!same || !alike) wrong.push(`${ours} | ${theirs}`);
    }
    expect(wrong).toEqual([]);
    expect(result.findings.length).toBeGreaterThan(40);
  },
);
