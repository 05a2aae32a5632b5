/** What may be entered: a range of numbers, or a list of choices. A value outside is questioned, not refused. */
import type { Quantity } from '../../basis/quantity.ts';
import { printUnit } from '../../basis/units.ts';
import { asEntered } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { choicesFor, isChosen } from './choices-sheet.ts';
import { rangeOf } from './links.ts';
import { escaped } from './xml.ts';

/** Longest texts that the format takes. */
const PROMPT = 255;
const ERROR = 225;

/** The validations of all entries, one for each quantity. */
export function validations(grid: Grid): string {
  const rules = [...grid.placement.entries].map(([name, place]) =>
    rule(name, rangeOf(grid, name, place).split('!')[1]?.replaceAll('$', '') as string),
  );
  return `<dataValidations count="${rules.length}">${rules.join('')}</dataValidations>`;
}

function rule(name: QuantityName, where: string): string {
  const q: Quantity = QUANTITIES[name];
  const label = q.label.split(' (empty')[0] as string;
  const empty = /\((empty: [^)]*)\)/.exec(q.label)?.[1];
  const unit = q.unit === 'text' ? '' : printUnit(q.shown ?? q.unit);
  const ends = q.range?.map((end) => printNumber(asEntered(end, q))) ?? [];
  const permitted = ends.length === 2 ? `${ends[0]} to ${ends[1]}${unit === '' ? '' : ` ${unit}`}` : '';
  const listed = isChosen(name);
  const title = listed ? 'Choose from the list' : `Number${unit === '' ? '' : ` in ${unit}`}`;
  const said = [label, listed ? '' : `Permitted: ${permitted}`, empty ? `Leave ${empty}` : ''];
  const wrong = listed
    ? `${label}: this is not in the list. What is not in the tables of this workbook gives no result, or one of its own standing: see the sheet Choices.`
    : `${label}: permitted are ${permitted}, as a plain number without its unit.`;
  const [first, second] = [q.range?.[0], q.range?.[1]].map((end) => asEntered(end ?? 0, q));
  return (
    `<dataValidation type="${listed ? 'list' : 'decimal'}" errorStyle="warning" allowBlank="1" showInputMessage="1" ` +
    `showErrorMessage="1" errorTitle="Outside of what is permitted" error="${cut(wrong, ERROR)}" ` +
    `promptTitle="${escaped(title)}" prompt="${cut(`${said.filter(Boolean).join('. ')}.`, PROMPT)}" sqref="${where}">` +
    (listed
      ? `<formula1>${choicesFor(name)}</formula1>`
      : `<formula1>${first}</formula1><formula2>${second}</formula2>`) +
    '</dataValidation>'
  );
}

const printNumber = (value: number): string => String(value).replace('-', '−');

const cut = (text: string, most: number): string =>
  escaped(text.length <= most ? text : `${text.slice(0, most - 1)}…`);
