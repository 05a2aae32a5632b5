/** `coilfeed explain DESIGN QUANTITY`: where a number comes from. */
import { evaluate } from '../engine/evaluate.ts';
import { find } from '../explain/find.ts';
import { explain } from '../explain/tree.ts';
import { explainJson } from '../writers/explain-json.ts';
import { explainReport } from '../writers/explain-report.ts';
import { argsOf } from './args.ts';
import { Refusal } from './files.ts';
import { inUnits, readGiven } from './given.ts';

/** Levels of formulas that are printed when nobody says how many: the ampacity of a run then fits a screen. */
const DEPTH = 3;

/** Returns the exit status: 0 when there is such a quantity, 2 when there is none or the design cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const { positionals, values } = argsOf(argv, {
    one: ['shop', 'depth', 'units'],
    many: ['at', 'set'],
    flags: ['json'],
  });
  const [file, ...words] = positionals;
  if (file === undefined || words.length === 0)
    throw new Refusal('"explain" takes a design and the name of a quantity. See "coilfeed help explain".');
  const { at = [], set = [], units, json = false } = values;
  const depth = depthOf(values.depth, json);
  const given = await readGiven(file, { unknowns: true, set, shop: values.shop });
  if (given === null) return 2;
  const evaluation = evaluate(inUnits(given.design, units));
  const found = find(evaluation, words.join(' '), at);
  if ('wrong' in found) throw new Refusal(found.wrong);
  const told = explain(evaluation, found.name, found.at, depth);
  if (found.also.length > 0)
    process.stderr.write(`The same words fit ${found.also.join(', ')}; this is ${found.name}.\n`);
  process.stdout.write(json ? `${JSON.stringify(explainJson(told), null, 2)}\n` : explainReport(told));
  return 0;
}

/** Everything, down to the design, for a program. */
function depthOf(text: string | undefined, json: boolean): number {
  if (text === undefined) return json ? Number.POSITIVE_INFINITY : DEPTH;
  if (text === 'all') return Number.POSITIVE_INFINITY;
  if (/^\d{1,3}$/.test(text)) return Number(text);
  throw new Refusal(`--depth takes a number of levels from 0 on, or all, not "${text}".`);
}
