/** The outside judges themselves: that they are there, and that they notice what they are asked to notice. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { emptyFolder, runProgram } from '../cli/tool.ts';
import { editCell, readCells } from './cells.ts';
import { recalculate, toPdf } from './libreoffice.ts';
import { describeWithPeer, needPeer } from './peer.ts';
import { schemaErrors } from './schema.ts';

/** Two inputs and formulas of every kind of result. The stored result of `double` is wrong on purpose. */
async function sample(folder: string, name = 'sample.xlsx'): Promise<string> {
  const book = new ExcelJS.Workbook();
  const inputs = book.addWorksheet('Inputs');
  inputs.getCell('A1').value = 'length & <gauge>';
  inputs.getCell('B1').value = 2.5;
  inputs.getCell('B2').value = null;
  inputs.getCell('B2').numFmt = '0.00';
  inputs.getCell('B3').value = true;
  const results = book.addWorksheet('Results');
  results.getCell('A1').value = { formula: 'Inputs!B1*2', result: 999 };
  results.getCell('A2').value = { formula: 'Inputs!A1&"!"', result: 'length & <gauge>!' };
  results.getCell('A3').value = { formula: 'Inputs!B1>2', result: true };
  results.getCell('A4').value = { formula: '1/Inputs!B2', result: { error: '#DIV/0!' } };
  const file = join(folder, name);
  await book.xlsx.writeFile(file);
  return file;
}

describe('the reader of cells', () => {
  test('gives values and formulas of every kind', async () => {
    const cells = readCells(readFileSync(await sample(emptyFolder())));
    expect([...cells.keys()]).toEqual(['Inputs', 'Results']);
    expect(Object.fromEntries(cells.get('Inputs') ?? [])).toEqual({
      A1: { value: 'length & <gauge>', formula: null },
      B1: { value: 2.5, formula: null },
      B2: { value: null, formula: null },
      B3: { value: true, formula: null },
    });
    expect(Object.fromEntries(cells.get('Results') ?? [])).toEqual({
      A1: { value: 999, formula: 'Inputs!B1*2' },
      A2: { value: 'length & <gauge>!', formula: 'Inputs!A1&"!"' },
      A3: { value: true, formula: 'Inputs!B1>2' },
      A4: { value: { error: '#DIV/0!' }, formula: '1/Inputs!B2' },
    });
  });

  test('changes one number and nothing else', async () => {
    const before = readFileSync(await sample(emptyFolder()));
    const [old, now] = [readCells(before), readCells(editCell(before, 'Inputs', 'B1', -0.125))];
    old.get('Inputs')?.set('B1', { value: -0.125, formula: null });
    expect(now).toEqual(old);
  });

  test('does not change a formula, words, or what is not there', async () => {
    const file = readFileSync(await sample(emptyFolder()));
    expect(() => editCell(file, 'Results', 'A1', 1)).toThrow('holds a formula');
    expect(() => editCell(file, 'Inputs', 'A1', 1)).toThrow('holds no number');
    expect(() => editCell(file, 'Inputs', 'C9', 1)).toThrow('no cell');
    expect(() => editCell(file, 'Elsewhere', 'A1', 1)).toThrow('no sheet');
  });
});

