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
<item oor:path="/org.openoffice.Setup/Office"><prop oor:name="ooSetupInstCompleted" oor:op="fuse"><value>true</value></prop></item>
</oor:items>
`;

const BASIC = 'xmlns:library="http://openoffice.org/2000/library"';
const xml = (of: string, root: string): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<!DOCTYPE ${of} PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "x.dtd">\n${root}`;

/** Makes a profile of the user: computes everything afresh, and holds this module of Basic, if any, as Standard.Module1. */
export function profileWith(profile: string, basic?: string): void {
  const put = (path: string, text: string): void => writeFileSync(join(profile, 'user', path), text);
  mkdirSync(join(profile, 'user', 'basic', 'Standard'), { recursive: true });
  put('registrymodifications.xcu', SETTINGS);
  if (basic === undefined) return;
  const escaped = basic.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
  put(
    'basic/Standard/Module1.xba',
    xml(
      'script:module',
      `<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Module1" script:language="StarBasic">${escaped}</script:module>`,
    ),
  );
  for (const kind of ['script', 'dialog']) {
    const modules = kind === 'script' ? '<library:element library:name="Module1"/>' : '';
    put(
      `basic/Standard/${kind}.xlb`,
      xml(
        'library:library',
        `<library:library ${BASIC} library:name="Standard" library:readonly="false" library:passwordprotected="false">${modules}</library:library>`,
      ),
    );
    put(
      `basic/${kind}.xlc`,
      xml(
        'library:libraries',
        `<library:libraries ${BASIC} xmlns:xlink="http://www.w3.org/1999/xlink"><library:library library:name="Standard" xlink:href="$(USER)/basic/Standard/${kind}.xlb/" xlink:type="simple" library:link="false"/></library:libraries>`,
      ),
    );
  }
}

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
    profileWith(profile);
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

/** Runs LibreOffice to its end; `files` says how long that may take. Resolves with what it said. */
export function office(argv: string[], files: number): Promise<string> {
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
