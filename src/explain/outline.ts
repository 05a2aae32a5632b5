/** How a tree is read: which of its values are a branch, which a few words, and formulas that only name another value. */
import type { Part, Told } from './tree.ts';

/** A value that is told in a few words and not by a branch of its own. */
export const short = ({ formula }: Told): boolean => formula === '';

/** What enters goes before what only decides or picks. */
export const inOrder = (parts: readonly Part[]): Part[] => [
  ...parts.filter(({ role }) => role === 'enters'),
  ...parts.filter(({ role }) => role !== 'enters'),
];

/** The members behind a label; nothing for what exists once. */
export const of = (told: Told): string => (told.of === '' ? '' : `, ${told.of}`);

/** A dash in a table of figures is a word here. */
export const known = (text: string): string => (text === '–' ? 'not known' : text);

/** A formula as it is read, and the value that it is of. */
export interface Line {
  readonly text: string;
  readonly told: Told;
}

/** Formulas down to the first that is more than the name of another value. */
export function throughOf(told: Told): { lines: readonly Line[]; ends: Told } {
  const lines = told.formula === '' ? [] : [{ text: told.formula, told }];
  const next = told.parts.flatMap((part) => (part.role === 'enters' ? part.told : []));
  const [one] = next;
  if (one === undefined || next.length > 1 || one.id !== told.formula || short(one))
    return { lines, ends: told };
  const inner = throughOf(one);
  return { lines: [{ text: `${told.formula}${of(one)}`, told }, ...inner.lines], ends: inner.ends };
}

/** Which conductor carries which coil is plain: told one by one it would only fill the screen. */
export const alike = ({ count, told }: Part): boolean =>
  count > 1 &&
  told.length > 0 &&
  told.every(({ kind, text }) => kind === 'structure' && text === told[0]?.text);
