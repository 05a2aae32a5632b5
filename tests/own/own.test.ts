/** Values, rules and sheets of a person’s own: evaluated, judged, kept through a workbook and back, refused with their place. */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { keyText } from '../../src/design/problems.ts';
import { evaluate } from '../../src/engine/evaluate.ts';
import { OURS } from '../../src/engine/sheets.ts';
import { evaluated } from '../../src/engine/spreadsheet.ts';
import { kitPages } from '../../src/kit/sheets.ts';
import { QUANTITIES } from '../../src/model/model.ts';
import { ownOf } from '../../src/own/evaluate.ts';
import { isLegal, SHORT } from '../../src/own/names.ts';
import { checked } from '../../src/readings/check.ts';
import { judge, run, withOwn as toolWithOwn } from '../../src/run.ts';
import { runLaid } from '../../src/run-laid.ts';
import { checkReport } from '../../src/writers/check-report.ts';
import { report } from '../../src/writers/report.ts';
import { pages } from '../../src/writers/workbook/pages.ts';
import { show, toWorkbook } from '../../src/writers/workbook/workbook.ts';
import { demo, design } from '../design/helpers.ts';
import { jobOf } from '../kit/job.ts';
import { type Parts, readBack, type Typed, typed } from '../saved/edit.ts';

const TEXT = demo('pair-four');
const withOwn = (text: string) => design(`${TEXT}\n${text}`);
const values = (text: string) => {
  const { found, wrong } = ownOf(evaluate(withOwn(text)));
  expect(wrong).toEqual([]);
  return found;
};

test('formulas over names, over each other and over an added sheet', () => {
  const plain = evaluate(design(TEXT));
  const [price, lengths, twice, sum] = values(`
own:
  - { label: Price, formula: 'copper*0.012', unit: EUR }
  - { label: Wire, formula: 'SUM(run_length)', unit: m }
  - { label: Twice, formula: '=B6*2+1E-3' }
  - { label: Sum, formula: 'Budget!B2' }
added:
  Budget: { A1: Labour, B1: 80, B2: '=B1+Own!B6' }
`);
  // Grams, whatever the model keeps.
  const grams = (plain.number('copper_total') as number) * 1000;
  expect(price?.value).toBeCloseTo(grams * 0.012, 9);
  // Every conductor of every run, as the design file has them.
  const metres = plain.design.wires.reduce((total, { length }) => total + length, 0);
  expect(lengths?.value).toBeCloseTo(metres, 9);
  expect(twice?.value).toBeCloseTo(grams * 0.012 * 2 + 0.001, 9);
  expect(sum?.value).toBeCloseTo(80 + grams * 0.012, 9);
});

test('a rule in the workbook is judged by its sign, from the list or typed, as the reader takes it', () => {
  const { evaluation } = runLaid(withOwn('own: [{ label: a, formula: "2", at_least: 1 }]'), show);
  const formula = evaluation.sheets.get('Own')?.[5]?.[6]?.formula;
  // 2 against 1; no input is wrong, which Checks!D4 tells.
  const verdict = (sign: string) => {
    const own = [[], [], [], [], [], ['a', 2, null, sign, 1, null, `=${formula}`]];
    const engine = evaluated({ Own: own, Checks: [[], [], [], [null, null, null, 0]] }, []);
    return engine.getCellValue({ sheet: engine.getSheetId('Own') as number, row: 5, col: 6 });
  };
  expect(['≥', '>=', '≤', '<=', '<'].map(verdict)).toEqual(['pass', 'pass', 'FAIL', 'FAIL', 'UNKNOWN']);
});

test('a rule passes, fails, and is unknown where its formula comes to an error', () => {
  const found = values(`
own:
  - { label: a, formula: '2', at_most: 2 }
  - { label: b, formula: '2', at_most: 1.9, words: Too much. }
  - { label: c, formula: '2', at_least: 2.1 }
  - { label: d, formula: '1/0', at_least: 1 }
  - { label: e, formula: '7' }
`);
  expect(found.map(({ verdict }) => verdict)).toEqual(['pass', 'fail', 'fail', 'unknown', null]);
  expect(found[3]?.error).toBe('#DIV/0!');
});

