/** The file's text as plain values, with the place of each. */
import { parseDocument } from 'yaml';
import { type Excess, excessOf } from './bounds.ts';
import { type Path, type Problem, quote } from './problems.ts';
import { idOf, MOST_LEVELS, Walk } from './walk.ts';

/** Largest file [bytes]. A full design has about 10 kB; beyond this it is not a design. */
const MOST_BYTES = 1024 * 1024;
/** Syntax errors listed: one slip brings others with it, and after this many the rest tells nothing. */
const MOST_SYNTAX_ERRORS = 50;

export interface Tree {
  /** Maps have no prototype. Undefined when nothing could be read. */
  readonly value: unknown;
  readonly problems: readonly Problem[];
  /** True when schema and cross checks make sense: the text is sound YAML. */
  readonly sound: boolean;
  has(path: Path): boolean;
  /** Line and column of a value or its key; of the nearest parent that is there when it is not. */
  place(path: Path, on?: 'key' | 'value'): { line: number; column: number };
}

/** What a YAML error means to the author of a design. Others are passed on as the library says them. */
const SYNTAX: Readonly<Record<string, string>> = {
  MULTIPLE_DOCS: 'more than one document',
  TAG_RESOLVE_FAILED: 'a YAML tag',
};

/** What a text that goes too far is called, and what is taken. */
const EXCESS: Readonly<Record<Excess['what'], readonly [string, string]>> = {
  deep: ['values nested too deep', `takes ${MOST_LEVELS} levels at most`],
  many: ['far more signs than a design has', 'takes a design of some hundred lines'],
  stray: ['brackets that close nothing', 'takes one document of YAML 1.2 or JSON'],
};

/** Reads YAML 1.2 or JSON. Never throws on account of the text. */
export function readTree(text: string, file: string): Tree {
  const walk = new Walk(file);
  const end = (value: unknown, sound: boolean): Tree => ({
    value,
    sound,
    problems: walk.problems,
    has: (path) => walk.spots.has(idOf(path)),
    place: (path, on = 'value') => {
      for (let n = path.length; n >= 0; n--) {
        const spot = walk.spots.get(idOf(path.slice(0, n)));
        if (spot) return walk.at(n === path.length ? spot[on] : spot.value);
      }
      return { line: 1, column: 1 };
    },
  });
  const bytes = text.length > MOST_BYTES ? text.length : new TextEncoder().encode(text).length;
  if (bytes > MOST_BYTES) {
    walk.report(0, [], 'a file of more than 1 MiB', 'takes 1 MiB (1 048 576 bytes) at most');
    return end(undefined, false);
  }
  const excess = excessOf(text);
  if (excess !== null) {
    walk.note(text);
    walk.report(excess.offset, [], ...EXCESS[excess.what]);
    return end(undefined, false);
  }
  try {
    const doc = parseDocument(text, {
      lineCounter: walk.counter,
      prettyErrors: false,
      strict: true,
      uniqueKeys: false,
      // Named, or a `%YAML 1.1` line would bring back sexagesimal numbers, dates and `yes` for true.
      schema: 'core',
    });
    const all = [...doc.errors, ...doc.warnings];
    for (const error of all.slice(0, MOST_SYNTAX_ERRORS)) {
      const found =
        SYNTAX[error.code] ??
        `YAML that cannot be read (${quote(error.message.split('\n')[0] ?? '').slice(1, -1)})`;
      walk.report(error.pos[0], [], found, 'takes one document of YAML 1.2 or JSON');
    }
    const next = all[MOST_SYNTAX_ERRORS];
    if (next)
      walk.report(
        next.pos[0],
        [],
        `${all.length - MOST_SYNTAX_ERRORS} more such errors`,
        'takes one document of YAML 1.2 or JSON',
      );
    const value = walk.plain(doc.contents, [], 0, 0);
    return end(value, all.length === 0 && !walk.gaveUp);
  } catch (error) {
    // The library descends into nested values by recursion; a file made for it exhausts the stack.
    if (!(error instanceof RangeError)) throw error;
    walk.report(0, [], 'values nested too deep', `takes ${MOST_LEVELS} levels at most`);
    return end(undefined, false);
  }
}
