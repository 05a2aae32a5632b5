/** Reads the file of a recording: larger than a design, and in whatever encoding an instrument writes. */
import { isAscii } from 'node:buffer';
import { open } from 'node:fs/promises';
import { explain, nameOf, Refusal } from './files.ts';

/** A million samples and more; beyond that a person has recorded far more charges than can be judged. */
export const MOST_RECORDED = 32 * 1024 * 1024;

/** Read at a time [byte]: large enough that what becomes of it is not moved about in memory. */
const PIECE = 512 * 1024;

/**
 * Text of the file in pieces, to be gone through as often as one likes; `-` is standard input. Throws a `Refusal` when
 * there is none or it is too long.
 */
export async function readRecordingFile(path: string): Promise<Iterable<string>> {
  const name = nameOf(path);
  const parts = await (path === '-' ? upTo(process.stdin) : upToOf(path)).catch((error) => {
    throw explain(error, name);
  });
  if (parts.reduce((sum, { length }) => sum + length, 0) > MOST_RECORDED)
    throw new Refusal(`${name} is larger than 32 MiB; cut it down to a few charges of one coil.`);
  const encoding = encodingOf(parts);
  return { [Symbol.iterator]: () => decoded(parts, encoding) };
}

async function upTo(stream: AsyncIterable<Buffer>): Promise<Buffer[]> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of stream) {
    parts.push(part);
    length += part.length;
    if (length > MOST_RECORDED) break;
  }
  return parts;
}

async function upToOf(path: string): Promise<Buffer[]> {
  const file = await open(path);
  try {
    return await upTo(file.createReadStream({ autoClose: false, highWaterMark: PIECE }));
  } finally {
    await file.close();
  }
}

type Encoding = 'latin1' | 'utf-8' | 'utf-16le' | 'utf-16be';

/** UTF-16 by its mark, or by the empty halves of its first letters; UTF-8 where it is that, else one byte a letter: then only a µ in the heading is at stake. */
function encodingOf(parts: readonly Buffer[]): Encoding {
  if (parts.every(isAscii)) return 'latin1';
  const [first, second] = Buffer.concat(parts.slice(0, 2).map((part) => part.subarray(0, 2)));
  if ((first === 0xff && second === 0xfe) || second === 0) return 'utf-16le';
  if ((first === 0xfe && second === 0xff) || first === 0) return 'utf-16be';
  try {
    for (const _ of decoded(parts, 'utf-8'));
    return 'utf-8';
  } catch {
    return 'latin1';
  }
}

function* decoded(parts: readonly Buffer[], encoding: Encoding): Generator<string> {
  if (encoding === 'latin1') {
    for (const part of parts) yield part.toString('latin1');
    return;
  }
  const decoder = new TextDecoder(encoding, { fatal: encoding === 'utf-8' });
  for (const part of parts) yield decoder.decode(part, { stream: true });
  yield decoder.decode();
}
