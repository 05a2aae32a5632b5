/** The notation of the formulas: names, functions and numbers that may stand in them. */
import { HyperFormula } from 'hyperformula';
import { describe, expect, test } from 'vitest';
import { tokens } from '../../src/basis/formula.ts';
import { AXES } from '../../src/basis/quantity.ts';
import { QUANTITIES, type QuantityName } from '../../src/model/model.ts';
import { expectOfAll } from '../offenders.ts';

const names = Object.keys(QUANTITIES) as QuantityName[];
const formulas = names.flatMap((name) => {
  const q = QUANTITIES[name];
  return q.kind === 'formula' ? [{ name, formula: q.formula }] : [];
});

/** Names that become names of the workbook: what exists once. */
const single = names.filter((name) => !QUANTITIES[name].per?.length && QUANTITIES[name].across === undefined);

test('there are quantities and formulas to look at', () => {
  // Far below what there is; an import that came out empty would pass everything below.
  expect(names.length).toBeGreaterThan(100);
  expect(formulas.length).toBeGreaterThan(100);
  expect(single.length).toBeGreaterThan(20);
});

describe('names', () => {
  test('are legal in every spreadsheet program', () => {
    expectOfAll(names, String, (name) => {
      // ASCII, a letter first, at most 255 characters.
      expect(name).toMatch(/^[A-Za-z][A-Za-z0-9_.]{0,254}$/);
      // Not the address of a cell, in either style: AB12, R1C1, R, C.
      expect(name).not.toMatch(/^[A-Za-z]+\d+$/);
      expect(name).not.toMatch(/^[Rr]\d*([Cc]\d*)?$|^[Cc]\d*$/);
      expect(name).not.toMatch(/^(true|false)$/i);
    });
  });

  test('are unique whatever the case', () => {
    const lower = names.map((name) => name.toLowerCase());
    expect(lower.filter((name, i) => lower.indexOf(name) !== i)).toEqual([]);
  });

  test('none that a workbook defines is that of a function', () => {
    // The list of a program that others made: about 400, those of spreadsheet programs among them.
    const functions = new Set(HyperFormula.getRegisteredFunctionNames('enGB').map((f) => f.toLowerCase()));
    for (const one of ['average', 'minute', 'sum']) expect(functions.has(one)).toBe(true);
    expect(single.filter((name) => functions.has(name.toLowerCase()))).toEqual([]);
  });
});

/**
 * Functions that Excel, LibreOffice and the engine compute alike. A function that is added here was tried in all three.
 */
const DIALECT = [
  'COUNT',
  'EXP',
  'IF',
  'IFERROR',
  'INDEX',
  'ISNUMBER',
  'LN',
  'MATCH',
  'MAX',
  'MIN',
  'MMULT',
  'PI',
  'SMALL',
  'SQRT',
  'SUM',
  'SUMPRODUCT',
];

describe('functions', () => {
  const used = formulas.flatMap(({ name, formula }) =>
    tokens(formula).flatMap((t) => (t.kind === 'function' ? [{ name, text: t.text }] : [])),
  );
  test('only those of the dialect', () => {
    expect(used.filter(({ text }) => !DIALECT.includes(text))).toEqual([]);
  });
  test('the dialect has no more than is used', () => {
    const texts = new Set(used.map(({ text }) => text));
    expect(DIALECT.filter((f) => !texts.has(f))).toEqual([]);
  });
});

/**
 * Numbers without a name. Each one is a count or an exact factor; whatever has a unit or a source gets a name.
 *   0  nothing, none, no; also "exactly this one" of MATCH
 *   1  one more, one less, yes, the whole; also "the last one not above" of MATCH
 *   2  a square, the half of ½·L·I², two charges that meet each other
 *   3  samples about a limit in the list of currents: below, at and above it
 *   4  of π/4·d²; the first place behind those three
 */
const NUMBERS = ['0', '1', '2', '3', '4'];
/** Coefficients of the series for u − g and u − g − g²/2, g = 1 − e^(−u): 1/k! and (2 − 2^(k−1))/k!, over the first one. */
const SERIES = ['5', '6', '7', '8', '20', '31', '840'];

test('numbers without a name are counts and exact factors', () => {
  const bare = formulas.flatMap(({ name, formula }) =>
    tokens(formula).flatMap((t) =>
      t.kind === 'number' &&
      !NUMBERS.includes(t.text) &&
      !(/_(?:lag|square)$/.test(name) && SERIES.includes(t.text))
        ? [{ name, text: t.text }]
        : [],
    ),
  );
  expect(bare).toEqual([]);
});

describe('references', () => {
  const references = formulas.flatMap(({ name, formula }) =>
    tokens(formula).flatMap((t) => (t.kind === 'reference' ? [{ from: name, ...t.reference }] : [])),
  );

  test('every name is that of a quantity', () => {
    expect(references.filter(({ name }) => !Object.hasOwn(QUANTITIES, name))).toEqual([]);
  });

  test('every axis is one that there is', () => {
    const axes: readonly string[] = AXES;
    const wrong = references.filter(({ selectors }) => selectors.some(({ axis }) => !axes.includes(axis)));
    expect(wrong).toEqual([]);
  });

  test('none but a chain over the members before or after names itself', () => {
    const wrong = references.filter(
      ({ from, name, selectors }) =>
        from === name && !selectors.some(({ how }) => how === 'before' || how === 'after'),
    );
    expect(wrong).toEqual([]);
  });
});
