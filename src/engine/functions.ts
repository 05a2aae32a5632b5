/** The formula of a quantity as functions, made when it is first needed: a formula may name what names it in turn. */
import type { Code } from './code/code.ts';
import { compile } from './compile.ts';
import type { Frame } from './frame.ts';
import type { Scalar } from './node.ts';
import { referred } from './reference.ts';

const made: (Scalar | undefined)[] = [];

type CodeOf = (of: Frame, formula: string) => Code | null;
let codeOf: CodeOf | null = null;
const codes: (Code | null)[] = [];

/** From now on formulas are written as code: for whoever evaluates a model thousands of times, where code may be made. */
export function writeCode(how: CodeOf): void {
  codeOf = how;
}

/** The formula as code; null where it is left to functions. */
export function codeFor(of: Frame): Code | null {
  if (codeOf === null || of.q.kind !== 'formula') return null;
  const known = codes[of.no];
  if (known !== undefined) return known;
  const found = codeOf(of, of.q.formula);
  codes[of.no] = found;
  return found;
}

/** Throws when the formula makes no sense: formulas are written by us. */
export function functionsOf(of: Frame, formula: string): Scalar {
  let found = made[of.no];
  if (found === undefined) {
    found = compiled(of, formula);
    made[of.no] = found;
  }
  return found;
}

function compiled({ name, axes, text }: Frame, formula: string): Scalar {
  try {
    const node = compile(formula, (reference) => referred(reference, axes));
    if (node.kind === 'range') throw new Error('it comes to a range');
    if (node.type === 'text' && !text) throw new Error('it comes to a word and has a unit');
    return node;
  } catch (error) {
    throw new Error(`${name}: ${(error as Error).message}`);
  }
}
