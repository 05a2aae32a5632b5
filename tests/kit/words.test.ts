/** A kit writer's own words: what replaces ours, what is added, what is refused. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { printProblem } from '../../src/design/problems.ts';
import { FACTS } from '../../src/kit/facts.ts';
import { FILES, papers } from '../../src/kit/papers.ts';
import { readWords } from '../../src/kit/read-words.ts';
import { CONDITIONS, LISTS, WORDS } from '../../src/kit/words.ts';
import { CAUTIONS } from '../../src/writers/cautions.ts';
import { straight } from './designs.ts';
import { jobOf } from './job.ts';

const problems = (text: string): string[] => {
  const read = readWords(text, 'words.yaml');
  return read.ok ? [] : read.problems.map(printProblem);
};

test('a part given replaces ours; values are filled in, the words themselves are escaped', async () => {
  const read = readWords(
    'tools:\n  - "A <b>good</b> crimp tool for {fuses}"\n  - { text: only with a relay, when: relay }\n  - { text: only without, when: no_relay }\n',
    'words.yaml',
  );
  if (!read.ok) throw new Error('refused');
  const html = papers(jobOf(straight(2)), read.words).get('instructions.html') ?? '';
  expect(html).toContain('A &lt;b&gt;good&lt;/b&gt; crimp tool for <bdi>F1</bdi>: <data value="20"');
  expect(html).toContain('only with a relay');
  expect(html).not.toContain('only without');
  expect(html).not.toContain('Wrenches for the battery posts');
});

test('cautions and reasons to stop are added to ours and never replace them', async () => {
  const read = readWords('cautions: [Mind the dog.]\nstop: [The dog barks.]\n', 'words.yaml');
  if (!read.ok) throw new Error('refused');
  expect(read.words.cautions).toEqual([...WORDS.cautions, { text: 'Mind the dog.' }]);
  expect(read.words.stop).toEqual([...WORDS.stop, { text: 'The dog barks.' }]);
  const html = papers(jobOf(straight(2)), read.words).get('instructions.html') ?? '';
  for (const caution of [...CAUTIONS, 'Mind the dog.']) expect(html).toContain(caution);
});

test('an empty map changes nothing', () => {
  expect(readWords('{}', 'words.yaml')).toEqual({ ok: true, words: WORDS, literals: [] });
});

test('numbers in the words stay as they are, and are named; values of the design come from the model', () => {
  const read = readWords(
    'ground: ["M8 nut, 12 N·m, torque wrench"]\ntools: ["{fuses} in a case", "call +00 123 4567"]\n',
    'words.yaml',
  );
  if (!read.ok) throw new Error('refused');
  expect(read.literals).toEqual([
    'tools[1]: 00',
    'tools[1]: 123',
    'tools[1]: 4567',
    'ground[0]: M8',
    'ground[0]: 12',
  ]);
  const html = papers(jobOf(straight(2)), read.words).get('instructions.html') ?? '';
  expect(html).toContain('M8 nut, 12 N·m, torque wrench');
});

test.each([
  ['tols: [x]', 'words.yaml:1:1 tols: unknown key "tols"; did you mean "tools"?'],
  ['tools: x', 'words.yaml:1:8 tools: found "x"; takes a list of at most 60'],
  ['tools: [3]', 'words.yaml:1:9 tools[0]: found 3; takes text of 1 to 1000 characters'],
  ['tools: ["{fusses}"]', 'words.yaml:1:9 tools[0]: the unknown value "{fusses}"; did you mean "{fuses}"?'],
  ['tools: ["{fuses"]', 'words.yaml:1:9 tools[0]: a brace that is alone; takes braces in pairs'],
  ['tools: [{text: x, when: rain}]', 'words.yaml:1:25 tools[0].when: found "rain"; takes one of: relay'],
  ['tools: [{txt: x}]', 'words.yaml:1:10 tools[0].txt: unknown key "txt"; did you mean "text"?'],
  ['faults: [x]', 'words.yaml:1:10 faults[0]: found "x"; takes a map with the keys: sign, cause, act'],
  ['faults: [{sign: a, cause: b}]', 'words.yaml:1:10 faults[0].act: found nothing; takes text'],
  ['[1]', 'words.yaml:1:1: found a list; takes a map with the keys: about'],
  ['a: [', 'words.yaml:1:5: YAML that cannot be read'],
  ['__proto__: [x]', 'words.yaml:1:1 __proto__: unknown key'],
])('refused: %s', (text, says) => {
  const found = problems(text);
  expect(
    found.some((one) => one.startsWith(says)),
    found.join('\n'),
  ).toBe(true);
});

test('docs/kit.md names every file, every part of the words, every condition and every value', () => {
  const page = readFileSync(new URL('../../docs/kit.md', import.meta.url), 'utf8');
  for (const key of [...Object.keys(FILES), ...LISTS, 'faults', ...CONDITIONS, ...Object.keys(FACTS)])
    expect(page, key).toContain(`\`${key}\``);
  const example = /```yaml\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
  expect(problems(example)).toEqual([]);
});
