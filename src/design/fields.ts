/**
 * The kinds of field that a design has. Each reads what the author wrote into a number in the model's unit, and its
 * error message is the phrase that says what the field takes; `issues.ts` adds what was found, and where.
 */
import * as z from 'zod';
import { readValue, unitsTaken, unitsWritten } from '../basis/units.ts';

/** Limits of a value, in its unit. `over` is itself not allowed, `from` is. */
export interface Bounds {
  readonly over?: number;
  readonly from?: number;
  readonly to: number;
}

interface About {
  readonly description: string;
  /** What is taken when the field is left out, as an author writes it. */
  readonly preset?: string;
}

/** Longest text that is read as a value; the longest sensible one has about 20 characters. */
const LONGEST_VALUE = 60;

const within = (value: number, b: Bounds): boolean =>
  Number.isFinite(value) &&
  !(value <= (b.over ?? -Infinity)) &&
  !(value < (b.from ?? -Infinity)) &&
  value <= b.to;

/** `above 0 H and at most 10 H` */
const boundsText = (b: Bounds, unit: string): string => {
  const tail = unit === '' ? '' : ` ${unit}`;
  const low =
    b.over !== undefined
      ? `above ${b.over}${tail} and `
      : b.from !== undefined
        ? `${b.from}${tail} or more and `
        : '';
  return `${low}at most ${b.to}${tail}`;
};

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** Regular expression for editors: a number and one of the units. The limits are left to the reader. */
const patternOf = (unit: string, word: string | undefined): string => {
  const number = String.raw`[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?`;
  const value = String.raw`\s*${number}\s*(${unitsWritten(unit).map(escaped).join('|')})\s*`;
  return word === undefined ? `^${value}$` : `^(${word}|${value})$`;
};

const metaOf = (about: About, extra: Record<string, unknown>): Record<string, unknown> => ({
  description: about.description,
  ...(about.preset === undefined ? {} : { default: about.preset }),
  ...extra,
});

/** Turns the text of a value into a number, or says what the field takes. */
function parse(text: string, unit: string, bounds: Bounds, taken: string): number | { taken: string } {
  const reading = text.length > LONGEST_VALUE ? null : readValue(text, unit);
  if (!reading?.ok) return { taken };
  // The sum turns −0 into 0.
  if (within(reading.value, bounds)) return reading.value + 0;
  return { taken: `takes a value ${boundsText(bounds, unit)}` };
}

/** What a field for a value takes, when it was not one. */
export const valueTaken = (unit: string): string =>
  `takes a value with a unit: ${unitsTaken(unit).join(', ')}`;

/** A physical value, text with its unit; read into `unit`. */
export function quantity(unit: string, bounds: Bounds, about: About) {
  const taken = valueTaken(unit);
  return z
    .string({ error: taken })
    .transform((text, ctx): number => {
      const value = parse(text, unit, bounds, taken);
      if (typeof value === 'number') return value;
      ctx.issues.push({ code: 'custom', message: value.taken, input: text });
      return z.NEVER;
    })
    .meta(
      metaOf(
        {
          ...about,
          description: `${about.description} Unit: ${unitsTaken(unit).join(', ')}; ${boundsText(bounds, unit)}.`,
        },
        { pattern: patternOf(unit, undefined) },
      ),
    );
}

/** A physical value, or the word `auto`: chosen by the tool. */
export function quantityOrAuto(unit: string, bounds: Bounds, about: About) {
  const taken = `${valueTaken(unit)}; or auto`;
  return z
    .string({ error: taken })
    .transform((text, ctx): number | 'auto' => {
      if (text === 'auto') return 'auto';
      const value = parse(text, unit, bounds, taken);
      if (typeof value === 'number') return value;
      ctx.issues.push({ code: 'custom', message: value.taken, input: text });
      return z.NEVER;
    })
    .meta(
      metaOf(
        {
          ...about,
          description: `${about.description} auto, or unit: ${unitsTaken(unit).join(', ')}; ${boundsText(bounds, unit)}.`,
        },
        { pattern: patternOf(unit, 'auto') },
      ),
    );
}

/** A share in percent, `80 %`; read into a plain number, 0.8. */
export function share(about: About) {
  const percent = quantity('%', { over: 0, to: 100 }, about);
  return percent.transform((value) => value / 100).meta({ ...percent.meta() });
}

/** A whole number. */
export function count(from: number, to: number, about: About) {
  const taken = `takes a whole number, ${from} to ${to}`;
  return z
    .number({ error: taken })
    .int({ error: taken })
    .min(from, { error: taken })
    .max(to, { error: taken })
    .meta({
      description: about.description,
      ...(about.preset === undefined ? {} : { default: Number(about.preset) }),
    });
}

/** A crank angle: a plain number of degrees, or `120 deg`. Where it must lie depends on the stroke. */
export function angle(about: About) {
  const taken = 'takes a crank angle in degrees: 120 or 120 deg';
  const bounds: Bounds = { from: 0, to: 720 };
  const wrong = 'takes a crank angle of 0 deg or more and at most 720 deg';
  return z
    .union(
      [
        z
          .number({ error: taken })
          .min(bounds.from as number, { error: wrong })
          .max(bounds.to, { error: wrong }),
        quantity('deg', bounds, about),
      ],
      { error: taken },
    )
    .meta(metaOf(about, {}));
}

/** Text on one line that a person reads. */
export function line(longest: number, about: About) {
  const taken = `takes text on one line, 1 to ${longest} characters`;
  return z
    .string({ error: taken })
    .max(longest, { error: taken })
    .refine((text) => /\S/.test(text) && !/\p{Cc}/u.test(text.trim()), { error: taken })
    .transform((text) => text.trim())
    .meta(metaOf(about, {}));
}

/** Longest name [characters]: it must fit the column of a table. */
const LONGEST_NAME = 40;

/**
 * The name of a run, a point or a coil. It starts with a letter or a digit, so that no spreadsheet program takes it
 * for a formula, and holds none of the signs that a look-up in a spreadsheet reads as a wildcard.
 */
export function name(about: About) {
  const taken = `takes a name of 1 to ${LONGEST_NAME} characters that starts with a letter or a digit, without * ? ~`;
  return z
    .string({ error: taken })
    .max(LONGEST_NAME, { error: taken })
    .refine((text) => /^[\p{L}\p{N}][^\p{Cc}*?~]*$/u.test(text), { error: taken })
    .transform((text) => text.trim())
    .meta(metaOf(about, { pattern: '^[^*?~]+$' }));
}

/** One of a few words. */
export const word = <const W extends readonly string[]>(words: W, about: About) =>
  z.enum(words, { error: `takes one of: ${words.join(', ')}` }).meta(metaOf(about, {}));
