/** What the commands make of a file, in the words of the first sheet; and what differs between the two. */
import { printProblem } from '../../../src/design/problems.ts';
import { run } from '../../../src/run.ts';
import { readSaved } from '../../../src/saved/read.ts';
import { fromShelf } from '../../../src/shop/choose.ts';
import type { Answer } from './sheet.ts';

export interface Read {
  readonly answer: Omit<Answer, 'said'> | null;
  readonly said: string;
  /** Inputs that were changed. */
  readonly changed: number;
}

export async function readOf(bytes: Uint8Array): Promise<Read> {
  const read = await readSaved(bytes, 'edited.xlsx');
  if (!read.ok) return { answer: null, said: read.problems.map(printProblem).join('\n'), changed: 0 };
  const { evaluation, findings, verdict } = run(fromShelf(read.design, run));
  const count = (of: string): number => findings.filter((one) => one.verdict === of).length;
  return {
    answer: {
      verdict: verdict.toUpperCase(),
      counts: ['fail', 'unknown', 'advice', 'pass'].map(count),
      runs: evaluation.design.runs.map(({ fuse, relay }, run) => [
        evaluation.value('gauge', { run }),
        fuse === null ? null : evaluation.value('fuse_rating', { run }),
        relay === null ? null : evaluation.value('relay_rating', { run }),
      ]),
      drop: evaluation.number('worst_drop'),
    },
    said: read.differs ? 'computes differently' : '',
    changed: read.changed.length,
  };
}

/** A program keeps 15 digits of what is entered; sums add to that [share]. */
const WITHIN = 1e-9;

const one = (cell: unknown): string =>
  cell === null || cell === '' || cell === '–'
    ? '–'
    : typeof cell === 'number'
      ? cell.toPrecision(9)
      : String(cell).replace('²', '2');

/** What differs, in words; null where both answer alike, or both refuse. */
export function differs(sheet: Answer, read: Read): string | null {
  // A change that needs another layout is refused by the sheet alone, which says how to get a workbook for it.
  if (sheet.verdict === null && sheet.said.includes('--out NEW.xlsx')) return null;
  if (sheet.verdict === null || read.answer === null)
    return sheet.verdict === null && read.answer === null
      ? null
      : `${sheet.verdict ?? `sheet: ${sheet.said}`}; ${read.answer?.verdict ?? `read: ${read.said}`}`;
  const told = ({ verdict, counts, runs }: Read['answer'] & object): string =>
    `${verdict} ${counts.join()} ${runs.map((run) => run.map(one).join()).join(' | ')}`;
  if (told(sheet) !== told(read.answer)) return `${told(sheet)}; read: ${told(read.answer)}`;
  const [a, b] = [sheet.drop, read.answer.drop];
  if (typeof a !== 'number' || b === null)
    return typeof a !== 'number' && b === null ? null : `drop ${a}; read: ${b}`;
  return Math.abs(a - Number(b)) <= WITHIN * Math.abs(a) ? null : `drop ${a}; read: ${b}`;
}
