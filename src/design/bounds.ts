/**
 * Bounds on a text before the YAML library parses it. The library descends by recursion and keeps every sign of a
 * broken text as an error of its own: a mebibyte of brackets takes it many seconds and more memory than there is.
 * Its lexer alone runs in linear time, and what it finds can be counted while it goes; the parser goes on with that.
 */
import { CST, Lexer } from 'yaml';

/** Nesting of lists and maps in brackets, and of dashes in a line. The format needs 4. */
const DEEPEST = 24;
/**
 * Signs and words, without blanks and comments. The most values that a file may have, as a map of `{key: value, …}`,
 * stay below.
 */
const MOST_SIGNS = 100_000;
/** Blanks, line ends and comments besides. */
const MOST_BLANKS = 300_000;
/** Brackets that close nothing: an error each, which costs the library dear. */
const MOST_STRAY = 2000;

export interface Excess {
  /** Where it goes too far [characters from the start]. */
  readonly offset: number;
  readonly what: 'deep' | 'many' | 'stray';
}

/** The text cut into what the YAML parser takes; or the first place where it goes beyond what a design can need. */
export function lexed(text: string): { lexemes: readonly string[]; excess: Excess | null } {
  const lexemes: string[] = [];
  let [offset, depth, stray, dashes, signs, blanks] = [0, 0, 0, 0, 0, 0];
  for (const lexeme of new Lexer().lex(text)) {
    switch (CST.tokenType(lexeme)) {
      case 'flow-map-start':
      case 'flow-seq-start':
        depth += 1;
        break;
      case 'flow-map-end':
      case 'flow-seq-end':
        if (depth > 0) depth -= 1;
        else stray += 1;
        break;
      case 'seq-item-ind':
      case 'explicit-key-ind':
      case 'map-value-ind':
        // `: : :` nests as dashes do; a key between two colons starts anew.
        dashes += 1;
        break;
      case 'space':
      case 'comment':
        blanks += 1;
        signs -= 1;
        break;
      case 'newline':
        blanks += 1;
        signs -= 1;
        dashes = 0;
        break;
      case 'doc-start':
      case 'doc-end':
        depth = 0;
        break;
      default:
        if (depth > 0) dashes = 0;
    }
    signs += 1;
    const what =
      depth + dashes > DEEPEST
        ? 'deep'
        : stray > MOST_STRAY
          ? 'stray'
          : signs > MOST_SIGNS || blanks > MOST_BLANKS
            ? 'many'
            : null;
    if (what !== null) return { lexemes, excess: { offset, what } };
    lexemes.push(lexeme);
    offset += lexeme.length;
  }
  return { lexemes, excess: null };
}
