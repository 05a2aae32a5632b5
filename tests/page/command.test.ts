/** `coilfeed page` on the command line. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { demo } from '../design/helpers.ts';
import { demoPath } from '../workbook/books.ts';

test.each([
  ['no file to write', ['page'], '--out'],
  ['a name that no browser opens', ['page', '--out', 'bench.txt'], '.html'],
  ['two designs', ['page', 'a.yaml', 'b.yaml', '--out', 'x.html'], 'one design'],
  ['a design that is not there', ['page', 'nowhere.yaml', '--out', 'x.html'], 'does not exist'],
])('%s is refused', async (_, argv, words) => {
  const { status, out, err } = await coilfeed(argv, { cwd: emptyFolder() });
  expect(status).toBe(2);
  expect(out).toBe('');
  expect(err.replace(/\s+/g, ' ')).toContain(words);
});

test('a design that cannot be used is told as "size" tells it, and nothing is written', async () => {
  const folder = emptyFolder();
  const file = join(folder, 'bad.yaml');
  writeFileSync(file, demo('pair-four').replace('0.55 ohm', '0.55 kg'));
  const page = await coilfeed(['page', file, '--out', join(folder, 'x.html')]);
  expect(page.status).toBe(2);
  expect(page.err).toBe((await coilfeed(['size', file])).err);
  expect(() => readFileSync(join(folder, 'x.html'))).toThrow('ENOENT');
});

test('a page is replaced, another file is not', async () => {
  const folder = emptyFolder();
  const out = join(folder, 'bench.html');
  const write = (...more: string[]) => coilfeed(['page', demoPath('pair-four'), '--out', out, ...more]);
  expect((await write()).status).toBe(0);
  expect((await write()).status).toBe(0);
  const page = readFileSync(out, 'utf8');
  writeFileSync(out, '<!doctype html><title>mine</title>');
  expect((await write()).status).toBe(2);
  expect(readFileSync(out, 'utf8')).toContain('mine');
  expect((await write('--force')).status).toBe(0);
  expect(readFileSync(out, 'utf8')).toBe(page);
});

test('takes a design from standard input; the page names no place of the network', async () => {
  const out = join(emptyFolder(), 'bench.html');
  const stdin = demo('pair-four').replace('Delivery van', 'From a pipe');
  expect((await coilfeed(['page', '-', '--out', out], { stdin })).status).toBe(0);
  const page = readFileSync(out, 'utf8');
  expect(page).toContain('title: From a pipe');
  // Markup that would make a browser ask for something.
  expect(page.match(/<(?:link|img|iframe|object|embed)\b|\bsrc=|@import|url\(\s*['"]?https?:/g)).toBeNull();
  expect(page).toContain("default-src 'none'");
});

test('carries the licence of every package that is in it', async () => {
  const out = join(emptyFolder(), 'bench.html');
  expect((await coilfeed(['page', '--out', out])).status).toBe(0);
  const notices = readFileSync(out, 'utf8').split('</html>')[1] ?? '';
  expect(notices).toContain('GPL-3.0-only');
  for (const name of ['hyperformula', 'preact', 'zod', 'yaml', 'chevrotain', 'fflate', 'hucre']) {
    const { version } = JSON.parse(readFileSync(`node_modules/${name}/package.json`, 'utf8'));
    expect(notices, name).toContain(`\n${name} ${version}, `);
  }
  // The words that the MIT licence asks to be kept.
  expect(notices).toContain('The above copyright notice and this permission notice shall be included');
});