test('where only a rule of the author fails, size and check say so', () => {
  const own = values(`
own:
  - { label: Wire in all, formula: '5.4', unit: m, at_most: 2, words: The reel holds 2 m. }
`);
  const result = toolWithOwn(run(design(TEXT)), own);
  const told = report(result);
  expect(told).toMatch(/^FAIL {2}1 of the author’s own rules fails, 0 unknown, 77 pass/m);
  expect(told.replace(/\s+/g, ' ')).toContain('Wire in all: 5.400 m, must be ≤ 2 m. The reel holds 2 m.');
  expect(told).not.toContain('What would pass');
  const found = checked(toolWithOwn(judge(evaluate(design(TEXT))), own));
  expect(found.verdict).toBe('fail');
  expect(checkReport(found)).not.toContain('What would pass');
});

test('a name means one thing: none of the short ones is a quantity, an address or another one', () => {
  const short = SHORT.map(({ name }) => name.toLowerCase());
  const quantities = new Set(Object.keys(QUANTITIES).map((name) => name.toLowerCase()));
  expect(short.filter((name) => quantities.has(name))).toEqual([]);
  expect(short.filter((name) => !isLegal(name))).toEqual([]);
  expect(new Set(short).size).toBe(short.length);
});

test('every sheet that a workbook has is one that a person cannot add', () => {
  const { evaluation } = runLaid(design(TEXT), show);
  const kit = kitPages(jobOf(TEXT, false)).pages(evaluation);
  const names = pages(evaluation)
    .concat(kit)
    .map(({ name }) => name);
  expect(names).toEqual(expect.arrayContaining(['Feed', 'Parts']));
  expect(names.filter((name) => !OURS.includes(name))).toEqual([]);
});

describe('what cannot be taken is named with its place', () => {
  test.each([
    ['a name that names nothing', 'coper*2', /name coper/],
    ['a function of another program', 'WEBSERVICE("x")', /function WEBSERVICE/],
    ['a macro', 'MyMacro(1)', /function MyMacro/],
    ['another file', '[other.xlsx]Sheet1!A1', /"\["/],
    ['a cell of the workbook’s own', 'Feed!B5', /sheet Feed/],
    ['a sheet that is not there', 'Nowhere!B5', /sheet Nowhere/],
    ['a range that costs much', 'SUM(A1:Z1000)', /26000 cells/],
    ['a place far out', 'A1048576', /A1048576/],
    ['no formula', '2+*', /cannot be read/],
    ['a circle', 'B6+1', /circle/],
  ])('%s', (_, formula, found) => {
    const { wrong } = ownOf(evaluate(withOwn(`own: [{ label: x, formula: '${formula}' }]`)));
    expect(wrong.map(({ key, cell }) => [keyText(key), cell])).toEqual([['own[0].formula', 'Own!B6']]);
    expect(wrong[0]?.found).toMatch(found);
  });

  test('a circle over an added sheet, and a sheet with a name of ours', () => {
    const { wrong } = ownOf(evaluate(withOwn(`added: { Budget: { A1: '=B1', B1: '=A1' } }`)));
    expect(wrong.map(({ cell }) => cell)).toEqual(['Budget!A1', 'Budget!B1']);
    const { wrong: taken } = ownOf(evaluate(withOwn('added: { feed: { A1: 1 } }')));
    expect(taken.map(({ found }) => found)).toEqual(['a sheet called feed']);
  });

  test('ranges that together cost much', () => {
    const rows = Array.from({ length: 11 }, (_, i) => `  - { label: r${i}, formula: 'SUM(A1:B1000)' }`);
    // Each has 2000 cells; 20,000 are allowed in all.
    const { wrong } = ownOf(evaluate(withOwn(`own:\n${rows.join('\n')}`)));
    expect(wrong.map(({ key }) => keyText(key))).toEqual(['own[10].formula']);
  });
});

const book = (text: string): Uint8Array => toWorkbook(runLaid(withOwn(text), show));

