/**
 * Edits as people make them, by the hands of LibreOffice: what its first sheet then shows and what the commands make of the file
 * is one verdict, with the same sizes, ratings and drop, or both refuse.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { emptyFolder } from '../../cli/tool.ts';
import { readCells } from '../../peers/cells.ts';
import { byHand, type Edit, type Looked } from '../../peers/hands.ts';
import { describeWithPeer } from '../../peers/peer.ts';
import { samples } from '../../samples.ts';
import { generator } from '../../workbook/random-design.ts';
import { typed } from '../edit.ts';
import { differs, readOf } from './alike.ts';
import { type Done, somebody } from './kinds.ts';
import { type Made, madeIn, NAMES, type Name } from './made.ts';
import { answerOn } from './sheet.ts';

/** The file as it is saved after cells were typed into; as it was where they hold what they held. */
function after({ bytes, spots }: Made, cells: Looked['cells']): Uint8Array {
  const others = Object.entries(cells).filter(
    ([at, now]) => spots.find((one) => one.at === at)?.value !== now,
  );
  return others.length === 0 ? bytes : typed(bytes, Object.fromEntries(others));
}

/** Edits of single cells of each workbook, and of more than cells: these take a loading and a saving each. 60 in all. */
const CELLS: Readonly<Record<Name, number>> = { 'us-twin': 18, banks: 15, pulses: 18 };
const SHEETS = 3;

function edits({ spots, name }: Made, folder: string): (Done & Edit)[] {
  const each = (of: 'cells' | 'sheets', count: number): (Done & Edit)[] =>
    Array.from({ length: samples(count) }, (_, i) => {
      const random = generator((i + 1) * 7919 + name.length * 31 + of.length);
      for (let warm = 0; warm < 9; warm++) random();
      const done = somebody(spots, random, of);
      return of === 'cells' ? done : { ...done, save: join(folder, `${name}-${i}-edited.xlsx`) };
    });
  return [...each('cells', CELLS[name]), ...each('sheets', SHEETS)];
}

describeWithPeer('soffice', 'a workbook in the hands of people', () => {
  test.each(NAMES)('%s: the sheet and the commands judge every edit alike, or both refuse', async (name) => {
    const folder = emptyFolder();
    const made = await madeIn(folder, name);
    const all = edits(made, folder);
    const [looks] = await byHand([{ file: made.file, edits: all }]);
    const wrong: string[] = [];
    const seen = { judged: 0, refused: 0 };
    for (const [i, { what, save }] of all.entries()) {
      const look = looks?.[i];
      if (look === undefined) throw new Error(`LibreOffice ended before "${what}"`);
      const sheet = answerOn(look.rows, look.runs);
      const read = await readOf(save === undefined ? after(made, look.cells) : readFileSync(save));
      seen[sheet.verdict === null ? 'refused' : 'judged'] += 1;
      const found = look.refused ?? differs(sheet, read);
      if (found !== null) wrong.push(`${what}\n  ${found}`);
    }
    expect(wrong).toEqual([]);
    expect(Math.min(seen.judged, seen.refused)).toBeGreaterThan(0);
  });

  test('a program that computes the known answer otherwise says so, and so does reading its file', async () => {
    const folder = emptyFolder();
    const { file, bytes } = await madeIn(folder, 'us-twin');
    const save = join(folder, 'otherwise.xlsx');
    const checks = readCells(bytes).get('Checks');
    const title = [...(checks ?? [])].find(
      ([, { value }]) => value === 'A calculation whose answers are known',
    );
    const row = Number(title?.[0].slice(1)) + 1;
    // The first number that is given takes the place of the first answer.
    const [looks] = await byHand([
      { file, edits: [{ steps: [['copy', 'Checks', `B${row}`, `D${row}`]], save }] },
    ]);
    const [look] = looks ?? [];
    if (look === undefined) throw new Error('LibreOffice did not look');
    const { verdict, said } = answerOn(look.rows, look.runs);
    expect(verdict).toBeNull();
    expect(said).toBe('This program computes differently: do not use its results.');
    const read = await readOf(readFileSync(save));
    expect([read.answer?.verdict, read.said]).toEqual(['FAIL', 'computes differently']);
  });
});
