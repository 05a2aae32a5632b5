/** Designs of the physics tests: written as text, read by the reader, evaluated by the model. */

import type { At } from '../../src/basis/quantity.ts';
import { readDesign } from '../../src/design/read.ts';
import type { Evaluation } from '../../src/engine/evaluate.ts';
import { evaluate } from '../../src/engine/evaluate.ts';
import type { QuantityName } from '../../src/model/model.ts';

/** The model of a design given as a plain object; throws with all problems when the reader refuses it. */
export function modelOf(design: object): Evaluation {
  const result = readDesign(JSON.stringify(design), 'design.json');
  if (!result.ok) throw new Error(`${JSON.stringify(result.problems)}\n${JSON.stringify(design)}`);
  return evaluate(result.design);
}

/** A value that must be there: a case that yields no number fails. */
export function known(e: Evaluation, name: QuantityName, at: At = {}): number {
  const value = e.number(name, at);
  if (value === null) throw new Error(`${name} at ${JSON.stringify(at)} is unknown`);
  return value;
}

/** |a − b| as a share of the larger; 0 when both are 0. */
export function apart(a: number, b: number): number {
  const scale = Math.max(Math.abs(a), Math.abs(b));
  return scale === 0 ? 0 : Math.abs(a - b) / scale;
}
