/** Recognises a file that coilfeed made for a kit, which may then be replaced. */
import { strFromU8 } from 'fflate';
import { isOurs } from '../saved/ours.ts';
import type { FileName } from './papers.ts';
import { CUT_TITLES, LABEL_TITLES, PART_TITLES, REEL_TITLES } from './tables.ts';

/** What stands near the begin of each kind of file. */
const BEGIN = 2000;
const MARKS: Readonly<Partial<Record<FileName, string>>> = {
  'parts.csv': `${PART_TITLES.join(',')},Status\r\n`,
  'cut-list.csv': `${CUT_TITLES.join(',')},Status\r\n`,
  'reels.csv': `${REEL_TITLES.join(',')},Status\r\n`,
  'labels.csv': `${LABEL_TITLES.join(',')},Status\r\n`,
  'diagram.svg': '<!-- coilfeed-kit -->',
};
const HTML_MARK = '<meta name="generator" content="coilfeed-kit">';

/** True for bytes that coilfeed wrote under this name, perhaps for another design. */
export function isKitFile(name: FileName, bytes: Uint8Array): boolean {
  if (name === 'kit.xlsx') return isOurs(bytes);
  const begin = strFromU8(bytes.subarray(0, BEGIN));
  return begin.includes(MARKS[name] ?? HTML_MARK);
}
