/**
 * Spoils good input at random and sees that nothing breaks: `npm run fuzz -- --minutes N [--seed S] [--from I]`. Designs
 * and texts in the page's worker, workbooks, recordings of a clamp. What is refused or judged is well; an error that
 * is thrown is broken, and the smallest such input is saved. The same seed tries the same; `--from` goes on there.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { readDesign } from '../design/read.ts';
import { Live } from '../page/worker/live.ts';
import { run } from '../run.ts';
import { readSaved } from '../saved/read.ts';
import { measureTrace } from '../transient/measured/measure.ts';

const { values } = parseArgs({
  options: { minutes: { type: 'string' }, seed: { type: 'string' }, from: { type: 'string' } },
});
const [minutes, seed, from] = [values.minutes ?? 1, values.seed ?? 1, values.from ?? 0].map(Number) as [
  number,
  number,
  number,
];

/** Whole numbers below a bound, by a multiplicative generator that starts from seed and number of the trial. */
const numbers = (trial: number): ((below: number) => number) => {
  let state = (Math.imul(seed, 0x9e3779b1) ^ Math.imul(trial + 1, 0x85ebca6b)) >>> 0 || 1;
  return (below) => {
    state = (Math.imul(state ^ (state >>> 15), 0x2c1b3c6d) + 0x6d2b79f5) >>> 0;
    return ((state ^ (state >>> 13)) >>> 0) % below;
  };
};

const files = (end: string): Uint8Array[] =>
  readdirSync('workbooks')
    .filter((name) => name.endsWith(end))
    .map((name) => readFileSync(`workbooks/${name}`));
const clamp = Array.from(
  { length: 900 },
  (_, i) => `${(i * 1e-5).toFixed(5)},${i % 300 < 250 ? ((i % 300) / 20).toFixed(2) : 0}`,
);
const recording = new TextEncoder().encode(`time [s],current [A]\n${clamp.join('\n')}\n`);

/** Texts that are at the edge of something. */
const EDGES = [
  '0',
  '-1',
  '1e308',
  '1e-308',
  'null',
  'unknown',
  '{}',
  '[]',
  ': ',
  '- ',
  '"',
  '\u0000',
  '9'.repeat(40),
  '~',
];

/** Some spans left out, doubled, or replaced by an edge or a byte. */
function spoilt(bytes: Uint8Array, below: (bound: number) => number): Uint8Array {
  let out = Buffer.from(bytes);
  for (let i = 1 + below(3); i > 0; i--) {
    const at = below(out.length + 1);
    const end = Math.min(out.length, at + below(12));
    const put = [
      Buffer.alloc(0),
      Buffer.concat([out.subarray(at, end), out.subarray(at, end)]),
      Buffer.from(EDGES[below(EDGES.length)] as string),
      Buffer.from([below(256)]),
    ][below(4)] as Buffer;
    out = Buffer.concat([out.subarray(0, at), put, out.subarray(end)]);
  }
  return out;
}

const live = new Live();
const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
/** Whether the input was judged; false when it was refused. */
const KINDS: readonly {
  name: string;
  good: readonly Uint8Array[];
  judged(bytes: Uint8Array): boolean | Promise<boolean>;
}[] = [
  {
    name: 'design',
    good: files('.yaml'),
    judged(bytes) {
      const read = readDesign(text(bytes), 'design.yaml');
      return read.ok && run(read.design).verdict !== undefined;
    },
  },
  {
    name: 'page',
    good: files('.yaml'),
    judged: (bytes) => live.answer({ text: text(bytes), file: 'design.yaml', shop: null }).answered !== null,
  },
  {
    name: 'workbook',
    good: files('.xlsx'),
    judged: async (bytes) => (await readSaved(bytes, 'book.xlsx')).ok,
  },
  {
    name: 'recording',
    good: [recording],
    judged: (bytes) => measureTrace([text(bytes)], { drive: 12, dwell: 2.5e-3, peak: 12 }).ok,
  },
];

const counts = { tried: 0, refused: 0, judged: 0, broken: 0 };
let smallest = Number.POSITIVE_INFINITY;
const end = Date.now() + minutes * 60_000;
let trial = from;
for (; Date.now() < end; trial++) {
  const below = numbers(trial);
  const kind = KINDS[trial % KINDS.length] as (typeof KINDS)[number];
  const input = spoilt(kind.good[below(kind.good.length)] as Uint8Array, below);
  counts.tried += 1;
  try {
    counts[(await kind.judged(input)) ? 'judged' : 'refused'] += 1;
  } catch (error) {
    counts.broken += 1;
    process.stdout.write(`trial ${trial}, ${kind.name}: ${error instanceof Error ? error.message : error}\n`);
    if (input.length < smallest) {
      smallest = input.length;
      writeFileSync(`fuzz-${kind.name}.broken`, input);
    }
  }
}
process.stdout.write(
  `${Object.entries(counts)
    .map(([what, n]) => `${n} ${what}`)
    .join(', ')}; go on with --from ${trial}\n`,
);
process.exitCode = counts.broken > 0 ? 1 : 0;
