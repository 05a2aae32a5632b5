/**
 * How fast the tool is, as ratios measured in one run, so that a slow or busy machine slows both sides: `npm run bench`.
 *
 * A process is measured against `node -e 0`, the model in process against the same number of trivial formulas.
 * Each figure is the median of several runs. The aims stand beside; missing one is no failure, it is there to be seen.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { HyperFormula, type RawCellContent } from 'hyperformula';
import type { Design } from '../design/design.ts';
import { readDesign } from '../design/read.ts';
import { evaluate } from '../engine/evaluate.ts';
import { type Laid, spread } from '../engine/spreadsheet.ts';

const RUNS = 7;
/** Which design: the largest of the examples. */
const LARGEST = 'workbooks/two-bank-v8.yaml';
const TOOL = 'dist/cli.js';

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number;

/** Milliseconds that `work` takes. */
function time(work: () => void): number {
  const begun = performance.now();
  work();
  return performance.now() - begun;
}

/** Milliseconds of a whole process. Throws when it ends in another way than with a judgement. */
const processTime = (argv: readonly string[]): number =>
  time(() => {
    const { status, stderr } = spawnSync(process.execPath, argv, { encoding: 'utf8' });
    if (status !== 0 && status !== 1) throw new Error(`${argv.join(' ')}: status ${status}\n${stderr}`);
  });

const repeated = (measure: () => number, runs = RUNS): number =>
  median(Array.from({ length: runs }, () => measure()));

/** Runs the kinds in turn, so that a disturbance meets all of them; returns the median of each. */
function inTurn<K extends string>(kinds: Readonly<Record<K, readonly string[]>>): Record<K, number> {
  const names = Object.keys(kinds) as K[];
  const times = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<K, number[]>;
  for (let i = 0; i < RUNS; i++) for (const name of names) times[name].push(processTime(kinds[name]));
  return Object.fromEntries(names.map((name) => [name, median(times[name])])) as Record<K, number>;
}

/** As many formulas in as many sheets as the model has, each an addition that hangs on one input: the engine itself. */
function trivial(e: Pick<Laid, 'sheets' | 'formulas'>): HyperFormula {
  const count = e.sheets.size;
  const height = Math.ceil(e.formulas / count);
  const column = (sheet: number): RawCellContent[][] => [
    [sheet === 0 ? 1 : '=S0!$A$1'],
    ...Array.from({ length: height }, (_, i) => [`=A${i + 1}+$A$1`]),
  ];
  const sheets = Object.fromEntries(Array.from({ length: count }, (_, i) => [`S${i}`, column(i)]));
  return HyperFormula.buildFromSheets(sheets, { licenseKey: 'gpl-v3' });
}

/** Milliseconds from changing one input to having read one result; a different value each time. */
const changes = (change: (i: number) => void): number => {
  let i = 0;
  return repeated(() => time(() => change(i++)), 3 * RUNS);
};

function design(): Design {
  const read = readDesign(readFileSync(LARGEST, 'utf8'), LARGEST);
  if (!read.ok) throw new Error(`${LARGEST} is refused`);
  return read.design;
}

/** Largest resident memory of one run of the main job [MB]. */
function memory(): number {
  const report = 'process.on("exit",()=>process.stderr.write("\\n"+process.resourceUsage().maxRSS))';
  const argv = [
    '--import',
    `data:text/javascript,${encodeURIComponent(report)}`,
    TOOL,
    'size',
    LARGEST,
    '--json',
  ];
  const { stderr } = spawnSync(process.execPath, argv, { encoding: 'utf8' });
  return Number(stderr.trim().split('\n').at(-1)) / 1024;
}

const rows: [what: string, figure: string, aim: string][] = [];
const ms = (value: number): string => `${value.toFixed(value < 10 ? 1 : 0)} ms`;
const ratio = (value: number, base: number): string => `${(value / base).toFixed(1)} ×`;

const folder = mkdtempSync(join(tmpdir(), 'coilfeed-bench-'));
try {
  const workbook = join(folder, 'bench.xlsx');
  const whole = inTurn({
    bare: ['-e', '0'],
    help: [TOOL, 'help'],
    size: [TOOL, 'size', LARGEST],
    workbook: [TOOL, 'size', LARGEST, '--out', workbook, '--force'],
  });
  rows.push(['bare Node: node -e 0', ms(whole.bare), '']);
  rows.push(['coilfeed help, against it', ratio(whole.help, whole.bare), '≤ 1.5 ×']);
  rows.push(['coilfeed size, eight cylinders, against it', ratio(whole.size, whole.bare), '≤ 6 ×']);
  rows.push(['the same with the workbook, against it', ratio(whole.workbook, whole.bare), '']);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

const v8 = design();
const model = evaluate(v8);
const laid = spread(v8);
const plain = trivial(laid);
const build = repeated(() => time(() => evaluate(v8)));
const plainBuild = repeated(() => time(() => trivial(laid)));
// A change of the supply moves every current, every drop and every size.
const change = changes((i) => {
  model.set('point_supply', { point: 1 }, 13 + i / 100);
  model.number('worst_drop');
});
const plainChange = changes((i) => {
  plain.setCellContents({ sheet: 0, row: 0, col: 0 }, [[i]]);
  plain.getCellValue({ sheet: 0, row: 1, col: 0 });
});
rows.push(['formula cells of the model', String(laid.formulas), '≤ 12000']);
rows.push(['building it in process, warm', ms(build), '']);
rows.push(['against as many trivial formulas', ratio(build, plainBuild), '']);
rows.push(['evaluating it after one change', ms(change), '≤ 60 ms']);
rows.push(['against as many trivial formulas', ratio(change, plainChange), '']);
rows.push(['largest memory of coilfeed size', `${memory().toFixed(0)} MB`, '']);

const width = Math.max(...rows.map(([what]) => what.length));
process.stdout.write(
  `Node ${process.version}, ${availableParallelism()} processors, medians of ${RUNS} runs\n\n`,
);
for (const [what, figure, aim] of rows)
  process.stdout.write(`${what.padEnd(width)}  ${figure.padStart(8)}${aim && `   aim ${aim}`}\n`);
