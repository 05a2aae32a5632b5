/** Writing files: all of a call or none, and nobody's work is lost. */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { largest } from '../../src/build/largest.ts';
import { Refusal } from '../../src/commands/files.ts';
import { type WriteOptions, writeFiles } from '../../src/commands/write.ts';
import { demoPath } from '../workbook/books.ts';
import { coilfeed, emptyFolder, runProgram, toolPath } from './tool.ts';

const plain: WriteOptions = { force: false };
const forced: WriteOptions = { force: true };

const write = (path: string, bytes: string | Uint8Array, options = plain): Promise<void> =>
  writeFiles([{ path, bytes }], options);

/** What a refused write says. Anything else that is thrown fails the test. */
const refusal = (work: Promise<void>): Promise<string> =>
  work.then(
    () => Promise.reject(new Error('was not refused')),
    (error) => (error instanceof Refusal ? error.message : Promise.reject(error)),
  );

describe('a file', () => {
  test('is written as a whole, with nothing beside it', async () => {
    const folder = emptyFolder();
    await write(join(folder, 'a.txt'), new Uint8Array([0, 1, 255]));
    expect([...readFileSync(join(folder, 'a.txt'))]).toEqual([0, 1, 255]);
    expect(readdirSync(folder)).toEqual(['a.txt']);
  });

  test('of ours is replaced and keeps its permissions; another one only by force', async () => {
    const folder = emptyFolder();
    const [own, foreign] = [join(folder, 'own.csv'), join(folder, 'foreign.csv')];
    await write(own, 'a,b\r\n1,2\r\n');
    chmodSync(own, 0o640);
    writeFileSync(foreign, 'a,b\r\n1,2\r\n');
    await write(own, 'a,b\r\n3,4\r\n');
    expect(readFileSync(own, 'utf8')).toMatch(/^a,b,coilfeed [0-9a-f]{16}\r\n3,4,\r\n$/);
    expect(statSync(own).mode & 0o777).toBe(0o640);
    expect(await refusal(write(foreign, 'x'))).toMatch(/was not made by coilfeed,.*--force/);
    expect(readFileSync(foreign, 'utf8')).toBe('a,b\r\n1,2\r\n');
    await write(foreign, 'x', forced);
    expect(readFileSync(foreign, 'utf8')).toMatch(/^x,/);
  });

  test('of a kind that bears no seal is replaced only by force', async () => {
    const path = join(emptyFolder(), 'a.yaml');
    await write(path, 'one');
    expect(await refusal(write(path, 'two'))).toContain('exists already; choose another name or add --force');
    await write(path, 'two', forced);
    expect(readFileSync(path, 'utf8')).toBe('two');
  });

  test('that was read is not replaced, not even by force or by another name of it', async () => {
    const folder = emptyFolder();
    const [design, twin] = [join(folder, 'design.yaml'), join(folder, 'twin.yaml')];
    writeFileSync(design, 'input');
    linkSync(design, twin);
    const inputs = [design, join(folder, 'not there'), '-'];
    for (const path of [design, twin])
      expect(await refusal(write(path, 'x', { force: true, inputs }))).toContain('that was read');
    expect(readFileSync(design, 'utf8')).toBe('input');
  });

  test('is written through a link, also through one to a file that is not there yet', async () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, 'far'));
    for (const name of ['a', 'b']) symlinkSync(`far/${name}.txt`, join(folder, name));
    writeFileSync(join(folder, 'far', 'a.txt'), 'old');
    for (const name of ['a', 'b']) {
      await write(join(folder, name), 'new', forced);
      expect(lstatSync(join(folder, name)).isSymbolicLink()).toBe(true);
      expect(readFileSync(join(folder, 'far', `${name}.txt`), 'utf8')).toBe('new');
    }
    expect(readdirSync(join(folder, 'far'))).toEqual(['a.txt', 'b.txt']);
  });
});

test('what is in the way is named', async () => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plain'), '');
  symlinkSync('loop', join(folder, 'loop'));
  const says = (path: string): Promise<string> => refusal(write(path, 'x', forced));
  expect(await says(folder)).toContain('is a folder');
  expect(await says(join(folder, 'no', 'x.txt'))).toMatch(/The folder ".*no" does not exist/);
  expect(await says(join(folder, 'plain', 'x.txt'))).toContain('is a file, not a folder');
  expect(await says(join(folder, 'loop'))).toContain('leads back to itself');
  expect(await says(join(folder, 'x'.repeat(300)))).toContain('too long');
  expect(await says('/dev/null')).toContain('not a plain file');
  expect(statSync('/dev/null').isCharacterDevice()).toBe(true);
});

// Root may write everywhere; as root the test acts as nobody (65534) for the moment.
test.skipIf(!process.seteuid)('no permission in the folder', async () => {
  const folder = emptyFolder();
  const root = process.geteuid?.() === 0;
  chmodSync(folder, 0o555);
  if (root) process.seteuid?.(65534);
  const message = await refusal(write(join(folder, 'a'), 'x')).finally(() => {
    if (root) process.seteuid?.(0);
    chmodSync(folder, 0o755);
  });
  expect(message).toContain('permission denied');
  expect(readdirSync(folder)).toEqual([]);
});

