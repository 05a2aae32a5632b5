/** `coilfeed spread DESIGN`: many installs of one design, with every part off by what its tolerance allows. */
import { join } from 'node:path';
import { run as pipeline } from '../run.ts';
import { type Block, Gathering, MOST_SAMPLES, type Spread, USUAL_SAMPLES } from '../spread/spread.ts';
import { installsCsv, spreadJson } from '../writers/spread-json.ts';
import { spreadReport } from '../writers/spread-report.ts';
import { argsOf } from './args.ts';
import { shown as printable, Refusal } from './files.ts';
import { inUnits, oneDesign, readGiven } from './given.ts';
import { SPREAD_BLOCK } from './jobs.ts';
import { inBlocks, threadsOf } from './threads.ts';
import { type Output, writeFiles } from './write.ts';

/** Installs that a table holds: of more no person reads one, and no spreadsheet program opens it in good time. */
const MOST_ROWS = 100_000;

/** Returns the exit status: 0 every install passes, 1 some do not, 2 the design or the call cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const { positionals, values } = argsOf(argv, {
    one: ['shop', 'samples', 'seed', 'out', 'plots', 'units', 'threads'],
    many: ['set'],
    flags: ['json', 'force'],
  });
  const file = oneDesign(positionals, 'spread');
  const { out, plots, set = [], json = false, force = false } = values;
  const samples = numberOf('--samples', values.samples, [1, MOST_SAMPLES]) ?? USUAL_SAMPLES;
  const seed = numberOf('--seed', values.seed, [0, 2 ** 32 - 1]) ?? 1;
  const threads = threadsOf(values.threads);
  if (out !== undefined && !/\.csv$/i.test(out))
    throw new Refusal(`Installs are written as a table, not as "${out}": the name must end in .csv.`);
  if (out !== undefined && samples > MOST_ROWS)
    throw new Refusal(
      `A table holds ${MOST_ROWS} installs at most; take fewer --samples, or leave --out away.`,
    );
  const given = await readGiven(file, { set, shop: values.shop });
  if (given === null) return 2;
  const design = inUnits(given.design, values.units);
  let made: Gathering | null = null;
  const gathered = (): Gathering => {
    made ??= new Gathering(design, pipeline(design).verdict, seed, samples);
    return made;
  };
  const kept: Block[] = [];
  const done = inBlocks({
    what: 'Drawing installs',
    job: { kind: 'spread', text: design.text.toString(), seed, samples },
    blocks: Math.ceil(samples / SPREAD_BLOCK),
    threads,
    take: (block) => {
      gathered().take(block);
      if (out !== undefined) kept.push(block);
    },
  });
  // Made while the other threads start.
  const gathering = gathered();
  await done;
  const spread = gathering.spread();
  if (spread.samples < samples) process.stderr.write(`Stopped: ${spread.samples} of ${samples} installs.\n`);
  const files: Output[] =
    out === undefined
      ? []
      : [
          {
            path: out,
            bytes: installsCsv(
              gathering.figures,
              kept,
              design.coils.map(({ id }) => id),
            ),
          },
        ];
  const drawn = plots === undefined ? [] : await pictures(spread, plots);
  await writeFiles([...files, ...drawn], {
    force,
    inputs: [file],
    ...(plots === undefined ? {} : { folder: plots }),
  });
  process.stdout.write(json ? `${JSON.stringify(spreadJson(spread), null, 2)}\n` : spreadReport(spread));
  const told = [...files, ...drawn].map(({ path }) => `Wrote ${printable(path)}\n`);
  if (told.length > 0) (json ? process.stderr : process.stdout).write(`\n${told.join('')}`);
  return spread.passing === 1 ? 0 : 1;
}

function numberOf(
  option: string,
  text: string | undefined,
  [from, to]: readonly [number, number],
): number | null {
  if (text === undefined) return null;
  const value = /^\d{1,10}$/.test(text) ? Number(text) : Number.NaN;
  if (value >= from && value <= to) return value;
  throw new Refusal(`${option} takes a whole number from ${from} to ${to}, not "${text}".`);
}

async function pictures(spread: Spread, folder: string): Promise<Output[]> {
  const [{ sharesPicture }, { drawn }] = await Promise.all([
    import('../pictures/spread.ts'),
    import('./pictures.ts'),
  ]);
  const picture = sharesPicture(spread);
  const files = await drawn(picture, ['svg', 'png']);
  return files.map(({ ending, bytes }) => ({ path: join(folder, `${picture.name}.${ending}`), bytes }));
}
