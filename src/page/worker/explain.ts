/** Where a number of the answer comes from, in the units of the reader. */
import type { Evaluation } from '../../engine/evaluate.ts';
import { frame } from '../../engine/frame.ts';
import { explain, type Told } from '../../explain/tree.ts';
import type { Calls, Nothing } from '../protocol.ts';
import { within } from './feed.ts';

/** Levels of formulas in one answer, as on a terminal: the ampacity of a run then fits a screen. */
const DEPTH = 3;

/** The tree, or why there is none: the design may have lost the run that was asked for. */
export function explained(e: Evaluation, { quantity, at, units }: Calls['explain']['ask']): Told | Nothing {
  const own = within(quantity, at);
  if (frame(quantity).axes.some((axis) => e.grid.axes[axis][own[axis] ?? 0] === undefined))
    return { why: 'The design has changed meanwhile: this number is no longer part of it.' };
  return explain({ ...e, design: { ...e.design, units } }, quantity, own, DEPTH);
}
