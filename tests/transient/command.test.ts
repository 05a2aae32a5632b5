/** `coilfeed trace` as a person runs it. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sealed } from '../../src/commands/seal/seal.ts';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { CASES, design } from '../ngspice/cases.ts';
import { textOf } from './made-up.ts';

const widest = (text: string): number => Math.max(...text.split('\n').map((line) => [...line].length));
const six = JSON.stringify(CASES[0]?.design);

/** Runs the command on a design that stands in a folder of its own. */
async function trace(
  argv: string[],
  document: string = six,
  files: Record<string, string | Uint8Array> = {},
) {
  const cwd = emptyFolder();
  writeFileSync(join(cwd, 'design.json'), document);
  for (const [name, content] of Object.entries(files)) writeFileSync(join(cwd, name), content);
  const ran = await coilfeed(['trace', 'design.json', ...argv], { cwd });
  return { ...ran, file: (name: string): string => readFileSync(join(cwd, name), 'utf8') };
}

describe('currents in time', () => {
  test('a report of at most 80 columns, with every conductor and every coil', async () => {
    const { status, out, err } = await trace([]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(widest(out)).toBeLessThanOrEqual(80);
    for (const id of ['main', 'drop.1', 'ground.6', 'strap'])
      expect(out).toMatch(new RegExp(`^  ${id} +\\d`, 'm'));
    for (let coil = 1; coil <= 6; coil++) expect(out).toMatch(new RegExp(`^  ${coil} +\\d`, 'm'));
  });

  test('--json: the same as an object; --run: a conductor, or all of a run', async () => {
    const { status, out } = await trace(['--json', '--run', 'main', '--run', 'drop']);
    const result = JSON.parse(out);
    expect(status).toBe(0);
    expect(result.format).toBe('coilfeed-trace/1');
    const drops = [1, 2, 3, 4, 5, 6].map((coil) => `drop.${coil}`);
    expect(result.runs.map(({ id }: { id: string }) => id)).toEqual(['main', ...drops]);
    expect(result.coils).toHaveLength(6);
  });

  test('another supply moves every current', async () => {
    const at = async (supply: string): Promise<number> =>
      JSON.parse((await trace(['--json', '--supply', supply])).out).coils[0].peak_A.exact;
    const [low, high] = [await at('11.2 V'), await at('21.2 V')];
    // The circuit is linear: 10 V and 20 V behind the driver. The conductors are warmer at the higher one, by a little.
    expect(high / low).toBeGreaterThan(1.9);
    expect(high / low).toBeLessThan(2);
  });

  test('the table: headings with units, rows of numbers, the whole cycle', async () => {
    const ran = await trace(['--out', 'out.csv', '--run', 'main']);
    expect(ran.status).toBe(0);
    const text = ran.file('out.csv');
    const lines = text.split('\r\n');
    expect(lines.pop()).toBe('');
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const supplies = [1, 2, 3, 4, 5, 6].map((c) => `supply at coil ${c} [V]`).join(',');
    expect(lines[0]?.replace(/[0-9a-f]{16}$/, 'DIGEST')).toBe(
      `crank angle [deg],time [ms],current of main [A],${supplies},coilfeed DIGEST`,
    );
    // The last column is empty.
    const rows = lines.slice(1).map((line) => line.replace(/,$/, '').split(',').map(Number));
    expect(rows.every((row) => row.length === 9 && row.every(Number.isFinite))).toBe(true);
    expect(rows[0]?.slice(0, 2)).toEqual([0, 0]);
    // 7800 rpm: a cycle of 120/7800 s.
    expect(rows.at(-1)?.slice(0, 2)).toEqual([720, 15.384615]);
    expect(rows.every((row, i) => i === 0 || (row[0] as number) >= (rows[i - 1]?.[0] as number))).toBe(true);
  });

  test('no name becomes a formula or another column', async () => {
    const evil = '=1+2,"x"';
    const document = six.replaceAll('"run":"main"', `"run":${JSON.stringify(evil)}`);
    const ran = await trace(['--out', 'out.csv', '--run', evil], document);
    const [head = ''] = ran.status === 0 ? ran.file('out.csv').split('\r\n') : [];
    // Where the reader of designs takes such a name it stands in quotes, behind a word of ours.
    if (ran.status === 0) expect(head).toContain('"current of =1+2,""x"" [A]"');
    else expect(ran.err).toContain('design.json');
    expect(head.split(',').every((cell) => !/^"?[=+\-@]/.test(cell))).toBe(true);
  });

  test('a table of ours is replaced, another file is not', async () => {
    const made = await sealed('out.csv', new TextEncoder().encode('crank angle [deg],time [ms],x\r\n'));
    const own = await trace(['--out', 'out.csv'], six, { 'out.csv': made });
    expect(own.status).toBe(0);
    const foreign = await trace(['--out', 'out.csv'], six, { 'out.csv': 'mine' });
    expect(foreign.status).toBe(2);
    expect(foreign.file('out.csv')).toBe('mine');
  });
});

describe('a call that cannot be used: status 2 and a sentence', () => {
  const bound = six.replace('"inductance":"2.4 mH"', '"peak":"12 A"');
  test.each<[string, string[], string, string]>([
    ['a mistyped point', ['--point', 'juged'], six, 'Did you mean "judged"?'],
    ['an unknown point', ['--point', 'somewhere'], six, 'It has "judged"'],
    ['a mistyped run', ['--run', 'strp'], six, 'Did you mean "strap"?'],
    ['a kind of picture that is not written', ['--out', 'a.jpg'], six, 'must end in .svg, .png or .csv'],
    ['a supply without a unit', ['--supply', '13'], six, 'such as "13.8 V"'],
    ['a supply of no car', ['--supply', '400 V'], six, '1 V to 60 V'],
    ['a coil of which only a peak is known', [], bound, 'Only a peak current is known'],
    ['no recording', ['--measured', 'none.csv'], six, '"none.csv" does not exist'],
  ])('%s', async (_, argv, document, says) => {
    const { status, out, err } = await trace(argv, document);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err.replace(/\s+/g, ' ')).toContain(says);
  });
});

describe('a recording', () => {
  // The coil of the design with 60 mohm of feed, at 12.0 V behind the driver.
  const recording = textOf({
    drive: 12,
    ohm: 0.48,
    henry: 2.4e-3,
    dwell: 3e-3,
    period: 40e-3,
    every: 1e-5,
    length: 0.2,
    noise: 0.05,
  });
  const slow = JSON.stringify(design({ angles: [0, 180, 360, 540], rpm: 3000, supply: 13.2, dwell: 3 }));

  test('is judged beside the design', async () => {
    const ran = await trace(['--measured', 'clamp.csv', '--out', 'both.csv'], slow, {
      'clamp.csv': recording,
    });
    expect({ status: ran.status, err: ran.err }).toEqual({ status: 0, err: '' });
    expect(widest(ran.out)).toBeLessThanOrEqual(80);
    expect(ran.out).toContain('No knee');
    expect(ran.file('both.csv')).toMatch(
      /^time since start of charge \[ms\],measured \[A\],computed \[A\],coilfeed [0-9a-f]{16}\r\n/,
    );
  });

  test('as an object: what was recorded within 3 %, and what the design says', async () => {
    const argv = ['--measured', 'clamp.csv', '--json', '--run', 'drop.3'];
    const ran = await trace(argv, slow, { 'clamp.csv': recording });
    const { measured, computed, coil, knee } = JSON.parse(ran.out);
    expect(coil).toBe('3');
    expect(knee).toBeNull();
    // Of the task: 3 %.
    const near = (found: number, right: number): void =>
      expect(Math.abs(found / right - 1)).toBeLessThan(0.03);
    near(measured.resistance_ohm.value, 0.48);
    near(measured.inductance_H.value, 2.4e-3);
    near(measured.dwell_s, 3e-3);
    near(measured.peak_A, (12 / 0.48) * (1 - Math.exp((-3e-3 * 0.48) / 2.4e-3)));
    expect(computed.inductance_H).toBe(2.4e-3);
    expect(computed.dwell_s).toBe(3e-3);
  });

  test.each<[string, (text: string) => Buffer]>([
    ['in the letters of an old instrument', (text) => Buffer.from(text, 'latin1')],
    ['in UTF-8', (text) => Buffer.from(text)],
    ['in UTF-16, by its mark', (text) => Buffer.from(`\ufeff${text}`, 'utf16le')],
  ])('%s', async (_, encoded) => {
    const text = `time (µs);clamp (A)\n${recording.replace(/^([\d.]+),/gm, (_found, t) => `${t * 1e6};`)}`;
    const ran = await trace(['--measured', 'clamp.csv', '--json'], slow, { 'clamp.csv': encoded(text) });
    expect(JSON.parse(ran.out).time_unit).toBe('us');
  });

  test('that is none is refused by its name', async () => {
    const ran = await trace(['--measured', 'clamp.csv'], slow, { 'clamp.csv': 'hello' });
    expect(ran.status).toBe(2);
    expect(ran.err.replace(/\s+/g, ' ')).toContain('The recording "clamp.csv" cannot be used. No line of it');
  });
});
