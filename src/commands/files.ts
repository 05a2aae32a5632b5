/** Reading a design. Whatever goes wrong with a file becomes a sentence for a person, a `Refusal`. */
import { open } from 'node:fs/promises';
import { type Problem, printProblem } from '../design/problems.ts';

/** Why a command stops: the message is a sentence for a person, the status is the one to exit with. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  /** 2: the design or the call cannot be used. 3: the machine would not do it. */
  readonly status: 2 | 3;

  constructor(message: string, status: 2 | 3 = 2) {
    super(message);
    this.status = status;
  }
}

/** A design is a page or two of text; a mebibyte is far beyond any that a person would write. */
export const MOST_BYTES = 1024 * 1024;

/** A name as it is printed: signs that would steer a terminal or turn the direction of writing are written out. */
export const shown = (name: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  name.replace(/[\0-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g, (sign) => {
    const code = sign.charCodeAt(0).toString(16);
    return code.length > 2 ? `\\u${code}` : `\\x${code.padStart(2, '0')}`;
  });

/** Says every problem on standard error. */
export function refused(problems: readonly Problem[]): null {
  for (const problem of problems) process.stderr.write(`${printProblem(problem)}\n`);
  return null;
}

/** What the system's error codes mean; `name` is the path in quotes, or "standard input". */
const MEANINGS: Readonly<Record<string, (name: string) => Refusal>> = {
  ENOENT: (name) => new Refusal(`${name} does not exist; check the name and the folder.`),
  ENOTDIR: (name) => new Refusal(`${name}: a part of this path is a file, not a folder.`),
  EISDIR: (name) => new Refusal(`${name} is a folder; name a file.`),
  EACCES: (name) => new Refusal(`${name}: permission denied; check who may read and write there.`),
  EPERM: (name) => new Refusal(`${name}: the system does not allow that.`),
  EROFS: (name) => new Refusal(`${name} is on a read-only disk; choose another folder.`),
  ENAMETOOLONG: (name) => new Refusal(`${name}: this name is too long.`),
  ELOOP: (name) => new Refusal(`${name} is a link that leads back to itself.`),
  ENXIO: (name) => new Refusal(`${name} is not a file that can be opened.`),
  ENOSPC: (name) => new Refusal(`${name}: the disk is full; nothing was written.`, 3),
  EDQUOT: (name) => new Refusal(`${name}: your share of the disk is used up; nothing was written.`, 3),
  EFBIG: (name) => new Refusal(`${name}: the system allows no file of that size; nothing was written.`, 3),
};

/** Turns what the file system threw into a sentence. */
export function explain(error: unknown, name: string): Refusal {
  if (error instanceof Refusal) return error;
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return MEANINGS[code]?.(name) ?? new Refusal(`${name}: the system reports ${code || String(error)}.`, 3);
}

/** A workbook of ours has some hundred kilobytes, also after another program saved it [byte]. */
const MOST_WORKBOOK = 16 * 1024 * 1024;

/** Whether bytes begin as a zip archive, which a workbook is. */
export const isArchive = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

/** How a file begins that is an old or an encrypted document of an office program. */
const isCompound = (bytes: Uint8Array): boolean =>
  [0xd0, 0xcf, 0x11, 0xe0].every((byte, i) => bytes[i] === byte);

/**
 * Reads the file of a design, text or workbook; `-` is standard input. Throws a `Refusal` when there is none, it is
 * a folder, or longer than any design.
 */
export async function readInput(path: string): Promise<Uint8Array> {
  const name = nameOf(path);
  const bytes = await (path === '-' ? firstBytes(process.stdin) : firstBytesOf(path)).catch((error) => {
    throw explain(error, name);
  });
  if (isCompound(bytes))
    throw new Refusal(`${name} is encrypted or in an old format; save it as .xlsx without a password.`);
  if (bytes.length > mostOf(bytes))
    throw new Refusal(
      isArchive(bytes)
        ? `${name} is larger than 16 MiB: not a workbook that coilfeed made.`
        : `${name} is larger than 1 MiB: not a design.`,
    );
  return bytes;
}

/** A path in quotes, or "Standard input". */
export const nameOf = (path: string): string => (path === '-' ? 'Standard input' : `"${shown(path)}"`);

/** The text of a design. A byte order mark is dropped. Throws a `Refusal` when it is not UTF-8. */
export function textOf(bytes: Uint8Array, path: string): string {
  const bad = firstNotUtf8(bytes);
  if (bad !== null) {
    const line = bytes.subarray(0, bad).filter((byte) => byte === 0x0a).length + 1;
    throw new Refusal(`${nameOf(path)} is not UTF-8 text: line ${line}, byte ${bad + 1}; save it as UTF-8.`);
  }
  return new TextDecoder().decode(bytes);
}

const mostOf = (begin: Uint8Array): number => (isArchive(begin) ? MOST_WORKBOOK : MOST_BYTES);

/** Up to one byte more than is allowed, so that the caller sees that there is more. */
async function firstBytes(stream: AsyncIterable<Buffer>): Promise<Uint8Array> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of stream) {
    parts.push(part);
    length += part.length;
    if (length > mostOf(parts[0] as Buffer)) break;
  }
  return Buffer.concat(parts);
}

async function firstBytesOf(path: string): Promise<Uint8Array> {
  const file = await open(path);
  try {
    return await firstBytes(file.createReadStream({ autoClose: false }));
  } finally {
    await file.close();
  }
}

/** Place of the first byte that is not UTF-8, or null: the longest beginning that can be decoded. */
function firstNotUtf8(bytes: Uint8Array): number | null {
  const decodes = (length: number, whole: boolean): boolean => {
    try {
      new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, length), { stream: !whole });
      return true;
    } catch {
      return false;
    }
  };
  if (decodes(bytes.length, true)) return null;
  let good = 0;
  let bad = bytes.length + 1;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (middle <= bytes.length && decodes(middle, false)) good = middle;
    else bad = middle;
  }
  // A character that is cut off by the end of the file is found at its end.
  return Math.min(bad, bytes.length) - 1;
}
