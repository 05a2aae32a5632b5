/** How the tool is called: help, version, mistakes, and what it does when its reader goes away. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { COMMANDS, wrap } from '../../src/commands/help.ts';
import { coilfeed, runProgram, toolPath } from './tool.ts';

const names = Object.keys(COMMANDS);
const widest = (text: string): number => Math.max(...text.split('\n').map((line) => line.length));

describe('help', () => {
  test.each([['help'], ['--help'], ['-h']])('%s lists every command and the exit statuses', async (flag) => {
    const ran = await coilfeed([flag]);
    expect(ran).toMatchObject({ status: 0, err: '' });
    for (const name of names) expect(ran.out).toMatch(new RegExp(`^  ${name} +\\S`, 'm'));
    for (const status of [0, 1, 2, 3]) expect(ran.out).toMatch(new RegExp(`^  ${status}  `, 'm'));
    expect(widest(ran.out)).toBeLessThanOrEqual(80);
  });

  test.each(names)('%s: three ways to its help, all the same', async (name) => {
    const [asked, flagged, short] = await Promise.all([
      coilfeed(['help', name]),
      coilfeed([name, '--help']),
      coilfeed([name, 'some-file', '-h']),
    ]);
    expect(asked).toMatchObject({ status: 0, err: '' });
    expect(asked.out).toContain(`Usage: coilfeed ${name}`);
    expect(asked.out).toContain('Exit status:\n  0  ');
    expect(widest(asked.out)).toBeLessThanOrEqual(80);
    // `help help` is the help about help; `help --help` asks the same, and `help some-file -h` does, too.
    expect(flagged).toEqual(asked);
    expect(short).toEqual(asked);
  });

  test('without a command the list goes to standard error, and the call counts as wrong', async () => {
    const ran = await coilfeed([]);
    expect(ran).toMatchObject({ status: 2, out: '' });
    expect(ran.err).toContain('Usage: coilfeed COMMAND');
  });

  test('loads only a few kilobytes: no command and no library', () => {
    // Bare Node starts in about 40 ms, each library of a command takes 10 to 200 ms more. A clock in a test
    // would be unsteady; what is loaded is not. 32 kB is about three times the present size.
    const seen = new Map<string, number>();
    const follow = (file: string): void => {
      if (seen.has(file)) return;
      const text = readFileSync(file, 'utf8');
      seen.set(file, text.length);
      for (const [, next = ''] of text.matchAll(/(?:from|import)\s*["'](\.[^"']+)["']/g))
        follow(join(dirname(file), next));
    };
    follow(toolPath());
    expect([...seen.values()].reduce((a, b) => a + b, 0)).toBeLessThan(32 * 1024);
  });
});

test('--version prints the version of package.json and nothing else', async () => {
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  expect(await coilfeed(['--version'])).toEqual({ status: 0, out: `${version}\n`, err: '' });
});

describe('a call that cannot be used: status 2, a sentence, no output', () => {
  test.each([
    ['a mistyped command', ['sise', 'x.yaml'], 'Did you mean "size"?'],
    ['help on a mistyped command', ['help', 'nwe'], 'Did you mean "new"?'],
    ['a word that is near to none', ['photograph'], '"coilfeed help" lists the commands'],
    ['a name that every object has', ['constructor'], 'no command "constructor"'],
    ['an unknown option', ['new', '--frce'], "'--frce'"],
    ['an option without its value', ['size', 'x.yaml', '--out'], '--out'],
    ['two files', ['new', 'a.yaml', 'b.yaml'], 'a.yaml, b.yaml'],
    ['no design', ['size'], 'coilfeed help size'],
  ])('%s', async (_, argv, says) => {
    const ran = await coilfeed(argv);
    expect(ran).toMatchObject({ status: 2, out: '' });
    expect(ran.err.replace(/\s+/g, ' ')).toContain(says);
    expect(ran.err).not.toMatch(/^\s+at /m);
    expect(widest(ran.err)).toBeLessThanOrEqual(80);
  });
});

describe('the reader of the output', () => {
  const shell = (line: string) => runProgram('bash', ['-c', line, 'bash', process.execPath, toolPath()]);

  test('who closes the pipe early is no fault, and the status stays', async () => {
    // The reader ends at once, so that the tool meets a closed pipe.
    const ran = await shell('{ sleep 0.2; "$1" "$2" new; echo "status $?" >&2; } | true');
    expect(ran.err).toBe('status 0\n');
  });

  test.skipIf(process.platform !== 'linux')(
    'a full disk behind it is a failure with a sentence',
    async () => {
      const ran = await shell('"$1" "$2" new > /dev/full');
      expect(ran.status).toBe(3);
      expect(ran.err).toBe('coilfeed: the output could not be written (ENOSPC).\n');
    },
  );
});

describe('the lines of a message', () => {
  test('are broken at 80 columns, nothing lost', () => {
    const words = Array.from({ length: 60 }, (_, i) => 'x'.repeat(1 + (i % 13)));
    const text = wrap(words.join(' '));
    expect(widest(text)).toBeLessThanOrEqual(80);
    expect(text.split(/\s/)).toEqual(words);
  });

  test('keep a long path whole', () => {
    const path = `/${'folder/'.repeat(20)}design.yaml`;
    expect(wrap(`a ${path} b`)).toBe(`a\n${path}\nb`);
  });
});
