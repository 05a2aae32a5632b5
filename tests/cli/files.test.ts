/** Reading files: every refusal is a sentence. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { explain, MOST_BYTES, Refusal, readInput, shown, textOf } from '../../src/commands/files.ts';
import { coilfeed, emptyFolder, runProgram } from './tool.ts';

const refusedRead = (path: string): Promise<string> =>
  readInput(path)
    .then((bytes) => textOf(bytes, path))
    .then(
      () => 'was read',
      (error) => (error instanceof Refusal ? error.message : `threw ${error}`),
    );

test('a full disk is the machine’s fault, an unknown code is told as it is', () => {
  const full = explain(Object.assign(new Error(), { code: 'ENOSPC' }), '"a.xlsx"');
  expect(full).toMatchObject({ status: 3, message: '"a.xlsx": the disk is full; nothing was written.' });
  expect(explain(Object.assign(new Error(), { code: 'EIO' }), '"a"')).toMatchObject({ status: 3 });
  expect(explain(Object.assign(new Error(), { code: 'EIO' }), '"a"').message).toContain('EIO');
});

describe('names', () => {
  test('signs that steer a terminal are written out', async () => {
    expect(shown('a\nb\x1b[2Jc\x9b d\u2028.yaml')).toBe('a\\x0ab\\x1b[2Jc\\x9b d\\u2028.yaml');
    expect(shown('Zündung 点火.yaml')).toBe('Zündung 点火.yaml');
    const folder = emptyFolder();
    const made = await coilfeed(['new', 'a\x1b[31m.yaml'], { cwd: folder });
    expect(made.status).toBe(0);
    writeFileSync(join(folder, 'bad\x1b[31m.yaml'), 'coilfeed: 1');
    const read = await coilfeed(['size', 'bad\x1b[31m.yaml'], { cwd: folder });
    const none = await coilfeed(['size', 'none\x1b[31m.yaml'], { cwd: folder });
    for (const { out, err } of [made, read, none]) {
      expect(out + err).toContain('\\x1b[31m.yaml');
      expect(out + err).not.toContain('\x1b');
    }
  });

  test('a sign that turns the direction of writing is refused', async () => {
    const ran = await coilfeed(['new', 'feed\u202elmay.exe']);
    expect(ran).toMatchObject({ status: 2, out: '' });
    expect(ran.err.replace(/\s+/g, ' ')).toContain('"feed\\u202elmay.exe"');
  });
});

describe('reading', () => {
  const file = (bytes: Uint8Array | string): string => {
    const path = join(emptyFolder(), 'design.yaml');
    writeFileSync(path, bytes);
    return path;
  };

  test('text with a byte order mark, and text of exactly the largest length', async () => {
    const path = file('\ufeffcoilfeed: 1 # Ω');
    expect(textOf(await readInput(path), path)).toBe('coilfeed: 1 # Ω');
    expect((await readInput(file('x'.repeat(MOST_BYTES)))).length).toBe(MOST_BYTES);
  });

  test('what cannot be read is named', async () => {
    const folder = emptyFolder();
    expect(await refusedRead(join(folder, 'none.yaml'))).toContain('does not exist');
    expect(await refusedRead(folder)).toContain('is a folder');
    expect(await refusedRead(file('x'.repeat(MOST_BYTES + 1)))).toContain('larger than 1 MiB');
    expect(await refusedRead('/dev/zero')).toContain('larger than 1 MiB');
  });

  test.each([
    ['a stray byte', [0x61, 0x0a, 0x62, 0xff, 0x63], 'line 2, byte 4'],
    ['a character that is cut off', [0x61, 0xe2, 0x82], 'line 1'],
    ['UTF-16', [0xff, 0xfe, 0x61, 0x00], 'line 1, byte 1'],
    ['a surrogate', [0x0a, 0x0a, 0xed, 0xa0, 0x80], 'line 3'],
  ])('not UTF-8: %s', async (_, bytes, says) => {
    const message = await refusedRead(file(new Uint8Array(bytes)));
    expect(message).toContain('is not UTF-8 text');
    expect(message).toContain(says);
  });

  test('standard input: a design, nothing at all, too much', async () => {
    const { out } = await coilfeed(['new']);
    expect((await coilfeed(['size', '-'], { stdin: out })).status).not.toBe(2);
    expect((await coilfeed(['size', '-'], { stdin: '' })).status).toBe(2);
    const long = await coilfeed(['size', '-'], { stdin: 'x'.repeat(2 * MOST_BYTES) });
    expect(long).toMatchObject({ status: 2, out: '' });
    expect(long.err).toContain('Standard input is larger than 1 MiB');
  });

  test.skipIf(process.platform !== 'linux')('a named pipe, as process substitution gives it', async () => {
    const pipe = join(emptyFolder(), 'pipe');
    await runProgram('mkfifo', [pipe]);
    const [text] = await Promise.all([readInput(pipe), runProgram('bash', ['-c', `echo abc > "${pipe}"`])]);
    expect(textOf(text, pipe)).toBe('abc\n');
  });
});
