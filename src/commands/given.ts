/** The design that a command is given: read from its file, or every problem with it said. */
import type { Design } from '../design/design.ts';
import { printProblem } from '../design/problems.ts';
import { readDesign } from '../design/read.ts';
import { readInput } from './files.ts';

export interface Given {
  readonly design: Design;
}

/**
 * Reads a design file; `-` is standard input. Null when it cannot be used: every problem then stands on standard
 * error, and the command ends with status 2. Throws a `Refusal` when there is no such file.
 */
export async function readGiven(file: string): Promise<Given | null> {
  const read = readDesign(await readInput(file), file === '-' ? 'stdin' : file);
  if (read.ok) return { design: read.design };
  for (const problem of read.problems) process.stderr.write(`${printProblem(problem)}\n`);
  return null;
}
