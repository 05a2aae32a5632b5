/**
 * How fast and how large the tool is: `npm run bench`, with `-- --json` for machines. Needs the built tool.
 *
 * A command is measured as a ratio to `node -e 0`, in turn with it, so that a slow or busy machine slows both sides;
 * what runs in process by the processor time that it takes. Each figure is the median of several runs. The aims stand beside; missing one
 * is no failure, it is there to be seen.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { readDesign } from '../design/read.ts';
import { Live } from '../page/worker/live.ts';
import { run } from '../run.ts';
import { largest } from './largest.ts';
import { median, type PageSpeed, pageSpeed } from './page-speed.ts';

const RUNS = 7;
const TOOL = 'dist/cli.js';
/** The largest of the demos. */
const V8 = 'workbooks/two-bank-v8.yaml';
const SHOP = 'workbooks/shop.yaml';

interface Row {
  readonly what: string;
  readonly value: number;
  readonly unit: '×' | 'ms' | 's' | 'KiB' | 'MB';
  /** At most this; null where nothing is aimed at. */
  readonly aim: number | null;
}

/** Milliseconds that `work` takes. */
function time(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Milliseconds of processor time that `work` takes. */
function computing(work: () => void): number {
  const { user, system } = process.cpuUsage();
  work();
  const used = process.cpuUsage({ user, system });
  return (used.user + used.system) / 1000;
}

const repeated = (work: (i: number) => void, runs: number): number =>
  median(Array.from({ length: runs }, (_, i) => computing(() => work(i))));

/** Runs Node. Throws when it ends in another way than with a judgement. */
function node(argv: readonly string[]): string {
  const { status, stderr } = spawnSync(process.execPath, argv, { encoding: 'utf8', maxBuffer: 2 ** 28 });
  if (status !== 0 && status !== 1) throw new Error(`${argv.join(' ')}: status ${status}\n${stderr}`);
  return stderr;
}

/** Processor time [s] and largest resident memory [MB] of one call of the tool. */
function cost(argv: readonly string[]): { seconds: number; megabytes: number } {
  const report = `process.on('exit', () => {
    const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
    process.stderr.write('\\n' + (userCPUTime + systemCPUTime) / 1e6 + ' ' + maxRSS / 1024);
  })`;
  const said = node(['--import', `data:text/javascript,${encodeURIComponent(report)}`, TOOL, ...argv]);
  const [seconds, megabytes] = (said.split('\n').at(-1) as string).split(' ').map(Number);
  return { seconds: seconds as number, megabytes: megabytes as number };
}

/** Commands against bare Node, in turn, so that a disturbance meets all of them. */
function commands(folder: string): Row[] {
  const calls: [what: string, argv: readonly string[], aim: number][] = [
    ['help', ['help'], 1.3],
    ['size', ['size', V8], 3],
    ['check', ['check', V8], 4],
    ['trace', ['trace', V8, '--point', 'limiter'], 4],
    ['size --out', ['size', V8, '--out', join(folder, 'v8.xlsx')], 14],
  ];
  const times = Array.from({ length: RUNS }, () => [
    time(() => node(['-e', '0'])),
    ...calls.map(([, argv]) => time(() => node([TOOL, ...argv]))),
  ]);
  const of = (column: number): number => median(times.map((row) => row[column] as number));
  return [
    { what: 'node -e 0', value: of(0), unit: 'ms', aim: null },
    ...calls.map(([what, , aim], i): Row => ({ what, value: of(i + 1) / of(0), unit: '×', aim })),
  ];
}

/** What the page's worker computes from a changed text to the numbers; then the pipeline by itself. */
function inProcess(): Row[] {
  const text = readFileSync(V8, 'utf8');
  const changed = (i: number): string => text.replace('supply: 14.2 V', `supply: ${14 + (i % 20) / 100} V`);
  const shop = { text: readFileSync(SHOP, 'utf8'), file: SHOP };
  const live = new Live();
  const first = computing(() => live.answer({ text, file: V8, shop }));
  const key = repeated((i) => live.answer({ text: changed(i), file: V8, shop }), 5 * RUNS);
  const read = readDesign(text, V8, shop);
  if (!read.ok) throw new Error(`${V8} is refused`);
  const whole = repeated(() => run(read.design), 3 * RUNS);
  // A change of the supply moves every current, every drop and every size.
  const { evaluation } = run(read.design);
  const input = repeated((i) => {
    evaluation.set('point_supply', { point: 3 }, 14 + i / 100);
    evaluation.number('worst_drop');
  }, 5 * RUNS);
  return [
    { what: 'page: first answer', value: first, unit: 'ms', aim: 1000 },
    { what: 'page: a changed text to its numbers', value: key, unit: 'ms', aim: 16 },
    { what: 'whole evaluation, warm', value: whole, unit: 'ms', aim: 8 },
    { what: 'one changed input to the worst drop', value: input, unit: 'ms', aim: 4 },
  ];
}

const pageSize = (): Row => ({
  what: 'page, compressed',
  value: gzipSync(readFileSync('dist/page.html')).length / 1024,
  unit: 'KiB',
  aim: 700,
});

/** Loads of the page, of which the medians are taken. */
const LOADS = 3;
/** What a second, and 50 ms, are in `node -e 0`, which takes 40 ms of the processor time of a machine of today. */
const [SECOND, BLINK] = [25, 1.25];

/** The page with the V8 in Chromium; nothing where there is none. */
async function inBrowser(folder: string): Promise<Row[]> {
  const found = spawnSync('which', ['chromium'], { encoding: 'utf8' }).stdout.trim();
  if (found === '') return [];
  const path = join(folder, 'page.html');
  node([TOOL, 'page', V8, '--out', path]);
  const browser = await chromium.launch({ executablePath: found, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const loads: PageSpeed[] = [];
    for (let i = 0; i < LOADS; i++) loads.push(await pageSpeed(browser, path));
    const of = (value: (load: PageSpeed) => number): number => median(loads.map(value));
    const times = (what: string, value: (load: PageSpeed) => number, aim: number | null): Row => ({
      what: `page in Chromium: ${what}`,
      value: of((load) => value(load) / load.bare),
      unit: '×',
      aim,
    });
    return [
      times('first answer', ({ first }) => first, SECOND),
      times('all drawn', ({ whole }) => whole, null),
      times('longest task, loading', ({ longest }) => longest.loading, BLINK),
      times('longest task, typing', ({ longest }) => longest.typing, BLINK),
      times('longest task, sliding', ({ longest }) => longest.sliding, BLINK),
      ...Object.keys(loads[0]?.sliders ?? {}).flatMap((label): Row[] => [
        times(`${label}, work`, ({ sliders }) => sliders[label]?.work ?? Number.NaN, BLINK),
        {
          what: `page in Chromium: ${label}, to paint`,
          value: of(({ sliders }) => sliders[label]?.paint ?? Number.NaN),
          unit: 'ms',
          aim: 50,
        },
      ]),
    ];
  } finally {
    await browser.close();
  }
}

/** The largest design without and with its workbook. */
function largestAllowed(folder: string): Row[] {
  const file = join(folder, 'largest.yaml');
  writeFileSync(file, largest());
  const { seconds, megabytes } = cost(['size', file]);
  const book = cost(['size', file, '--out', join(folder, 'largest.xlsx')]);
  return [
    { what: 'largest design, processor time', value: seconds, unit: 's', aim: 3 },
    { what: 'largest design, memory', value: megabytes, unit: 'MB', aim: 400 },
    { what: 'largest design with workbook, processor time', value: book.seconds, unit: 's', aim: null },
    { what: 'largest design with workbook, memory', value: book.megabytes, unit: 'MB', aim: null },
  ];
}

const digits = (value: number): string => (value < 10 ? value.toFixed(1) : value.toFixed(0));

const printed = ({ what, value, unit, aim }: Row): string => {
  const beside = aim === null ? '' : `   aim ≤ ${aim}${value > aim ? ', missed' : ''}`;
  return `${what.padEnd(52)}  ${digits(value).padStart(5)} ${unit.padEnd(3)}${beside}`.trimEnd();
};

const { json = false } = parseArgs({ options: { json: { type: 'boolean' } } }).values;
const folder = mkdtempSync(join(tmpdir(), 'coilfeed-bench-'));
const rows: Row[] = [];
const measured = (more: readonly Row[]): void => {
  rows.push(...more);
  if (!json) for (const row of more) process.stdout.write(`${printed(row)}\n`);
};
try {
  if (!json)
    process.stdout.write(
      `Node ${process.version}, ${availableParallelism()} processors, medians of ${RUNS} runs or more\n\n`,
    );
  // First, because what runs before would warm it up.
  measured(inProcess());
  measured([pageSize()]);
  measured(await inBrowser(folder));
  measured(commands(folder));
  measured([{ what: 'size, memory', value: cost(['size', V8]).megabytes, unit: 'MB', aim: null }]);
  measured(largestAllowed(folder));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
if (json)
  process.stdout.write(
    `${JSON.stringify({ node: process.version, processors: availableParallelism(), rows }, null, 2)}\n`,
  );
