/** Reading and writing files: every refusal is a sentence, and nobody's file is lost. */
import {
  chmodSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { explain, MOST_BYTES, Refusal, readInput, textOf, writeSafely } from '../../src/commands/files.ts';
import { coilfeed, emptyFolder, runProgram } from './tool.ts';

/** What a refused write says. Anything else that is thrown fails the test. */
function refusal(write: () => void): string {
  try {
    write();
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  throw new Error('was not refused');
}

const refusedRead = (path: string): Promise<string> =>
  readInput(path)
    .then((bytes) => textOf(bytes, path))
    .then(
      () => 'was read',
      (error) => (error instanceof Refusal ? error.message : `threw ${error}`),
    );

const mine = (bytes: Uint8Array): boolean => new TextDecoder().decode(bytes).startsWith('mine');

describe('writing', () => {
  test('a new file, as a whole, and nothing beside it', () => {
    const folder = emptyFolder();
    writeSafely(join(folder, 'a.txt'), new Uint8Array([0, 1, 255]), { force: false });
    expect([...readFileSync(join(folder, 'a.txt'))]).toEqual([0, 1, 255]);
    expect(readdirSync(folder)).toEqual(['a.txt']);
  });

  test('a file of ours is replaced and keeps its permissions; another one only by force', () => {
    const folder = emptyFolder();
    const [own, foreign] = [join(folder, 'own'), join(folder, 'foreign')];
    writeFileSync(own, 'mine, old');
    chmodSync(own, 0o640);
    writeFileSync(foreign, 'theirs');
    writeSafely(own, 'mine, new', { force: false, ours: mine });
    expect(readFileSync(own, 'utf8')).toBe('mine, new');
    expect(statSync(own).mode & 0o777).toBe(0o640);
    expect(refusal(() => writeSafely(foreign, 'x', { force: false, ours: mine }))).toMatch(
      /was not made by coilfeed; .*--force/,
    );
    expect(readFileSync(foreign, 'utf8')).toBe('theirs');
    writeSafely(foreign, 'x', { force: true, ours: mine });
    expect(readFileSync(foreign, 'utf8')).toBe('x');
  });

  test('the file that was read is not replaced, not even by force or by another name of it', () => {
    const folder = emptyFolder();
    const [design, twin] = [join(folder, 'design.yaml'), join(folder, 'twin.yaml')];
    writeFileSync(design, 'input');
    linkSync(design, twin);
    const inputs = [design, join(folder, 'not there')];
    for (const path of [design, twin])
      expect(refusal(() => writeSafely(path, 'x', { force: true, inputs }))).toContain('that was read');
    expect(readFileSync(design, 'utf8')).toBe('input');
  });

  test('through a link, also through one to a file that is not there yet', () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, 'far'));
    for (const name of ['a', 'b']) symlinkSync(`far/${name}.txt`, join(folder, name));
    writeFileSync(join(folder, 'far', 'a.txt'), 'old');
    for (const name of ['a', 'b']) {
      writeSafely(join(folder, name), 'new', { force: true });
      expect(lstatSync(join(folder, name)).isSymbolicLink()).toBe(true);
      expect(readFileSync(join(folder, 'far', `${name}.txt`), 'utf8')).toBe('new');
    }
    expect(readdirSync(join(folder, 'far'))).toEqual(['a.txt', 'b.txt']);
  });

  test('what is in the way is named', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'plain'), '');
    symlinkSync('loop', join(folder, 'loop'));
    const says = (path: string): string => refusal(() => writeSafely(path, 'x', { force: true }));
    expect(says(folder)).toContain('is a folder');
    expect(says(join(folder, 'no', 'x.txt'))).toMatch(/The folder ".*no" does not exist/);
    expect(says(join(folder, 'plain', 'x.txt'))).toContain('is a file, not a folder');
    expect(says(join(folder, 'loop'))).toContain('leads back to itself');
    expect(says(join(folder, 'x'.repeat(300)))).toContain('too long');
    expect(says('/dev/null')).toContain('not a plain file');
    expect(statSync('/dev/null').isCharacterDevice()).toBe(true);
  });

  // Root may write everywhere; as root the test acts as nobody (65534) for the moment.
  test.skipIf(!process.seteuid)('no permission in the folder', () => {
    const folder = emptyFolder();
    const root = process.geteuid?.() === 0;
    chmodSync(folder, 0o555);
    if (root) process.seteuid?.(65534);
    const message = refusal(() => writeSafely(join(folder, 'a'), 'x', { force: false }));
    if (root) process.seteuid?.(0);
    chmodSync(folder, 0o755);
    expect(message).toContain('permission denied');
    expect(readdirSync(folder)).toEqual([]);
  });

  test('a full disk is the machine’s fault, an unknown code is told as it is', () => {
    const full = explain(Object.assign(new Error(), { code: 'ENOSPC' }), '"a.xlsx"');
    expect(full).toMatchObject({ status: 3, message: '"a.xlsx": the disk is full; nothing was written.' });
    expect(explain(Object.assign(new Error(), { code: 'EIO' }), '"a"')).toMatchObject({ status: 3 });
    expect(explain(Object.assign(new Error(), { code: 'EIO' }), '"a"').message).toContain('EIO');
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
    expect(await refusedRead(file('x'.repeat(MOST_BYTES + 1)))).toContain('longer than 1 MiB');
    expect(await refusedRead('/dev/zero')).toContain('longer than 1 MiB');
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
    expect(long.err).toContain('Standard input is longer than 1 MiB');
  });

  test.skipIf(process.platform !== 'linux')('a named pipe, as process substitution gives it', async () => {
    const pipe = join(emptyFolder(), 'pipe');
    await runProgram('mkfifo', [pipe]);
    const [text] = await Promise.all([readInput(pipe), runProgram('bash', ['-c', `echo abc > "${pipe}"`])]);
    expect(textOf(text, pipe)).toBe('abc\n');
  });
});
