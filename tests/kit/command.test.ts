/** `coilfeed kit` as a person calls it: files, repeats, refusals, exit statuses. */
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { FILES } from '../../src/kit/papers.ts';
import { coilfeed, emptyFolder, runProgram, toolPath } from '../cli/tool.ts';
import { straight } from './designs.ts';

function setUp(text = straight(2)): { folder: string; design: string; out: string } {
  const folder = emptyFolder();
  const design = join(folder, 'design.yaml');
  writeFileSync(design, text);
  return { folder, design, out: join(folder, 'kit') };
}

const contents = (folder: string): [string, Buffer][] =>
  readdirSync(folder)
    .sort()
    .map((name) => [name, readFileSync(join(folder, name))]);

test('writes every paper and says so; the same call again gives the same bytes', async () => {
  const { folder, design, out } = setUp();
  const first = await coilfeed(['kit', design, '--out', out, '--serials', 'A001-A003']);
  expect(first).toMatchObject({ status: 0, err: '' });
  for (const name of Object.keys(FILES)) expect(first.out).toContain(name);
  expect(readdirSync(out).sort()).toEqual(Object.keys(FILES).sort());
  expect(first.out).toContain('Batch of 3');
  const before = contents(out);
  // Over its own files, and in another folder and time zone.
  expect((await coilfeed(['kit', design, '--out', out, '--serials', 'A001-A003'])).status).toBe(0);
  expect(contents(out)).toEqual(before);
  const other = join(folder, 'deep', 'er');
  const again = await coilfeed(['kit', design, '--out', other, '--serials', 'A001-A003'], {
    env: { TZ: 'Pacific/Kiritimati', LC_ALL: 'tr_TR.UTF-8' },
  });
  expect(again.status).toBe(0);
  expect(contents(other)).toEqual(before);
});

test.each([
  ['beside the design', () => 'shop.yaml'],
  ['by its whole path', (folder: string) => join(folder, 'shop.yaml')],
])('the logo lies beside the shop’s file, which a design names %s', async (_, named) => {
  const { folder, design, out } = setUp();
  const logo = '<svg xmlns="http://www.w3.org/2000/svg"/>';
  writeFileSync(join(folder, 'logo.svg'), logo);
  writeFileSync(join(folder, 'shop.yaml'), 'shop: { name: A shop, logo: logo.svg }\n');
  writeFileSync(design, `${straight(2)}\nshop: ${JSON.stringify(named(folder))}\n`);
  expect(await coilfeed(['kit', design, '--out', out])).toMatchObject({ status: 0, err: '' });
  const url = `data:image/svg+xml;base64,${Buffer.from(logo).toString('base64')}`;
  expect(readFileSync(join(out, 'instructions.html'), 'utf8')).toContain(`<img alt="" src="${url}">`);
});

test('papers are held where only a rule of the author’s own is not met, or cannot be judged', async () => {
  // A rule that no feed meets, and one that divides by nothing.
  const own = (formula: string): string =>
    `${straight(2)}\nown:\n  - { label: Wire in all, formula: ${formula}, unit: m, at_most: 2, words: The reel holds 2 m. }\n`;
  for (const [formula, verdict, words] of [
    [
      '"5.4"',
      'fail',
      'FAILS – the author’s own rule: Wire in all: 5.400 m, must be ≤ 2 m. The reel holds 2 m.',
    ],
    ['"1/0"', 'unknown', 'not known – the author’s own rule: Wire in all: comes to #DIV/0! m'],
  ] as const) {
    const { design, out } = setUp(own(formula));
    const ran = await coilfeed(['kit', design, '--out', out]);
    expect(ran).toMatchObject({ status: 1, err: '' });
    expect(ran.out).toMatch(/^NOT RELEASED FOR BUILDING: A RULE OF THE AUTHOR’S OWN/);
    expect(ran.out).toContain(`${verdict}: the author’s own rule, Wire in all`);
    expect(readFileSync(join(out, 'instructions.html'), 'utf8')).toContain(words);
    for (const name of ['labels.csv', 'diagram.svg', 'build-record.html'])
      expect(readFileSync(join(out, name), 'utf8'), name).toContain(
        'NOT RELEASED FOR BUILDING: a rule of the author’s own',
      );
  }
  const { design, out } = setUp(own('"1.4"'));
  expect((await coilfeed(['kit', design, '--out', out])).status).toBe(0);
});

test('a foreign file is left alone, and then nothing at all is written', async () => {
  const { design, out } = setUp();
  mkdirSync(out);
  writeFileSync(join(out, 'labels.csv'), 'mine,not yours\n');
  const refused = await coilfeed(['kit', design, '--out', out]);
  expect(refused.status).toBe(2);
  expect(refused.err.replace(/\s+/g, ' ')).toContain('exists and was not made by coilfeed');
  expect(readdirSync(out)).toEqual(['labels.csv']);
  expect(readFileSync(join(out, 'labels.csv'), 'utf8')).toBe('mine,not yours\n');
  expect((await coilfeed(['kit', design, '--out', out, '--force'])).status).toBe(0);
  expect(readFileSync(join(out, 'labels.csv'), 'utf8')).toContain('Stuck at');
});