describe('several files', () => {
  test('none is written where one may not be, and a folder that was made goes again', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'b.csv'), 'evenings of work');
    const outputs = ['a', 'b', 'c'].map((name) => ({ path: join(folder, `${name}.csv`), bytes: 'x\n' }));
    expect(await refusal(writeFiles(outputs, plain))).toContain('b.csv');
    expect(readdirSync(folder)).toEqual(['b.csv']);
    const made = join(folder, 'new', 'deep');
    const within = [{ path: join(made, 'x', 'a.csv'), bytes: '' }];
    expect(await refusal(writeFiles(within, { force: false, folder: made }))).toContain('does not exist');
    expect(existsSync(join(folder, 'new'))).toBe(false);
  });

  test('what killed runs left goes, what a living one writes stays', async () => {
    const folder = emptyFolder();
    const machine = createHash('sha256').update(hostname()).digest('hex').slice(0, 8);
    const left = (host: string, process: number): string => `.coilfeed-${host}-${process}-0123456789ab.tmp`;
    // A process that has ended and was waited for: its number is free, and not given out again at once.
    const dead = Number(execFileSync('bash', ['-c', 'echo $$'], { encoding: 'utf8' }));
    const stays = [left(machine, process.pid), left('00000000', dead), '.coilfeed-notes.tmp'];
    for (const name of [left(machine, dead), ...stays]) writeFileSync(join(folder, name), 'half');
    await write(join(folder, 'a.csv'), 'x\n');
    expect(readdirSync(folder).sort()).toEqual([...stays, 'a.csv'].sort());
  });
});

/** Mounts for the time of a test; false where that is not allowed. */
function mounted(argv: readonly string[], at: string): boolean {
  try {
    execFileSync('mount', [...argv, at], { stdio: 'ignore' });
  } catch {
    return false;
  }
  onTestFinished(() => {
    execFileSync('umount', [at]);
  });
  return true;
}

const mayMount = ((): boolean => {
  if (process.platform !== 'linux' || process.geteuid?.() !== 0) return false;
  try {
    execFileSync('mount', ['-t', 'tmpfs', 'tmpfs', '/mnt'], { stdio: 'ignore' });
    execFileSync('umount', ['/mnt']);
    return true;
  } catch {
    return false;
  }
})();

describe.skipIf(!mayMount)('a full disk [needs the right to mount]', () => {
  const disk = (size: string): string => {
    const at = emptyFolder();
    expect(mounted(['-t', 'tmpfs', '-o', `size=${size}`, 'tmpfs'], at)).toBe(true);
    return at;
  };

  const some = (folder: string, bytes: string) =>
    ['a', 'b', 'c'].map((name) => ({ path: join(folder, `${name}.csv`), bytes }));

  test('nothing is left half done, and what was there stays as it was', async () => {
    const at = disk('400k');
    const [kit, more] = [join(at, 'kit'), join(at, 'more')];
    await writeFiles(some(kit, 'x'.repeat(50_000)), { force: false, folder: kit });
    const before = readdirSync(kit).map((name) => readFileSync(join(kit, name), 'utf8'));
    expect(before).toHaveLength(3);
    // 250 kB are free: the third file finds no room.
    for (const folder of [kit, more]) {
      const options = { force: true, folder };
      const says = await refusal(writeFiles(some(folder, 'y'.repeat(100_000)), options));
      expect(says).toMatch(/c\.csv": the disk is full; nothing was written\.$/);
    }
    expect(readdirSync(at)).toEqual(['kit']);
    expect(readdirSync(kit).map((name) => readFileSync(join(kit, name), 'utf8'))).toEqual(before);
  });

  test('pictures, by the command: status 3, and an empty disk', async () => {
    // They take some 700 kB.
    const at = disk('200k');
    const ran = await coilfeed(['size', demoPath('pair-four'), '--plots', join(at, 'plots')]);
    expect(ran).toMatchObject({ status: 3, out: '' });
    expect(ran.err.replace(/\s+/g, ' ')).toContain('the disk is full; nothing was written');
    expect(readdirSync(at)).toEqual([]);
  });

  test('a name that the system will not give: the message says what was written before', async () => {
    const folder = emptyFolder();
    const [first, second] = [join(folder, 'a.txt'), join(folder, 'b.txt')];
    writeFileSync(second, 'old');
    // What is mounted over cannot be renamed over.
    copyFileSync(second, join(folder, 'over'));
    expect(mounted(['--bind', join(folder, 'over')], second)).toBe(true);
    const outputs = [first, second].map((path) => ({ path, bytes: 'new' }));
    const says = await refusal(writeFiles(outputs, forced));
    expect(says).toMatch(/b\.txt": the system reports EBUSY\. Written before that: ".*a\.txt"\./);
    expect(readdirSync(folder).sort()).toEqual(['a.txt', 'b.txt', 'over']);
  });
});

describe('while something takes long', () => {
  test.skipIf(process.platform !== 'linux')('a terminal shows what, and for how long', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'largest.yaml'), largest());
    const line = `"${process.execPath}" "${toolPath()}" size largest.yaml > report.txt`;
    const ran = await runProgram('script', ['-qec', line, '/dev/null'], {
      cwd: folder,
      env: { TERM: 'xterm' },
    });
    // The largest design takes several seconds; the last sign clears the line.
    expect(ran.out).toMatch(/Sizing, 1 s/);
    expect(ran.out.endsWith('\r\x1b[K')).toBe(true);
    expect(readFileSync(join(folder, 'report.txt'), 'utf8')).toMatch(/^The largest design/);
  });

  test('what is no terminal gets nothing', async () => {
    expect((await coilfeed(['size', demoPath('pair-four')])).err).toBe('');
  });
});
