/** Gnumeric as an outside judge of workbooks, by its converter: it computes every formula afresh. */
import { existsSync, mkdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { runProgram } from '../cli/tool.ts';
import { needPeer } from './peer.ts';

/** Opens each file, computes it afresh and saves it into `outDir`; returns the new paths in the same order. */
export async function recalculateInGnumeric(files: readonly string[], outDir: string): Promise<string[]> {
  mkdirSync(outDir, { recursive: true });
  const made: string[] = [];
  for (const file of files) {
    const out = join(outDir, basename(file));
    const { err } = await runProgram(needPeer('ssconvert'), ['--recalc', file, out]);
    if (!existsSync(out)) throw new Error(`Gnumeric did not make ${out}: ${err}`);
    made.push(out);
  }
  return made;
}
