/** The design at hand, from text to text. */
import { readDesign } from '../../design/read.ts';
import type { Evaluation } from '../../engine/evaluate.ts';
import type { Result } from '../../findings/result.ts';
import { run } from '../../run.ts';
import type { Answer } from '../protocol.ts';
import { viewOf } from './view.ts';

export class Live {
  private last: Result | null = null;

  /** Judges the design, or lists what is wrong with its text; then the last good one stays at hand. */
  answer(text: string, file: string): Answer {
    const read = readDesign(text, file);
    if (!read.ok) return read;
    this.last = run(read.design);
    return { ok: true, view: viewOf(this.last) };
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
