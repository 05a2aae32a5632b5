/** `coilfeed size DESIGN`: reads a design, sizes the feed, reports, and writes the live workbook and pictures. */
import type { Design } from '../design/design.ts';
import type { Result } from '../findings/result.ts';
import { alternativesOf } from '../remedies/alternatives.ts';
import type { Remedy } from '../remedies/remedy.ts';
import { remediesOf } from '../remedies/tried.ts';
import { run as pipeline, withOwn } from '../run.ts';
import { ordersFor } from '../shop/orders.ts';
import { alternativesJson, alternativesText } from '../writers/alternatives.ts';
import { toJson } from '../writers/json.ts';
import { remedyText } from '../writers/remedies.ts';
import { report } from '../writers/report.ts';
import { argsOf } from './args.ts';
import { Refusal, shown } from './files.ts';
import { inUnits, oneDesign, readGiven } from './given.ts';
import { wrap } from './help.ts';
import { working } from './progress.ts';
import { type Output, writeFiles } from './write.ts';

/** Returns the exit status: 0 nothing fails, 1 something fails or is unknown, 2 the design cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const { positionals, values } = argsOf(argv, {
    one: ['shop', 'out', 'plots', 'units'],
    many: ['set'],
    flags: ['all', 'alternatives', 'json', 'workings', 'force'],
  });
  const file = oneDesign(positionals, 'size');
  const { out, plots, units, all = false, alternatives = false, json = false, force = false } = values;
  if (out !== undefined && !/\.(?:xlsx|ods)$/i.test(out))
    throw new Refusal(`The workbook "${out}" would not open: the name must end in .xlsx or .ods.`);
  const given = await readGiven(file, { set: values.set ?? [], shop: values.shop });
  if (given === null) return 2;
  const { changed } = given;
  const design = inUnits(given.design, units);
  const changes = changed === null ? {} : { changed };

  const { result: found, remedies } = await judged(design);
  const result = withOwn(found, given.own);
  const order = await working('Looking at the shelf', () => ordersFor(result, pipeline));
  // Of what passes none were looked for.
  const mends = result.verdict === 'fail' ? remedies.map((one) => remedyText(one, design.units)) : null;
  const files = out === undefined ? [] : await workbook(design, mends, out, values.workings);
  const ways = alternatives
    ? await working('Sizing other feeds', () => alternativesOf(design, pipeline))
    : null;
  const others = ways === null ? {} : { alternatives: alternativesJson(ways) };
  const drawn = plots === undefined ? null : await pictures(result, plots);
  await writeFiles([...files, ...(drawn?.files ?? [])], {
    force,
    inputs: [file],
    ...(plots === undefined ? {} : { folder: plots }),
  });
  process.stdout.write(
    json
      ? `${JSON.stringify({ ...toJson(result, remedies, order), ...others, ...changes }, null, 2)}\n`
      : ways === null
        ? report(result, { coloured: wantsColour(process.stdout), all }, remedies, order)
        : `${wrap(design.title)}\n${alternativesText(ways)}\n`,
  );
  const told = [
    ...(out === undefined ? [] : [`Workbook: ${shown(out)}`]),
    ...(drawn === null ? [] : [wrap(drawn.told)]),
  ];
  if (told.length > 0) (json ? process.stderr : process.stdout).write(`\n${told.join('\n')}\n`);
  return result.verdict === 'pass' ? 0 : 1;
}

async function judged(design: Design): Promise<{ result: Result; remedies: Remedy[] }> {
  const result = await working('Sizing', () => pipeline(design));
  return { result, remedies: await working('Trying remedies', () => remediesOf(result, pipeline)) };
}

async function workbook(
  design: Design,
  remedies: readonly string[] | null,
  path: string,
  workings = false,
): Promise<Output[]> {
  const { showWith, toWorkbook } = await import('../writers/workbook/workbook.ts');
  const { runLaid } = await import('../run-laid.ts');
  return working('Making the workbook', async () => {
    const xlsx = toWorkbook(runLaid(design, showWith(remedies)), [], workings);
    const bytes = /\.ods$/i.test(path) ? await (await import('./ods.ts')).toOds(xlsx) : xlsx;
    return [{ path, bytes }];
  });
}

async function pictures(result: Result, folder: string): Promise<{ files: Output[]; told: string }> {
  const { plotsOf } = await import('./pictures.ts');
  return working('Drawing', () => plotsOf(folder, result.evaluation));
}

/** Colours only on a terminal, and not where the reader has said no. */
const wantsColour = (stream: NodeJS.WriteStream): boolean =>
  stream.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb';