describeWithPeer('soffice', 'the spreadsheet program', () => {
  test('computes afresh, from the inputs as they are and as a person changed them', async () => {
    const folder = emptyFolder();
    const file = await sample(folder);
    const changed = join(folder, 'changed.xlsx');
    const step = editCell(readFileSync(file), 'Inputs', 'B1', 1.5);
    writeFileSync(changed, editCell(step, 'Inputs', 'B2', 4));
    const [first = '', second = ''] = await recalculate([file, changed], join(folder, 'out'));
    const results = (path: string) =>
      ['A1', 'A2', 'A3', 'A4'].map((at) => readCells(readFileSync(path)).get('Results')?.get(at)?.value);
    // By hand: 2.5 · 2; 2.5 > 2; 1 / nothing. Then 1.5 · 2; 1.5 > 2 is false; 1 / 4.
    expect(results(first)).toEqual([5, 'length & <gauge>!', true, { error: '#DIV/0!' }]);
    expect(results(second)).toEqual([3, 'length & <gauge>!', false, 0.25]);
  });

  test('goes by way of its own format and back', async () => {
    const folder = emptyFolder();
    const [ods = ''] = await recalculate([await sample(folder)], folder, 'ods');
    const [back = ''] = await recalculate([ods], join(folder, 'back'));
    expect(readCells(readFileSync(back)).get('Results')?.get('A1')).toEqual({
      value: 5,
      formula: 'Inputs!B1*2',
    });
  });

  test('prints', async () => {
    const folder = emptyFolder();
    const pdf = await toPdf(await sample(folder), folder);
    expect(readFileSync(pdf).subarray(0, 5).toString('latin1')).toBe('%PDF-');
  });

  test('says so when a file is not there', async () => {
    const folder = emptyFolder();
    await expect(recalculate([join(folder, 'none.xlsx')], folder)).rejects.toThrow('did not make');
  });
});

describeWithPeer('ngspice', 'the circuit simulator', () => {
  test('divides a voltage', async () => {
    // 12 V over 1 ohm and 2 ohm in series: 8 V at the middle; the simulator prints seven digits.
    const circuit = '* divider\nV1 a 0 12\nR1 a b 1\nR2 b 0 2\n.op\n.print op v(b)\n.end\n';
    const file = join(emptyFolder(), 'divider.cir');
    writeFileSync(file, circuit);
    const ran = await runProgram(needPeer('ngspice'), ['-b', file]);
    expect(ran.out).toMatch(/^\s*b\s+8\.0+e\+00/im);
  });
});

describeWithPeer('chromium', 'the browser', () => {
  test('runs a script in a page', async () => {
    const folder = emptyFolder();
    const page = join(folder, 'page.html');
    writeFileSync(page, '<p id="x"></p><script>document.getElementById("x").textContent = 6 * 7</script>');
    const ran = await runProgram(needPeer('chromium'), [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-dev-shm-usage',
      `--user-data-dir=${join(folder, 'profile')}`,
      '--dump-dom',
      `file://${page}`,
    ]);
    expect(ran.out).toContain('<p id="x">42</p>');
  });
});

describeWithPeer('ooxml-validator', 'the schema check', () => {
  test('refuses the font that the library writes, and accepts it with its elements in order', async () => {
    const folder = emptyFolder();
    const file = await sample(folder);
    // The library puts the colour of a font before its size; the schema's order is the one below.
    expect((await schemaErrors(file)).join('\n')).toContain('/xl/styles.xml');
    const parts = unzipSync(readFileSync(file));
    const styles = strFromU8(parts['xl/styles.xml'] ?? new Uint8Array());
    const order = ['sz', 'color', 'name', 'family', 'scheme'];
    const ordered = styles.replace(/<font>(.*?)<\/font>/g, (_, inner: string) => {
      const elements = inner.match(/<[^>]+>/g) ?? [];
      const rank = (element: string): number => order.indexOf(/\w+/.exec(element)?.[0] ?? '');
      return `<font>${elements.sort((x, y) => rank(x) - rank(y)).join('')}</font>`;
    });
    expect(ordered).not.toBe(styles);
    const good = join(folder, 'good.xlsx');
    writeFileSync(good, zipSync({ ...parts, 'xl/styles.xml': strToU8(ordered) }));
    expect(await schemaErrors(good)).toEqual([]);
  });

  test('a file that is no workbook at all is an error, too', async () => {
    const file = join(emptyFolder(), 'words.xlsx');
    writeFileSync(file, 'words');
    expect(await schemaErrors(file)).not.toEqual([]);
  });
});
