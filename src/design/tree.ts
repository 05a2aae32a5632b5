/** The file's text as plain values, with the place of each. */
import { Composer, type CST, type Document, Parser, type YAMLError, YAMLParseError } from 'yaml';
import { type Excess, lexed } from './bounds.ts';
import { type Path, type Problem, quote } from './problems.ts';
import { idOf, MOST_LEVELS, Walk } from './walk.ts';

/** Largest file [bytes]. A full design has about 10 kB; beyond this it is not a design. */
const MOST_BYTES = 1024 * 1024;
/** Syntax errors listed: one slip brings others with it, and after this many the rest tells nothing. */
const MOST_SYNTAX_ERRORS = 50;

/** Line and column; with the file and the key there where it is another file than the tree's own. */
export interface Spot {
  readonly line: number;
  readonly column: number;
  readonly file?: string;
  readonly key?: string;
}

export interface Tree {
  /** Maps have no prototype. Undefined when nothing could be read. */
  readonly value: unknown;
  readonly problems: readonly Problem[];
  /** The text as the library reads it, for changes of it; null when it is not sound. */
  readonly doc: Document | null;
  /** True when the schema makes sense: the text is sound YAML. */
  readonly sound: boolean;
  /** True when checks between fields make sense, too: no member of a list was lost. */
  readonly whole: boolean;
  has(path: Path): boolean;
  /** Line and column of a value or its key; of the nearest parent that is there when it is not. */
  place(path: Path, on?: 'key' | 'value'): Spot;
}

/** What a YAML error means to the author of a design, and what to do. Others are passed on as the library says them. */
const SYNTAX: readonly (readonly [code: string, words: RegExp, found: string, taken: string])[] = [
  ['MULTIPLE_DOCS', /./, 'more than one document', 'takes one document of YAML 1.2 or JSON'],
  ['TAG_RESOLVE_FAILED', /./, 'a YAML tag', 'takes plain values'],
  ['TAB_AS_INDENT', /./, 'a tab in front of the line', 'indent with blanks'],
  [
    'BLOCK_AS_IMPLICIT_KEY',
    /sequence/,
    'a dash below keys that have none',
    'start every member of a list with a dash, the first one too',
  ],
  ['BLOCK_AS_IMPLICIT_KEY', /mapping/i, 'two colons in one line', 'put text with a colon in quotes'],
];
const YAML_TAKEN = 'takes one document of YAML 1.2 or JSON';

function syntaxError({ code, message }: YAMLError): [string, string] {
  const known = SYNTAX.find(([of, words]) => of === code && words.test(message));
  if (known) return [known[2], known[3]];
  return [`YAML that cannot be read (${quote(message.split('\n')[0] ?? '').slice(1, -1)})`, YAML_TAKEN];
}

/** What a text that goes too far is called, and what is taken. */
const EXCESS: Readonly<Record<Excess['what'], readonly [string, string]>> = {
  deep: ['values nested too deep', `allowed: ${MOST_LEVELS} levels`],
  many: ['far more signs than a design has', 'takes a design of some hundred lines'],
  stray: ['brackets that close nothing', YAML_TAKEN],
};

/** The document of a text that is cut already; `begins` is told where its lines start. */
function composed(lexemes: readonly string[], length: number, begins: (offset: number) => void): Document {
  const parser = new Parser(begins);
  function* tokens(): Generator<CST.Token> {
    begins(0);
    for (const lexeme of lexemes) yield* parser.next(lexeme);
    yield* parser.end();
  }
  const composer = new Composer({
    prettyErrors: false,
    strict: true,
    uniqueKeys: false,
    // Named, or a `%YAML 1.1` line would bring back sexagesimal numbers, dates and `yes` for true.
    schema: 'core',
  });
  // The composer yields a document for whatever text; a second one is a fault.
  const [doc, other] = composer.compose(tokens(), true, length);
  if (doc === undefined) throw new Error('no document was composed');
  if (other)
    doc.errors.push(
      new YAMLParseError([other.range[0], other.range[1]], 'MULTIPLE_DOCS', 'a second document'),
    );
  return doc;
}

/** Reads YAML 1.2 or JSON. Never throws on account of the text. */
export function readTree(text: string, file: string): Tree {
  const walk = new Walk(file);
  const end = (value: unknown, doc: Document | null): Tree => ({
    value,
    doc,
    sound: doc !== null,
    whole: !walk.merged,
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
    walk.report(0, [], 'a file of more than 1 MiB', 'allowed: 1 MiB (1 048 576 bytes)');
    return end(undefined, null);
  }
  const { lexemes, excess } = lexed(text);
  if (excess !== null) {
    walk.note(text);
    walk.report(excess.offset, [], ...EXCESS[excess.what]);
    return end(undefined, null);
  }
  try {
    const doc = composed(lexemes, text.length, walk.counter.addNewLine);
    const all = [...doc.errors, ...doc.warnings];
    // One slip brings others with it: the first of each line is said.
    const first = all.filter(
      ({ pos: [at] }, i) => i === 0 || walk.at(at).line !== walk.at(all[i - 1]?.pos[0] ?? 0).line,
    );
    for (const error of first.slice(0, MOST_SYNTAX_ERRORS))
      walk.report(error.pos[0], [], ...syntaxError(error));
    const next = first[MOST_SYNTAX_ERRORS];
    if (next)
      walk.report(next.pos[0], [], `${first.length - MOST_SYNTAX_ERRORS} more such lines`, YAML_TAKEN);
    // What a broken text seems to hold is not worth a word.
    if (all.length > 0) return end(undefined, null);
    const value = walk.plain(doc.contents, [], 0, 0);
    return end(value, walk.gaveUp ? null : doc);
  } catch (error) {
    // The library descends into nested values by recursion; a file made for it exhausts the stack.
    if (!(error instanceof RangeError)) throw error;
    walk.report(0, [], 'values nested too deep', `allowed: ${MOST_LEVELS} levels`);
    return end(undefined, null);
  }
}
