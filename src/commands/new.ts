/** `coilfeed new [FILE]`: a commented design to start from. */
import { starter } from '../design/starter.ts';
import { argsOf } from './args.ts';
import { nameOf, Refusal, shown } from './files.ts';
import { wrap } from './help.ts';
import { writeFiles } from './write.ts';

/** Writes the starting design to a file or to standard output; returns the exit status. */
export async function run(argv: string[]): Promise<number> {
  const { values, positionals } = argsOf(argv, { flags: ['force'] });
  if (positionals.length > 1)
    throw new Refusal(`"new" takes one file, not ${positionals.length}: ${positionals.join(', ')}.`);
  const [file] = positionals;
  if (file === undefined || file === '-') {
    process.stdout.write(starter());
    return 0;
  }
  await writeFiles([{ path: file, bytes: starter() }], { force: values.force ?? false });
  // On standard error, so that standard output only ever holds a design.
  process.stderr.write(
    `${wrap(`Wrote ${nameOf(file)}. Change it to your engine, then: coilfeed size ${shown(file)}`)}\n`,
  );
  return 0;
}
