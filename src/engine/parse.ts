/** From the tokens of a formula to a tree, by the rules of precedence that spreadsheet programs share. */
import { type Reference, type Token, tokens } from '../basis/formula.ts';

export type Operator = '+' | '-' | '*' | '/' | '^' | Comparison;
export type Comparison = '=' | '<>' | '<' | '>' | '<=' | '>=';

export type Tree =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'reference'; readonly reference: Reference }
  | { readonly kind: 'negative'; readonly of: Tree }
  | { readonly kind: 'operation'; readonly sign: Operator; readonly left: Tree; readonly right: Tree }
  | { readonly kind: 'call'; readonly name: string; readonly args: readonly Tree[] };

/** Loosest first; all of them group from the left. */
const LEVELS: readonly (readonly string[])[] = [
  ['=', '<>', '<', '>', '<=', '>='],
  ['+', '-'],
  ['*', '/'],
  ['^'],
];

const parsed = new Map<string, Tree>();

/** The tree of a formula, made once. Throws, naming the formula, on what is outside the notation. */
export function parse(formula: string): Tree {
  const known = parsed.get(formula);
  if (known !== undefined) return known;
  const tree = new Parser(formula).whole();
  parsed.set(formula, tree);
  return tree;
}

class Parser {
  private readonly formula: string;
  private readonly tokens: readonly Token[];
  private at = 0;

  constructor(formula: string) {
    this.formula = formula;
    this.tokens = tokens(formula);
  }

  whole(): Tree {
    const tree = this.level(0);
    if (this.at < this.tokens.length) this.refuse();
    return tree;
  }

  private level(depth: number): Tree {
    const signs = LEVELS[depth];
    if (signs === undefined) return this.operand();
    let left = this.level(depth + 1);
    for (;;) {
      const next = this.tokens[this.at];
      if (next?.kind !== 'sign' || !signs.includes(next.text)) return left;
      this.at += 1;
      left = { kind: 'operation', sign: next.text as Operator, left, right: this.level(depth + 1) };
    }
  }

  /** A sign before an operand binds tighter than a power does. */
  private operand(): Tree {
    const token = this.tokens[this.at];
    this.at += 1;
    switch (token?.kind) {
      case 'number':
        return { kind: 'number', value: Number(token.text) };
      case 'text':
        return { kind: 'text', value: token.text.slice(1, -1).replaceAll('""', '"') };
      case 'reference':
        return { kind: 'reference', reference: token.reference };
      case 'function':
        this.take('(');
        return { kind: 'call', name: token.text, args: this.args() };
      case 'sign':
        if (token.text === '-') return { kind: 'negative', of: this.operand() };
        if (token.text === '(') {
          const inside = this.level(0);
          this.take(')');
          return inside;
        }
        return this.refuse();
      default:
        return this.refuse();
    }
  }

  private args(): Tree[] {
    const found: Tree[] = [];
    if (this.next(')')) return found;
    do found.push(this.level(0));
    while (this.next(','));
    this.take(')');
    return found;
  }

  private next(sign: string): boolean {
    if (this.tokens[this.at]?.text !== sign) return false;
    this.at += 1;
    return true;
  }

  private take(sign: string): void {
    if (!this.next(sign)) this.refuse();
  }

  private refuse(): never {
    const rest = this.tokens.slice(Math.max(0, this.at - 1)).map((t) => t.text);
    throw new Error(`formula "${this.formula}": cannot read from "${rest.join('')}"`);
  }
}
