/**
 * Values on paper. Each carries in the markup what it is: `data-q` a quantity of the model, `data-at` for which
 * member, `value` in the model's unit; or `data-kit` for what the kit itself works out. So a reader that is not ours
 * can hold every number against the model.
 */

import { printNumber, printSize, printValue } from '../basis/print.ts';
import type { At, Quantity } from '../basis/quantity.ts';
import type { Units } from '../basis/shown.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { escaped } from '../pictures/elements.ts';
import { printQuantity } from '../views/print.ts';
import type { Job } from './job.ts';
import { BLANK, type Form, force, onPaper } from './lengths.ts';

const GAP = '\u00a0';
const NOT_KNOWN = `<span class="blank">${BLANK}</span>`;

const attributes = (at: At): string =>
  Object.keys(at).length === 0 ? '' : ` data-at="${escaped(JSON.stringify(at))}"`;

/** A value of the model as a person reads it; a blank when it is not known. */
export function modelValue(e: Evaluation, quantity: QuantityName, at: At = {}): string {
  const value = e.value(quantity, at);
  if (value === null) return NOT_KNOWN;
  const { unit } = QUANTITIES[quantity];
  const text =
    typeof value === 'string'
      ? printSize(value)
      : unit === 'degC'
        ? onPaper(value, 'temperature', e.design.kit.units)
        : unit === 'm'
          ? onPaper(value, 'piece', e.design.kit.units)
          : printQuantity(quantity, value);
  return `<data value="${escaped(String(value))}" data-q="${quantity}"${attributes(at)}>${escaped(text.replaceAll(' ', GAP))}</data>`;
}

const OTHERS = {
  /** [lbf] */
  force,
  count: String,
  V: (value: number) => printValue(value, 'V', 'V', true),
  A: (value: number) => printValue(value, 'A', 'A', true),
  /** As a hand meter or an insulation tester shows it. */
  ohm: (value: number) =>
    value < 1e3
      ? printValue(value, 'ohm', 'ohm', true)
      : value < 1e6
        ? `${printNumber(value / 1e3, 3)} kΩ`
        : `${printNumber(value / 1e6, 3)} MΩ`,
  '%': (value: number) => printValue(value, '1', '%', true),
} as const satisfies Readonly<Record<string, (value: number, units: Units) => string>>;
const isOther = (form: string): form is keyof typeof OTHERS => Object.hasOwn(OTHERS, form);

/** A value that the kit works out or takes from its own block; lengths in metres. `form` may be the quantity that it is read like. */
export function kitValue(
  job: Job,
  what: string,
  value: number | null,
  form: Form | keyof typeof OTHERS | Pick<Quantity, 'unit' | 'shown'>,
): string {
  if (value === null) return NOT_KNOWN;
  const { units } = job.result.evaluation.design.kit;
  const text =
    typeof form === 'object'
      ? printValue(value, form.unit, form.shown)
      : isOther(form)
        ? OTHERS[form](value, units)
        : onPaper(value, form, units);
  return `<data value="${value}" data-kit="${escaped(what)}">${escaped(text.replaceAll(' ', GAP))}</data>`;
}

/** A terminal number, which is a name and no value. */
export const terminal = (number: string): string => `<b class="t">${escaped(number)}</b>`;

export const blank = NOT_KNOWN;
