/**
 * What stands beside each input: a person goes by it, while the workbook and its reader go by the cell. Where a table was
 * sorted together with its labels the two no longer mean the same.
 */
import { type At, labelParts } from '../../basis/quantity.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import type { Members } from '../axes.ts';
import type { Block } from '../layout.ts';
import { memberName, members } from '../places.ts';

export interface Label {
  readonly text: string;
  /** The input at the right of the label; of the name of a run the first one below it. */
  readonly name: QuantityName;
  readonly at: At;
  readonly above: boolean;
}

/** Every label of the sheet of the inputs that belongs to a row or to a column of entries. */
export const labelsOf = (blocks: readonly Block[], axes: Members): Label[] =>
  blocks.filter(({ kind }) => kind === 'inputs').flatMap((block) => labelsIn(block, axes));

function labelsIn({ form, rows, quantities }: Block, axes: Members): Label[] {
  const first = quantities[0] as QuantityName;
  const all = members(axes, rows);
  const named = (above: boolean): Label[] =>
    all.map((at) => ({ text: memberName(axes, rows, at), name: first, at, above }));
  if (form === 'entries') return named(false);
  const own = quantities.map(
    (name): Label => ({
      text: labelParts(QUANTITIES[name].label).within,
      name,
      at: all[0] as At,
      above: false,
    }),
  );
  return form === 'beside' ? [...named(true), ...own] : own;
}

/** What is said of a cell whose label is that of another input. */
export const misplaced = (text: string, above: boolean): string =>
  `takes the label “${text}” ${above ? 'above it' : 'at its left'}: that of another input stands there, as after a table was sorted; undo that`;
