/** The declared unit of every quantity against the one that its formula yields. */
import { describe, expect, test } from 'vitest';
import { convert } from '../../src/basis/units.ts';
import { QUANTITIES, type QuantityName } from '../../src/model/model.ts';
import { expectOfAll } from '../offenders.ts';
import { declared, type Found, same, unitOfFormula } from './unit-of.ts';

const names = Object.keys(QUANTITIES) as QuantityName[];
const unitOf = (name: string): Found => {
  if (!Object.hasOwn(QUANTITIES, name)) throw new Error(`"${name}" is no quantity`);
  return declared(QUANTITIES[name as QuantityName].unit);
};

describe('the reading of units', () => {
  const some: Readonly<Record<string, string>> = {
    v: 'V',
    r: 'ohm',
    l: 'H',
    t: 's',
    ms: 'ms',
    i: 'A',
    w: 'text',
    n: '1',
  };
  const of = (formula: string): Found => unitOfFormula(formula, (name) => declared(some[name] ?? 'missing'));

  test.each([
    ['v/r', 'A'],
    ['l/r', 's'],
    ['i^2*r', 'W'],
    ['l*i^2/2', 'J'],
    ['-t*r/LN(1-i*r/v)', 'H'],
    ['SQRT(SUMPRODUCT(i, i, t)/t)', 'A'],
    ['IF(w="auto", 0, i)', 'A'],
    ['IF(i>0, "", v)', 'V'],
    ['(w="auto")*1', '1'],
    ['INDEX(v, MATCH(i, i, 0), 1)', 'V'],
    ['v*(1-EXP(-t*r/l))', 'V'],
    ['n^(n/2)', '1'],
  ])('%s yields %s', (formula, unit) => expect(same(of(formula), declared(unit))).toBe(true));

  test.each([
    'v+i',
    'v<i',
    't+ms',
    'MAX(v, i)',
    'IF(n=1, v, i)',
    'IF(v, 1, 2)',
    'EXP(t)',
    'v^n',
    'v^t',
    'v+1',
    'w+1',
    'w*2',
    'IF(n=1, w, i)',
    'INDEX(v, t, 1)',
    'MATCH(v, i, 0)',
    'ABS(v)',
    'v v',
    'v+',
    'IF(n=1, v)',
  ])('%s is refused', (formula) => expect(() => of(formula)).toThrow());

  test('factors count: milliseconds are not seconds', () =>
    expect(same(declared('ms'), declared('s'))).toBe(false));
});

const of = (names: readonly QuantityName[], look: (q: (typeof QUANTITIES)[QuantityName]) => void): void =>
  expectOfAll(names, String, (name) => look(QUANTITIES[name]));
const ofKind = (...kinds: string[]) => names.filter((name) => kinds.includes(QUANTITIES[name].kind));

test('every formula yields the unit that it declares', () => {
  of(ofKind('formula'), (q) => {
    const found = q.kind === 'formula' ? unitOfFormula(q.formula, unitOf) : undefined;
    expect(found).toBeDefined();
    expect(
      same(found as Found, declared(q.unit)),
      `yields ${JSON.stringify(found)}, declares ${q.unit}`,
    ).toBe(true);
  });
});

test('every quantity has a unit that is known, and is shown in one of its kind', () => {
  of(names, (q) => {
    expect(() => declared(q.unit)).not.toThrow();
    if (q.shown !== undefined) expect(() => convert(q.shown as string, q.unit)).not.toThrow();
  });
});

test('a constant or column holds words exactly when its unit says so', () => {
  of(ofKind('constant', 'column'), (q) => {
    const held = q.kind === 'constant' ? [q.value] : q.kind === 'column' ? q.values.flat() : [];
    expect(held.length).toBeGreaterThan(0);
    for (const value of held.filter((v) => v !== null)) {
      if (q.unit === 'text') expect(typeof value).toBe('string');
      else expect(Number.isFinite(value)).toBe(true);
    }
  });
});
