/**
 * Reads a kit writer's own words: a YAML map whose keys are parts of the instructions. A part given replaces ours,
 * but for cautions and reasons to stop, which are added to ours.
 */
import { nearest } from '../design/nearest.ts';
import { keyText, type Path, type Problem, quote, show, sortProblems } from '../design/problems.ts';
import { readTree } from '../design/tree.ts';
import { factNames, isFact } from './facts.ts';
import { placeholders, wordsOnly } from './fill.ts';
import {
  ADDED,
  CONDITIONS,
  type Fault,
  LISTS,
  type Line,
  type ListName,
  WORDS,
  type Words,
} from './words.ts';

export type ReadWords =
  | {
      readonly ok: true;
      readonly words: Words;
      /** Numbers that stand in the words themselves, and so follow no design: key and number. */
      readonly literals: readonly string[];
    }
  | { readonly ok: false; readonly problems: Problem[] };

const LONGEST = 1000;
const MOST_LINES = 60;
const KEYS: readonly string[] = [...LISTS, 'faults'];
const LINE_KEYS: readonly string[] = ['text', 'when'];
const FAULT_KEYS: readonly string[] = ['sign', 'cause', 'act'];

const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Reads the words in `text`; `file` is its name in messages. Gives every problem with its place. */
export function readWords(text: string, file: string): ReadWords {
  const tree = readTree(text, file);
  const problems: Problem[] = [...tree.problems];
  const literals: string[] = [];
  const report = (path: Path, found: string, taken: string, on: 'key' | 'value' = 'value'): void => {
    problems.push({ file, ...tree.place(path, on), key: keyText(path), found, taken });
  };
  const unknownKey = (path: Path, known: readonly string[]): void => {
    const key = String(path.at(-1));
    const near = nearest(key, known);
    const taken = near === null ? `takes: ${known.join(', ')}` : `did you mean "${near}"?`;
    report(path, `unknown key ${quote(key)}`, taken, 'key');
  };
  const sentence = (value: unknown, path: Path): string => {
    if (typeof value !== 'string' || value.trim() === '' || value.length > LONGEST) {
      report(path, `found ${show(value)}`, `takes text of 1 to ${LONGEST} characters`);
      return '';
    }
    for (const key of placeholders(value).filter((one) => !isFact(one))) {
      const near = nearest(key, factNames());
      report(
        path,
        `the unknown value ${quote(`{${key}}`)}`,
        near === null ? `takes: ${factNames().join(', ')}` : `did you mean "{${near}}"?`,
      );
    }
    for (const [number] of wordsOnly(value).matchAll(/\p{L}*\p{N}[\p{N}.,]*/gu))
      literals.push(`${keyText(path)}: ${number}`);
    if (/[{}]/.test(wordsOnly(value))) report(path, 'a brace that is alone', 'takes braces in pairs');
    return value;
  };
  const line = (value: unknown, path: Path): Line => {
    if (!isMap(value)) return { text: sentence(value, path) };
    for (const key of Object.keys(value)) if (!LINE_KEYS.includes(key)) unknownKey([...path, key], LINE_KEYS);
    const when = CONDITIONS.find((one) => one === value.when);
    if (value.when !== undefined && when === undefined)
      report([...path, 'when'], `found ${show(value.when)}`, `takes one of: ${CONDITIONS.join(', ')}`);
    return { text: sentence(value.text, [...path, 'text']), ...(when === undefined ? {} : { when }) };
  };
  const fault = (value: unknown, path: Path): Fault => {
    if (!isMap(value)) {
      report(path, `found ${show(value)}`, `takes a map with the keys: ${FAULT_KEYS.join(', ')}`);
      return { sign: '', cause: '', act: '' };
    }
    for (const key of Object.keys(value))
      if (!FAULT_KEYS.includes(key)) unknownKey([...path, key], FAULT_KEYS);
    const of = (key: string): string => sentence(value[key], [...path, key]);
    return { sign: of('sign'), cause: of('cause'), act: of('act') };
  };
  const list = (value: unknown, path: Path): unknown[] => {
    if (Array.isArray(value) && value.length <= MOST_LINES) return value;
    report(
      path,
      Array.isArray(value) ? `${value.length} lines` : `found ${show(value)}`,
      `takes a list of at most ${MOST_LINES}`,
    );
    return [];
  };

  if (tree.sound && !isMap(tree.value))
    report([], `found ${show(tree.value)}`, `takes a map with the keys: ${KEYS.join(', ')}`);
  const given: Record<string, unknown> = tree.sound && isMap(tree.value) ? tree.value : {};
  for (const key of Object.keys(given)) if (!KEYS.includes(key)) unknownKey([key], KEYS);

  const lines = (part: ListName): readonly Line[] => {
    if (!Object.hasOwn(given, part)) return WORDS[part];
    const own = list(given[part], [part]).map((one, i) => line(one, [part, i]));
    return ADDED.includes(part) ? [...WORDS[part], ...own] : own;
  };
  const parts = Object.fromEntries(LISTS.map((part) => [part, lines(part)])) as Record<
    ListName,
    readonly Line[]
  >;
  const faults = Object.hasOwn(given, 'faults')
    ? list(given.faults, ['faults']).map((one, i) => fault(one, ['faults', i]))
    : WORDS.faults;
  return problems.length > 0
    ? { ok: false, problems: sortProblems(problems) }
    : { ok: true, words: { ...parts, faults }, literals };
}
