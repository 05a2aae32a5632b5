/**
 * Names the folder of the one build that the tests of a run share, and clears it away. The first test that calls the
 * tool builds it (`tool.ts`): a test never meets an old dist/, dist/ is left alone, and a run of tests that call nothing
 * builds nothing.
 */
import { rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Folder for the built tool. */
    built: string;
  }
}

export default function setup(project: TestProject): () => Promise<void> {
  const cache = fileURLToPath(new URL('../../node_modules/.cache/coilfeed', import.meta.url));
  const folder = `${cache}/tool-${process.pid}`;
  project.provide('built', folder);
  return () => rm(folder, { recursive: true, force: true });
}
