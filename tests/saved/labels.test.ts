/** An input is found by its cell, and a person goes by the label: where a table was sorted with its labels, sheet and reader refuse. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { emptyFolder } from '../cli/tool.ts';
import { demo, design } from '../design/helpers.ts';
import { byHand } from '../peers/hands.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { type Book, bookOf, entryOf } from '../workbook/books.ts';
import { changedPart, readBack, refusals, typed } from './edit.ts';
import { readOf } from './hands/alike.ts';
import { madeIn } from './hands/made.ts';
import { answerOn, cellAt, type Spot } from './hands/sheet.ts';

let four: Book;
beforeAll(async () => {
  four = await bookOf(design(demo('pair-four')));
});

/** Row of the length of a conductor. */
const row = (wire: number): number => Number(/\d+/.exec(entryOf(four, 'wire_length', { wire })));
const named = (wire: number): string => four.result.evaluation.grid.axes.wire[wire] as string;

describe('labels beside the inputs', () => {
  test('those of two rows changed over: both are refused, with the cell, what was found and what is taken', async () => {
    const [a, b] = [row(0), row(1)];
    const said = await refusals(typed(four.bytes, { [`A${a}`]: named(1), [`A${b}`]: named(0) }));
    expect(said.map((line) => line.split(': its values')[0])).toEqual([
      `edited.xlsx:Inputs!A${a} feed[0].length: found the label "branch.1+4"; takes "main"`,
      `edited.xlsx:Inputs!A${b} feed[1].length["1+4"]: found the label "main"; takes "branch.1+4"`,
    ]);
  });

  test('the name of another run above a column of the runs', async () => {
    const cell = entryOf(four, 'run_gauge', { run: 1 });
    const above = cell.replace(/\d+/, (digits) => String(Number(digits) - 1));
    expect((await refusals(typed(four.bytes, { [above]: 'main' })))[0]).toContain(`Inputs!${above} `);
  });

  test.each(['what a person calls it', null, 12])('%s instead, which is no other’s: read', async (label) => {
    expect((await readBack(typed(four.bytes, { [`A${row(0)}`]: label }))).said).toEqual([]);
  });

  test('a workbook that does not name the column of its labels: read, and looked at as well', async () => {
    const older = changedPart(
      four.bytes,
      () => 'xl/workbook.xml',
      (xml) => xml.replace(/<definedName name="input_labels">[^<]*<\/definedName>/, ''),
    );
    expect((await readBack(older)).said).toEqual([]);
    expect(await refusals(typed(older, { [`A${row(0)}`]: named(1) }))).toHaveLength(1);
  });
});

describeWithPeer('soffice', 'a table sorted with its labels', () => {
  test('is refused by the sheet and by the commands; a label in other words by neither', async () => {
    const folder = emptyFolder();
    const { file, spots } = await madeIn(folder, 'us-twin');
    // A table whose labels are not merged with the cells of their units: LibreOffice sorts no merged ones.
    const top = spots.find(({ label }) => label.startsWith('Conductor size')) as Spot;
    const table = spots.filter(({ row }) => row >= top.row && row < top.row + 4);
    const last = table.at(-1) as Spot;
    const save = (name: string): string => join(folder, `${name}.xlsx`);
    const range = `A${top.row}:${cellAt(last.row, last.column)}`;
    const further = `C${top.row}:${cellAt(last.row, last.column + 2)}`;
    const edits = [
      // By the names, and back to front, so that at least one of the two moves rows.
      { steps: [['sort', 'Inputs', range, '0', 'up'] as const], save: save('up') },
      { steps: [['sort', 'Inputs', range, '0', 'down'] as const], save: save('down') },
      // Two columns before the labels, then the same: the labels are found where they have gone.
      {
        steps: [
          ['insert', 'Inputs', 'columns', '0', '2'] as const,
          ['sort', 'Inputs', further, '0', 'down'] as const,
        ],
        save: save('moved'),
      },
      { steps: [['text', 'Inputs', `A${top.row}`, 'How thick'] as const], save: save('words') },
    ];
    const [looks = []] = await byHand([{ file, edits }]);
    const answers = looks.map(({ rows, runs }) => answerOn(rows, runs));
    const read = await Promise.all(edits.map(async ({ save: at }) => readOf(readFileSync(at))));
    const sorted = [0, 1, 2].filter((i) => answers[i]?.verdict === null);
    expect(sorted).toEqual([0, 1, 2].filter((i) => read[i]?.answer === null));
    expect(sorted.length).toBeGreaterThanOrEqual(2);
    for (const i of sorted) {
      expect(answers[i]?.said).toMatch(/^Inputs!\S+ .*: takes the label “/);
      expect(read[i]?.said).toMatch(/found the label "[^"]*"; takes "/);
    }
    expect(answers[3]?.verdict).toBe(read[3]?.answer?.verdict);
    expect(answers[3]?.verdict).not.toBeNull();
  });
});
