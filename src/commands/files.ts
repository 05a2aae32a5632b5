/**
 * Reading a design and writing a result. Whatever goes wrong becomes a sentence for a person, a `Refusal`.
 */
import { randomBytes } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fchmodSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { open } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';

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

/** A file of ours is never as large as this [byte]; it need not be read to know that it is not ours. */
const LARGEST_OURS = 64 * 1024 * 1024;

/** As many links in a row as Linux itself follows. */
const MOST_LINKS = 40;

/** What the system's error codes mean; `name` is the path in quotes, or "standard input". */
const MEANINGS: Readonly<Record<string, (name: string) => Refusal>> = {
  ENOENT: (name) => new Refusal(`${name} does not exist; check the name and the folder.`),
  ENOTDIR: (name) => new Refusal(`${name}: a part of this path is a file, not a folder.`),
  EISDIR: (name) => new Refusal(`${name} is a folder; name a file.`),
  EACCES: (name) => new Refusal(`${name}: permission denied; check who may read and write there.`),
  EPERM: (name) => new Refusal(`${name}: the system does not permit that.`),
  EROFS: (name) => new Refusal(`${name} lies on a read-only disk; choose another folder.`),
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
    throw new Refusal(`${name} is encrypted, or of an old format; save it as .xlsx without a password.`);
  if (bytes.length > mostOf(bytes))
    throw new Refusal(
      isArchive(bytes)
        ? `${name} is longer than 16 MiB; that is no workbook of coilfeed.`
        : `${name} is longer than 1 MiB; that is no design.`,
    );
  return bytes;
}

const nameOf = (path: string): string => (path === '-' ? 'Standard input' : `"${path}"`);

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

export interface WriteOptions {
  /** Replace a file that is there already. */
  readonly force: boolean;
  /** Tells from its bytes whether the file that is there is one of ours, which may be replaced. */
  readonly ours?: (bytes: Uint8Array) => boolean;
  /** Files that were read; they are never replaced, not even by force. */
  readonly inputs?: readonly string[];
}

/**
 * Writes a file as a whole or not at all: into a temporary file beside it, which then takes its name.
 * A link is followed and stays a link. Throws a `Refusal`; the file that was there is then as it was.
 */
export function writeSafely(path: string, bytes: Uint8Array | string, options: WriteOptions): void {
  const name = `"${path}"`;
  try {
    const target = behindLinks(path);
    const there = statSync(target, { throwIfNoEntry: false });
    if (there) mayReplace(target, name, there, options);
    else if (!existsSync(dirname(target)))
      throw new Refusal(`The folder "${dirname(path)}" does not exist; make it first.`);
    replace(target, bytes, there);
  } catch (error) {
    throw explain(error, name);
  }
}

/** Throws the `Refusal` with which `writeSafely` would leave the file that is there alone; several are asked for first. */
export function mayWrite(path: string, options: WriteOptions): void {
  try {
    const target = behindLinks(path);
    const there = statSync(target, { throwIfNoEntry: false });
    if (there) mayReplace(target, `"${path}"`, there, options);
  } catch (error) {
    throw explain(error, `"${path}"`);
  }
}

/** Makes a folder, and those it lies in, where there is none. Throws a `Refusal`. */
export function makeFolder(path: string): void {
  try {
    if (statSync(path, { throwIfNoEntry: false })?.isDirectory() === false)
      throw new Refusal(`"${path}" is not a folder; name another one.`);
    mkdirSync(path, { recursive: true });
  } catch (error) {
    throw explain(error, `"${path}"`);
  }
}

/** The path behind a chain of links; the last one need not exist. */
function behindLinks(path: string): string {
  let target = resolve(path);
  for (let links = 0; links < MOST_LINKS; links++) {
    let next: string;
    try {
      next = readlinkSync(target);
    } catch {
      // Not a link, or nothing there: this is where to write, and writing will tell what is wrong.
      return target;
    }
    target = resolve(realpathSync(dirname(target)), next);
  }
  throw Object.assign(new Error(), { code: 'ELOOP' });
}

/** Throws unless the file that is there may be replaced. */
function mayReplace(target: string, name: string, there: Stats, options: WriteOptions): void {
  if (there.isDirectory()) throw new Refusal(`${name} is a folder; name a file.`);
  // A device or a pipe would be replaced by a plain file, with root's rights even /dev/null.
  if (!there.isFile()) throw new Refusal(`${name} is not a plain file; name another one.`);
  for (const input of options.inputs ?? []) {
    const read = statSync(input, { throwIfNoEntry: false });
    if (read?.dev === there.dev && read.ino === there.ino)
      throw new Refusal(`${name} is the file that was read; name another one to write to.`);
  }
  if (options.force) return;
  if (!options.ours) throw new Refusal(`${name} exists already; choose another name or add --force.`);
  if (there.size > LARGEST_OURS || !options.ours(readFileSync(target)))
    throw new Refusal(
      `${name} exists and was not made by coilfeed; choose another name or add --force to replace it.`,
    );
}

function replace(target: string, bytes: Uint8Array | string, there: Stats | undefined): void {
  const temporary = join(dirname(target), `.coilfeed-${randomBytes(6).toString('hex')}.tmp`);
  let file: number | null = null;
  try {
    file = openSync(temporary, 'wx');
    if (there) fchmodSync(file, there.mode & 0o777);
    writeFileSync(file, bytes);
    // Without this a power cut just after the renaming could leave an empty file under the name.
    fsyncSync(file);
    closeSync(file);
    file = null;
    renameSync(temporary, target);
  } catch (error) {
    if (file !== null) closeSync(file);
    rmSync(temporary, { force: true });
    throw error;
  }
}
