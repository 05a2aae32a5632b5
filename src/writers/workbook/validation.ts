/** What may be entered: a range of numbers, or a list of choices. A value outside is questioned, not refused. */
import { address } from '../../basis/address.ts';
import { labelParts, type Quantity } from '../../basis/quantity.ts';
import { printUnit } from '../../basis/units.ts';
import type { Design } from '../../design/design.ts';
import { asEntered, boundsOf, entryUnit } from '../../engine/cell.ts';
import { deviceNamed, elsewhere, usedAs } from '../../engine/entered/parts.ts';
import { namesFor } from '../../engine/entered/shelf.ts';
import { cellOf, members } from '../../engine/places.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import type { Validation } from '../../ooxml/book.ts';
import { ownCell, ownRows, SENSES } from '../../own/rows.ts';
import { byRun, choicesFor, isChosen } from './choices-sheet.ts';
import { rangeOf } from './links.ts';

/** The validations of all entries, one for each quantity, or for each run where the shop has other things to choose from. */
export const validations = (grid: Grid, design: Design): Validation[] =>
  [...grid.placement.entries].flatMap(([name, place]) => {
    const device = deviceNamed(name);
    if (device !== undefined)
      return members(grid.axes, place.rows).flatMap((at) => {
        const names = namesFor(design, device, at);
        const cell = address(...cellOf(place, at), false, false);
        const used = usedAs(design, device, at);
        return names === null || used === undefined
          ? []
          : [rule(grid, name, cell, names, elsewhere(design, device, used))];
      });
    return isChosen(name) && byRun(design, name)
      ? design.runs.map((_, run) => {
          const cell = address(...cellOf(place, { run }), false, false);
          return rule(grid, name, cell, choicesFor(design, name, run));
        })
      : [
          rule(
            grid,
            name,
            rangeOf(grid, name, place).split('!')[1]?.replaceAll('$', '') as string,
            isChosen(name) ? choicesFor(design, name) : null,
          ),
        ];
  });

/** `others` says of a list of parts where those are that are not on it. */
function rule(
  { placement }: Grid,
  name: QuantityName,
  where: string,
  choices: string | null,
  others?: string,
): Validation {
  const { system } = placement.entering;
  const q: Quantity = QUANTITIES[name];
  const { bare: label, empty } = labelParts(q.label);
  const unit = q.unit === 'text' ? '' : printUnit(entryUnit(q, system));
  const ends = boundsOf(q, system);
  const permitted = ends.length === 2 ? `${ends[0]} to ${ends[1]}${unit === '' ? '' : ` ${unit}`}` : '';
  const listed = choices !== null;
  const title = listed ? 'Choose from the list' : `Number${unit === '' ? '' : ` in ${unit}`}`;
  const said = [label, listed ? '' : `Allowed: ${permitted}`, empty ?? '', others ?? ''];
  const wrong = listed
    ? others !== undefined
      ? `${label}: this is not on the list. ${others}`
      : `${label}: this is not on the list. What is not in the tables of this workbook may give no result: see the sheet Choices.`
    : `${label}: allowed: ${permitted}, as a plain number without its unit.`;
  const end = (i: 0 | 1): number => asEntered(q.range?.[i] ?? 0, q, system);
  return {
    where,
    allowed: choices ?? [end(0), end(1)],
    prompt: [title, `${said.filter(Boolean).join('. ')}.`],
    error: ['Outside the allowed range', wrong],
  };
}

/** The signs of the author’s own rules. */
export const senses = (design: Design): Validation => ({
  where: [ownCell(0, 'sense'), ownCell(ownRows(design) - 1, 'sense')]
    .map((cell) => (cell.split('!')[1] as string).replaceAll('$', ''))
    .join(':'),
  allowed: `"${Object.values(SENSES).join()}"`,
  prompt: ['Makes it a rule', 'Leave it empty for a value that is only shown.'],
  error: ['No such rule', 'Takes ≤ or ≥, or nothing.'],
});
