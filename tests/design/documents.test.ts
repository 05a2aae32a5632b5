/** The schema for editors and the description of the format keep up with the reader. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { FUSE_RATINGS } from '../../src/data/fuse-ratings.ts';
import { FUSE_TYPES } from '../../src/data/fuses.ts';
import { INSULATIONS } from '../../src/data/insulation.ts';
import { SIZES } from '../../src/design/names.ts';
import { designJsonSchema, designJsonSchemaText } from '../../src/design/schema-json.ts';
import { starter } from '../../src/design/starter.ts';
import { base, DEMOS, demo, design } from './helpers.ts';

const doc = (name: string): string => readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');

/** Every key of every map in a JSON Schema, with its own schema. */
function fieldsOf(
  schema: unknown,
  path = '',
): { key: string; path: string; schema: Record<string, unknown> }[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const node = schema as Record<string, unknown>;
  const own = Object.entries((node.properties ?? {}) as Record<string, Record<string, unknown>>).map(
    ([key, inner]) => ({ key, path: `${path}.${key}`, schema: inner }),
  );
  return [
    ...own,
    ...own.flatMap((f) => fieldsOf(f.schema, f.path)),
    ...fieldsOf(node.items, `${path}[]`),
    ...((node.anyOf ?? []) as unknown[]).flatMap((one) => fieldsOf(one, path)),
  ];
}
const fields = fieldsOf(designJsonSchema());

test('docs/design.schema.json is what the schema says; when stale, write designJsonSchemaText() to it', () => {
  expect(doc('design.schema.json')).toBe(designJsonSchemaText());
});

test('every field of the schema for editors is described', () => {
  expect(fields.length).toBeGreaterThan(70);
  for (const { path, schema } of fields) expect(schema.description, path).toMatch(/\w/);
});

test('a share and a count carry their description and default', () => {
  const at = (path: string) => fields.find((f) => f.path === path)?.schema;
  expect(at('.limits.wire_load')).toMatchObject({ type: 'string', default: '80 %' });
  expect(at('.feed[].joints')).toMatchObject({ type: 'integer', default: 2 });
});

test('the schema for editors takes what the reader takes, and not a bare number', () => {
  const schema = z.fromJSONSchema(designJsonSchema() as Parameters<typeof z.fromJSONSchema>[0]);
  for (const text of [starter(), base(), ...DEMOS.map(demo)]) {
    design(text);
    expect(schema.safeParse(parse(text)).error).toBeUndefined();
  }
  for (const [find, put] of [
    ['dwell: 3.0 ms', 'dwell: 3.0'],
    ['length: 1.5 m', 'lenght: 1.5 m'],
    ['gauge: 14 AWG', 'gauge: 14'],
    ['stroke: 4', 'stroke: 3'],
  ] as const)
    expect(schema.safeParse(parse(base([find, put]))).success, put).toBe(false);
});

test('docs/format.md names every key, every word and every size', () => {
  const format = doc('format.md');
  for (const { key, path } of fields) expect(format, path).toContain(`\`${key}\``);
  for (const { schema } of fields)
    for (const word of (schema.enum ?? []) as (string | number)[])
      expect(format).toMatch(new RegExp(`\`${String(word)}\``));
  for (const sizes of Object.values(SIZES)) expect(format).toContain(sizes.join(' '));
});

test('docs/format.md lists insulation with its temperature, and fuses with their ratings', () => {
  const lines = doc('format.md').split('\n');
  const cellsOf = (start: string): string[] =>
    (lines.find((line) => line.startsWith(`| ${start} |`)) ?? '').slice(2, -2).split(' | ');
  const classes = cellsOf('class').map((letter, i) => [letter, cellsOf('continuous')[i]]);
  for (const { name, continuous } of INSULATIONS) {
    const types = lines.find(
      (line) => new RegExp(`^\\| (\\w+, )*${name}(, \\w+)* \\|`).test(line) && / °C /.test(line),
    );
    const found = classes.find(([letter]) => letter === name)?.[1] ?? types?.match(/\d+ °C/)?.[0];
    expect(found, name).toBe(`${continuous} °C`);
  }
  for (const { type } of FUSE_TYPES.rows) {
    const ratings = FUSE_RATINGS.rows.filter((row) => row.type === type).map((row) => row.rating);
    expect(cellsOf(`\`${type}\``)[2], type).toBe(`${Math.min(...ratings)} to ${Math.max(...ratings)} A`);
  }
});

test('docs/format.md gives every default', () => {
  const format = doc('format.md');
  for (const { path, schema } of fields) {
    if (schema.default === undefined) continue;
    const rows = format.split('\n').filter((line) => line.startsWith(`| \`${path.split('.').pop()}\``));
    expect(
      rows.some((row) => row.includes(`\`${String(schema.default)}\``)),
      path,
    ).toBe(true);
  }
});

test('the example in docs/format.md passes', () => {
  const example = /```yaml\n([\s\S]*?)```/.exec(doc('format.md'))?.[1] ?? '';
  expect(design(example).coils).toHaveLength(4);
});
