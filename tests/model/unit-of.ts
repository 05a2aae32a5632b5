/**
 * Which unit a formula yields, worked out from the units of what it names.
 *
 *   comparison  =  sum    { = < > … sum }      both sides of one unit; the answer is a plain number
 *   sum         =  term   { + − term }         all of one unit
 *   term        =  power  { * / power }        units combine
 *   power       =  sign   { ^ sign }           a unit only to the power of a number that stands there
 *
 * The empty text and 0 fit any unit: nothing is known, nothing is there.
 */
import { type Token, tokens } from '../../src/basis/formula.ts';
import { unit } from '../../src/basis/units.ts';

/** Exponents of the base dimensions with the factor to SI; words; or what fits anything. */
export type Found = { powers: readonly number[]; factor: number } | 'text' | 'any';

const PLAIN: Found = unit('1');

/** `text` for words, as in the records. */
export const declared = (text: string): Found => (text === 'text' ? 'text' : unit(text));

const close = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));

/** True when both are one unit, factor included, or when one of them fits anything. */
export function same(a: Found, b: Found): boolean {
  if (a === 'any' || b === 'any') return true;
  if (a === 'text' || b === 'text') return a === b;
  return a.powers.every((p, i) => close(p, b.powers[i] ?? Number.NaN)) && close(a.factor / b.factor, 1);
}

const show = (found: Found): string =>
  typeof found === 'string'
    ? found
    : `${found.factor}·[${found.powers.map((p) => Number(p.toFixed(3))).join(' ')}]`;

/** Functions that hand on the unit of their arguments, all of one unit. */
const KEEPING = ['MIN', 'MAX', 'SUM'];
const COUNTING = ['COUNT', 'ISNUMBER'];

/** The unit of a formula. `unitOf` tells that of a name. Throws, saying what does not fit. */
export function unitOfFormula(formula: string, unitOf: (name: string) => Found): Found {
  const all = tokens(formula);
  let at = 0;
  const fail = (what: string): never => {
    throw new Error(`${what} in "${formula}"`);
  };
  const peek = (): Token | undefined => all[at];
  const take = (text?: string): Token => {
    const token = all[at++];
    if (!token || (text !== undefined && token.text !== text)) return fail(`"${token?.text}" for "${text}"`);
    return token;
  };
  const isSign = (...signs: string[]): boolean =>
    peek()?.kind === 'sign' && signs.includes(peek()?.text ?? '');
  const joined = (a: Found, b: Found, what: string): Found => {
    if (!same(a, b)) fail(`${what} ${show(a)} and ${show(b)}`);
    return a === 'any' ? b : a;
  };
  const plain = (found: Found, what: string): void => {
    if (!same(found, PLAIN)) fail(`${what} has the unit ${show(found)}`);
  };
  const product = (a: Found, b: Found, sign: 1 | -1): Found => {
    if (a === 'text' || b === 'text') return fail('words in a product');
    if (a === 'any' || b === 'any') return 'any';
    return {
      powers: a.powers.map((p, i) => p + sign * (b.powers[i] ?? 0)),
      factor: a.factor * b.factor ** sign,
    };
  };
  const raised = (a: Found, exponent: number): Found => {
    if (a === 'text') return fail('words in a power');
    if (a === 'any') return a;
    return { powers: a.powers.map((p) => p * exponent), factor: a.factor ** exponent };
  };

  function comparison(): Found {
    let left = sum();
    while (isSign('=', '<>', '<', '>', '<=', '>=')) {
      const { text } = take();
      joined(left, sum(), `"${text}" between`);
      left = PLAIN;
    }
    return left;
  }
  function sum(): Found {
    let left = term();
    while (isSign('+', '-')) {
      const { text } = take();
      left = joined(left, term(), `"${text}" between`);
      if (left === 'text') fail('words in a sum');
    }
    return left;
  }
  function term(): Found {
    let left = power();
    while (isSign('*', '/')) left = product(left, take().text === '*' ? power() : invert(power()), 1);
    return left;
  }
  const invert = (found: Found): Found => raised(found, -1);
  function power(): Found {
    let left = signed();
    while (isSign('^')) {
      take();
      const literal = peek()?.kind === 'number' ? Number(peek()?.text) : undefined;
      plain(signed(), 'the exponent');
      if (literal !== undefined) left = raised(left, literal);
      else plain(left, 'what is raised to a power that is worked out');
    }
    return left;
  }
  function signed(): Found {
    if (isSign('-', '+')) {
      take();
      return signed();
    }
    return primary();
  }
  function primary(): Found {
    const token = take();
    switch (token.kind) {
      case 'number':
        return Number(token.text) === 0 ? 'any' : PLAIN;
      case 'text':
        return token.text === '""' ? 'any' : 'text';
      case 'reference':
        return unitOf(token.reference.name);
      case 'function':
        return call(token.text);
      case 'sign': {
        if (token.text !== '(') return fail(`"${token.text}" where a value is needed`);
        const inner = comparison();
        take(')');
        return inner;
      }
    }
  }
  function call(name: string): Found {
    const given: Found[] = [];
    take('(');
    while (!isSign(')')) {
      if (given.length > 0) take(',');
      given.push(comparison());
    }
    take(')');
    const [first, second, third] = given;
    const count = (...counts: number[]): void => {
      if (!counts.includes(given.length)) fail(`${name} with ${given.length} arguments`);
    };
    if (KEEPING.includes(name) && given.length > 0) return given.reduce((a, b) => joined(a, b, `${name} of`));
    if (COUNTING.includes(name) && first !== undefined) {
      count(1);
      return PLAIN;
    }
    if (name === 'SUMPRODUCT' && given.length > 0) return given.reduce((a, b) => product(a, b, 1));
    if (name === 'PI') {
      count(0);
      return PLAIN;
    }
    if (first === undefined) return fail(`${name} without arguments`);
    switch (name) {
      case 'IF':
        count(3);
        plain(first, 'the condition');
        return joined(second as Found, third as Found, 'the branches');
      case 'IFERROR':
        count(2);
        return joined(first, second as Found, 'the branches');
      case 'INDEX':
        count(3);
        plain(second as Found, 'the row');
        plain(third as Found, 'the column');
        return first;
      case 'MATCH':
        count(3);
        joined(first, second as Found, 'MATCH of');
        plain(third as Found, 'the way to match');
        return PLAIN;
      case 'SMALL':
        count(2);
        plain(second as Found, 'the place');
        return first;
      case 'MMULT':
        count(2);
        return product(first, second as Found, 1);
      case 'SQRT':
        count(1);
        return raised(first, 0.5);
      case 'EXP':
      case 'LN':
        count(1);
        plain(first, `what ${name} is taken of`);
        return PLAIN;
      default:
        return fail(`the function ${name}, whose unit is not known here,`);
    }
  }

  const found = comparison();
  if (at < all.length) fail(`"${peek()?.text}" left over`);
  return found;
}