/** The workbook with another sheet, as a spreadsheet program would save it. */
function withSheet(bytes: Uint8Array, name: string, rows: string): Uint8Array {
  const parts: Parts = unzipSync(bytes);
  const change = (part: string, from: string, to: string): void => {
    const before = strFromU8(parts[part] as Uint8Array);
    if (!before.includes(from)) throw new Error(`${part} has no ${from}`);
    parts[part] = strToU8(before.replace(from, `${to}${from}`));
  };
  change('xl/workbook.xml', '</sheets>', `<sheet name="${name}" sheetId="900" r:id="rId900"/>`);
  change(
    'xl/_rels/workbook.xml.rels',
    '</Relationships>',
    '<Relationship Id="rId900" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet900.xml"/>',
  );
  parts['xl/worksheets/sheet900.xml'] = strToU8(
    `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${rows}</sheetData></worksheet>`,
  );
  return zipSync(parts);
}

test('what is typed into Own is read back and written again; rows that are left empty close up', async () => {
  const cells: Record<string, Typed> = {
    A7: 'Price',
    B7: { formula: 'copper*0.012' },
    C7: 'EUR',
    D7: '>=',
    E7: 1000,
    F7: 'Too cheap to be true.',
    // Two rows further down, over a cell of the first.
    A9: 'Twice',
    B9: { formula: 'B7*2' },
  };
  const { design: read, said } = await readBack(typed(toWorkbook(runLaid(design(TEXT), show)), cells, 'Own'));
  expect(said).toEqual([]);
  expect(read?.own).toMatchObject([
    { label: 'Price', formula: 'copper*0.012', unit: 'EUR', sense: 'at_least', limit: 1000 },
    { label: 'Twice', formula: 'B6*2', unit: '', sense: null },
  ]);
  const again = runLaid(read as NonNullable<typeof read>, show);
  const cached = (sheet: string, row: number, column: number) => again.evaluation.cached(sheet, row, column);
  const price = cached('Own', 5, 1) as number;
  expect(cached('Own', 6, 1)).toBeCloseTo(price * 2, 9);
  // Some hundred grams of copper are worth less than 1000: the rule fails, on its sheet, on the first and in the findings.
  expect(cached('Own', 5, 6)).toBe('FAIL');
  expect(cached('Feed', 4, 0)).toBe('FAIL');
  const { design: same, changed } = await readBack(toWorkbook(again));
  expect(same?.text.toString()).toBe(read?.text.toString());
  expect(changed).toEqual([]);
});

test('a sheet that a person adds is kept, with formulas that fill a column', async () => {
  const rows =
    '<row r="1"><c r="A1" t="inlineStr"><is><t>Wire</t></is></c><c r="B1"><f>copper*0.012</f><v>1</v></c></row>' +
    '<row r="2"><c r="A2"><v>2</v></c><c r="B2"><f t="shared" ref="B2:B3" si="0">A2*2</f><v>4</v></c></row>' +
    '<row r="3"><c r="A3"><v>3</v></c><c r="B3"><f t="shared" si="0"/><v>6</v></c></row>';
  const bytes = withSheet(book(''), 'My costs', rows);
  const { design: read, said } = await readBack(bytes);
  expect(said).toEqual([]);
  expect(Object.fromEntries(read?.added.get('My costs') ?? [])).toEqual({
    A1: 'Wire',
    B1: '=copper*0.012',
    A2: 2,
    B2: '=A2*2',
    A3: 3,
    B3: '=A3*2',
  });
  const again = await readBack(toWorkbook(runLaid(read as NonNullable<typeof read>, show)));
  expect(again.design?.text.toString()).toBe(read?.text.toString());
});

test('what cannot be taken on Own is refused with its cell', async () => {
  const bytes = toWorkbook(runLaid(design(TEXT), show));
  const { said } = await readBack(typed(bytes, { A7: 'x', B7: 'a text', D8: '≤', A8: 'y', B8: 1 }, 'Own'));
  expect(said.map((line) => line.split(' ')[0])).toEqual(['edited.xlsx:Own!B7:', 'edited.xlsx:Own!E8:']);
});
