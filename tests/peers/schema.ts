/** The schema check of the Open XML SDK, from a program that comes with an npm package and needs no network. */
import { execFile } from 'node:child_process';
import { resolve } from 'node:path';
import { promisify } from 'node:util';
import { needPeer } from './peer.ts';

/** What the program prints, as far as it is used here. */
interface Verdict {
  ok: boolean;
  errors: { description?: string | null; path?: string | null; xPath?: string | null }[];
}

/** Everything that the schema refuses in a workbook, one line each; empty when the file is good. */
export async function schemaErrors(file: string): Promise<string[]> {
  const { stdout } = await promisify(execFile)(needPeer('ooxml-validator'), [resolve(file)], {
    timeout: 300_000,
    maxBuffer: 64 * 1024 * 1024,
  });
  const { ok, errors }: Verdict = JSON.parse(stdout);
  const lines = errors.map((error) => `${error.path ?? file} ${error.xPath ?? ''}: ${error.description}`);
  if (ok !== (lines.length === 0)) throw new Error(`the validator contradicts itself: ${stdout}`);
  return lines;
}
