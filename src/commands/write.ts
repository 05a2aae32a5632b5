/**
 * Writing results: all files of a call or none of them, and nobody's work is lost. Whatever goes wrong becomes a
 * `Refusal`.
 */
import { createHash, randomBytes } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fchmodSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { explain, nameOf, Refusal } from './files.ts';
import { sealed, stateOf } from './seal/seal.ts';

/** A file of ours is never as large as this [byte]; it need not be read to know that it is not ours. */
const LARGEST_OURS = 64 * 1024 * 1024;

/** As many links in a row as Linux itself follows. */
const MOST_LINKS = 40;

export interface Output {
  readonly path: string;
  readonly bytes: Uint8Array | string;
}

export interface WriteOptions {
  /** Replace files that are there already. */
  readonly force: boolean;
  /** Files that were read, `-` for standard input; they are never replaced, not even by force. */
  readonly inputs?: readonly string[];
  /** A folder to make, with those it lies in, where there is none. */
  readonly folder?: string;
}

/** A file on its way: the path behind links, what is there, the bytes to put there. */
interface Pending {
  readonly name: string;
  readonly target: string;
  readonly there: Stats | undefined;
  readonly bytes: Uint8Array;
}

/**
 * Writes the files, or none of them: each into a temporary file beside it, and when all are there each takes its name.
 * A file that is there is replaced where coilfeed made it and nobody edited it since. A link is followed and stays a
 * link. Throws a `Refusal`; what was there is then as it was, and the message says so where it is not.
 */
export async function writeFiles(outputs: readonly Output[], options: WriteOptions): Promise<void> {
  const made = options.folder === undefined ? null : makeFolder(options.folder);
  const temporaries: string[] = [];
  try {
    const pending = await allChecked(outputs, options);
    for (const folder of new Set(pending.map(({ target }) => dirname(target)))) sweep(folder);
    for (const file of pending) temporaries.push(written(file));
    takeNames(pending, temporaries);
  } catch (error) {
    for (const temporary of temporaries) rmSync(temporary, { force: true });
    if (made !== null) unmake(made);
    throw error;
  }
}

/** What stands in the way of several files is said at once. */
async function allChecked(outputs: readonly Output[], options: WriteOptions): Promise<Pending[]> {
  const pending: Pending[] = [];
  const refused: Refusal[] = [];
  for (const output of outputs)
    try {
      pending.push(await checked(output, options));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refused.push(error);
    }
  const [first] = refused;
  if (first !== undefined)
    throw new Refusal(
      refused.length === 1
        ? first.message
        : `Nothing was written.\n${refused.map(({ message }) => `  ${message}`).join('\n')}`,
      first.status,
    );
  return pending;
}

