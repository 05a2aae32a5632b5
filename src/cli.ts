#!/usr/bin/env node
/**
 * The command line: finds the command, runs it, and turns what it threw into a sentence and an exit status.
 * A command's module is loaded only when the command runs.
 */
import * as module from 'node:module';
import { setFlagsFromString } from 'node:v8';
import { isMainThread } from 'node:worker_threads';
import { Refusal, shown } from './commands/files.ts';
import { COMMANDS, type CommandName, isCommand, overview, usage, wrap } from './commands/help.ts';
import { nearest } from './design/nearest.ts';

/** Filled in from package.json by the build. */
declare const COILFEED_VERSION: string;

interface Command {
  /** Takes what follows the command's name; gives the exit status. */
  run(argv: string[]): Promise<number>;
}

// Compiled code is kept from run to run where Node offers it, from 22.1 on; what a command loads is then there sooner.
(module as { enableCompileCache?: () => unknown }).enableCompileCache?.();

/**
 * A command is over in a second: V8 optimizes four times as late as it would by itself, which spares a third of the CPU
 * time of a check; what runs for longer, such as a spread, is optimized all the same.
 */
setFlagsFromString('--interrupt-budget=540000');

const LOAD: Readonly<Record<CommandName, () => Promise<Command>>> = {
  size: () => import('./commands/size.ts'),
  check: () => import('./commands/check.ts'),
  explain: () => import('./commands/explain.ts'),
  spread: () => import('./commands/spread.ts'),
  study: () => import('./commands/study.ts'),
  compare: () => import('./commands/compare.ts'),
  trace: () => import('./commands/trace.ts'),
  design: () => import('./commands/design.ts'),
  kit: () => import('./commands/kit.ts'),
  page: () => import('./commands/page.ts'),
  shop: () => import('./commands/shop.ts'),
  new: () => import('./commands/new.ts'),
  help: async () => ({ run: help }),
};

const asksForHelp = (argument: string): boolean => argument === '--help' || argument === '-h';

const unknownCommand = (name: string): Refusal => {
  const near = nearest(name, Object.keys(COMMANDS));
  const hint = near ? `Did you mean "${near}"?` : '"coilfeed help" lists the commands.';
  return new Refusal(`There is no command "${name}". ${hint}`);
};

async function help([name]: string[]): Promise<number> {
  if (name !== undefined && !isCommand(name)) throw unknownCommand(name);
  process.stdout.write(name === undefined ? overview(COILFEED_VERSION) : usage(name));
  return 0;
}

/** Signs that turn the direction of writing: a name with one in it shows as another. */
const TURNS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/;

async function dispatch(argv: string[]): Promise<number> {
  const turned = argv.find((argument) => TURNS.test(argument));
  if (turned !== undefined)
    throw new Refusal(
      `"${shown(turned)}" holds a character that reverses the direction of text; write the name without it.`,
    );
  const [name, ...rest] = argv;
  if (name === undefined) {
    process.stderr.write(overview(COILFEED_VERSION));
    return 2;
  }
  if (asksForHelp(name)) return help(rest);
  if (name === '--version') {
    process.stdout.write(`${COILFEED_VERSION}\n`);
    return 0;
  }
  if (!isCommand(name)) throw unknownCommand(name);
  // What follows "--" is a file's name, whatever it looks like.
  const end = rest.indexOf('--');
  if (rest.slice(0, end < 0 ? rest.length : end).some(asksForHelp)) return help([name]);
  const command = await LOAD[name]();
  try {
    return await command.run(rest);
  } catch (error) {
    const wrong = badCall(error);
    throw wrong ? new Refusal(`${wrong} See "coilfeed help ${name}".`) : error;
  }
}

/** What was wrong with the arguments, or null when it was something else. */
function badCall(error: unknown): string | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (!(error instanceof Error) || !code.startsWith('ERR_PARSE_ARGS_')) return null;
  // The first sentence names the option; Node's second is about options in general.
  const [first = ''] = error.message.split(/\.\s|\n/);
  return first.endsWith('.') ? first : `${first}.`;
}

/** Says what stopped the tool; returns the exit status. */
function report(error: unknown): number {
  if (error instanceof Refusal) {
    process.stderr.write(`${wrap(`coilfeed: ${error.message}`)}\n`);
    return error.status;
  }
  const [what] = (error instanceof Error ? error.message : String(error)).split('\n');
  const debug = process.env.COILFEED_DEBUG === '1';
  const hint = debug ? '' : '; COILFEED_DEBUG=1 shows where';
  process.stderr.write(
    `${wrap(`coilfeed failed. The fault is in the tool, not in your design: ${what}${hint}.`)}\n`,
  );
  if (debug) process.stderr.write(`${error instanceof Error ? error.stack : ''}\n`);
  return 3;
}

/** Status of a fault outside the command itself, such as a disk that is full: it then outweighs the verdict. */
let lost: number | null = null;

for (const stream of [process.stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that has seen enough (`| head`) closes the pipe: no fault, and the verdict stands.
    if (error.code === 'EPIPE') return;
    lost = 3;
    process.exitCode = lost;
    if (stream === process.stdout)
      process.stderr.write(`${wrap(`coilfeed: the output could not be written (${error.code}).`)}\n`);
  });

// In a thread an error goes to the one that started it.
if (isMainThread)
  process.on('uncaughtException', (error) => {
    lost = report(error);
    process.exitCode = lost;
  });

if (isMainThread) {
  // The exit status is set and not forced, so that everything written still reaches a slow pipe.
  const status = await dispatch(process.argv.slice(2)).catch(report);
  process.exitCode = lost ?? status;
} else (await import('./commands/threads.ts')).serve();
