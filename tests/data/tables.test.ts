/**
 * Every published table against a second reading: the row counts and column sums in `check` were added up from the
 * reading notes by another program, those of the shortest tables by hand, so that a slip of a digit in the rows does
 * not repeat itself there. A slip in the notes themselves would pass; the physics in the other tests here may find it.
 */
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Citation, SOURCES } from '../../src/basis/sources.ts';
import { PRINTED_ONLY, sourceOf } from '../../src/basis/table.ts';
import { convert, unit } from '../../src/basis/units.ts';
import { ALL_CONSTANTS, ALL_TABLES } from '../../src/data/index.ts';
import { expectOfAll } from '../offenders.ts';

const KEYED = new Set(['printed', 'quoted', 'from memory']);
const KEYLESS = new Set(['quoted', 'from memory', 'calculated', 'common practice', 'arbitrary', 'physics']);

/** A key must be in the list; only what was read or remembered has one; a memory says how sure it is. */
function expectSound(citation: Citation | undefined) {
  expect(citation).toBeDefined();
  const { key, status, confidence } = citation as Citation;
  if (key === undefined) expect(KEYLESS).toContain(status);
  else {
    expect(Object.keys(SOURCES)).toContain(key);
    expect(KEYED).toContain(status);
  }
  expect(confidence !== undefined, 'confidence').toBe(status === 'from memory');
}

// Everything that the files of the folder export, to find a table that somebody forgot to list.
const folder = new URL('../../src/data/', import.meta.url);
const files = readdirSync(folder).filter((file) => file !== 'index.ts');
const modules: Record<string, unknown>[] = await Promise.all(
  files.map((file) => import(new URL(file, folder).href)),
);
const exported = modules.flatMap((module) => Object.entries(module));
const isObject = (x: unknown): x is object => typeof x === 'object' && x !== null;

test('the index holds every table of the folder', () => {
  const made = exported.filter(([, x]) => isObject(x) && 'rows' in x).map(([name]) => name);
  expect(Object.keys(ALL_TABLES).sort()).toEqual(made.sort());
});

test('the index holds every group of constants of the folder', () => {
  const isConstant = (x: unknown) =>
    isObject(x) && 'symbol' in x && 'value' in x && typeof x.value !== 'function';
  const made = exported
    .filter(([, x]) => isObject(x) && Object.values(x).some(isConstant))
    .map(([name]) => name);
  expect(Object.keys(ALL_CONSTANTS).sort()).toEqual(made.sort());
});

type Table = (typeof ALL_TABLES)[keyof typeof ALL_TABLES];
const ofTables = (look: (table: Table) => void): void =>
  expectOfAll(
    Object.entries(ALL_TABLES),
    ([name]) => name,
    ([, table]) => look(table),
  );

describe('every table', () => {
  test('has as many rows as the publication', () => {
    ofTables((table) => expect(table.rows).toHaveLength(table.check.rows));
  });

  test('has the column sums of the publication', () => {
    ofTables((table) => {
      const numeric = Object.keys(table.columns).filter((c) => table.columns[c]?.unit !== 'text');
      expect(Object.keys(table.check.sums).sort()).toEqual(numeric.sort());
      for (const column of numeric) {
        const sum = table.rows.reduce((total, row) => total + Number(row[column] ?? 0), 0);
        // Decimal fractions added as doubles: dust of 1e-15 of the sum, no printed digit is that small.
        expect(Math.abs(sum - (table.check.sums[column] as number)), column).toBeLessThan(
          1e-12 * sum + 1e-12,
        );
      }
    });
  });

  test('has a sound source for every cell', () => {
    ofTables((table) => {
      expectSound(table.source);
      for (const row of table.rows)
        for (const column of Object.keys(table.columns)) expectSound(sourceOf(table, row, column));
    });
  });

  test('has no two rows of the same key', () => {
    ofTables((table) => {
      for (const column of table.key) expect(Object.keys(table.columns)).toContain(column);
      const keys = table.rows.map((row) => JSON.stringify(table.key.map((column) => row[column])));
      expect(new Set(keys).size).toBe(keys.length);
    });
  });

  test('has units that are known', () => {
    ofTables((table) => {
      for (const column of Object.values(table.columns)) {
        if (column.unit === 'text' || PRINTED_ONLY.includes(column.unit)) continue;
        expect(() => unit(column.unit)).not.toThrow();
      }
    });
  });

  test('cannot be changed', () => {
    ofTables((table) => {
      expect(() => Object.assign(table.rows[0] as object, { changed: 1 })).toThrow(TypeError);
    });
  });
});

test('all constants have sound sources and units, and a way to the unit in which they are shown', () => {
  const all = Object.values(ALL_CONSTANTS).flatMap((constants) => Object.entries(constants));
  expectOfAll(
    all,
    ([name]) => name,
    ([, constant]) => {
      expectSound(constant.source);
      expect(() => convert(constant.unit, constant.shown ?? constant.unit)).not.toThrow();
    },
  );
});

test('no constant has the name of another', () => {
  const names = Object.values(ALL_CONSTANTS).flatMap((constants) => Object.keys(constants));
  // A workbook does not tell capitals from small letters in a name.
  expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
});
