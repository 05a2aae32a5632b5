/** The commands with a workbook in place of a design file, and `design` itself. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { withCopy } from '../../src/design/shop/copy.ts';
import { coilfeed, emptyFolder } from '../cli/tool.ts';
import { demo, design } from '../design/helpers.ts';
import { type Book, bookOf, demoPath, entryOf } from '../workbook/books.ts';
import { documentOf } from '../workbook/random-design.ts';
import { fill } from './edit.ts';

let four: Book;
beforeAll(async () => {
  four = await bookOf(design(demo('pair-four')));
});

const edited = (folder: string): string => {
  const file = join(folder, 'edited.xlsx');
  writeFileSync(file, fill(four, ['coil_ohm_20', {}, 0.9], ['wire_length', { wire: 0 }, 2]));
  return file;
};

describe('a workbook in place of a design file', () => {
  test('size judges it and says what was changed, also as JSON', async () => {
    const file = edited(emptyFolder());
    const { out, err, status } = await coilfeed(['size', file, '--json']);
    expect(status).toBeLessThan(2);
    const result = JSON.parse(out);
    expect(result.coil.resistance_ohm).toBe(0.9);
    expect(result.changed).toEqual([
      expect.objectContaining({
        cell: `Inputs!${entryOf(four, 'coil_ohm_20')}`,
        key: 'coil.resistance',
        now: '0.9 ohm',
      }),
      expect.objectContaining({ key: 'feed[0].length', now: '2 m' }),
    ]);
    expect(err).toContain(`${file}: 2 inputs were changed since it was made\n`);
    expect(err).toContain(' → 2 m\n');
  });

  test('nothing changed is said, and the design file has no such key', async () => {
    const file = join(emptyFolder(), 'book.xlsx');
    writeFileSync(file, four.bytes);
    expect((await coilfeed(['size', file])).err).toBe(`${file}: no input was changed since it was made\n`);
    expect(JSON.parse((await coilfeed(['size', demoPath('pair-four'), '--json'])).out)).not.toHaveProperty(
      'changed',
    );
  });

  test('a workbook on standard input', async () => {
    const { out, err, status } = await coilfeed(['design', '-'], { stdin: four.bytes });
    expect(out).toBe(withCopy(design(demo('pair-four'))).text.toString());
    expect(err).toBe('stdin: no input was changed since it was made\n');
    expect(status).toBe(0);
  });

  test('it is not written over, whatever is forced', async () => {
    const file = edited(emptyFolder());
    const before = readFileSync(file);
    for (const force of [[], ['--force']]) {
      const { status, err } = await coilfeed(['size', file, '--out', file, ...force]);
      expect(status).toBe(2);
      expect(err.replace(/\s+/g, ' ')).toContain('is the file that was read');
      expect(readFileSync(file).equals(before)).toBe(true);
    }
  });

  test('what is wrong with it ends in status 2, every command alike', async () => {
    const file = join(emptyFolder(), 'edited.xlsx');
    writeFileSync(file, fill(four, ['coil_ohm_20', {}, 'words'], ['drop_limit', {}, { formula: 'A1' }]));
    for (const call of [
      ['size', file],
      ['trace', file],
      ['design', file],
    ]) {
      const { status, out, err } = await coilfeed(call);
      expect({ status, out }).toEqual({ status: 2, out: '' });
      expect(err.trim().split('\n')).toHaveLength(2);
      expect(err).toContain(`${file}:Inputs!${entryOf(four, 'coil_ohm_20')} coil.resistance: found "words"`);
    }
  });
});

describe('coilfeed design', () => {
  test('writes a file, and replaces one only by force', async () => {
    const folder = emptyFolder();
    const [file, out] = [edited(folder), join(folder, 'next.yaml')];
    expect((await coilfeed(['design', file, '--out', out])).status).toBe(0);
    const text = readFileSync(out, 'utf8');
    expect(design(text).coil.resistance).toBe(0.9);
    expect((await coilfeed(['design', file, '--out', out])).err).toContain('--force');
    expect((await coilfeed(['design', file, '--out', out, '--force'])).status).toBe(0);
    // And again: what it wrote makes a workbook that gives the same.
    expect((await coilfeed(['design', out])).out).toBe(text);
  });

  test('writes JSON as YAML that is laid out to be read', async () => {
    const json = JSON.stringify(documentOf(3));
    const { out } = await coilfeed(['design', '-'], { stdin: json });
    expect(parse(out)).toEqual(documentOf(3));
    const lines = out.split('\n');
    expect(lines.length).toBeGreaterThan(30);
    expect(lines.every((line) => line.length < 120)).toBe(true);
    expect({ ...design(out), text: '' }).toEqual({ ...design(json), text: '' });
  });

  test('a call that cannot be', async () => {
    expect((await coilfeed(['design'])).status).toBe(2);
    expect((await coilfeed(['design', 'a', 'b'])).status).toBe(2);
    expect((await coilfeed(['design', demoPath('pair-four'), '--out', 'x.xlsx'])).err).toContain('.yaml');
    expect((await coilfeed(['design', '/nowhere.xlsx'])).err).toContain('does not exist');
  });
});
