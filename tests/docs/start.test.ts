/** docs/start.md as a reader follows it: every command, in order, in an empty folder. */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { coilfeed, emptyFolder } from '../cli/tool.ts';

const page = readFileSync(new URL('../../docs/start.md', import.meta.url), 'utf8');
const blocks = [...page.matchAll(/```(sh|yaml)\n([\s\S]*?)```/g)].map(([, kind, text]) => ({
  kind: kind as string,
  text: text as string,
}));

test('every command of docs/start.md works, and the feed that it sizes passes', async () => {
  const cwd = emptyFolder();
  const ran: string[] = [];
  for (const { kind, text } of blocks) {
    if (kind === 'yaml') {
      const design = join(cwd, 'feed.yaml');
      // The first block is the design, what follows is added to it.
      if (existsSync(design)) appendFileSync(design, `\n${text}`);
      else writeFileSync(design, text);
      continue;
    }
    for (const line of text.trim().split('\n')) {
      expect(line).toMatch(/^npx coilfeed /);
      const { status, out, err } = await coilfeed(line.split(' ').slice(2), { cwd });
      expect(status, `${line}\n${out}${err}`).toBe(0);
      ran.push(line.split(' ')[2] as string);
    }
  }
  expect(ran).toEqual(['new', 'size', 'size', 'kit', 'check']);
  for (const made of ['starter.yaml', 'feed.xlsx', 'kit/instructions.html'])
    expect(existsSync(join(cwd, made)), made).toBe(true);
});
