/** Contrast of every colour of the page on every ground that it stands on, in both schemes: WCAG 2.2, 1.4.3 and 1.4.11. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const STYLE = readFileSync('src/page/style.css', 'utf8');

/** Both values of `--name: light-dark(#…, #…)`. */
const COLOURS = new Map(
  [...STYLE.matchAll(/^ {2}--([\w-]+): light-dark\((#\w{6}), (#\w{6})\);/gm)].map(
    ([, name = '', light = '', dark = '']) => [name, { light, dark }] as const,
  ),
);

/** Relative luminance of WCAG 2.2. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

test('black on white is 21, as the definition says', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
});

const GROUNDS = ['paper', 'sheet', 'tint', 'field'];
/** What is not current has letters of these on its hatching, and no other colour. */
const HATCHED = ['quiet', 'fail'];
/** Letters: 4.5. Lines that tell something, such as the edge of a field or a conductor: 3. */
const LEAST: Readonly<Record<string, number>> = {
  ink: 4.5,
  quiet: 4.5,
  accent: 4.5,
  pass: 4.5,
  fail: 4.5,
  open: 4.5,
  edge: 3,
  low: 3,
  mid: 3,
  high: 3,
  near: 3,
};

test.each(['light', 'dark'] as const)('%s: every colour on every ground', (scheme) => {
  const poor = Object.entries(LEAST).flatMap(([name, least]) =>
    [...GROUNDS, ...(HATCHED.includes(name) ? ['hatch'] : [])].flatMap((ground) => {
      const [a, b] = [COLOURS.get(name)?.[scheme], COLOURS.get(ground)?.[scheme]];
      if (a === undefined || b === undefined) return [`${name} on ${ground}: no such colour`];
      const found = contrast(a, b);
      return found >= least ? [] : [`${name} on ${ground}: ${found.toFixed(2)}, at least ${least}`];
    }),
  );
  expect(poor).toEqual([]);
});
