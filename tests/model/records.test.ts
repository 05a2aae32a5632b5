/** What every record must tell, and that none is there for nothing. */
import { expect, test } from 'vitest';
import { namesIn } from '../../src/basis/formula.ts';
import { type Citation, SOURCES } from '../../src/basis/sources.ts';
import { RULES } from '../../src/findings/rules.ts';
import { QUANTITIES, type QuantityName, SUBJECTS } from '../../src/model/model.ts';
import { expectOfAll } from '../offenders.ts';

const names = Object.keys(QUANTITIES) as QuantityName[];

test('no two subjects declare the same name', () => {
  const all = Object.values(SUBJECTS).flatMap((subject) => Object.keys(subject));
  expect(all.filter((name, i) => all.indexOf(name) !== i)).toEqual([]);
  expect(all.length).toBe(names.length);
});

test('no quantity has the name that the workbook gives to the entry of an input', () => {
  expect(
    names.filter((name) => QUANTITIES[name.replace(/^in_/, '') as QuantityName] && /^in_/.test(name)),
  ).toEqual([]);
});

const of = (names: readonly QuantityName[], look: (q: (typeof QUANTITIES)[QuantityName]) => void): void =>
  expectOfAll(names, String, (name) => look(QUANTITIES[name]));

test('every quantity has label, symbol and unit', () => {
  of(names, (q) => {
    for (const text of [q.label, q.symbol, q.unit]) {
      expect(text.trim()).toBe(text);
      expect(text).not.toBe('');
    }
  });
});

test('every constant has a source, and every column of a table but words that are ours', () => {
  const published = names.filter((name) => {
    const { kind, unit } = QUANTITIES[name];
    return kind === 'constant' || (kind === 'column' && unit !== 'text');
  });
  of(published, (q) => expect(q.source).toBeDefined());
});

test('every formula says what it rests on', () => {
  const formulas = names.filter((name) => QUANTITIES[name].kind === 'formula');
  of(formulas, (q) => expect(q.source).toBeDefined());
});

/** What a person reads in one go: a longer formula falls into quantities with names. */
const LONGEST = 200;

test('no formula is longer than a person can read', () => {
  const long = names.flatMap((name) => {
    const q = QUANTITIES[name];
    return q.kind === 'formula' && q.formula.length > LONGEST ? [`${name}: ${q.formula.length}`] : [];
  });
  expect(long).toEqual([]);
});

test('no symbol stands for two quantities of one subject', () => {
  const twice = Object.entries(SUBJECTS).flatMap(([subject, own]) => {
    const symbols = Object.keys(own).map((name) => QUANTITIES[name as QuantityName].symbol);
    return symbols
      .filter((symbol, i) => symbols.indexOf(symbol) !== i)
      .map((symbol) => ({ subject, symbol }));
  });
  expect(twice).toEqual([]);
});

test('every source that is cited is in the list', () => {
  of(
    names.filter((name) => QUANTITIES[name].source !== undefined),
    (q) => {
      const { key, status, confidence } = q.source as Citation;
      if (key !== undefined) expect(Object.hasOwn(SOURCES, key)).toBe(true);
      // Only what was read or remembered has a place in print; only a memory is more or less sure.
      if (key !== undefined) expect(['printed', 'quoted', 'from memory']).toContain(status);
      if (status === 'printed') expect(key).toBeDefined();
      expect(confidence !== undefined).toBe(status === 'from memory');
    },
  );
});

test('every range rises, and holds its constant', () => {
  of(
    names.filter((name) => QUANTITIES[name].range !== undefined),
    (q) => {
      const [low, high] = q.range as readonly [number, number];
      expect(low).toBeLessThan(high);
      if (q.kind === 'constant') {
        expect(q.value).toBeGreaterThanOrEqual(low);
        expect(q.value).toBeLessThanOrEqual(high);
      }
    },
  );
});

test('no two quantities of one block have the same label', () => {
  const seen = new Map<string, QuantityName[]>();
  for (const name of names) {
    const q = QUANTITIES[name];
    // Entries stand in blocks of their own, apart from what is worked out.
    const block = `${q.kind === 'input' ? 'entries' : 'values'} per ${(q.per ?? []).join(',')}`;
    const place = `${block}: ${q.label}`;
    seen.set(place, [...(seen.get(place) ?? []), name]);
  }
  expect([...seen].filter(([, who]) => who.length > 1)).toEqual([]);
});

/** Quantities that no formula and no rule uses, and why they are there. */
const FOR_PEOPLE: Partial<Record<QuantityName, string>> = {
  cylinders: 'for the record: what fires when stands in the table of firings',
  tolerance_supply: 'the test card',
  coil_part: 'a name: cells of a workbook look up by it what the part has',
  fuse_part: 'the same',
  relay_part: 'the same',
};

test('every constant, column, structure and input is used by a formula or a rule, or there for a reason', () => {
  const used = new Set<string>([
    ...names.flatMap((name) => {
      const q = QUANTITIES[name];
      return q.kind === 'formula' ? namesIn(q.formula) : [];
    }),
    ...Object.values(RULES).flatMap(({ value, limit }) => [value, limit]),
  ]);
  const given = names.filter((name) => QUANTITIES[name].kind !== 'formula');
  expect(given.filter((name) => !used.has(name) && !Object.hasOwn(FOR_PEOPLE, name))).toEqual([]);
  // A reason for what is used after all is out of date.
  expect(Object.keys(FOR_PEOPLE).filter((name) => used.has(name))).toEqual([]);
});
