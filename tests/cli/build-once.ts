/**
 * Builds the command line tool once for a run of the tests, into a folder of its own: a test never meets an old
 * dist/, and dist/ is left alone. When the build fails, the tests that need the tool fail and say why; the others run.
 */
import { execFile } from 'node:child_process';
import { rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The built tool, or what the build printed when it failed. */
    built: { ok: true; folder: string } | { ok: false; why: string };
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const folder = `${root}node_modules/.cache/coilfeed/tool-${process.pid}`;
  try {
    await promisify(execFile)(process.execPath, ['src/build/build.mjs', folder], { cwd: root });
    project.provide('built', { ok: true, folder });
  } catch (error) {
    project.provide('built', { ok: false, why: String(error) });
  }
  return () => rm(folder, { recursive: true, force: true });
}
