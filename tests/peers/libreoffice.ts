/**
 * LibreOffice as an outside judge of workbooks. It normally believes the results that are stored in a file; a
 * setting of the user's profile makes it compute every formula afresh, and that is what a judge must do.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, extname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { needPeer } from './peer.ts';

/** To start, and for each file, which takes some seconds and many more on a busy machine; beyond that it hangs [ms]. */
const PATIENCE = { start: 120_000, file: 30_000 } as const;

const always = (name: string): string =>
  `<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="${name}" oor:op="fuse">` +
  '<value>0</value></prop></item>';

const SETTINGS = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
${always('OOXMLRecalcMode')}
${always('ODFRecalcMode')}
</oor:items>
`;

/**
 * Opens the files, computes everything afresh, and saves them into `outDir` in another format (`xlsx`, `ods`,
 * `pdf`). Returns the new paths in the same order. One call with many files is much faster than many calls.
 * Throws when a file was not converted.
 */
export async function recalculate(
  files: readonly string[],
  outDir: string,
  format = 'xlsx',
): Promise<string[]> {
  const made = files.map((file) => join(outDir, `${basename(file, extname(file))}.${format}`));
  if (new Set(made).size < made.length) throw new Error('two of the files have the same name');
  mkdirSync(outDir, { recursive: true });
  // A profile of its own for each call: two processes cannot share one, and making it costs next to nothing.
  const profile = mkdtempSync(join(tmpdir(), 'coilfeed-office-'));
  try {
    mkdirSync(join(profile, 'user'));
    writeFileSync(join(profile, 'user', 'registrymodifications.xcu'), SETTINGS);
    for (const file of made) rmSync(file, { force: true });
    const argv = [
      `-env:UserInstallation=${pathToFileURL(profile)}`,
      '--headless',
      '--convert-to',
      format,
      '--outdir',
      resolve(outDir),
      ...files.map((file) => resolve(file)),
    ];
    const said = await office(argv, files.length);
    // Its exit status is 0 even when it could not read a file.
    const missing = made.filter((file) => !existsSync(file));
    if (missing.length > 0) throw new Error(`LibreOffice did not make ${missing.join(', ')}: ${said}`);
    return made;
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Prints the workbook into `outDir`; returns the path of the PDF. */
export async function toPdf(file: string, outDir: string): Promise<string> {
  const [pdf = ''] = await recalculate([file], outDir, 'pdf');
  return pdf;
}

function office(argv: string[], files: number): Promise<string> {
  const patience = PATIENCE.start + files * PATIENCE.file;
  return new Promise((done, fail) => {
    // A group of its own, because soffice is a script that starts others: all of them end together.
    const child = spawn(needPeer('soffice'), argv, { detached: true, stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding('utf8').on('data', (part: string) => {
        said += part;
      });
    const clock = setTimeout(() => {
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
      fail(new Error(`LibreOffice took longer than ${patience / 1000} s: ${said}`));
    }, patience);
    child.on('error', (error) => {
      clearTimeout(clock);
      fail(error);
    });
    child.on('close', () => {
      clearTimeout(clock);
      done(said);
    });
  });
}
