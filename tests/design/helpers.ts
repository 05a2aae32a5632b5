/** A small design to change, and a reader that expects it to pass. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Design } from '../../src/design/design.ts';
import { printProblem } from '../../src/design/problems.ts';
import { readDesign } from '../../src/design/read.ts';

const file = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

export const demo = (name: string): string => file(`workbooks/${name}.yaml`);
/** As the page offers them: whatever lies in the folder. */
export const DEMOS = readdirSync(new URL('../../workbooks', import.meta.url))
  .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
  .map((name) => name.replace('.yaml', ''));

/** The base of the refusals, with pieces of its text replaced. */
export function base(...change: [string, string][]): string {
  let text = file('tests/refusals/base.yaml');
  for (const [find, put] of change) {
    if (!text.includes(find)) throw new Error(`"${find}" is not in the base`);
    text = text.replace(find, () => put);
  }
  return text;
}

/** The design that a text stands for; throws with all problems when it does not pass. */
export function design(text: string): Design {
  const result = readDesign(text, 'design.yaml');
  if (!result.ok) throw new Error(result.problems.map(printProblem).join('\n'));
  return result.design;
}
