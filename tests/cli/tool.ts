/** The tool as a person runs it: a process of its own, with its output and its exit status. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inject, onTestFinished } from 'vitest';

/** Path of the built cli.js. Throws when the build failed. */
export function toolPath(): string {
  const built = inject('built');
  if (!built.ok) throw new Error(`the tool could not be built: ${built.why}`);
  return join(built.folder, 'cli.js');
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
