/** Every key of the JSON result stands in docs/result.md. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { run } from '../../src/run.ts';
import { toJson } from '../../src/writers/json.ts';
import { demo } from '../design/helpers.ts';

const root = new URL('../../', import.meta.url);

function keysOf(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(keysOf);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inside]) => [key, ...keysOf(inside)]);
}

test('docs/result.md has every key', () => {
  // An uncovered branch makes a window, so that its keys are met too.
  const text = demo('hill-climb-six');
  const read = readDesign(
    text.replace(/(run: branch[\s\S]*?gauge: )auto/, '$118 AWG'),
    'hill-climb-six.yaml',
  );
  if (!read.ok) throw new Error('the design cannot be read');
  const page = readFileSync(new URL('docs/result.md', root), 'utf8');
  const keys = new Set(keysOf(toJson(run(read.design))));
  expect(keys.has('from_A')).toBe(true);
  expect([...keys].filter((key) => !new RegExp(`[\`.]${key}(?:\\[\\])?\``).test(page))).toEqual([]);
});
