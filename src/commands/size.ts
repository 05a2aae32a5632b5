/** `coilfeed size DESIGN`: reads a design, sizes the feed, reports, and writes the live workbook and pictures. */
import { parseArgs } from 'node:util';
import type { Design } from '../design/design.ts';
import type { Result } from '../findings/result.ts';
import { alternativesOf } from '../remedies/alternatives.ts';
import { remediesOf } from '../remedies/tried.ts';
import { run as pipeline } from '../run.ts';
import { alternativesJson, alternativesText } from '../writers/alternatives.ts';
import { toJson } from '../writers/json.ts';
import { report } from '../writers/report.ts';
import { Refusal, writeSafely } from './files.ts';
import { inUnits, oneDesign, readGiven, UNITS_OPTION } from './given.ts';
import { wrap } from './help.ts';

/** Returns the exit status: 0 nothing fails, 1 something fails or is unknown, 2 the design cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const { positionals, values } = parseArgs({
    args: argv,
    allowPositionals: true,
    options: {
      out: { type: 'string' },
      plots: { type: 'string' },
      units: UNITS_OPTION,
      all: { type: 'boolean' },
      alternatives: { type: 'boolean' },
      json: { type: 'boolean' },
      force: { type: 'boolean' },
    },
  });
  const file = oneDesign(positionals, 'size');
  const { out, plots, units, all = false, alternatives = false, json = false, force = false } = values;
  if (out !== undefined && !/\.(?:xlsx|ods)$/i.test(out))
    throw new Refusal(`The workbook "${out}" would not open: its name must end in .xlsx or .ods.`);
  const given = await readGiven(file);
  if (given === null) return 2;
  const { changed } = given;
  const design = inUnits(given.design, units);
  const changes = changed === null ? {} : { changed };

  const result = out === undefined ? pipeline(design) : await writeWorkbook(design, out, force, file);
  const remedies = remediesOf(result, pipeline);
  const ways = alternatives ? alternativesOf(design, pipeline) : null;
  const others = ways === null ? {} : { alternatives: alternativesJson(ways) };
  const drawn = plots === undefined ? null : await writePictures(result, plots, file, force);
  process.stdout.write(
    json
      ? `${JSON.stringify({ ...toJson(result, remedies), ...others, ...changes }, null, 2)}\n`
      : ways === null
        ? report(result, { coloured: wantsColour(process.stdout), all }, remedies)
        : `${wrap(design.title)}\n${alternativesText(ways)}\n`,
  );
  const told = [...(out === undefined ? [] : [`Workbook: ${out}`]), ...(drawn === null ? [] : [drawn])];
  if (told.length > 0) (json ? process.stderr : process.stdout).write(`\n${told.join('\n')}\n`);
  return result.verdict === 'pass' ? 0 : 1;
}

/** `file` was read, and is not written over: it may hold what a person typed. */
async function writeWorkbook(design: Design, out: string, force: boolean, file: string): Promise<Result> {
  const { show, toWorkbook, isOurs } = await import('../writers/workbook/workbook.ts');
  const { runLaid } = await import('../run-laid.ts');
  const result = runLaid(design, show);
  const bytes = toWorkbook(result);
  const inputs = file === '-' ? [] : [file];
  if (/\.ods$/i.test(out)) {
    const [{ toOds }, { isOurOds }] = await Promise.all([import('./ods.ts'), import('../saved/ours.ts')]);
    writeSafely(out, await toOds(bytes), { force, ours: isOurOds, inputs });
  } else writeSafely(out, bytes, { force, ours: isOurs, inputs });
  return result;
}

/** Writes the pictures; returns what to say of them. */
async function writePictures(result: Result, folder: string, file: string, force: boolean): Promise<string> {
  const { writePlots } = await import('./pictures.ts');
  const told = await writePlots(folder, result.evaluation, { force, inputs: file === '-' ? [] : [file] });
  return wrap(told);
}

/** Colours only on a terminal, and not where the reader has said no. */
const wantsColour = (stream: NodeJS.WriteStream): boolean =>
  stream.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb';
