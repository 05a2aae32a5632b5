/** `coilfeed compare A [B]`: two designs side by side, or one design with its original wiring. */
import type { Design } from '../design/design.ts';
import type { Sheet } from '../engine/cell.ts';
import type { Extra } from '../engine/spreadsheet.ts';
import { type Compared, compare, type Sided } from '../readings/compare.ts';
import { run as pipeline, withOwn } from '../run.ts';
import { compareJson } from '../writers/compare-json.ts';
import { compareReport } from '../writers/compare-report.ts';
import { argsOf } from './args.ts';
import { Refusal, shown } from './files.ts';
import { type Given, inUnits, readGiven } from './given.ts';
import { working } from './progress.ts';
import { type Output, writeFiles } from './write.ts';

interface Call {
  readonly files: readonly string[];
  /** Names to write, each ending in .xlsx, .html, .svg or .png. */
  readonly outs: readonly string[];
  readonly shop: string | undefined;
  readonly units: string | undefined;
  readonly json: boolean;
  readonly force: boolean;
}

type Side = Pick<Given, 'design' | 'own'>;

/** Returns the exit status: 0 when nothing fails with the second feed, 1 when something does, 2 when there is none. */
export async function run(argv: string[]): Promise<number> {
  const call = read(argv);
  const designs = await both(call.files, call.shop);
  if (designs === null) return 2;
  const [first, second] = designs.map(({ design }) => inUnits(design, call.units)) as [Design, Design];
  const own = designs.map((side) => side.own);
  const a: Sided = { name: 'A', title: first.title, result: withOwn(pipeline(first), own[0] ?? []) };
  const { result, books } = await laidOut(a, second, call);
  const b: Sided = { name: 'B', title: second.title, result: withOwn(result, own[1] ?? []) };
  const found = compare(a, b);
  const outputs = [...books, ...(await drawn(found, call))];
  await writeFiles(outputs, { force: call.force, inputs: call.files });
  process.stdout.write(call.json ? `${JSON.stringify(compareJson(found), null, 2)}\n` : compareReport(found));
  if (call.outs.length > 0)
    (call.json ? process.stderr : process.stdout).write(
      `\n${call.outs.map((out) => `Wrote ${shown(out)}`).join('\n')}\n`,
    );
  return b.result.verdict === 'pass' ? 0 : 1;
}

function read(argv: string[]): Call {
  const { positionals: files, values } = argsOf(argv, {
    one: ['shop', 'units'],
    many: ['out'],
    flags: ['json', 'force'],
  });
  if (files.length < 1 || files.length > 2)
    throw new Refusal(
      '"compare" takes two designs, or one design with an original feed. See "coilfeed help compare".',
    );
  if (files.filter((file) => file === '-').length > 1)
    throw new Refusal('Only one of the two designs can be standard input.');
  const { out: outs = [], shop, units, json = false, force = false } = values;
  const wrong = outs.find((out) => !/\.(xlsx|html|svg|png)$/i.test(out));
  if (wrong !== undefined)
    throw new Refusal(
      `A comparison is written as a workbook, a page or a picture, not as "${wrong}": the name must end in .xlsx, .html, .svg or .png.`,
    );
  return { files, outs, shop, units, json, force };
}

/** The two feeds: of a single design the original one first. Null when a file cannot be used. */
async function both(
  [one, other]: readonly string[],
  shop: string | undefined,
): Promise<readonly [Side, Side] | null> {
  const first = await readGiven(one as string, { shop });
  const second = other === undefined ? null : await readGiven(other, { shop });
  if (first === null || (other !== undefined && second === null)) return null;
  if (second !== null) return [first, second];
  const { original } = first.design;
  if (original === null)
    throw new Refusal(
      'This design has no other feed to compare with: name a second design, or add "original:" with the feed and return that it replaces.',
    );
  // The feed that is replaced is not what the author’s rules are for.
  return [{ design: original, own: [] }, first];
}

/** The result of the second feed, and its workbook when one is asked for. */
async function laidOut(
  a: Sided,
  design: Design,
  { outs }: Call,
): Promise<{ result: Sided['result']; books: Output[] }> {
  const books = outs.filter((out) => /\.xlsx$/i.test(out));
  if (books.length === 0) return { result: pipeline(design), books: [] };
  const { show, toWorkbook } = await import('../writers/workbook/workbook.ts');
  const { comparePage } = await import('../writers/workbook/compare-sheet.ts');
  const page = (...[grid, d]: Parameters<Extra>) => comparePage(grid, d, a.result, [a.title, d.title]);
  const extra: Extra = (grid, d) => {
    const { name, cells } = page(grid, d);
    return new Map<string, Sheet>([...show(grid, d), [name, cells]]);
  };
  const { runLaid } = await import('../run-laid.ts');
  return working('Making the workbook', () => {
    const result = runLaid(design, extra);
    const bytes = toWorkbook(result, [page(result.evaluation.grid, design)]);
    return { result, books: books.map((path) => ({ path, bytes })) };
  });
}

/** Draws what is asked for: the picture over speed, and the page with it where both designs have a sweep. */
async function drawn(found: Compared, call: Call): Promise<Output[]> {
  const files = call.outs.filter((out) => !/\.xlsx$/i.test(out));
  if (files.length === 0) return [];
  const { speedLines } = await import('../pictures/speed-lines.ts');
  const { energyPicture, speedPicture } = await import('../pictures/speed.ts');
  const { asFile, drawn: svgOf } = await import('./pictures.ts');
  const [a, b] = found.sides;
  const first = speedLines(a.result.evaluation, a.name, true);
  const second = speedLines(b.result.evaluation, b.name, true);
  const picture =
    first === null || second === null
      ? null
      : speedPicture([first, second], `${a.name}: ${a.title}; ${b.name}: ${b.title}`);
  return Promise.all(
    files.map(async (path): Promise<Output> => {
      if (!/\.html$/i.test(path)) {
        if (picture === null)
          throw new Refusal('A picture over engine speed needs a "sweep:" in both designs.');
        return asFile(path, picture);
      }
      const { comparison } = await import('../kit/comparison.ts');
      const energy = first === null || second === null ? null : energyPicture([first, second]);
      const [svg] = energy === null ? [] : await svgOf(energy, ['svg']);
      const text =
        svg === undefined ? null : new TextDecoder().decode(svg.bytes).replace(/^<\?xml[^>]*>\s*/, '');
      return { path, bytes: comparison(found, text) };
    }),
  );
}
