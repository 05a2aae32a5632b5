/** The value of a formula that is nothing but arithmetic with numbers, such as `55*0.0254`: it cannot be old. */

/** Longer ones are no slip of a pocket calculator. */
const LONGEST = 100;

/** Null for whatever is no such formula, or has no finite value. Powers are not taken: programs differ in `-2^2`. */
export function sumOf(formula: string): number | null {
  if (formula.length > LONGEST) return null;
  const tokens = formula.match(/\s+|\d+\.?\d*(?:[eE][+-]?\d{1,3})?|\.\d+|./gs) ?? [];
  const all = tokens.filter((token) => token.trim() !== '');
  let at = 0;
  const next = (...signs: string[]): string | null => {
    const token = all[at];
    if (token === undefined || !signs.includes(token)) return null;
    at += 1;
    return token;
  };
  const factor = (): number => {
    if (next('-') !== null) return -factor();
    if (next('+') !== null) return factor();
    if (next('(') !== null) {
      const inner = sum();
      return next(')') === null ? Number.NaN : inner;
    }
    const token = all[at] ?? '';
    at += 1;
    return /^[\d.]/.test(token) ? Number(token) : Number.NaN;
  };
  const product = (): number => {
    let value = factor();
    for (let sign = next('*', '/'); sign !== null; sign = next('*', '/'))
      value = sign === '*' ? value * factor() : value / factor();
    return value;
  };
  const sum = (): number => {
    let value = product();
    for (let sign = next('+', '-'); sign !== null; sign = next('+', '-'))
      value = sign === '+' ? value + product() : value - product();
    return value;
  };
  const value = sum();
  return at === all.length && Number.isFinite(value) ? value : null;
}
