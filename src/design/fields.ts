/**
 * The kinds of field that a design has. Each reads what the author wrote into a number in the model's unit, and its
 * error message is the phrase that says what the field takes; `issues.ts` adds what was found, and where.
 */
import * as z from 'zod';
import { readValue, unitsTaken } from '../basis/read-value.ts';
import { likelyUnit, type Range } from './ranges.ts';
import { readWord } from './spellings.ts';

interface About {
  readonly description: string;
  /** What is taken when the field is left out, as an author writes it. */
  readonly preset?: string;
}

/** Longest text that is read as a value; the longest sensible one has about 20 characters. */
const LONGEST_VALUE = 60;

/** The range of each field that has one, for the reference page. */
export const RANGED = z.registry<Range>();

/** For editors: something with a digit, and a unit behind it. The rest is left to the reader, which knows more spellings. */
const MINUS = '−';
const PATTERN = String.raw`\s*[+\-${MINUS}]?[.,]?\d.*[^\d.,\s].*`;

const metaOf = (about: About, extra: Record<string, unknown>): Record<string, unknown> => ({
  description: about.description,
  ...(about.preset === undefined ? {} : { default: about.preset }),
  ...extra,
});

/** The unit that comes to mind first for a number without one. */
const FIRST: Readonly<Record<string, readonly string[]>> = {
  s: ['ms', 'us', 's'],
  H: ['mH', 'uH', 'H'],
  m: ['m', 'in', 'mm', 'cm', 'ft'],
};

/** What a field for a value takes, when it was not one. */
const valueTaken = (unit: string): string => `takes a value with a unit: ${unitsTaken(unit).join(', ')}`;

/** What to say to a number without a unit: the one that it most likely has. */
function unitMissing(number: number, range: Range): string {
  const units = unitsTaken(range.unit);
  // A share below one is most likely meant as that part of the whole.
  const part = range.unit === '%' && number > 0 && number < 1;
  const meant = part
    ? `${Number((number * 100).toPrecision(12))} %`
    : `${number} ${likelyUnit(number, range, FIRST[range.unit] ?? units)}`;
  return `add its unit: ${meant}? Takes ${units.join(', ')}`;
}

/** Reads a value, or says what is wrong with it. Pure: entries of a workbook and fields of a page are read alike. */
export function readRanged(text: string, range: Range): number | { readonly taken: string } {
  const reading = text.length > LONGEST_VALUE ? null : readValue(text, range.unit);
  if (reading?.ok)
    // The sum turns −0 into 0.
    return reading.value >= range.from && reading.value <= range.to
      ? reading.value + 0
      : { taken: `allowed: ${range.text}` };
  if (reading?.why === 'no unit') return { taken: unitMissing(reading.number, range) };
  if (reading?.why === 'two meanings')
    return { taken: `write ${reading.readings.join(' or ')}: the comma can mean either` };
  return { taken: valueTaken(range.unit) };
}

const describe = (about: About, range: Range, before = ''): string =>
  `${about.description} ${before}Unit: ${unitsTaken(range.unit).join(', ')}; allowed: ${range.text}.`;

/** For a value that has another form beside it: what is said to what is neither. */
export const notOne =
  (range: Range, other: string) =>
  ({ input }: { readonly input?: unknown }): string =>
    typeof input === 'number' && Number.isFinite(input)
      ? unitMissing(input, range)
      : `${valueTaken(range.unit)}; ${other}`;

/** A value or one of a few words in its place. */
function valued<W extends string>(range: Range, words: readonly W[], about: About, before: string) {
  const or = words.length === 0 ? '' : `, or ${words.join(', ')}`;
  const wrong = (input: unknown): string =>
    `${typeof input === 'number' && Number.isFinite(input) ? unitMissing(input, range) : valueTaken(range.unit)}${or}`;
  const field = z.string({ error: (issue) => wrong(issue.input) }).transform((text, ctx): number | W => {
    const word = readWord(text, words);
    if (word !== null) return word;
    const value = readRanged(text, range);
    if (typeof value === 'number') return value;
    const known = value.taken.startsWith('allowed') ? value.taken : `${value.taken}${or}`;
    ctx.issues.push({ code: 'custom', message: known, input: text });
    return z.NEVER;
  });
  const pattern = words.length === 0 ? `^${PATTERN}$` : `^(${[...words.map(anyCase), PATTERN].join('|')})$`;
  const known = field.meta(metaOf({ ...about, description: describe(about, range, before) }, { pattern }));
  RANGED.add(known, range);
  return known;
}

const anyCase = (word: string): string =>
  [...word].map((c) => (/[a-z]/.test(c) ? `[${c.toUpperCase()}${c}]` : c)).join('');

/** A physical value, text with its unit; read into the unit of its range. */
export const quantity = (range: Range, about: About) => valued<never>(range, [], about, '');

/** A physical value, or the word `auto`: chosen by the tool. */
export const quantityOrAuto = (range: Range, about: About) =>
  valued(range, ['auto'], about, 'auto, or a value. ');

/** A share in percent, `80 %`; read into a plain number, 0.8. */
export function share(range: Range, about: About) {
  const percent = quantity(range, about);
  const plain = percent.transform((value) => value / 100).meta({ ...percent.meta() });
  RANGED.add(plain, range);
  return plain;
}

/** A whole number. */
export function count(range: Range, about: About) {
  const { from, to } = range;
  const taken = `takes a whole number, ${from} to ${to}`;
  const field = z
    .number({ error: taken })
    .int({ error: taken })
    .min(from, { error: taken })
    .max(to, { error: taken })
    .meta({
      description: about.description,
      ...(about.preset === undefined ? {} : { default: Number(about.preset) }),
    });
  RANGED.add(field, range);
  return field;
}

