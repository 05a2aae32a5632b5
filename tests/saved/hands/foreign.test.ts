/** Workbooks that other programs opened, changed and saved: LibreOffice shows of their files what the commands make of them. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fromOds } from '../../../src/commands/ods.ts';
import { emptyFolder, runProgram } from '../../cli/tool.ts';
import { recalculateInGnumeric } from '../../peers/gnumeric.ts';
import { byHand } from '../../peers/hands.ts';
import { describeWithPeer, needPeer, PYTHON } from '../../peers/peer.ts';
import { readWorkbook } from '../../workbook/exceljs.ts';
import { typed } from '../edit.ts';
import { differs, readOf } from './alike.ts';
import { type Made, madeIn, type Name } from './made.ts';
import { answerOn, type Spot } from './sheet.ts';

/** What is changed: a shorter first run, a warmer coil, one more crimp. */
function changes({ spots }: Made): [Spot, number][] {
  const first = (of: (spot: Spot) => boolean): Spot => spots.find(of) as Spot;
  const length = first(({ heading }) => heading === 'Length');
  const warm = first(({ label }) => label === 'Coil temperature for the load');
  const crimps = first(({ label }) => label === 'Crimps in series');
  return [
    [length, Number(length.value) * 0.9],
    [warm, Number(warm.value) + 15],
    [crimps, Number(crimps.value) + 1],
  ];
}

const OPENPYXL = `
import json, sys, openpyxl
book = openpyxl.load_workbook(sys.argv[1])
for cell, value in json.loads(sys.argv[3]): book['Inputs'][cell] = value
book.save(sys.argv[2])
`;

/** Each file, looked at by LibreOffice and read back, answers alike, with as many changes as were made. */
async function alike(files: readonly string[]): Promise<void> {
  const looks = await byHand(files.map((file) => ({ file, edits: [{ steps: [] }] })));
  for (const [i, file] of files.entries()) {
    const look = looks[i]?.[0];
    if (look === undefined) throw new Error(`LibreOffice ended before ${file}`);
    const sheet = answerOn(look.rows, look.runs);
    const bytes = readFileSync(file);
    const read = await readOf(file.endsWith('.ods') ? await fromOds(bytes) : bytes);
    expect(differs(sheet, read), file).toBeNull();
    expect(sheet.verdict, file).not.toBeNull();
    expect(read.changed, file).toBe(3);
  }
}

/** Two of the designs for each program, all of them between the programs. */
const made = async (folder: string, ...names: readonly [Name, Name]): Promise<Made[]> => {
  const all: Made[] = [];
  for (const name of names) all.push(await madeIn(folder, name));
  return all;
};
const contents = (one: Made): Record<string, number> =>
  Object.fromEntries(changes(one).map(([{ at }, value]) => [at, value]));

describeWithPeer('soffice', 'changed and saved', () => {
  test('by ExcelJS', async () => {
    const folder = emptyFolder();
    const files: string[] = [];
    for (const one of await made(folder, 'us-twin', 'banks')) {
      const book = await readWorkbook(one.bytes);
      for (const [{ at }, value] of changes(one)) {
        const sheet = book.getWorksheet('Inputs');
        if (sheet === undefined) throw new Error('no sheet Inputs');
        sheet.getCell(at).value = value;
      }
      const file = join(folder, `${one.name}-exceljs.xlsx`);
      writeFileSync(file, new Uint8Array(await book.xlsx.writeBuffer()));
      files.push(file);
    }
    await alike(files);
  });

  test('by LibreOffice itself, as .ods', async () => {
    const folder = emptyFolder();
    const one = await madeIn(folder, 'us-twin');
    const save = join(folder, 'saved.ods');
    const steps = changes(one).map(([{ at }, value]) => ['type', 'Inputs', at, String(value)] as const);
    await byHand([{ file: one.file, edits: [{ steps, save }] }]);
    await alike([save]);
  });

  describeWithPeer('python3-openpyxl', 'changed and saved', () => {
    test('by openpyxl', async () => {
      const folder = emptyFolder();
      needPeer('python3-openpyxl');
      const files: string[] = [];
      for (const one of await made(folder, 'banks', 'pulses')) {
        const file = join(folder, `${one.name}-openpyxl.xlsx`);
        const cells = JSON.stringify(Object.entries(contents(one)));
        const { status, err } = await runProgram(PYTHON, ['-c', OPENPYXL, one.file, file, cells]);
        expect(status, err).toBe(0);
        files.push(file);
      }
      await alike(files);
    });
  });

  describeWithPeer('ssconvert', 'changed and saved', () => {
    test('by Gnumeric', async () => {
      const folder = emptyFolder();
      const all = await made(folder, 'pulses', 'us-twin');
      for (const one of all) writeFileSync(one.file, typed(one.bytes, contents(one)));
      await alike(
        await recalculateInGnumeric(
          all.map(({ file }) => file),
          join(folder, 'out'),
        ),
      );
    });
  });
});
