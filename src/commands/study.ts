/** `coilfeed study DESIGN --vary PATH=VALUES`: the design over a grid of values. */
import { evaluate } from '../engine/evaluate.ts';
import { withSettings } from '../saved/set.ts';
import { pointsOf, type Row, type Study, shownOf, usualOf } from '../study/study.ts';
import { MOST_POINTS, readVary, type Vary } from '../study/values.ts';
import { studyCsv, studyJson } from '../writers/study-json.ts';
import { studyReport } from '../writers/study-report.ts';
import { argsOf } from './args.ts';
import { shown as printable, Refusal, refused } from './files.ts';
import { inUnits, oneDesign, readGiven } from './given.ts';
import { STUDY_BLOCK } from './jobs.ts';
import { inBlocks, threadsOf } from './threads.ts';
import { type Output, writeFiles } from './write.ts';

/** Returns the exit status: 0 when there is a table, 2 when the design or the call cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const { positionals, values } = argsOf(argv, {
    one: ['shop', 'units', 'threads'],
    many: ['vary', 'show', 'out', 'set'],
    flags: ['json', 'force'],
  });
  const file = oneDesign(positionals, 'study');
  const { show, out: outs = [], set = [], json = false, force = false } = values;
  const wrong = outs.find((out) => !/\.(csv|svg|png)$/i.test(out));
  if (wrong !== undefined)
    throw new Refusal(
      `A study is written as a table or a picture, not as "${wrong}": the name must end in .csv, .svg or .png.`,
    );
  const threads = threadsOf(values.threads);
  const vary = varyOf(values.vary ?? []);
  const given = await readGiven(file, { set, shop: values.shop });
  if (given === null) return 2;
  const design = inUnits(given.design, values.units);
  // A place that there is not is refused at once; a value that cannot be is told in its row.
  const first = withSettings(
    design,
    vary.map(({ path, values: [value = ''] }) => ({ path, value })),
  );
  if (!first.ok && first.problems.some(({ key }) => key === '')) {
    refused(first.problems);
    return 2;
  }
  const asked = show ?? usualOf(design);
  const shown = shownOf(evaluate(design), asked);
  if (typeof shown === 'string') throw new Refusal(shown);
  const rows: Row[] = [];
  const points = pointsOf(vary);
  await inBlocks({
    what: 'Studying',
    job: { kind: 'study', text: design.text.toString(), units: design.units, vary, asked },
    blocks: Math.ceil(points / STUDY_BLOCK),
    threads,
    take: (block) => rows.push(...block),
  });
  if (rows.length < points) process.stderr.write(`Stopped: ${rows.length} of ${points} points.\n`);
  const study: Study = { design, vary: rows.length < points ? cut(vary, rows) : vary, shown, rows };
  await writeFiles(await outputs(study, outs), { force, inputs: [file] });
  process.stdout.write(json ? `${JSON.stringify(studyJson(study), null, 2)}\n` : studyReport(study));
  if (outs.length > 0)
    (json ? process.stderr : process.stdout).write(
      `\n${outs.map((out) => `Wrote ${printable(out)}`).join('\n')}\n`,
    );
  return 0;
}

/** What the call varies, one place or two. */
function varyOf(texts: readonly string[]): Vary[] {
  if (texts.length < 1 || texts.length > 2)
    throw new Refusal('"study" takes one or two --vary PATH=VALUES. See "coilfeed help study".');
  const vary = texts.map((text) => {
    const read = readVary(text);
    if (typeof read === 'string') throw new Refusal(read);
    return read;
  });
  const points = pointsOf(vary);
  if (points > MOST_POINTS)
    throw new Refusal(`This grid has ${points} points; ${MOST_POINTS} are the most. Take larger steps.`);
  return vary;
}

/** What was done of a study that was stopped: whole rows of the grid. */
function cut([first, ...others]: readonly Vary[], rows: Row[]): Vary[] {
  const each = pointsOf(others);
  const whole = Math.floor(rows.length / each);
  rows.length = whole * each;
  const { path, values, scale } = first as Vary;
  const numbers = scale && { ...scale, numbers: scale.numbers.slice(0, whole) };
  return [{ path, values: values.slice(0, whole), scale: numbers }, ...others];
}

async function outputs(study: Study, outs: readonly string[]): Promise<Output[]> {
  return Promise.all(
    outs.map(async (path): Promise<Output> => {
      if (/\.csv$/i.test(path)) return { path, bytes: studyCsv(study) };
      const [{ studyPicture }, { asFile }] = await Promise.all([
        import('../pictures/study.ts'),
        import('./pictures.ts'),
      ]);
      return asFile(path, studyPicture(study));
    }),
  );
}
