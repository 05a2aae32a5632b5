/** The first page that a person reads keeps up with the tool. */
import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { COMMANDS, overview } from '../../src/commands/help.ts';
import { run } from '../../src/run.ts';
import { CAUTIONS } from '../../src/writers/cautions.ts';
import { report } from '../../src/writers/report.ts';
import { demo, design } from '../design/helpers.ts';

const root = new URL('../../', import.meta.url);
const text = (name: string): string => readFileSync(new URL(name, root), 'utf8');
const readme = text('README.md');

test.each(CAUTIONS)('README.md holds the caution "%s"', (caution) => {
  expect(readme).toContain(`- ${caution}\n`);
});

test('README.md gives the two lines to set it up', () => {
  expect(readme).toContain('\nnpm ci && npm run demo\nnpm ci && npm test\n');
});

test('the excerpt in README.md stands line for line in the report of the demo', () => {
  const excerpt = /## What you see\n\n```\n([\s\S]*?)\n```/.exec(readme)?.[1]?.split('\n') ?? [];
  expect(excerpt.length).toBeGreaterThan(15);
  const lines = report(run(design(demo('hill-climb-six'))))
    .split('\n')
    .map((line) => line.trimEnd());
  expect(excerpt.filter((line) => !lines.includes(line))).toEqual([]);
});

test('README.md gives every command as its help does', () => {
  // A bar would end the cell of the table.
  for (const { call } of Object.values(COMMANDS))
    expect(readme).toContain(`\`coilfeed ${call.replaceAll('|', '\\|')}\``);
});

test('README.md gives the exit statuses as the help does', () => {
  const statuses = [...overview('0').matchAll(/^ {2}(\d) {2}(.+)$/gm)];
  expect(statuses).toHaveLength(4);
  for (const [, status, meaning] of statuses)
    expect(readme).toMatch(new RegExp(`^\\| ${status} +\\| ${meaning} +\\|$`, 'm'));
});

test.each(['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'docs/method.md', 'docs/format.md'])(
  'every file that %s points to is there',
  (name) => {
    const folder = new URL(name, root);
    const links = [...text(name).matchAll(/\]\(([^)#:]+)(?:#[^)]*)?\)/g)].map(([, link]) => link as string);
    expect(links.filter((link) => !existsSync(new URL(link, folder)))).toEqual([]);
  },
);
