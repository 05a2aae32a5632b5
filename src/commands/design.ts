/** `coilfeed design FILE`: the design of an edited workbook, or of JSON, as YAML. */
import { asYaml } from '../saved/apply.ts';
import { argsOf } from './args.ts';
import { nameOf, Refusal } from './files.ts';
import { readGiven } from './given.ts';
import { writeFiles } from './write.ts';

/** Returns the exit status: 0 when the design was written, 2 when the file cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const { positionals, values } = argsOf(argv, { one: ['shop', 'out'], flags: ['force'] });
  const [file] = positionals;
  if (file === undefined || positionals.length > 1)
    throw new Refusal('"design" takes one workbook or design file. See "coilfeed help design".');
  const { out, force = false } = values;
  if (out !== undefined && !/\.ya?ml$/i.test(out))
    throw new Refusal(`A design is written as YAML, not as "${out}": the name must end in .yaml.`);
  const given = await readGiven(file, { shop: values.shop });
  if (given === null) return 2;
  const yaml = asYaml(given.design.text.toString());
  if (out === undefined) process.stdout.write(yaml);
  else {
    await writeFiles([{ path: out, bytes: yaml }], { force, inputs: [file] });
    // On standard error, so that standard output only ever holds a design.
    process.stderr.write(`Wrote ${nameOf(out)}\n`);
  }
  return 0;
}
