/** `coilfeed check DESIGN`: judges an install as found, and the readings that were taken on it. */
import type { Design, Measured } from '../design/design.ts';
import { checked } from '../readings/check.ts';
import { measuredOn } from '../readings/from-card.ts';
import { remediesOf } from '../remedies/tried.ts';
import { run as pipeline, withOwn } from '../run.ts';
import type { CardCell } from '../saved/read.ts';
import { checkJson } from '../writers/check-json.ts';
import { checkReport } from '../writers/check-report.ts';
import { remedyText } from '../writers/remedies.ts';
import { argsOf } from './args.ts';
import { Refusal, shown } from './files.ts';
import { inUnits, oneDesign, readGiven } from './given.ts';
import { working } from './progress.ts';
import { writeFiles } from './write.ts';

/** The readings that a person entered on the test card of a workbook. Throws a `Refusal` for what is no number. */
function fromCard(design: Design, card: readonly CardCell[]): Measured[] {
  const read = measuredOn(design, card);
  if (read.wrong.length === 0) return read.measured;
  throw new Refusal(
    `${read.wrong.map(({ cell, found }) => `${cell} holds ${found}`).join('; ')}. The test card takes numbers of 0 or more, in the unit beside each.`,
  );
}

/** Returns the exit status: 0 nothing fails, 1 something fails or is unknown, 2 the design cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const { positionals, values } = argsOf(argv, {
    one: ['shop', 'out', 'units'],
    many: ['set'],
    flags: ['json', 'workings', 'force'],
  });
  const file = oneDesign(positionals, 'check');
  const { out, units, json = false, force = false } = values;
  if (out !== undefined && !/\.xlsx$/i.test(out))
    throw new Refusal(`The workbook "${out}" would not open: the name must end in .xlsx.`);
  const given = await readGiven(file, { unknowns: true, set: values.set ?? [], shop: values.shop });
  if (given === null) return 2;
  // Loaded only where a workbook is asked for.
  const book = out === undefined ? null : await import('../writers/workbook/workbook.ts');
  const measured = given.card === null ? given.design.measured : fromCard(given.design, given.card);
  const design = inUnits({ ...given.design, measured }, units);
  const found = await working('Judging', () => checked(withOwn(pipeline(design), given.own)));
  // What stands in for a part that nobody knows is no remedy.
  const remedies =
    design.unknowns.length > 0
      ? []
      : await working('Trying remedies', () => remediesOf(found.result, pipeline));
  if (book !== null && out !== undefined) {
    const { runLaid } = await import('../run-laid.ts');
    const tried = design.unknowns.length === 0 && found.result.verdict === 'fail';
    const told = tried ? remedies.map((one) => remedyText(one, design.units)) : null;
    const show = book.showWith(told, book.weighedOf(found));
    const bytes = await working('Making the workbook', () =>
      book.toWorkbook(runLaid(design, show, ['readings']), [], values.workings),
    );
    await writeFiles([{ path: out, bytes }], { force, inputs: [file] });
  }
  process.stdout.write(
    json ? `${JSON.stringify(checkJson(found, remedies), null, 2)}\n` : checkReport(found, remedies),
  );
  if (out !== undefined)
    (json ? process.stderr : process.stdout).write(`\nWorkbook with the test card: ${shown(out)}\n`);
  return found.verdict === 'pass' ? 0 : 1;
}