test('papers that somebody wrote on are kept, all of them named; a full disk leaves the folder as it was', async () => {
  const { design, out } = setUp();
  expect((await coilfeed(['kit', design, '--out', out])).status).toBe(0);
  for (const name of ['build-record.html', 'test-card.html'])
    writeFileSync(join(out, name), readFileSync(join(out, name), 'utf8').replace('Date', 'Date: the fourth'));
  const before = contents(out);
  const refused = await coilfeed(['kit', design, '--out', out, '--batch', '2']);
  expect(refused.status).toBe(2);
  for (const name of ['build-record.html', 'test-card.html'])
    expect(refused.err.replace(/\s+/g, ' ')).toContain(name);
  expect(contents(out)).toEqual(before);
  // The shell's limit on the size of a file stands in for a full disk; the workbook is beyond it [block of 512 byte].
  const line = 'ulimit -f 100; "$1" "$2" kit "$3" --out "$4" --batch 2 --force';
  const full = await runProgram('sh', ['-c', line, 'sh', process.execPath, toolPath(), design, out]);
  expect(full.status).toBe(3);
  expect(contents(out)).toEqual(before);
  expect((await coilfeed(['kit', design, '--out', out, '--batch', '2', '--force'])).status).toBe(0);
  expect(readFileSync(join(out, 'test-card.html'), 'utf8')).not.toContain('the fourth');
});

test('a folder that cannot be is refused before anything is worked out, and nothing is left behind', async () => {
  const { folder, design, out } = setUp();
  symlinkSync(join(folder, 'nowhere'), join(folder, 'link'));
  writeFileSync(join(folder, 'file'), '');
  mkdirSync(out);
  symlinkSync(join(folder, 'nowhere'), join(out, 'parts.csv'));
  for (const [dir, says] of [
    [join(folder, 'link'), 'is a link to something that does not exist'],
    [join(folder, 'link', 'deeper'), 'is a link to something that does not exist'],
    [join(folder, 'file'), 'is not a folder'],
    [join(folder, 'file', 'deeper'), 'is a file, not a folder'],
    [out, 'a link to something that does not exist'],
    ...(process.platform === 'linux' ? [['/proc/kit', 'the system makes no folder there'] as const] : []),
  ] as const) {
    const { status, err } = await coilfeed(['kit', design, '--out', dir]);
    expect(status, dir).toBe(2);
    expect(err.replace(/\s+/g, ' '), dir).toContain(says);
  }
  expect(readdirSync(folder).sort()).toEqual(['design.yaml', 'file', 'kit', 'link']);
  expect(readdirSync(out)).toEqual(['parts.csv']);
});

test('a design behind the name of a paper is not replaced, not even by force', async () => {
  const { folder, design, out } = setUp();
  mkdirSync(out);
  symlinkSync(design, join(out, 'parts.csv'));
  const { status } = await coilfeed(['kit', design, '--out', out, '--force']);
  expect(status).toBe(2);
  expect(readFileSync(join(folder, 'design.yaml'), 'utf8')).toContain('coilfeed: 1');
});

test('a design that fails is written all the same, marked, with status 1', async () => {
  const { design, out } = setUp(straight(16).replace('gauge: 6 AWG', 'gauge: 22 AWG'));
  const { status, out: said } = await coilfeed(['kit', design, '--out', out]);
  expect(status).toBe(1);
  expect(said).toContain('NOT RELEASED FOR BUILDING');
  for (const name of ['instructions.html', 'bench.html', 'build-record.html', 'labels.html', 'diagram.svg'])
    expect(readFileSync(join(out, name), 'utf8'), name).toContain('NOT RELEASED FOR BUILDING');
});

test('own words are taken from a file; what is wrong with them is said with its place', async () => {
  const { folder, design, out } = setUp();
  const words = join(folder, 'words.yaml');
  writeFileSync(words, 'tools: [Only a hammer.]\n');
  expect((await coilfeed(['kit', design, '--out', out, '--words', words])).status).toBe(0);
  expect(readFileSync(join(out, 'instructions.html'), 'utf8')).toContain('Only a hammer.');
  writeFileSync(words, 'tools: [A spanner of 13 mm.]\n');
  const literal = await coilfeed(['kit', design, '--out', out, '--words', words, '--bom', '--ascii']);
  expect(literal.out).toContain('which follow no design: tools[0]: 13');
  const table = readFileSync(join(out, 'cut-list.csv'), 'utf8');
  expect(table.charCodeAt(0)).toBe(0xfeff);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: nothing else may stand there.
  expect(table.slice(1)).toMatch(/^[\u0000-\u007f]*$/);
  writeFileSync(words, 'tools: ["{fusses}"]\n');
  const { status, err } = await coilfeed(['kit', design, '--out', join(folder, 'other'), '--words', words]);
  expect(status).toBe(2);
  expect(err).toContain('words.yaml:1:9 tools[0]: the unknown value');
  expect(existsSync(join(folder, 'other'))).toBe(false);
});

test.each([
  [['kit'], '"kit" takes one design'],
  [['kit', 'DESIGN'], '"kit" needs a folder'],
  [['kit', 'DESIGN', '--out', 'OUT', '--batch', '0'], '--batch takes a whole number'],
  [['kit', 'DESIGN', '--out', 'OUT', '--batch', '1e3'], '--batch takes a whole number'],
  [['kit', 'DESIGN', '--out', 'OUT', '--batch', '4', '--serials', 'A1-A5'], 'they must agree'],
  [['kit', 'DESIGN', '--out', 'OUT', '--serials', 'A5-A1'], 'goes backward'],
  [['kit', 'DESIGN', '--out', 'OUT', '--serials', 'A1-B3'], 'its ends have different letters'],
  [['kit', 'DESIGN', '--out', 'DESIGN'], 'is not a folder'],
  [['kit', 'nowhere.yaml', '--out', 'OUT'], 'does not exist'],
])('refused: %j', async (call, says) => {
  const { design, out } = setUp();
  const { status, err } = await coilfeed(call.map((a) => (a === 'DESIGN' ? design : a === 'OUT' ? out : a)));
  expect(status).toBe(2);
  expect(err.replace(/\s+/g, ' ')).toContain(says);
  expect(existsSync(out)).toBe(false);
});
