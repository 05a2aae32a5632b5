/** The folders stand in the order of the flow, and imports go one way: each part uses only what lies before it. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

/** In the order of the flow. A new folder or file right under src needs its place here. */
const ORDER = [
  ['basis'],
  ['data'],
  ['design'],
  ['model'],
  ['engine'],
  ['own'],
  ['views'],
  ['saved'],
  ['explain'],
  ['transient'],
  ['findings'],
  ['readings'],
  ['remedies'],
  ['shop'],
  ['spread'],
  ['study'],
  ['pictures'],
  ['ooxml'],
  ['writers'],
  ['kit'],
  ['docs'],
  ['run.ts', 'run-laid.ts'],
  ['page'],
  ['commands'],
  ['cli.ts', 'build'],
];

const src = fileURLToPath(new URL('../src', import.meta.url));
const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((file) =>
  /\.(?:tsx?|mjs)$/.test(file),
);

/** Every kind of import, also of types only and inside a type, without what stands in comments. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(src, file), 'utf8')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/^\s*\/\/.*$/gm, '');
  const found = text.matchAll(
    /^\s*(?:import|export)\s[^'"`;]*?\bfrom\s*['"]([^'"]+)['"]|\bimport\s*\(?\s*['"]([^'"]+)['"]/gm,
  );
  return [...found].map(([, from, bare]) => from ?? bare ?? '');
}

const own = new Map(
  files.map((file) => [
    file,
    importsOf(file)
      .filter((path) => path.startsWith('.'))
      .map((path) => normalize(join(dirname(file), path))),
  ]),
);

const place = (file: string): number => ORDER.findIndex((group) => group.includes(file.split('/')[0] ?? ''));

test('the reading of imports finds the kinds that there are', () => {
  // If nothing were found, the tests below could not fail: these three are known, one of each kind.
  expect(own.get('cli.ts')).toContain('commands/help.ts');
  expect(own.get('cli.ts')).toContain('commands/size.ts');
  expect(own.get('basis/quantity.ts')).toContain('basis/sources.ts');
});

test('every file has its place in the order', () => {
  expect(files.filter((file) => place(file) < 0)).toEqual([]);
});

test('every file imports only what lies before it, and what exists', () => {
  const wrong = files.flatMap((file) =>
    (own.get(file) ?? [])
      .filter((other) => !own.has(other) || place(other) > place(file))
      .map((other) => `${file} -> ${other}`),
  );
  expect(wrong).toEqual([]);
});

test('no file imports itself by way of others', () => {
  const cycles: string[] = [];
  const done = new Set<string>();
  const walk = (file: string, path: string[]): void => {
    if (path.includes(file)) cycles.push([...path.slice(path.indexOf(file)), file].join(' -> '));
    else if (!done.has(file)) {
      for (const other of own.get(file) ?? []) walk(other, [...path, file]);
      done.add(file);
    }
  };
  for (const file of files) walk(file, []);
  expect(cycles).toEqual([]);
});

test('what writes a workbook as a file knows nothing of coils', () => {
  const own = files.filter((file) => file.startsWith('ooxml/'));
  expect(own.length).toBeGreaterThan(1);
  const others = own.flatMap((file) =>
    importsOf(file).filter((path) => !/^\.\/|^\.\.\/basis\/address\.ts$|^fflate$/.test(path)),
  );
  expect(others).toEqual([]);
});

test('only commands and what stands above them touch files and processes', () => {
  const touch = files.filter(
    (file) =>
      place(file) < place('commands') &&
      importsOf(file).some((path) => /^node:(fs|child_process|net|http|https|os)\b/.test(path)),
  );
  expect(touch).toEqual([]);
});