async function checked({ path, bytes }: Output, options: WriteOptions): Promise<Pending> {
  const name = nameOf(path);
  try {
    const target = behindLinks(path);
    const there = statSync(target, { throwIfNoEntry: false });
    const fresh = await sealed(path, typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes);
    if (there) await mayReplace(path, target, there, fresh, options);
    else if (!existsSync(dirname(target)))
      throw new Refusal(`The folder ${nameOf(dirname(path))} does not exist; make it first.`);
    return { name, target, there, bytes: fresh };
  } catch (error) {
    throw explain(error, name);
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

/** Throws unless the file that is there may be replaced by these bytes. */
async function mayReplace(
  path: string,
  target: string,
  there: Stats,
  fresh: Uint8Array,
  { force, inputs = [] }: WriteOptions,
): Promise<void> {
  const name = nameOf(path);
  if (there.isDirectory()) throw new Refusal(`${name} is a folder; name a file.`);
  // A device or a pipe would be replaced by a plain file, with root's rights even /dev/null.
  if (!there.isFile()) throw new Refusal(`${name} is not a plain file; name another one.`);
  for (const input of inputs) {
    if (input === '-') continue;
    const read = statSync(input, { throwIfNoEntry: false });
    if (read?.dev === there.dev && read.ino === there.ino)
      throw new Refusal(`${name} is the file that was read; name another one to write to.`);
  }
  if (force) return;
  const old = there.size > LARGEST_OURS ? new Uint8Array() : readFileSync(target);
  const state = await stateOf(path, old);
  if (state === 'as made') return;
  if (state === 'unsealed') throw new Refusal(`${name} exists already; choose another name or add --force.`);
  if (state === 'foreign')
    throw new Refusal(
      `${name} exists and was not made by coilfeed, or another program has saved it since; choose another name, or add --force to replace it.`,
    );
  const { editsOf } = await import('./seal/edits.ts');
  const edits = await editsOf(path, old, fresh);
  const what = edits.length === 0 ? '' : `: ${edits.join('; ')}`;
  throw new Refusal(
    `${name} has been edited or saved by another program since coilfeed made it${what}. Choose another name, or add --force to replace it.`,
  );
}

/**
 * Makes a folder where there is none; gives the topmost one that was made, or null. One after the other: the system’s
 * own way of making them all does not come back where it may not make any, as under /proc.
 */
function makeFolder(path: string): string | null {
  const missing: string[] = [];
  const whole = resolve(path);
  try {
    for (let at = whole; ; at = dirname(at)) {
      const there = lstatSync(at, { throwIfNoEntry: false });
      const real = there?.isSymbolicLink() ? statSync(at, { throwIfNoEntry: false }) : there;
      // As it was called, where it is the folder itself.
      const name = nameOf(at === whole ? path : at);
      if (there !== undefined && real === undefined)
        throw new Refusal(`${name} is a link to something that does not exist; name another folder.`);
      if (real?.isDirectory() === false) throw new Refusal(`${name} is not a folder; name another one.`);
      if (real !== undefined) break;
      missing.push(at);
    }
    for (const at of missing.toReversed()) mkdirSync(at);
    return missing.at(-1) ?? null;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT')
      throw new Refusal(`${nameOf(path)}: the system makes no folder there; name another one.`);
    throw explain(error, nameOf(path));
  }
}

/**
 * Makes sure, before anything is worked out, that files of these names can be written into a folder: throws a `Refusal`
 * where it is none and cannot be made, or where one of the names is a link to nothing. Gives what takes it back.
 */
export function reserveFolder(folder: string, names: readonly string[]): () => void {
  const made = makeFolder(folder);
  const undo = (): void => {
    if (made !== null) unmake(made);
  };
  try {
    const probe = join(folder, temporaryName());
    try {
      closeSync(openSync(probe, 'wx'));
      rmSync(probe, { force: true });
    } catch (error) {
      if (error instanceof Error && 'code' in error && error.code === 'ENOENT')
        throw new Refusal(`${nameOf(folder)}: the system makes no file there; name another folder.`);
      throw explain(error, nameOf(folder));
    }
    const lost = names.filter((name) => {
      const path = join(folder, name);
      return (
        lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true &&
        statSync(path, { throwIfNoEntry: false }) === undefined
      );
    });
    if (lost.length > 0)
      throw new Refusal(
        `${lost.map((name) => nameOf(join(folder, name))).join(', ')}: a link to something that does not exist; remove it or name another folder.`,
      );
    return undo;
  } catch (error) {
    undo();
    throw error;
  }
}

/** Removes a folder that was made for nothing, with the empty ones inside. */
function unmake(folder: string): void {
  try {
    for (const name of readdirSync(folder)) unmake(join(folder, name));
    rmdirSync(folder);
  } catch {
    // Somebody else put something there: it stays.
  }
}

/** Temporary files name the machine and the process, so that those of a dead one can be known. */
const MACHINE = createHash('sha256').update(hostname()).digest('hex').slice(0, 8);
const temporaryName = (): string =>
  `.coilfeed-${MACHINE}-${process.pid}-${randomBytes(6).toString('hex')}.tmp`;
const TEMPORARY = new RegExp(`^\\.coilfeed-${MACHINE}-(\\d{1,10})-[0-9a-f]{12}\\.tmp$`);

/** Removes what runs that were killed left in a folder. */
function sweep(folder: string): void {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch {
    // Whether it can be written to is told by writing.
    return;
  }
  for (const name of names) {
    const process = TEMPORARY.exec(name)?.[1];
    if (process === undefined || isAlive(Number(process))) continue;
    try {
      rmSync(join(folder, name), { force: true });
    } catch {
      // Not ours to remove.
    }
  }
}

function isAlive(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return !(error instanceof Error && 'code' in error && error.code === 'ESRCH');
  }
}

/** Writes a temporary file beside the target, and gives its path. */
function written({ name, target, there, bytes }: Pending): string {
  const temporary = join(dirname(target), temporaryName());
  let file: number | null = null;
  try {
    file = openSync(temporary, 'wx');
    if (there) fchmodSync(file, there.mode & 0o777);
    writeFileSync(file, bytes);
    // Without this a power cut just after the renaming could leave an empty file under the name.
    fsyncSync(file);
    closeSync(file);
    return temporary;
  } catch (error) {
    if (file !== null) closeSync(file);
    rmSync(temporary, { force: true });
    throw explain(error, name);
  }
}

/** Gives each temporary file its name. Nothing else can fail by now but that the system will not do it. */
function takeNames(pending: readonly Pending[], temporaries: readonly string[]): void {
  for (const [i, { name, target }] of pending.entries())
    try {
      renameSync(temporaries[i] as string, target);
    } catch (error) {
      const { message, status } = explain(error, name);
      const done = pending.slice(0, i).map((file) => file.name);
      throw new Refusal(
        done.length === 0 ? message : `${message} Written before that: ${done.join(', ')}.`,
        status,
      );
    }
}
