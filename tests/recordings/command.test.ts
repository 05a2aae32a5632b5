/** Recordings on the command line: options, refusals, what is said first, and how much memory a long one takes. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { coilfeed, emptyFolder, runProgram, toolPath } from '../cli/tool.ts';
import { design } from '../ngspice/cases.ts';
import { type Coil, recorded } from './signal.ts';

/** The coil of the design with 60 mohm of feed, at 12.0 V behind the driver; one charge for each cycle at 3000 rpm. */
const COIL: Coil = { volts: 12, ohm: 0.48, henry: 2.4e-3, dwell: 3e-3, period: 40e-3 };
const slow = JSON.stringify(design({ angles: [0, 180, 360, 540], rpm: 3000, supply: 13.2, dwell: 3 }));

/** Rows of times in seconds and of what an instrument shows for an ampere. */
const rows = (coil: Coil, shows: number, every = 1e-5, length = 0.2): string =>
  recorded(coil, { every, length, noise: 0.05 })
    .map((i, n) => `${(n * every).toFixed(6)},${(i * shows).toFixed(4)}`)
    .join('\n');

async function trace(text: string, argv: readonly string[] = []) {
  const cwd = emptyFolder();
  writeFileSync(join(cwd, 'design.json'), slow);
  writeFileSync(join(cwd, 'clamp.csv'), text);
  const ran = await coilfeed(['trace', 'design.json', '--measured', 'clamp.csv', ...argv], { cwd });
  return { ...ran, said: `${ran.out}${ran.err}`.replace(/\s+/g, ' ') };
}

describe('what the file leaves open', () => {
  test('volts are refused, and taken with the factor of the clamp', async () => {
    const text = `Time (s),CH1 (V)\n${rows(COIL, 0.1)}`;
    const refused = await trace(text);
    expect({ status: refused.status, out: refused.out }).toEqual({ status: 2, out: '' });
    expect(refused.said).toContain('Column 2 "CH1 (V)" is in V.');
    const { measured, contrary } = JSON.parse((await trace(text, ['--scale', '100mV/A', '--json'])).out);
    expect(contrary).toEqual([]);
    // 12 V / 0.48 ohm · (1 − e^(−3 ms · 0.48 ohm / 2.4 mH)) = 11.28 A, within 2 %.
    expect(Math.abs(measured.peak_A / 11.28 - 1)).toBeLessThan(0.02);
  });

  test('one of several channels, by its heading', async () => {
    const text = `Time (s),Coil 1 (A),Coil 2 (A)\n${rows(COIL, 1).replace(/,(.*)$/gm, ',$1,$1')}`;
    expect((await trace(text)).said).toContain('Name one by "--column"');
    expect((await trace(text, ['--column', 'coil 2'])).status).toBe(0);
    expect((await trace(text, ['--column', 'coil'])).said).toContain('names several columns of it');
    expect((await trace(text, ['--column', '7'])).said).toContain(
      'is no column of numbers. It has column 1 "Time (s)"',
    );
  });
});

describe('a call that cannot be used: status 2 and a sentence', () => {
  test.each<[string[], string]>([
    [['--scale', '100'], 'is no factor of a clamp'],
    [['--scale', '5 ohm/A'], 'is no factor of a clamp'],
    [['--interval', '10'], 'is no time from one sample to the next'],
    [['--interval', '0 us'], 'is no time from one sample to the next'],
    [['--units', 'feet'], '--units takes metric, us, both'],
    [['--scale', '100mV/A'], 'is in A already'],
  ])('%s', async (argv, says) => {
    const { status, said } = await trace(`Time (s),I (A)\n${rows(COIL, 1)}`, argv);
    expect(status).toBe(2);
    expect(said).toContain(says);
  });

  test('an option for a recording without one', async () => {
    const cwd = emptyFolder();
    writeFileSync(join(cwd, 'design.json'), slow);
    const { status, err } = await coilfeed(['trace', 'design.json', '--column', '2'], { cwd });
    expect(status).toBe(2);
    expect(err).toContain('goes with --measured');
  });
});

describe('what is said before anything else', () => {
  test('a clamp of another factor', async () => {
    const { said, out } = await trace(`Time (s),I (A)\n${rows(COIL, 10)}`);
    expect(out.indexOf('First of all')).toBeLessThan(out.indexOf('Measured beside'));
    expect(said).toMatch(/All currents are about (10|9\.\d|10\.\d) times those of the design/);
  });

  test('times in another unit', async () => {
    // Microseconds that are called milliseconds.
    const text = `Time (ms),I (A)\n${rows(COIL, 1).replace(/^[\d.]+/gm, (t) => `${Number(t) * 1e4}`)}`;
    expect((await trace(text)).said).toMatch(
      /The charges last (10|9\.\d|10\.\d) times the dwell of the design/,
    );
  });

  test('one coil, and a bank of four', async () => {
    const one = await trace(`Time (s),I (A)\n${rows(COIL, 1)}`);
    expect(one.out).not.toContain('First of all');
    expect(one.said).toContain('A charge comes every 40.0 ms, as one coil fires at "judged"');
    const bank = await trace(`Time (s),I (A)\n${rows({ ...COIL, period: 10e-3 }, 1)}`);
    expect(bank.said).toContain('the clamp holds a wire of 4 coils');
    const wire = await trace(`Time (s),I (A)\n${rows({ ...COIL, period: 10e-3 }, 1)}`, ['--run', 'main']);
    expect(wire.said).toContain('as the 4 coils of main fire');
    const faster = await trace(`Time (s),I (A)\n${rows({ ...COIL, period: 30e-3 }, 1)}`);
    expect(faster.said).toContain('the engine turned at 4000 rpm');
  });
});

/** Largest memory of a process [byte], printed at its end. */
const REPORT = `data:text/javascript,process.on('exit',()=>process.stderr.write('\\nMEMORY '+process.resourceUsage().maxRSS*1024))`;

test('a recording takes a few times the memory of its file, however long it is', async () => {
  const cwd = emptyFolder();
  writeFileSync(join(cwd, 'design.json'), slow);
  const text = (length: number): string => `Time (s),I (A)\n${rows(COIL, 1, 1e-5, length)}`;
  const sizes = await Promise.all(
    [0.5, 8].map(async (length, i) => {
      const file = text(length);
      writeFileSync(join(cwd, `clamp-${i}.csv`), file);
      const argv = ['--import', REPORT, toolPath(), 'trace', 'design.json', '--measured', `clamp-${i}.csv`];
      const { status, err } = await runProgram(process.execPath, argv, { cwd });
      expect(status).toBe(0);
      return { file: file.length, memory: Number(/MEMORY (\d+)/.exec(err)?.[1]) };
    }),
  );
  const [short, long] = sizes as [(typeof sizes)[0], (typeof sizes)[0]];
  // The file once, times and currents as numbers (about as much again), and what the collector has not yet taken away. The
  // text as a whole with all its lines would take more than ten times the file.
  expect((long.memory - short.memory) / (long.file - short.file)).toBeLessThan(7);
});
