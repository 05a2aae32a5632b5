/**
 * The notation of formulas: spreadsheet arithmetic over names of quantities (see `quantity.ts`).
 * Here it is only cut into tokens; what a name stands for in a cell is for the plan to say.
 */

/** How one axis of a named quantity is chosen. */
export type Selector =
  | { how: 'all'; axis: string }
  | { how: 'owned'; axis: string; owner: string }
  | { how: 'as'; axis: string; other: string }
  | { how: 'before'; axis: string }
  | { how: 'after'; axis: string }
  | { how: 'ahead'; axis: string }
  | { how: 'guard'; axis: string };

/** A name with its selectors, `overlap[lag]`. */
export interface Reference {
  readonly name: string;
  readonly selectors: readonly Selector[];
}

export type Token =
  | { kind: 'reference'; text: string; reference: Reference }
  | { kind: 'function'; text: string }
  | { kind: 'number'; text: string }
  | { kind: 'text'; text: string }
  | { kind: 'sign'; text: string };

const PATTERN =
  /\s+|"(?:[^"]|"")*"|\d+(?:\.\d+)?(?:e-?\d+)?|[A-Za-z_][A-Za-z0-9_.]*(?:\[[^\]]*\])?|<=|>=|<>|[-+*/^&=<>(),:]/y;

/** Cuts a formula into tokens. Throws, naming the place, on anything outside the notation. */
export function tokens(formula: string): Token[] {
  const found: Token[] = [];
  PATTERN.lastIndex = 0;
  while (PATTERN.lastIndex < formula.length) {
    const at = PATTERN.lastIndex;
    const text = PATTERN.exec(formula)?.[0];
    if (text === undefined) throw new Error(`formula "${formula}": cannot read "${formula.slice(at)}"`);
    if (text.trim() !== '') found.push(token(text, formula[PATTERN.lastIndex]));
  }
  return found;
}

function token(text: string, next: string | undefined): Token {
  if (text.startsWith('"')) return { kind: 'text', text };
  if (/^\d/.test(text)) return { kind: 'number', text };
  if (!/^[A-Za-z_]/.test(text)) return { kind: 'sign', text };
  if (next === '(' && !text.includes('[')) return { kind: 'function', text };
  return { kind: 'reference', text, reference: reference(text) };
}

function reference(text: string): Reference {
  const [, name = '', inside] = /^([^[]+)(?:\[(.*)\])?$/.exec(text) ?? [];
  return { name, selectors: inside === undefined ? [] : inside.split(',').map((s) => selector(s.trim())) };
}

function selector(text: string): Selector {
  const [, axis = '', rest = ''] = /^(\w+)(.*)$/.exec(text) ?? [];
  if (rest === '') return { how: 'all', axis };
  if (rest === '-1') return { how: 'before', axis };
  if (rest === '+1') return { how: 'after', axis };
  if (rest === ' ahead') return { how: 'ahead', axis };
  if (rest === ' guard') return { how: 'guard', axis };
  const owner = /^ of (\w+)$/.exec(rest)?.[1];
  if (owner) return { how: 'owned', axis, owner };
  const other = /^=(\w+)$/.exec(rest)?.[1];
  if (other) return { how: 'as', axis, other };
  throw new Error(`"${text}" is not a way to choose members`);
}

/** Names that a formula refers to, each once. */
export const namesIn = (formula: string): string[] => [
  ...new Set(tokens(formula).flatMap((t) => (t.kind === 'reference' ? [t.reference.name] : []))),
];
