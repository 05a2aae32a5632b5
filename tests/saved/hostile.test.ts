/** Files made to hurt: a sentence each, in time, in memory, and nothing left behind. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { withCopy } from '../../src/design/shop/copy.ts';
import { emptyFolder, runProgram, toolPath } from '../cli/tool.ts';
import { demo, design } from '../design/helpers.ts';
import { samples } from '../samples.ts';
import { bookOf } from '../workbook/books.ts';
import { readBack } from './edit.ts';
import { HOSTILE } from './hostile.ts';

let sound: Uint8Array;
beforeAll(async () => {
  sound = (await bookOf(design(demo('pair-four')))).bytes;
});

afterEach(() => {
  const found: string[] = [];
  // In the prototype of objects, if anything is found.
  for (const key in {}) found.push(key);
  expect(found).toEqual([]);
});

/** A sentence says what was found and what is taken, and fits a terminal. */
function sentences(said: readonly string[]): void {
  expect(said.length).toBeGreaterThan(0);
  for (const line of said) {
    expect(line).toMatch(/^edited\.xlsx(:\S+)?( [\w.[\]"-]+)?: .+; .+/);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: a terminal would obey them.
    expect(line).not.toMatch(/[\u0000-\u001f\u007f]|undefined|NaN|\[object/);
    expect(line.length).toBeLessThan(600);
  }
}

test.each(Object.entries(HOSTILE))('%s', async (_, { make, read }) => {
  const { design: back, changed, said } = await readBack(make(sound));
  if (read) {
    expect(said).toEqual([]);
    // No harm done: it is the design that it was made from.
    expect(back).toEqual(withCopy(design(demo('pair-four'))));
    expect(changed).toEqual([]);
  } else sentences(said);
});

describe('bytes changed at random', () => {
  /** With a fixed seed, so that every run sees the same files. */
  const RUNS = samples(150);

  test(`${RUNS} times: the design as it was, or a sentence`, async () => {
    const wanted = withCopy(design(demo('pair-four')));
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), fc.nat(255)), {
          minLength: 1,
          maxLength: 12,
        }),
        fc.constantFrom('anywhere', 'at the end', 'cut', 'doubled'),
        async (changes, where) => {
          let bytes = sound.slice();
          for (const [share, value] of changes) {
            const span = where === 'at the end' ? 4000 : bytes.length;
            bytes[bytes.length - 1 - Math.floor(share * span)] = value;
          }
          const [first = 0] = changes[0] ?? [];
          const at = Math.floor(first * sound.length);
          if (where === 'cut') bytes = bytes.slice(0, at);
          if (where === 'doubled') {
            const twice = new Uint8Array(bytes.length + 1000);
            twice.set(bytes.subarray(0, at));
            twice.set(bytes.subarray(at), at + 1000);
            bytes = twice;
          }
          const { design: back, said } = await readBack(bytes);
          // The sums of the parts tell whether something that is read was hit.
          if (back !== null) expect(back).toEqual(wanted);
          else sentences(said);
        },
      ),
      { seed: 11, numRuns: RUNS },
    );
  });
});

describe('the tool itself', () => {
  /** In times of the start of Node alone, 40 ms or more: these end long before a calculation would. */
  const STARTS = 40;
  const MEGABYTES = 300;

  /**
   * Memory as the kernel keeps it for this program alone: what `resourceUsage` gives counts from the process that started
   * it, which is as large as all tests before.
   */
  const USED = `import{readFileSync as read}from'node:fs';process.on('exit',()=>{const u=process.resourceUsage();const own=/VmHWM:\\s*(\\d+)/.exec(read('/proc/self/status','utf8'))[1];process.stderr.write('\\n#'+own/1024+' '+(u.userCPUTime+u.systemCPUTime)/1e6)});`;

  /** Runs a program of Node and measures it: the time of the processor, so that others beside it do not count. */
  async function used(script: string) {
    const ran = await runProgram(process.execPath, ['--input-type=module', '-e', USED + script]);
    const [, megabytes = 'x', seconds = 'x'] = /#([\d.]+) ([\d.]+)$/.exec(ran.err) ?? [];
    return { ...ran, megabytes: Number(megabytes), seconds: Number(seconds) };
  }

  /** Runs the tool on a file. */
  async function measured(bytes: Uint8Array) {
    const file = join(emptyFolder(), 'edited.xlsx');
    writeFileSync(file, bytes);
    const ran = await used(`process.argv=[process.argv[0],'coilfeed','design',${JSON.stringify(file)}];
      await import(${JSON.stringify(toolPath())});`);
    return { ...ran, starts: ran.seconds / (await used('')).seconds };
  }

  const WORST = Object.entries(HOSTILE).filter(([name]) =>
    /swell|lie|beyond|60 000|many|nested|7 MB|each other|last column|far corner|everything|50 MB|5000 rows/.test(
      name,
    ),
  );

  test(`the worst of them: at most ${STARTS} starts of Node and ${MEGABYTES} MB`, async () => {
    expect(WORST.length).toBeGreaterThan(12);
    for (const [name, { make, read }] of WORST) {
      const { status, megabytes, starts, err } = await measured(make(sound));
      expect({ name, status, err }).toMatchObject({ name, status: read ? 0 : 2 });
      expect(starts, name).toBeLessThan(STARTS);
      expect(megabytes, name).toBeLessThan(MEGABYTES);
    }
  });

  test('50 MB in front of it, behind it, and an old format', async () => {
    const padded = new Uint8Array(50_000_000 + sound.length);
    padded.set(sound);
    for (const [bytes, says] of [
      [padded, 'larger than 16 MiB'],
      [new Uint8Array(50_000_000), 'larger than 1 MiB'],
      [
        new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
        'save it as .xlsx without a password',
      ],
    ] as const) {
      const { status, starts, megabytes, err } = await measured(bytes);
      expect(status).toBe(2);
      expect(err.replace(/\s+/g, ' ')).toContain(says);
      expect(starts).toBeLessThan(STARTS);
      expect(megabytes).toBeLessThan(MEGABYTES);
    }
  });
});
