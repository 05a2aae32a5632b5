/** The design at hand, from text to text. */
import { UNITS, type Units } from '../../basis/shown.ts';
import type { Evaluation } from '../../engine/evaluate.ts';
import type { Result } from '../../findings/result.ts';
import { run } from '../../run.ts';
import { fromShelf } from '../../shop/choose.ts';
import type { Answer, Given } from '../protocol.ts';
import { readGiven } from './given.ts';
import { readable } from './held.ts';
import { viewOf } from './view.ts';

export class Live {
  private last: Result | null = null;

  /** Judges the design; where its text has faults, with the values of the last good text in their places. */
  answer(given: Given, good: string | null = null, units?: Units | 'design'): Answer {
    const { text } = given;
    const read = readGiven(given);
    const problems = read.ok ? [] : read.problems;
    const taken = read.ok ? { design: read.design, text, held: [] } : readable(given, problems, good);
    if (taken === null) return { problems, held: [], answered: null };
    this.last = run(fromShelf(taken.design, run));
    const systems = units === undefined ? UNITS : [units === 'design' ? taken.design.units : units];
    return { problems, held: taken.held, answered: { view: viewOf(this.last, systems), text: taken.text } };
  }

  /** Of the last good design. Throws before there is one. */
  get result(): Result {
    if (this.last === null) throw new Error('no design was evaluated yet');
    return this.last;
  }

  get evaluation(): Evaluation {
    return this.result.evaluation;
  }
}
