/** Notes beside the inputs: kept with their input, through reading and writing. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { address } from '../../src/basis/address.ts';
import type { At } from '../../src/basis/quantity.ts';
import { cellOf } from '../../src/engine/cells.ts';
import type { Place } from '../../src/engine/layout.ts';
import type { QuantityName } from '../../src/model/model.ts';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { recalculate } from '../peers/libreoffice.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { type Book, bookOf, demoDesign } from '../workbook/books.ts';
import { readBack, typed } from './edit.ts';

const book = await bookOf(demoDesign('hill-climb-six'));

/** The cell for a note in the row of an input. */
function noteAt({ result }: Book, name: QuantityName, at: At = {}): string {
  const { entries, columns } = result.evaluation.grid.placement;
  const [row] = cellOf(entries.get(name) as Place, at);
  return address(row, columns.notes, false, false);
}

const second = book.result.evaluation.design.wires.findIndex(({ id }) => id === 'branch.2');
const edited = typed(book.bytes, {
  [noteAt(book, 'run_gauge')]: 'two reels left',
  [noteAt(book, 'wire_length', { wire: second })]: 'measured twice: 1=1, "so"',
  [noteAt(book, 'coil_ohm_20')]: 4711,
  [noteAt(book, 'drop_limit')]: { formula: '1+A1' },
});
const KEPT = {
  run_gauge: 'two reels left',
  'wire_length branch.2': 'measured twice: 1=1, "so"',
  coil_ohm_20: '4711',
};

test('notes are read as remarks of the design, and stand in the workbook made from it', async () => {
  const { design, changed, said } = await readBack(edited);
  expect(said).toEqual([]);
  expect(changed).toEqual([]);
  expect(Object.fromEntries(design?.remarks ?? [])).toEqual(KEPT);
  const again = await readBack((await bookOf(design as NonNullable<typeof design>)).bytes);
  expect(Object.fromEntries(again.design?.remarks ?? [])).toEqual(KEPT);
  // Taken out again they leave the design as it was.
  const gone = typed((await bookOf(design as NonNullable<typeof design>)).bytes, {
    [noteAt(book, 'run_gauge')]: null,
    [noteAt(book, 'wire_length', { wire: second })]: null,
    [noteAt(book, 'coil_ohm_20')]: null,
  });
  expect((await readBack(gone)).design?.remarks.size).toBe(0);
});

describeWithPeer('soffice', 'an .ods that LibreOffice saved', () => {
  test('is read as the same design, notes and all; without LibreOffice a sentence says what to do', async () => {
    const folder = emptyFolder();
    const file = join(folder, 'edited.xlsx');
    writeFileSync(file, edited);
    const [ods = ''] = await recalculate([file], join(folder, 'out'), 'ods');
    const [asOds, asXlsx] = [await coilfeed(['design', ods]), await coilfeed(['design', file])];
    expect(asOds).toMatchObject({ status: 0, out: asXlsx.out });
    expect(asOds.out).toContain('two reels left');
    const without = await coilfeed(['design', ods], { env: { PATH: join(folder, 'nothing') } });
    expect(without.status).toBe(2);
    expect(without.err.replace(/\s+/g, ' ')).toContain('Install it, or save the workbook as .xlsx.');
  });
});
