/** Every rule is explained in docs/findings.md, in a section of its own, and no section is left of a rule that is gone. */
import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { RULE_IDS } from '../../src/findings/rules.ts';

const file = new URL('../../docs/findings.md', import.meta.url);
const text = existsSync(file) ? readFileSync(file, 'utf8') : '';
const sections = [...text.matchAll(/^## `?([a-z][a-z0-9_]*)`?\s*$/gm)].map(([, id]) => id as string);

test('docs/findings.md has a section `## rule_id` for every rule', () => {
  expect(RULE_IDS.filter((id) => !sections.includes(id))).toEqual([]);
});

test('docs/findings.md has each section once', () => {
  expect(sections.filter((id, i) => sections.indexOf(id) !== i)).toEqual([]);
});

test('a section called like a rule is that of a rule', () => {
  // Rules are written with underscores; a heading in plain words is none.
  const known: readonly string[] = RULE_IDS;
  expect(sections.filter((id) => id.includes('_') && !known.includes(id))).toEqual([]);
});
