/**
 * Every file of cases beside this one is run: `change` is a list of [find, replace] on `base.yaml`, or `text` is a
 * whole file. The sign ▶ in it stands where a problem must be placed and is taken out before reading; a message may
 * name its place itself instead, `12:15 …`. `says` are the beginnings of all problems, in order: no more, no fewer.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { printProblem } from '../../src/design/problems.ts';
import { readDesign } from '../../src/design/read.ts';

interface Case {
  case: string;
  change?: [string, string][];
  text?: string;
  says: string[];
}

const here = new URL('.', import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, here), 'utf8');
const base = read('base.yaml');

function textOf(one: Case): string {
  let text = one.text ?? base;
  for (const [find, put] of one.change ?? []) {
    expect(text, `"${find}" is not in the base`).toContain(find);
    text = text.replace(find, () => put);
  }
  return text;
}

/** Text without the marks, and the places where they stood, `12:15`. */
function unmark(marked: string): { text: string; places: string[] } {
  const places: string[] = [];
  const lines = marked.split('\n').map((line, i) => {
    const pieces = line.split('▶');
    let column = 1;
    for (const piece of pieces.slice(0, -1)) {
      column += piece.length;
      places.push(`${i + 1}:${column}`);
    }
    return pieces.join('');
  });
  return { text: lines.join('\n'), places };
}

test('the base itself passes', () => {
  expect(readDesign(base, 'design.yaml')).toMatchObject({ ok: true });
});

const files = readdirSync(here).filter((name) => name.endsWith('.yaml') && name !== 'base.yaml');

describe.each(files)('%s', (file) => {
  const cases: Case[] = parse(read(file));
  test.each(cases.map((one) => [one.case, one] as const))('%s', (_, one) => {
    const { text, places } = unmark(textOf(one));
    const marks = [...places];
    const wanted = one.says.map((say) => {
      const placed = /^\d+:\d+/.test(say) ? say : `${marks.shift()} ${say}`;
      return `design.yaml:${placed}`;
    });
    expect(marks, 'a mark for each message').toEqual([]);
    const result = readDesign(text, 'design.yaml');
    const got = result.ok ? [] : result.problems.map(printProblem);
    const cut = got.map((line, i) => line.slice(0, wanted[i]?.length ?? 0));
    expect(got.length === wanted.length ? cut : got).toEqual(wanted);
    // Words of the schema library are not for authors.
    for (const line of got) expect(line).not.toMatch(/Invalid|expected|received|undefined/);
  });
});
