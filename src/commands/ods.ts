/** The workbook in the OpenDocument format, made by LibreOffice from the one that we write. */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Refusal } from './files.ts';

/** It takes about two seconds; more than this means that it hangs [ms]. */
const PATIENCE = 60_000;
/** Its program, as it is called on most systems and on some. */
const PROGRAMS = ['soffice', 'libreoffice'];

/** The bytes of an .ods file. Throws a `Refusal` when LibreOffice is not installed or does not do it. */
export async function toOds(xlsx: Uint8Array): Promise<Uint8Array> {
  // A profile of its own: two processes cannot share one, and the user's may be open.
  const folder = mkdtempSync(join(tmpdir(), 'coilfeed-ods-'));
  try {
    const from = join(folder, 'book.xlsx');
    const made = join(folder, 'book.ods');
    writeFileSync(from, xlsx);
    const argv = [
      `-env:UserInstallation=${pathToFileURL(join(folder, 'profile'))}`,
      '--headless',
      '--convert-to',
      'ods',
      '--outdir',
      folder,
      from,
    ];
    let said: string | null = null;
    for (const program of PROGRAMS) {
      said = await ran(program, argv);
      if (said !== null) break;
    }
    if (said === null)
      throw new Refusal(
        'An .ods workbook is made by LibreOffice, and its program "soffice" was not found. Install it, or name the workbook .xlsx, which every spreadsheet program opens.',
        3,
      );
    // Its exit status is 0 even when it could not write.
    if (!existsSync(made))
      throw new Refusal(
        `LibreOffice did not make the .ods workbook${said === '' ? '' : `: ${said.trim().split('\n').at(-1)}`}. Name it .xlsx instead.`,
        3,
      );
    return readFileSync(made);
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** What the program said; null when there is no such program. */
function ran(program: string, argv: readonly string[]): Promise<string | null> {
  return new Promise((done, fail) => {
    // A group of its own, because it is a script that starts others: all of them end together.
    const child = spawn(program, argv, { detached: true, stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding('utf8').on('data', (part: string) => {
        said += part;
      });
    const clock = setTimeout(() => {
      try {
        process.kill(-(child.pid as number), 'SIGKILL');
      } catch {
        // A system without groups of processes.
        child.kill('SIGKILL');
      }
      fail(
        new Refusal(`LibreOffice took longer than ${PATIENCE / 1000} s; name the workbook .xlsx instead.`, 3),
      );
    }, PATIENCE);
    child.on('error', (error) => {
      clearTimeout(clock);
      if ('code' in error && error.code === 'ENOENT') done(null);
      else fail(new Refusal(`LibreOffice could not be started: ${error.message}.`, 3));
    });
    child.on('close', () => {
      clearTimeout(clock);
      done(said);
    });
  });
}
