/** Recordings with known values: what comes out is what went in, whatever the instrument does to it. */
import { describe, expect, test } from 'vitest';
import { type MeasuredTrace, measureTrace } from '../../src/transient/measured/measure.ts';
import { chargeCurrent, type Recorded, textOf, type Written } from './made-up.ts';

/** A coil of 0.5 ohm and 2.5 mH, seven charges; noise of 1 % of the peak. */
const PLAIN: Recorded = {
  drive: 12.8,
  ohm: 0.5,
  henry: 2.5e-3,
  dwell: 3.5e-3,
  period: 16e-3,
  every: 10e-6,
  length: 0.115,
  noise: 0.12,
};

const judge = (r: Recorded, written: Written = {}, text = textOf(r, written)): MeasuredTrace => {
  const found = measureTrace([text], { drive: r.drive, dwell: 3e-3, peak: chargeCurrent(r, r.dwell) });
  if (!found.ok) throw new Error(found.why);
  return found.value;
};
const why = (text: string): string => {
  const found = measureTrace([text], { drive: 12, dwell: 3e-3, peak: 12 });
  if (found.ok) throw new Error('was not refused');
  expect(found.why).toMatch(/^[A-Z].*\.$|\?$/);
  return found.why;
};

/** Of the task: known values come back within 3 %. */
const TOLERANCE = 0.03;
const near = (found: number | null | undefined, right: number): void => {
  expect(found).not.toBeNull();
  expect(Math.abs((found as number) / right - 1)).toBeLessThan(TOLERANCE);
};

function agrees(found: MeasuredTrace, r: Recorded): void {
  near(found.resistance.value, r.ohm);
  near(found.inductance.value, r.henry);
  near(found.dwell, r.dwell);
  near(found.peak, chargeCurrent(r, r.dwell));
}

describe('comes back within 3 %', () => {
  test.each<[string, Partial<Recorded>]>([
    ['noise of 1 %', {}],
    ['no noise', { noise: 0 }],
    ['an offset of the clamp', { offset: -1.7 }],
    ['a clamp the other way round', { sign: -1, offset: 0.8 }],
    ['a recording that begins and ends in a charge', { from: 14e-3, length: 0.114 }],
    ['a low limit', { limit: 9 }],
    ['a limit of a coil with little resistance', { ohm: 0.3, henry: 1.2e-3, limit: 14 }],
    ['a core that saturates', { saturates: 11 }],
    ['little rest', { period: 4.5e-3, length: 0.04 }],
    ['a slow coil', { ohm: 3, henry: 7e-3, dwell: 4e-3, noise: 0.02 }],
    ['many samples', { every: 1e-6, length: 0.05, noise: 0.1 }],
    // 17,500 samples in each charge: each is as noisy as a hundredth of the peak, and the rise between two is far less.
    ['far more samples than a charge needs', { every: 0.2e-6, length: 0.05 }],
    ['the same, turned round', { every: 0.2e-6, length: 0.05, sign: -1 }],
    ['few samples', { every: 100e-6, length: 0.32, noise: 0.02 }],
  ])('%s', (_, change) => {
    const r = { ...PLAIN, ...change };
    agrees(judge(r), r);
  });
});

describe('the range of confidence', () => {
  test('holds the true value, and is wider where there is more noise', () => {
    const ranges = [0.03, 0.12, 0.3].map((noise) => {
      const { resistance, inductance } = judge({ ...PLAIN, noise });
      // Twice the range of 95 %: missed by chance once in ten thousand.
      expect(Math.abs(resistance.value - PLAIN.ohm)).toBeLessThan(2 * resistance.within);
      expect(Math.abs(inductance.value - PLAIN.henry)).toBeLessThan(2 * inductance.within);
      return resistance.within;
    });
    expect(ranges).toEqual([...ranges].sort((a, b) => a - b));
  });
});

describe('knees', () => {
  test('none on a charge that just rises, also when it comes to rest by itself', () => {
    expect(judge(PLAIN).knee).toBeNull();
    expect(judge({ ...PLAIN, ohm: 1.5, dwell: 8e-3 }).knee).toBeNull();
  });

  test('a limit: where and when', () => {
    const { knee, peak } = judge({ ...PLAIN, limit: 9 });
    expect(knee?.kind).toBe('limit');
    near(knee?.current, 9);
    near(peak, 9);
    near(knee?.after, (-2.5e-3 / 0.5) * Math.log(1 - (9 * 0.5) / 12.8));
  });

  test('the end of the range of the instrument is told apart by its stillness', () => {
    const clipped = judge({ ...PLAIN, range: 9 });
    expect(clipped.knee?.kind).toBe('clipped');
    near(clipped.resistance.value, PLAIN.ohm);
    near(clipped.inductance.value, PLAIN.henry);
  });

  test('saturation: the current at which it begins', () => {
    const { knee } = judge({ ...PLAIN, saturates: 10 });
    expect(knee?.kind).toBe('saturation');
    // Looked for in steps of a twentieth of the dwell, in which the current rises by 0.6 A.
    expect(Math.abs((knee?.current ?? 0) - 10)).toBeLessThan(1);
  });
});

