/** `coilfeed new --ask` on a terminal: it asks, asks again what cannot be taken, and writes a design that passes as it is. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { run } from '../../src/run.ts';
import { fromShelf } from '../../src/shop/choose.ts';
import { SHOP } from '../design/helpers.ts';
import { describeWithPeer, PYTHON } from '../peers/peer.ts';
import { toolPath } from './tool.ts';

const TERMINAL = fileURLToPath(new URL('terminal.py', import.meta.url));
const SHELF = fileURLToPath(new URL('../../workbooks/shop.yaml', import.meta.url));

/** What stands on the terminal without its control sequences, the status, and the design that was written. */
function asked(...answers: string[]): { said: string; status: number | null; written: () => string } {
  const folder = mkdtempSync(join(tmpdir(), 'coilfeed-ask-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  copyFileSync(SHELF, join(folder, 'shop.yaml'));
  const call = [TERMINAL, answers.join('|'), process.execPath, toolPath(), 'new', 'engine.yaml', '--ask'];
  const { stdout, status } = spawnSync(PYTHON, call, { cwd: folder, encoding: 'utf8' });
  return {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that are meant.
    said: stdout.replace(/\u001b\[\d*[A-Z]/g, '').replaceAll('\r', ''),
    status,
    written: () => readFileSync(join(folder, 'engine.yaml'), 'utf8'),
  };
}

describeWithPeer('python3', 'asked on a terminal', () => {
  test('what is left empty takes what stands in brackets', () => {
    const { said, status, written } = asked('', '', '', '', '');
    expect(status).toBe(0);
    expect(said).toContain('Firing order [1-3-4-2]: ');
    expect(said).toContain('Shop’s file, or none [none]: ');
    const read = readDesign(written(), 'engine.yaml');
    expect(read.ok && run(read.design).verdict).toBe('pass');
  });

  test('a wrong answer is told what is taken, and asked again', () => {
    const { said, status, written } = asked(
      ...['nine', '6'],
      ...['3', '4'],
      ...['coil per', 'coil_per_pair'],
      ...['1-2-3', '1-5-3-6-2-4'],
      ...['shoop.yaml', 'shop.yaml'],
      ...['van pear', 'van pair'],
    );
    expect(status).toBe(0);
    const told = [
      'cylinders takes a whole number, 1 to 16, not "nine".',
      'stroke takes 2 or 4.',
      'layout takes coil_per_cylinder,',
      'a firing order without 4, 5 and 6; name each of 1 to 6 once',
      '"shoop.yaml" does not exist',
      'did you mean "van pair"?',
    ];
    // In this order, each followed by its question once more.
    expect(told.map((text) => said.indexOf(text))).toEqual(
      told.map((text) => said.indexOf(text)).sort((a, b) => a - b),
    );
    for (const text of told) expect(said).toContain(text);
    expect(said.match(/Firing order/g)).toHaveLength(2);
    const read = readDesign(written(), 'engine.yaml', SHOP);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.design.used.map(({ name }) => name)).toEqual(['van pair']);
    expect(run(fromShelf(read.design, run)).verdict).toBe('pass');
  });
});
