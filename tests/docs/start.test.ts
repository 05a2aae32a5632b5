/** The pages for readers as one follows them: every command, in order, in an empty folder. */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { coilfeed, emptyFolder } from '../cli/tool.ts';

/** What the shell makes of a line: blanks divide, quotes hold together, a comment may say another exit status than 0. */
function callOf(line: string): { argv: string[]; status: number } {
  const [call = '', comment = ''] = line.split(/ +# /);
  const argv = [...call.matchAll(/(?:[^\s"]|"[^"]*")+/g)].map(([word]) => word.replaceAll('"', ''));
  return { argv: argv.slice(2), status: Number(/^exit status (\d)/.exec(comment)?.[1] ?? 0) };
}

test.each([
  ['start', ['new', 'size', 'size', 'kit', 'check'], ['starter.yaml', 'feed.xlsx', 'kit/instructions.html']],
  [
    'technician',
    ['new', 'size', 'size', 'size', 'explain', 'size', 'kit', 'check'],
    ['feed.xlsx', 'pictures/trace-limiter.png', 'papers/cut-list.csv', 'card.xlsx'],
  ],
  ['tuner', ['check', 'trace', 'explain', 'size', 'study'], ['limiter.png']],
  ['kit-writer', ['new', 'size', 'kit', 'study', 'size'], ['papers/build-record.html']],
])('every command of docs/%s.md does what the page says', async (name, commands, made) => {
  const page = readFileSync(new URL(`../../docs/${name}.md`, import.meta.url), 'utf8');
  const cwd = emptyFolder();
  const ran: string[] = [];
  for (const [, kind, file = 'feed.yaml', text = ''] of page.matchAll(
    /```(sh|yaml)(?: (\S+))?\n([\s\S]*?)```/g,
  )) {
    if (kind === 'yaml') {
      const design = join(cwd, file);
      // The first block is the design, what follows is added to it.
      if (existsSync(design)) appendFileSync(design, `\n${text}`);
      else writeFileSync(design, text);
      continue;
    }
    for (const line of text.trim().split('\n')) {
      expect(line).toMatch(/^npx coilfeed /);
      const { argv, status } = callOf(line);
      const { status: found, out, err } = await coilfeed(argv, { cwd });
      expect(found, `${line}\n${out}${err}`).toBe(status);
      ran.push(argv[0] as string);
    }
  }
  expect(ran).toEqual(commands);
  for (const one of made) expect(existsSync(join(cwd, one)), one).toBe(true);
});
