/** Reads the file of a recording: larger than a design, and in whatever encoding an instrument writes. */
import { isAscii } from 'node:buffer';
import { open } from 'node:fs/promises';
import { explain, nameOf, Refusal } from './files.ts';

/** A million samples and more; beyond that a person has recorded far more charges than can be judged. */
export const MOST_RECORDED = 32 * 1024 * 1024;

/** Text of the file; `-` is standard input. Throws a `Refusal` when there is none or it is too long. */
export async function readRecordingFile(path: string): Promise<string> {
  const name = nameOf(path);
  const bytes = await (path === '-' ? upTo(process.stdin) : upToOf(path)).catch((error) => {
    throw explain(error, name);
  });
  if (bytes.length > MOST_RECORDED)
    throw new Refusal(`${name} is longer than 32 MiB; cut it to a few charges of one coil.`);
  return decoded(bytes);
}

async function upTo(stream: AsyncIterable<Buffer>): Promise<Buffer> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of stream) {
    parts.push(part);
    length += part.length;
    if (length > MOST_RECORDED) break;
  }
  return Buffer.concat(parts);
}

async function upToOf(path: string): Promise<Buffer> {
  const file = await open(path);
  try {
    return await upTo(file.createReadStream({ autoClose: false }));
  } finally {
    await file.close();
  }
}

/** UTF-16 by its mark, UTF-8 where it is that, else one byte a letter: then only a µ in the heading is at stake. */
function decoded(bytes: Buffer): string {
  // A byte a letter in memory, too.
  if (isAscii(bytes)) return bytes.toString('latin1');
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return bytes.toString('latin1');
  }
}
