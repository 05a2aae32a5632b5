/** `coilfeed new`: a design that can be used as it is, and that never lands on somebody's work. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { coilfeed, emptyFolder, runProgram, toolPath } from './tool.ts';

test('to standard output: a design without a problem', async () => {
  const ran = await coilfeed(['new']);
  expect(ran).toMatchObject({ status: 0, err: '' });
  expect(readDesign(ran.out, 'stdout')).toMatchObject({ ok: true });
});

test('to a file: the same design, and the next step is named', async () => {
  const folder = emptyFolder();
  const [file, shown] = [await coilfeed(['new', 'my.yaml'], { cwd: folder }), await coilfeed(['new', '-'])];
  expect(file).toMatchObject({ status: 0, out: '' });
  expect(file.err).toContain('coilfeed size my.yaml');
  expect(readFileSync(join(folder, 'my.yaml'), 'utf8')).toBe(shown.out);
});

test('a file that exists is left alone, unless by force', async () => {
  const folder = emptyFolder();
  const file = join(folder, 'my.yaml');
  writeFileSync(file, 'evenings of work');
  const refused = await coilfeed(['new', file]);
  expect(refused.status).toBe(2);
  expect(refused.err.replace(/\s+/g, ' ')).toContain('exists already; choose another name or add --force');
  expect(readFileSync(file, 'utf8')).toBe('evenings of work');
  expect((await coilfeed(['new', '--force', file])).status).toBe(0);
  expect(readFileSync(file, 'utf8')).toMatch(/^coilfeed: 1$/m);
  expect(readdirSync(folder)).toEqual(['my.yaml']);
});

test('a file that looks like an option, behind two dashes', async () => {
  const folder = emptyFolder();
  expect((await coilfeed(['new', '--', '--help'], { cwd: folder })).status).toBe(0);
  expect(readdirSync(folder)).toEqual(['--help']);
});

test.skipIf(process.platform !== 'linux')('no room: status 3, the file as it was, no leftovers', async () => {
  const folder = emptyFolder();
  const file = join(folder, 'my.yaml');
  writeFileSync(file, 'old');
  // The shell's limit on the size of a file stands in for a full disk: every write fails half way.
  const line = 'ulimit -f 0; "$1" "$2" new --force "$3"';
  const ran = await runProgram('bash', ['-c', line, 'bash', process.execPath, toolPath(), file]);
  expect(ran.status).toBe(3);
  expect(ran.err).toContain('nothing was written');
  expect(readFileSync(file, 'utf8')).toBe('old');
  expect(readdirSync(folder)).toEqual(['my.yaml']);
});
