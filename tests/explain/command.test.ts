/** `coilfeed explain` as a person runs it. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { coilfeed } from '../cli/tool.ts';

const SIX = 'workbooks/hill-climb-six.yaml';

test('the example of the manual is what is printed', async () => {
  const { out: stdout, status } = await coilfeed(['explain', SIX, 'ambient_factor', 'branch']);
  expect(status).toBe(0);
  expect(readFileSync('docs/explain.md', 'utf8')).toContain(`\`\`\`\n${stdout}\`\`\``);
});

test('JSON goes down to the design; --set changes it', async () => {
  const { out: stdout } = await coilfeed([
    ...['explain', SIX, 'wire_length', '--at', 'main', '--set', 'feed.main.length=55 in', '--json'],
  ]);
  expect(JSON.parse(stdout)).toMatchObject({
    format: 'coilfeed-explain/1',
    quantity: 'wire_length',
    of: 'main',
    value: 1.397,
    unit: 'm',
    source: 'the design, feed[0].length',
    parts: [],
  });
});

test.each([
  [['explain', SIX], 'takes a design and the name of a quantity'],
  [['explain', SIX, 'ampacty'], 'Did you mean ampacity'],
  [['explain', SIX, 'ampacity', '--at', 'mian'], 'Did you mean "main"?'],
  [['explain', SIX, 'ampacity', '--depth', '-1'], 'depth'],
])('%j is refused', async (call, says) => {
  const { out: stdout, err: stderr, status } = await coilfeed(call as string[]);
  expect([stdout, status]).toEqual(['', 2]);
  expect(stderr.replaceAll('\n', ' ')).toContain(says);
});
