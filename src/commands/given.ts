/** The design that a command is given, in a design file or in a workbook; or every problem with it, said. */
import { dirname, isAbsolute, join } from 'node:path';
import { UNITS } from '../basis/shown.ts';
import type { Design } from '../design/design.ts';
import { keyText } from '../design/problems.ts';
import { readDesign, shopNamed } from '../design/read.ts';
import type { ShopText } from '../design/shop/beside.ts';
import { readTree } from '../design/tree.ts';
import { unknownIn } from '../design/unknown.ts';
import { hasOwn, type OwnFound } from '../own/found.ts';
import type { CardCell, Changed } from '../saved/read.ts';
import { isArchive, Refusal, readInput, refused, shown, textOf } from './files.ts';

export interface Given {
  readonly design: Design;
  /** The text of a design file as it was read: the shop's file is none of it. */
  readonly written?: string;
  /** The shop's file beside it. */
  readonly shop?: ShopText | undefined;
  /** What a person changed in a workbook since it was made; null for a design file. */
  readonly changed: readonly Changed[] | null;
  /** What stands on the test card of a workbook; null where there is none. */
  readonly card: readonly CardCell[] | null;
  /** Folder of the shop's file, or of the file that holds what a shop's file says. */
  readonly beside: string;
  /** Values and rules of the author, evaluated. */
  readonly own: readonly OwnFound[];
}

interface Asked {
  readonly unknowns?: boolean;
  readonly set?: readonly string[];
  readonly shop?: string | undefined;
}

/** The design with the units that the call asks for, in place of its own. Throws a `Refusal` on other words. */
export function inUnits(design: Design, asked: string | undefined): Design {
  if (asked === undefined) return design;
  const units = UNITS.find((one) => one === asked);
  if (units === undefined) throw new Refusal(`--units takes ${UNITS.join(', ')}, not "${asked}".`);
  return { ...design, units };
}

/** The one file that a command takes. Throws a `Refusal` when none or several are named. */
export function oneDesign(positionals: readonly string[], command: string): string {
  const [file] = positionals;
  if (file === undefined || positionals.length > 1)
    throw new Refusal(`"${command}" takes one design. See "coilfeed help ${command}".`);
  return file;
}

/**
 * Reads a design from a file of YAML or JSON, or from a workbook that was made from one; `-` is standard input. What
 * was changed in a workbook is said on standard error. Null when the file cannot be used: every problem then stands
 * on standard error, and the command ends with status 2. `set` are values that take the place of its own, each
 * `PATH=VALUE`, `shop` a shop's file in the place of the one that it names. Throws a `Refusal` when there is no such file,
 * and unless `unknowns` are taken when parts of it are not known.
 */
export async function readGiven(
  file: string,
  { unknowns = false, set = [], shop }: Asked = {},
): Promise<Given | null> {
  const read = await readAny(file, shop);
  const changed = read === null ? null : await changedBy(read, set);
  const given = changed && { ...changed, design: await chosen(changed.design) };
  const open = given && unknownIn(given.design);
  if (!unknowns && open !== null)
    throw new Refusal(`${open} "coilfeed check" judges such an install as far as possible.`);
  return given === null || !hasOwn(given.design) ? given : withOwnOf(given, file);
}

/** With what the shop's file decides. Loaded only where there is one: nothing else here needs the model. */
async function chosen(design: Design): Promise<Design> {
  if (design.shop === null) return design;
  const [{ fromShelf }, { run }] = await Promise.all([import('../shop/choose.ts'), import('../run.ts')]);
  return fromShelf(design, run);
}

/** With what the author added, evaluated; null when some of it cannot be taken. */
async function withOwnOf(given: Given, file: string): Promise<Given | null> {
  const [{ ownOf }, { evaluate }] = await Promise.all([
    import('../own/evaluate.ts'),
    import('../engine/evaluate.ts'),
  ]);
  const { design, changed } = given;
  const { found, wrong } = ownOf(evaluate(design));
  if (wrong.length === 0) return { ...given, own: found };
  const tree = readTree(given.written ?? design.text.toString(), '');
  const name = file === '-' ? 'stdin' : shown(file);
  return refused(
    wrong.map(({ key, cell, found, taken }) => ({
      file: name,
      ...tree.place(key),
      ...(changed === null ? {} : { cell }),
      key: keyText(key),
      found,
      taken,
    })),
  );
}

/** The design with the values that the call sets; null when one of them cannot be used. */
async function changedBy(given: Given, set: readonly string[]): Promise<Given | null> {
  if (set.length === 0) return given;
  const { settingOf, withSettings } = await import('../saved/set.ts');
  const settings = set.map((text) => {
    const setting = settingOf(text);
    if (setting === null)
      throw new Refusal(`--set takes PATH=VALUE, such as feed.main.length=4m, not "${shown(text)}".`);
    return setting;
  });
  const read = withSettings(given.design, settings);
  return read.ok ? { ...given, design: read.design } : refused(read.problems);
}

async function readAny(file: string, shop: string | undefined): Promise<Given | null> {
  const bytes = await readInput(file);
  const name = file === '-' ? 'stdin' : shown(file);
  if (!isArchive(bytes)) {
    const text = textOf(bytes, file);
    const found = await shopFor(text, file, shop);
    const read = readDesign(text, name, found);
    const beside = dirname(found?.file ?? file);
    return read.ok
      ? { design: read.design, written: text, shop: found, changed: null, card: null, beside, own: [] }
      : refused(read.problems);
  }
  if (shop !== undefined)
    throw new Refusal(
      `A workbook holds the parts that it was made with, so --shop does not go with ${shown(name)}: "coilfeed design" writes it as a design.`,
    );
  // Loaded here because a design file does not need it.
  const [{ readSaved }, { isOurOds }] = await Promise.all([
    import('../saved/read.ts'),
    import('../saved/ours.ts'),
  ]);
  const read = await readSaved(
    isOurOds(bytes) ? await (await import('./ods.ts')).fromOds(bytes) : bytes,
    name,
  );
  if (!read.ok) return refused(read.problems);
  process.stderr.write(changes(name, read.changed));
  if (read.behind.length > 0)
    process.stderr.write(
      `${name}: ${read.behind.join(', ')}: a workbook that is written from this file does not hold them; keep the file.\n`,
    );
  if (read.differs)
    process.stderr.write(
      `${name}: the program that saved it computes differently: do not use what it shows. Here all is computed afresh.\n`,
    );
  return { design: read.design, changed: read.changed, card: read.card, beside: dirname(file), own: [] };
}

/** The shop's file that the call gives, or that the text of a design names beside it; nothing where there is none. */
async function shopFor(text: string, file: string, given: string | undefined): Promise<ShopText | undefined> {
  const named = given === undefined ? shopNamed(text) : null;
  if (given === undefined && named === null) return undefined;
  const beside = file === '-' ? '.' : dirname(file);
  const path = given ?? (isAbsolute(named as string) ? (named as string) : join(beside, named as string));
  return { text: textOf(await readInput(path), path), file: shown(path), ...(named && { as: named }) };
}

/** What was changed since a workbook was made, a line each. */
function changes(name: string, changed: readonly Changed[]): string {
  if (changed.length === 0) return `${name}: no input was changed since it was made\n`;
  const lines = changed.map(
    ({ cell, key, of, was, now }) => `  ${cell} ${key}${of === '' ? '' : ` (${of})`}: ${was} → ${now}\n`,
  );
  const count = changed.length === 1 ? 'one input was' : `${changed.length} inputs were`;
  return `${name}: ${count} changed since it was made\n${lines.join('')}`;
}
