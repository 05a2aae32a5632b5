/**
 * All papers of a kit, as texts by the name of their file.
 *
 *   result ─► harness ─► lists (parts, cuts, labels, checks) ─┬─► CSV
 *                │                                            ├─► HTML, with the words filled in
 *                └──► diagram ────────────────────────────────┘
 */
import { bench } from './bench.ts';
import { wiringDiagram } from './diagram.ts';
import { formboard } from './formboard.ts';
import { instructions } from './instructions.ts';
import type { Job } from './job.ts';
import { labelSheet } from './label-sheet.ts';
import { record } from './record.ts';
import { titleBlock } from './shop-block.ts';
import { cutTable, labelTable, partsTable, reelTable } from './tables.ts';
import { testCard } from './test-card.ts';
import type { Words } from './words.ts';

/** What each file is for, in the order in which they are listed. */
export const FILES = {
  'instructions.html': 'for the person who fits the kit',
  'test-card.html': 'one page to take to the vehicle and to fill in',
  'diagram.svg': 'wiring diagram, A4 or Letter lying',
  'bench.html': 'cut list, first piece and series',
  'build-record.html': 'a page for each serial number',
  'labels.html': 'labels on a sheet',
  'parts.csv': 'parts of a kit and of the batch',
  'cut-list.csv': 'every piece, reel by reel',
  'reels.csv': 'wire that each reel must hold',
  'labels.csv': 'for a label printer',
  'kit.xlsx': 'the calculation with the papers as sheets',
} as const;
export type FileName = keyof typeof FILES;

/** The papers but for the workbook. The same job and words give the same texts. */
export function papers(job: Job, words: Words): Map<FileName, string> {
  const diagram = wiringDiagram(job.result, titleBlock(job));
  return new Map<FileName, string>([
    ['instructions.html', instructions(job, words, diagram)],
    ['test-card.html', testCard(job, words)],
    ['diagram.svg', diagram],
    ['bench.html', bench(job, formboard(job))],
    ['build-record.html', record(job)],
    ['labels.html', labelSheet(job)],
    ['parts.csv', partsTable(job)],
    ['cut-list.csv', cutTable(job)],
    ['reels.csv', reelTable(job)],
    ['labels.csv', labelTable(job)],
  ]);
}
