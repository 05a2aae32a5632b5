/** What a user installs: everything that runs, nothing that only tests use, and under which licences. */
import { cpSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { installed, isCompatible } from '../../src/build/licences.mjs';
import { demoPath } from '../workbook/books.ts';
import { emptyFolder, runProgram, toolPath } from './tool.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));

test('a licence counts as compatible as the Free Software Foundation lists it', () => {
  for (const yes of ['MIT', 'ISC', 'Apache-2.0', 'MPL-2.0', 'EPL-2.0 OR GPL-3.0-or-later', '(MIT AND Zlib)'])
    expect(isCompatible(yes), yes).toBe(true);
  for (const no of [
    'GPL-2.0-only',
    'EPL-2.0',
    'BSD-4-Clause',
    'CC-BY-NC-4.0',
    'MIT AND EPL-2.0',
    'not stated',
  ])
    expect(isCompatible(no), no).toBe(false);
});

test('what is installed beside the bundle is machine code for PNG and fonts, under licences that go together', () => {
  const beside = installed();
  expect(beside.length).toBeGreaterThan(2);
  expect(beside.filter(({ name }) => !/^(@resvg\/resvg-js(-.+)?|dejavu-fonts-ttf)$/.test(name))).toEqual([]);
  expect(beside.filter(({ licence }) => !isCompatible(licence))).toEqual([]);
});

test('no package has a script that npm would run when it installs', () => {
  const packages = Object.entries<{ hasInstallScript?: boolean }>(lock.packages);
  // Ours is the build, which needs no network.
  const asks = packages.filter(([path, { hasInstallScript }]) => path !== '' && hasInstallScript === true);
  expect(asks.map(([path]) => path)).toEqual([]);
});

const sizeOf = (path: string): number =>
  statSync(path).isDirectory()
    ? readdirSync(path).reduce((sum, name) => sum + sizeOf(join(path, name)), 0)
    : statSync(path).size;

test('the packed tool runs where only its dependencies lie beside it, in at most 40 MB', async () => {
  // As `npm pack` and an installation without the network: the build that the tests run takes the place of dist/.
  const folder = emptyFolder();
  const source = join(folder, 'source');
  const { files, dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  for (const name of ['package.json', 'README.md', 'LICENSE', ...files])
    cpSync(name === 'dist' ? dirname(toolPath()) : join(root, name), join(source, name), { recursive: true });
  const packed = await runProgram('npm', ['pack', '--ignore-scripts', '--json'], { cwd: source });
  expect(packed.status, packed.err).toBe(0);
  const modules = join(folder, 'node_modules');
  mkdirSync(join(modules, 'coilfeed'), { recursive: true });
  mkdirSync(join(modules, '@resvg'));
  const tarball = readdirSync(source).find((name) => name.endsWith('.tgz')) as string;
  const tar = ['-xzf', join(source, tarball), '-C', join(modules, 'coilfeed'), '--strip-components=1'];
  expect((await runProgram('tar', tar)).status).toBe(0);
  const beside = [
    ...Object.keys(dependencies),
    ...readdirSync(join(root, 'node_modules/@resvg')).map((n) => `@resvg/${n}`),
  ];
  for (const name of new Set(beside)) symlinkSync(join(root, 'node_modules', name), join(modules, name));

  const megabytes = sizeOf(modules) / 1e6;
  expect(megabytes).toBeGreaterThan(5);
  expect(megabytes).toBeLessThan(40);
  const cli = join(modules, 'coilfeed/dist/cli.js');
  const ran = await runProgram(
    process.execPath,
    [cli, 'size', demoPath('pair-four'), '--plots', 'plots', '--out', 'feed.xlsx'],
    { cwd: folder },
  );
  expect(ran).toMatchObject({ status: 0, err: '' });
  expect(readdirSync(join(folder, 'plots')).some((name) => name.endsWith('.png'))).toBe(true);
  const page = await runProgram(process.execPath, [cli, 'page', '--out', 'bench.html'], { cwd: folder });
  expect(page.status).toBe(0);
});