/** A crank angle: a plain number of degrees, or `120 deg`. Where it must lie depends on the stroke. */
export function angle(range: Range, about: About) {
  const taken = 'takes a crank angle in degrees: 120 or 120 deg';
  const wrong = `allowed: ${range.text}`;
  const field = z
    .union(
      [
        z.number({ error: taken }).min(range.from, { error: wrong }).max(range.to, { error: wrong }),
        quantity(range, about),
      ],
      { error: taken },
    )
    .meta(metaOf(about, {}));
  RANGED.add(field, range);
  return field;
}

/**
 * A list of `from` to `to` members. `of` names them; `start` is how the first one starts, for an author who forgot
 * the dash. The number of members is judged by a refinement: the library's own check looks at the length of any value,
 * also of a map that has a key of that name.
 */
export function list<T extends z.ZodType>(
  member: T,
  [from, to]: readonly [number, number],
  { of, start, description }: { readonly of: string; readonly start: string; readonly description: string },
) {
  const taken = `takes a list of ${of}`;
  const flow = start.startsWith('[');
  const dash = flow ? `${taken}: ${start}` : `${taken}: start each of them with a dash, "- ${start}"`;
  const isMap = (input: unknown): boolean =>
    typeof input === 'object' && input !== null && !Array.isArray(input);
  return z
    .array(member, {
      error: (issue) => (isMap(issue.input) || flow ? dash : `${taken}, each with a dash: "- ${start}"`),
    })
    .refine((members) => members.length >= from && members.length <= to, {
      error: ({ input }) => `takes ${from} to ${to} ${of}, not ${(input as readonly unknown[]).length}`,
    })
    .meta({ description, minItems: from, maxItems: to });
}

/** What no text on one line may hold: control characters, and marks that turn the direction of writing round. */
const UNSEEN = /[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}\ufeff]/u;

/** Text on one line that a person reads. */
export const line = (longest: number, about: About) =>
  written(
    longest,
    (text) => /\S/.test(text),
    `takes text on one line, 1 to ${longest} characters`,
    metaOf(about, { maxLength: longest }),
  );

/** Longest name [characters]: it must fit the column of a table. */
const LONGEST_NAME = 40;

/**
 * The name of a run, a point or a coil. It starts with a letter or a digit, so that no spreadsheet program takes it
 * for a formula, and holds none of the signs that a look-up in a spreadsheet reads as a wildcard.
 */
export const name = (about: About) =>
  written(
    LONGEST_NAME,
    (text) => /^[\p{L}\p{N}][^*?~]*$/u.test(text),
    `takes a name of 1 to ${LONGEST_NAME} characters that starts with a letter or a digit, without * ? ~`,
    metaOf(about, { pattern: '^[^*?~]+$', maxLength: LONGEST_NAME }),
  );

/** Longest free text [characters]: a few pages. */
const LONGEST_TEXT = 10_000;

/** Free text of several lines, kept letter for letter. */
export const text = (about: About) => {
  const taken = `takes text of at most ${LONGEST_TEXT} characters`;
  return z
    .string({ error: taken })
    .refine((given) => given.length <= LONGEST_TEXT, { error: taken })
    .meta(metaOf(about, { maxLength: LONGEST_TEXT }));
};

/** Text of a person, kept as it is but for blanks around it. */
function written(
  longest: number,
  good: (text: string) => boolean,
  taken: string,
  meta: Record<string, unknown>,
) {
  // To YAML 4711 is a number, and true no word.
  const bare = (input: unknown): boolean => ['number', 'boolean'].includes(typeof input);
  return z
    .string({ error: ({ input }) => (bare(input) ? `put it in quotes; ${taken}` : taken) })
    .transform((text, ctx): string => {
      const plain = text.trim();
      const unseen = UNSEEN.test(plain);
      if (!unseen && plain.length <= longest && good(plain)) return plain;
      const message = unseen ? 'takes text without control characters and marks of direction' : taken;
      ctx.issues.push({ code: 'custom', message, input: text });
      return z.NEVER;
    })
    .meta(meta);
}

/** One of a few words; capitals do not matter, nor whether its parts are joined by a blank, a hyphen or an underscore. */
export const word = <const W extends readonly string[]>(words: W, about: About) => {
  const taken = `takes one of: ${words.join(', ')}`;
  const reader = (given: string): W[number] | null => readWord(given, words);
  // As the library says it, so that beside another form of the value that form can speak.
  return spelled(taken, reader, metaOf(about, { enum: words }), {
    code: 'invalid_value',
    values: [...words],
  });
};

/** Text that a reader makes something of; `null` when it cannot, and then what it takes. */
export const spelled = <T>(
  taken: string | ((input: unknown) => string),
  reader: (text: string) => T | null,
  meta: Record<string, unknown>,
  issue: { code: 'custom' } | { code: 'invalid_value'; values: string[] } = { code: 'custom' },
) => {
  const say = (input: unknown): string => (typeof taken === 'string' ? taken : taken(input));
  return z
    .string({ error: ({ input }) => say(input) })
    .transform((given, ctx): T => {
      const known = given.length > LONGEST_VALUE ? null : reader(given);
      if (known !== null) return known;
      ctx.issues.push({ ...issue, message: say(given), input: given });
      return z.NEVER;
    })
    .meta(meta);
};
