/** The tool as a person runs it: a process of its own, with its output and its exit status. */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { inject, onTestFinished } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Builds into `folder` unless another process has built there or is just about it. Leaves `done` or `failed` behind. */
function build(folder: string): void {
  mkdirSync(dirname(folder), { recursive: true });
  try {
    mkdirSync(folder);
  } catch {
    // The other one ends in any case; this process has nothing else to do meanwhile.
    const clock = new Int32Array(new SharedArrayBuffer(4));
    while (!existsSync(join(folder, 'done')) && !existsSync(join(folder, 'failed')))
      Atomics.wait(clock, 0, 0, 50);
    return;
  }
  const made = spawnSync(process.execPath, ['src/build/build.mjs', join(folder, 'tool')], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  writeFileSync(join(folder, made.status === 0 ? 'done' : 'failed'), `${made.error ?? ''}${made.stderr}`);
}

/** Path of the built cli.js; the first call of a run builds it. Throws, with what was said, when the build failed. */
export function toolPath(): string {
  const folder = inject('built');
  if (!existsSync(join(folder, 'done'))) build(folder);
  if (existsSync(join(folder, 'failed')))
    throw new Error(`the tool could not be built: ${readFileSync(join(folder, 'failed'), 'utf8')}`);
  return join(folder, 'tool', 'cli.js');
}

export interface Ran {
  status: number | null;
  out: string;
  err: string;
}

export interface Around {
  cwd?: string;
  stdin?: string | Uint8Array;
  env?: Record<string, string>;
}

/** Runs a program to its end. */
export function runProgram(program: string, argv: string[], around: Around = {}): Promise<Ran> {
  return new Promise((done, fail) => {
    const env = { ...process.env, ...around.env };
    const child = spawn(program, argv, { env, ...(around.cwd === undefined ? {} : { cwd: around.cwd }) });
    const text = { out: '', err: '' };
    child.stdout.setEncoding('utf8').on('data', (part: string) => {
      text.out += part;
    });
    child.stderr.setEncoding('utf8').on('data', (part: string) => {
      text.err += part;
    });
    // The tool may stop before it has read everything; that is not this test's matter.
    child.stdin.on('error', () => {});
    child.stdin.end(around.stdin ?? '');
    child.on('error', fail);
    child.on('close', (status) => done({ status, ...text }));
  });
}

/** Runs `coilfeed` with these arguments. */
export const coilfeed = (argv: string[], around: Around = {}): Promise<Ran> =>
  runProgram(process.execPath, [toolPath(), ...argv], around);

/** An empty folder that is gone after the test. */
export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'coilfeed-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
