/** A value of every wrong kind at every key of the format: one problem there, and never an error of the program. */
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod';
import { keyText, type Path } from '../../src/design/problems.ts';
import { readDesign } from '../../src/design/read.ts';
import { DesignFile } from '../../src/design/schema.ts';
import { base } from '../design/helpers.ts';

interface Key {
  readonly path: Path;
  readonly schema: z.core.$ZodType;
}

/** Every key of the format; lists by their first member, maps by run with the name of a run of the base. */
function keysOf(schema: z.core.$ZodType, path: Path): Key[] {
  if (schema instanceof z.ZodOptional) return keysOf(schema.unwrap(), path);
  if (schema instanceof z.ZodUnion) return schema.options.flatMap((one) => keysOf(one, path));
  if (schema instanceof z.ZodArray) return keysAt(schema.element, [...path, 0]);
  if (schema instanceof z.ZodRecord) return keysAt(schema.valueType, [...path, 'main']);
  if (!(schema instanceof z.ZodObject)) return [];
  return Object.entries(schema.shape).flatMap(([key, inner]) =>
    keysAt(inner as z.core.$ZodType, [...path, key]),
  );
}
const keysAt = (schema: z.core.$ZodType, path: Path): Key[] => [{ path, schema }, ...keysOf(schema, path)];

const KEYS = keysOf(DesignFile, []);

/** The base with a value at a path; what leads there is made. */
function put(path: Path, value: unknown): unknown {
  const data = parse(base());
  let at = data;
  path.forEach((step, i) => {
    if (i === path.length - 1) at[step] = value;
    else {
      const next = typeof path[i + 1] === 'number' ? [] : {};
      if (typeof at[step] !== 'object' || Array.isArray(at[step]) !== Array.isArray(next)) at[step] = next;
      at = at[step];
    }
  });
  return data;
}

const KINDS: Readonly<Record<string, unknown>> = {
  'a map': { a: 1 },
  'a map that looks like a run': { run: 'main', length: { '1': '1 m' }, carries: ['1'] },
  'a map with the keys of a list': { length: 3, 0: 'main' },
  'an empty list': [],
  'a list of maps': [{ run: 'main' }, { length: 1 }],
  nothing: null,
  'a whole number': 7,
  'a fraction': 0.001,
  'a huge number': 1e300,
  text: 'something else',
  'empty text': '',
  'a date': '2031-05-28',
  truth: true,
  'long text': 'm'.repeat(100_000),
  'a long number': `${'9'.repeat(5_000)} m`,
  'nested maps': { a: { b: { c: { d: { e: 1 } } } } },
};

/** The problem that is due: at the key, or below it where the kind is right and a part is wrong. */
function complaint({ path, schema }: Key, value: unknown): string | null {
  // In braces, as a person may write it: every sign has its place.
  const result = readDesign(JSON.stringify(put(path, value), null, 1), 'x.yaml');
  const taken = z.safeParse(schema, value).success;
  if (result.ok) return taken ? null : 'accepted';
  const at = keyText(path);
  const below = result.problems.filter(({ key }) => key.startsWith(at));
  // A key that must not stand here is placed at the key, what is wrong with its value at the value.
  const places = new Set(below.map(({ key, line, column }) => `${key} ${line}:${column}`));
  if (places.size < below.length) return `twice: ${below.map((p) => `${p.key}: ${p.taken}`).join(' | ')}`;
  if (!taken && below.length === 0) return 'no problem there';
  for (const { line, column, found, taken: what } of below)
    if (line < 2 || column < 1 || found === '' || what === '' || /undefined|\[object|NaN/.test(found + what))
      return `without place or words: ${found}; ${what}`;
  return null;
}

describe('every key with a value of another kind', () => {
  test('all keys are there', () => {
    expect(KEYS.length).toBeGreaterThan(150);
  });

  test.each(Object.entries(KINDS))('%s', (_, value) => {
    const offenders = KEYS.flatMap((key) => {
      const wrong = complaint(key, value);
      return wrong === null ? [] : [`${keyText(key.path)}: ${wrong}`];
    });
    expect(offenders).toEqual([]);
  });
});
