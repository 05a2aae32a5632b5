/** Workbooks in the OpenDocument format: made from the one that we write, and read, by way of LibreOffice. */
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
export const toOds = (xlsx: Uint8Array): Promise<Uint8Array> =>
  converted(xlsx, 'xlsx', 'ods', {
    missing:
      'An .ods workbook is made by LibreOffice, and its program "soffice" was not found. Install it, or name the workbook .xlsx, which every spreadsheet program opens.',
    failed: 'LibreOffice did not make the .ods workbook',
    instead: 'Name it .xlsx instead.',
    status: 3,
  });

/** An .ods file as LibreOffice saves it as .xlsx. Throws a `Refusal` likewise. */
export const fromOds = (ods: Uint8Array): Promise<Uint8Array> =>
  converted(ods, 'ods', 'xlsx', {
    missing:
      'An .ods workbook is read by way of LibreOffice, and its program "soffice" was not found. Install it, or save the workbook as .xlsx.',
    failed: 'LibreOffice could not read the .ods workbook',
    instead: 'Save it as .xlsx instead.',
    status: 2,
  });

interface Words {
  readonly missing: string;
  readonly failed: string;
  readonly instead: string;
  readonly status: 2 | 3;
}

async function converted(
  bytes: Uint8Array,
  from: string,
  to: string,
  { missing, failed, instead, status }: Words,
): Promise<Uint8Array> {
  // A profile of its own: two processes cannot share one, and the user's may be open.
  const folder = mkdtempSync(join(tmpdir(), 'coilfeed-ods-'));
  try {
    const given = join(folder, `book.${from}`);
    const made = join(folder, `book.${to}`);
    writeFileSync(given, bytes);
    const argv = [
      `-env:UserInstallation=${pathToFileURL(join(folder, 'profile'))}`,
      '--headless',
      '--convert-to',
      to,
      '--outdir',
      folder,
      given,
    ];
    let said: string | null = null;
    for (const program of PROGRAMS) {
      said = await ran(program, argv, instead, status);
      if (said !== null) break;
    }
    if (said === null) throw new Refusal(missing, status);
    // Its exit status is 0 even when it could not write.
    if (!existsSync(made))
      throw new Refusal(
        `${failed}${said === '' ? '' : `: ${said.trim().split('\n').at(-1)}`}. ${instead}`,
        status,
      );
    return readFileSync(made);
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** What the program said; null when there is no such program. */
function ran(
  program: string,
  argv: readonly string[],
  instead: string,
  status: 2 | 3,
): Promise<string | null> {
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
      fail(new Refusal(`LibreOffice took longer than ${PATIENCE / 1000} s. ${instead}`, status));
    }, PATIENCE);
    child.on('error', (error) => {
      clearTimeout(clock);
      if ('code' in error && error.code === 'ENOENT') done(null);
      else fail(new Refusal(`LibreOffice could not be started: ${error.message}.`, status));
    });
    child.on('close', () => {
      clearTimeout(clock);
      done(said);
    });
  });
}