describe('as instruments write it', () => {
  const short = { ...PLAIN, length: 0.05, noise: 0.03 };
  test.each<[string, Written, string]>([
    ['commas and a heading in ms', { head: 'Time [ms],Current [A]', times: 1e3 }, 'ms'],
    ['semicolons and decimal commas', { head: 'Zeit s;Strom A', separator: ';', comma: true }, 's'],
    ['tabs, decimal commas, no heading', { separator: '\t', comma: true }, 's'],
    ['two lines of heading', { head: 'Channel A,Clamp\n(us),(A)', times: 1e6 }, 'us'],
    ['µs', { head: 'time (µs);I (A)', separator: ';', times: 1e6 }, 'us'],
    ['no heading, microseconds', { times: 1e6 }, 'us'],
    ['no heading, milliseconds', { times: 1e3 }, 'ms'],
  ])('%s', (_, written, unit) => {
    const found = judge(short, written);
    expect(found.unit).toBe(unit);
    agrees(found, short);
    expect(found.notes.some((note) => note.startsWith('No unit of time'))).toBe(written.head === undefined);
  });

  test('milliamperes, a further column, quotes, carriage returns, a byte order mark', () => {
    const rows = textOf(short)
      .trim()
      .split('\n')
      .map((line) => line.split(','))
      .map(([t, i]) => `"${t}","0.5","${Number(i) * 1000}"`);
    const found = judge(short, {}, `\ufeff"time s","other","clamp mA"\r\n${rows.join('\r\n')}\r\n`);
    agrees(found, short);
    expect(found.notes.join(' ')).toContain('mA');
  });

  test.each([1, 2, 7, 4096])('the same in pieces of %d characters', (size) => {
    const text = `\ufefftime s;clamp A\r\n\r\n${textOf(short, { separator: ';' }).replaceAll('\n', '\r\n')}`;
    const pieces = Array.from({ length: Math.ceil(text.length / size) }, (_, i) =>
      text.slice(i * size, (i + 1) * size),
    );
    const of = (given: string[]): unknown =>
      JSON.stringify(measureTrace(given, { drive: 12.8, dwell: 3e-3, peak: 12 }));
    expect(of(pieces)).toBe(of([text]));
    expect(of([text])).toContain('"ok":true');
  });
});

describe('says what it did', () => {
  test.each<[string, Partial<Recorded>, string]>([
    ['turned', { sign: -1 }, 'on backwards'],
    ['offset', { offset: 2 }, 'At rest the clamp shows 2.00 A'],
    ['partial', { from: 14e-3, length: 0.114 }, 'cut off by the recording: left out'],
    ['only parts', { from: 14e-3, length: 16.5e-3, noise: 0.02 }, 'No charge lies wholly'],
  ])('%s', (_, change, says) => {
    expect(judge({ ...PLAIN, ...change }).notes.join(' ')).toContain(says);
  });
});

describe('refused with a sentence', () => {
  const line = (n: number, f: (i: number) => string): string =>
    Array.from({ length: n }, (_, i) => f(i)).join('\n');
  test.each<[string, string, string]>([
    ['nothing', '', 'two numbers'],
    ['words', 'all of this\nis text, and more text\n', 'two numbers'],
    ['one column', line(100, (i) => `${i}`), 'two numbers'],
    ['few samples', line(10, (i) => `${i},${i}`), '10 samples'],
    ['words among numbers', `ms,A\n${line(50, (i) => `${i},1`)}\n51,x\n`, 'Line 52'],
    ['back in time', `ms,A\n${line(50, (i) => `${i},1`)}\n3,1\n`, 'Line 52'],
    ['volts', `time [s],clamp out [mV]\n${line(50, (i) => `${i},1`)}`.replace('clamp ', ''), 'in mV'],
    ['decimal commas between commas', line(50, (i) => `0,${i},1,5`), 'both decimal marks and separators'],
    ['standing time', `ms,A\n${line(50, (i) => `1,${i}`)}`, 'the same'],
    ['a flat line', `ms,A\n${line(500, (i) => `${i},3`)}`, 'stands still'],
    ['no firing', textOf({ ...PLAIN, from: 12e-3, length: 3.9e-3 }), 'never falls at once'],
    ['noise', textOf({ ...PLAIN, drive: 0.001 }), 'No charge stands out'],
  ])('%s', (_, text, says) => {
    expect(why(text)).toContain(says);
  });

  test('several coils at once', () => {
    const r = { ...PLAIN, noise: 0.02, length: 0.06 };
    // A second coil, half a period later, its charge reaching over the firing of the first one.
    const long = { ...r, dwell: 10e-3 };
    const sum = line(6000, (i) => {
      const t = i * 1e-5;
      const one = (shift: number): number => chargeCurrent(long, ((t + shift) % 16e-3) - 6e-3);
      return `${t},${one(0) + one(8e-3)}`;
    });
    expect(why(sum)).toMatch(/never comes to rest|several coils overlap/);
  });
});
