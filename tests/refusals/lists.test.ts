/** A list that was written as a map, a forgotten dash above all: one problem, at its place, that says what to do. */
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { keyText, type Path, printProblem } from '../../src/design/problems.ts';
import { readDesign } from '../../src/design/read.ts';
import { base, DEMOS, demo } from '../design/helpers.ts';

const said = (text: string): string[] => {
  const result = readDesign(text, 'x.yaml');
  return result.ok ? ['accepted'] : result.problems.map(printProblem);
};

/** Every list of a file. */
function listsOf(value: unknown, path: Path = []): Path[] {
  const own = Array.isArray(value) ? [path] : [];
  if (typeof value !== 'object' || value === null) return own;
  return [
    ...own,
    ...Object.entries(value).flatMap(([key, inner]) =>
      listsOf(inner, [...path, Array.isArray(value) ? Number(key) : key]),
    ),
  ];
}

/** The value with its list at a path as the map that its first member is, or has as its key. */
function asMap(value: unknown, path: Path): unknown {
  const [step, ...rest] = path;
  if (step === undefined) {
    const first = (value as unknown[])[0];
    return typeof first === 'object' ? first : { [String(first)]: null };
  }
  const copy = structuredClone(value) as Record<string | number, unknown>;
  copy[step] = asMap(copy[step], rest);
  return copy;
}

test.each(DEMOS)('every list of %s as a map', (name) => {
  const data = parse(demo(name));
  const lists = listsOf(data);
  expect(lists.length).toBeGreaterThan(3);
  for (const path of lists) {
    const problems = said(JSON.stringify(asMap(data, path), null, 1));
    expect(problems, keyText(path)).toHaveLength(1);
    expect(problems[0]).toContain(` ${keyText(path)}: found a map; takes `);
    expect(problems[0]).toMatch(/dash|\[/);
  }
});

test('a run without its dash, alone', () => {
  const text = base(['  - run: strap\n', '    run: strap\n']);
  const line = text.split('\n').findIndex((one) => one.includes('run: strap')) + 1;
  expect(said(text)).toEqual([
    `x.yaml:${line}:5 return: found a map; takes a list of runs: start each of them with a dash, "- run: main"`,
  ]);
});

test('a second run without its dash', () => {
  const text = base(['  - run: drop\n', '    run: drop\n']);
  const line = text.split('\n').findIndex((one) => one.includes('run: drop')) + 1;
  expect(said(text)).toEqual([
    `x.yaml:${line}:5 feed[0].run: a second "run" in one member; start each member of the list with a dash: "- run: …"`,
  ]);
});

test('a first run without its dash, before one that has it', () => {
  const text = base(['  - run: main\n', '    run: main\n']);
  const line = text.split('\n').findIndex((one) => one.includes('run: drop')) + 1;
  const problems = said(text);
  expect(problems).toHaveLength(1);
  expect(problems[0]).toMatch(
    new RegExp(`^x.yaml:${line}:\\d+: a dash below keys that have none; start every member`),
  );
});

test('an unreadable list brings no problems of what names its members', () => {
  const kit = 'kit: { colours: { main: red, drop: blue } }\n';
  const readings = 'measured:\n  - { what: resistance, run: main, value: 4 mohm }\n';
  const text = base(
    ['title: Base\n', `title: Base\n${kit}${readings}`],
    ['\nfeed:\n', '\nfeed: x\nsizes2:\n'],
  );
  expect(said(text)).toHaveLength(2);
});
