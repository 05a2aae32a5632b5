/** Schema of what an author adds to a design: values and rules of their own, and sheets of a workbook. */
import * as z from 'zod';
import { line, list } from './fields.ts';
import { map } from './schema-coils.ts';

/** Rows of `own`, and cells of all sheets that are added. */
export const MOST_OWN = 40;
export const MOST_ADDED = 2000;

const number = (description: string) =>
  z.number({ error: 'takes a plain number, in the unit of the formula' }).meta({ description });

const row = map(
  {
    label: line(80, { description: 'What it is.' }),
    formula: line(500, {
      description:
        'Formula of a spreadsheet over the names of the workbook, without an equals sign: copper*0.012.',
    }),
    unit: line(12, { description: 'Its unit, as it is to be shown.' }).optional(),
    at_most: number('Makes it a rule: more fails.').optional(),
    at_least: number('Makes it a rule: less fails.').optional(),
    words: line(200, { description: 'What it means when the rule fails.' }).optional(),
  },
  'A value of the author’s own, or a rule.',
);

export const own = list(row, [1, MOST_OWN], {
  of: 'values',
  start: "{ label: Price of wire, formula: 'copper*0.012', unit: EUR }",
  description: 'Values and rules of the author’s own, as formulas over the names of the workbook.',
}).refine((rows) => rows.every((one) => one.at_most === undefined || one.at_least === undefined), {
  error: 'takes at_most or at_least in a row, not both',
});

const cell = z
  .union([z.number(), z.string().refine((text) => text.length <= 500)], {
    error: 'takes a number, or text of at most 500 characters',
  })
  .meta({ description: 'A number, a text, or a formula that starts with an equals sign.' });

const cells = z
  .record(z.string(), cell, {
    error: 'takes a map from cells to what stands there: {A1: Wire, B1: "=copper*0.012"}',
  })
  .refine((found) => Object.keys(found).every((at) => /^[A-Z]{1,2}[1-9]\d{0,3}$/.test(at)), {
    error: 'takes cells such as A1',
  })
  .meta({ description: 'Cells of the sheet.' });

export const added = z
  .record(z.string(), cells, { error: 'takes a map from the name of a sheet to its cells' })
  .refine(
    (sheets) =>
      Object.keys(sheets).every((name) => /^[\p{L}\p{N}](?:[\p{L}\p{N} _-]{0,29}[\p{L}\p{N}])?$/u.test(name)),
    {
      error: 'takes sheets whose names have letters, digits and blanks, at most 31 characters',
    },
  )
  .refine(
    (sheets) => Object.values(sheets).reduce((sum, own) => sum + Object.keys(own).length, 0) <= MOST_ADDED,
    { error: `takes at most ${MOST_ADDED} cells` },
  )
  .meta({ description: 'Sheets that a person added to the workbook.' });

/** Longest note beside an input. */
export const LONGEST_REMARK = 500;

export const remarks = z
  .record(
    z.string(),
    z
      .string({ error: 'takes text' })
      .refine((text) => text.length <= LONGEST_REMARK, {
        error: `takes text of at most ${LONGEST_REMARK} characters`,
      })
      .meta({ description: 'The note.' }),
    { error: 'takes a map from inputs of the workbook to notes: {run_gauge: two reels left}' },
  )
  .refine((notes) => Object.keys(notes).length <= MOST_ADDED, { error: `takes at most ${MOST_ADDED} notes` })
  .meta({
    description: 'Notes that a person wrote beside the inputs of the workbook, by their names: run_gauge.',
  });
