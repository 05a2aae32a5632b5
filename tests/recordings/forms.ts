/** Forms in which instruments export a recording, each written here by hand, with what has to come of it. */
import { type Coil, type Instrument, recorded } from './signal.ts';

/** What the design says: the coil of most recordings, a little other than what is in them. */
export const DESIGN = { drive: 12.9, dwell: 3e-3, peak: 11.6, resistance: 0.55, inductance: 2.5e-3 };

export const COIL: Coil = { volts: 12.9, ohm: 0.52, henry: 2.6e-3, dwell: 3.1e-3, period: 16.7e-3 };
const SCOPE: Instrument = { every: 1e-5, length: 0.11, noise: 0.05 };

export interface Form {
  readonly name: string;
  readonly bytes: () => Uint8Array;
  readonly asked?: { column?: string; timeColumn?: string; scale?: string; interval?: number };
  /** What is in it; the usual coil when it is left out. */
  readonly coil?: Coil;
  /** Refused with this in the reason; told first, with this in the sentence; else right. */
  readonly refused?: RegExp;
  readonly first?: RegExp;
  /** A note that has to be there. */
  readonly notes?: RegExp;
  /** The end of the range of the instrument hides the peak. */
  readonly clipped?: boolean;
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16 = (text: string, big: boolean): Uint8Array => {
  const bytes = new Uint8Array(2 * text.length + 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, !big);
  for (let i = 0; i < text.length; i++) view.setUint16(2 + 2 * i, text.charCodeAt(i), !big);
  return bytes;
};
const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (sign) => sign.charCodeAt(0));

interface Table {
  readonly coil?: Coil;
  readonly scope?: Partial<Instrument>;
  readonly head?: readonly string[];
  /** Cells of sample number n at time t [s] with current i [A]. */
  readonly row?: (t: number, i: number, n: number) => readonly string[];
  readonly between?: string;
  readonly comma?: boolean;
  readonly end?: string;
}

const digits = (value: number, places: number): string => value.toFixed(places);
const seconds = (t: number): string => digits(t, 7);

function text({
  coil = COIL,
  scope = {},
  head = ['Time (s),I (A)'],
  row,
  between = ',',
  comma,
  end = '\n',
}: Table): string {
  const inst = { ...SCOPE, ...scope };
  const cells = row ?? ((t, i) => [seconds(t), digits(i, 4)]);
  const lines = recorded(coil, inst).map((i, n) => {
    const line = cells(n * inst.every, i, n).map((cell) => (comma ? cell.replace('.', ',') : cell));
    return line.join(between);
  });
  return [...head, ...lines, ''].join(end);
}

const form = (name: string, table: Table, more: Partial<Form> = {}): Form => ({
  name,
  bytes: () => utf8(text(table)),
  ...(table.coil ? { coil: table.coil } : {}),
  ...more,
});

const millivolts =
  (perAmpere: number) =>
  (t: number, i: number): string[] => [digits(t * 1e3, 4), digits(i * perAmpere, 2)];
const volts =
  (perAmpere: number) =>
  (t: number, i: number): string[] => [seconds(t), digits(i * perAmpere, 5)];
const counted = (_: number, i: number, n: number): string[] => [String(n), digits(i, 4)];

/** Fields that an inexpensive scope puts to the left of its samples. */
const BESIDE = [
  ['Record Length', '11000', 'Points'],
  ['Sample Interval', '1.000000e-05', 's'],
  ['Trigger Point', '0', 'Samples'],
  ['Source', 'CH1', ''],
  ['Vertical Units', 'V', ''],
  ['Vertical Scale', '5.000000e-01', ''],
  ['Horizontal Units', 's', ''],
];
const beside = (t: number, i: number, n: number): string[] => [
  ...(BESIDE[n] ?? ['', '', '']),
  seconds(t),
  digits(i / 10, 5),
];

const clock = (t: number): string => `14:03:${digits(27 + t, 6).padStart(9, '0')}`;

const FEW: Partial<Instrument> = { length: 0.06 };

export const FORMS: readonly Form[] = [
  form('commas, `Time (s),I (A)`', {}),
  form('`Time(ms),Current [mA]`', {
    head: ['Time(ms),Current [mA]'],
    row: (t, i) => [digits(t * 1e3, 4), digits(i * 1e3, 1)],
  }),
  form(
    'names, units below, millivolts, with a factor',
    { head: ['Time,Channel A', '(ms),(mV)'], row: millivolts(100) },
    { asked: { scale: '100mV/A' } },
  ),
  form(
    'names, units below, millivolts, without a factor',
    { head: ['Time,Channel A', '(ms),(mV)', ''], row: millivolts(100) },
    { refused: /is in mV/ },
  ),
  form(
    '`t / ms;CH1 / V`, decimal commas',
    {
      head: ['t / ms;CH1 / V'],
      between: ';',
      comma: true,
      row: (t, i) => [digits(t * 1e3, 4), digits(i * 0.05, 5)],
    },
    { asked: { scale: '50 mV/A' } },
  ),
  form('mark of UTF-8, carriage returns, German words', {
    head: ['\ufeffZeit (s);Strom (A)'],
    between: ';',
    comma: true,
    end: '\r\n',
  }),
  {
    name: 'UTF-16 with tabs',
    bytes: () => utf16(text({ head: ['Time (s)\tCurrent (A)'], between: '\t', end: '\r\n' }), false),
  },
  {
    name: 'UTF-16, the large byte first',
    bytes: () => utf16(text({ head: ['Time (s)\tCurrent (A)'], between: '\t', scope: FEW }), true),
  },
  {
    name: 'one byte a letter, `Zeit (µs)`',
    bytes: () =>
      latin1(
        text({
          head: ['Zeit (\u00b5s);I in A'],
          between: ';',
          row: (t, i) => [digits(t * 1e6, 0), digits(i, 3)],
        }),
      ),
  },
  form('a comma behind each row', {
    head: ['Time,CH1,', 's,A,'],
    row: (t, i) => [seconds(t), digits(i, 4), ''],
  }),
  form('twenty lines before the table', {
    head: [
      'Model,Bench 4',
      'Serial,0042',
      'Date,2031-04-01',
      'Channels,1',
      'Sample Rate,100 kSa/s',
      'Points,11000',
      'Coupling,DC',
      'Probe,1X',
      ...Array.from({ length: 12 }, (_, i) => `Setting ${i + 1},${i * 5}`),
      '',
      'Second,Ampere',
    ],
  }),
  form(
    'fields beside the samples, volts, with a factor',
    { head: [], row: beside },
    { asked: { scale: '0.1V/A' } },
  ),
  form(
    'fields beside the samples, volts, without a factor',
    { head: [], row: beside },
    { refused: /is in V/ },
  ),
  form(
    'names above `Time,Volt,Volt`, eight bits of ±5 V',
    {
      head: ['Model,Bench 4', 'Sample Interval,4e-5', ',CH1,CH2', 'Time,Volt,Volt'],
      scope: { every: 4e-5, length: 0.3, bits: 8, full: 50, noise: 0.2 },
      row: (t, i) => [digits(t - 0.05, 6), digits(i / 10, 4), '12.1'],
    },
    { asked: { column: 'CH1', scale: '100mV/A' } },
  ),
  form('sample numbers, times and current', {
    head: ['No.,Time (s),CH1 (A)'],
    row: (t, i, n) => [String(n), seconds(t), digits(i, 4)],
  }),
  form(
    'sample numbers, the rate above the table',
    { head: ['Sampling rate: 100 kHz', 'Sample,Current (A)'], row: counted },
    { notes: /10 µs apart/ },
  ),
  form('sample numbers alone', { head: ['Sample,Current (A)'], row: counted }, { refused: /counts samples/ }),
  form(
    'sample numbers alone, with the interval',
    { head: ['Sample,Current (A)'], row: counted },
    { asked: { interval: 1e-5 } },
  ),
  form('a trigger channel before the clamp', {
    head: ['Time (s),TRIG (V),Clamp (A)'],
    row: (t, i) => [seconds(t), i > 1 ? '5.00' : '0.00', digits(i, 4)],
  }),
  form(
    'two channels of volts',
    {
      head: ['Time (s),CH1 (V),CH2 (V)'],
      row: (t, i) => [seconds(t), digits(12 - i / 50, 3), digits(i / 10, 4)],
    },
    { refused: /Several of its columns/ },
  ),
  form(
    'two channels of volts, with channel and factor',
    {
      head: ['Time (s),CH1 (V),CH2 (V)'],
      row: (t, i) => [seconds(t), digits(12 - i / 50, 3), digits(i / 10, 4)],
    },
    { asked: { column: 'CH2', scale: '0.1 V/A' } },
  ),
  form('no heading, seconds and amperes', { head: [] }, { notes: /No unit of time is named/ }),
  form(
    'no heading, millivolts of a clamp of 100 mV/A',
    { head: [], row: millivolts(100) },
    { refused: /Nothing in it says/ },
  ),
  form(
    'no heading, volts of a clamp of 100 mV/A',
    { head: [], row: volts(0.1) },
    { refused: /Nothing in it says/ },
  ),
  form(
    'no unit, millivolts, with a factor',
    { head: ['time,CH1'], row: millivolts(10) },
    { asked: { scale: '10mV/A' }, notes: /it is millivolts/ },
  ),
  form('eight bits of ±50 A', { scope: { bits: 8, full: 50, noise: 0.2 } }),
  form('eight bits of ±50 A without noise', { scope: { bits: 8, full: 50, noise: 0 } }),
  form(
    'eight bits of ±200 A without noise',
    { scope: { bits: 8, full: 200, noise: 0 } },
    { refused: /choose a smaller range/ },
  ),
  form('a million samples a second', { scope: { every: 1e-6, length: 0.06, noise: 0.2 } }),
  form('ringing after the spark', { scope: { every: 2e-6, length: 0.07, ringing: [5, 12e3, 150e-6] } }),
  form('a zero that drifts by 4 A', { scope: { drift: 4, offset: -1 } }),
  form('a zero that drifts by 3 A, straight and as a wave', { scope: { drift: 2, wave: 0.5, length: 0.2 } }),
  form('spikes of five other coils, as high as the charge', { scope: { spikes: [5, 12, 20e-6] } }),
  form('the same spikes at a million samples a second', {
    scope: { every: 1e-6, length: 0.06, spikes: [5, 15, 20e-6] },
  }),
  form('noise of a twelfth of the peak', { scope: { noise: 1, length: 0.3 } }),
  form('charges that drop out for a moment', { scope: { dropout: [0.45, 1.2e-4] } }),
  form(
    'cells left blank',
    { row: (t, i, n) => [seconds(t), n % 97 < 4 ? '' : digits(i, 4)] },
    { notes: /lines without a current/ },
  ),
  form(
    'a clamp the other way round, with an offset',
    { scope: { turned: true, offset: 2.3 } },
    { notes: /on backwards/ },
  ),
  form('a charge that is cut short', { scope: { short: [3, 0.6] } }, { notes: /1 of \d+ charges differ/ }),
  form('a coil with a limit', { coil: { ...COIL, limit: 9 } }),
  form('a slow clamp', { scope: { slow: 40e-6 } }),
  form('a clamp that passes no direct current', { scope: { coupling: 0.25 } }),
  form(
    'times rounded to milliseconds',
    { row: (t, i) => [digits(t, 3), digits(i, 4)] },
    { refused: /rounded too far/ },
  ),
  form(
    'times rounded to milliseconds, with the interval',
    { row: (t, i) => [digits(t, 3), digits(i, 4)] },
    { asked: { interval: 1e-5 } },
  ),
  form('a bank of six at low speed', { coil: { ...COIL, period: 0.12 }, scope: { length: 0.3, coils: 6 } }),
  form(
    'a bank of six whose charges overlap',
    { scope: { coils: 6 } },
    { refused: /never comes to rest|several coils overlap/ },
  ),
  form('the time of the day', { head: ['Time,I (A)'], row: (t, i) => [clock(t), digits(i, 4)] }),
  form(
    'beyond the range of the instrument',
    { row: (t, i) => [seconds(t), i > 9 ? '∞' : digits(i, 4)] },
    { clipped: true, notes: /beyond the range/ },
  ),
  form(
    'ten times the amperes',
    { row: (t, i) => [seconds(t), digits(10 * i, 3)] },
    { first: /All currents are about 9\.6 times.*factor/ },
  ),
  form('a column of times for each channel', {
    head: ['Time A (s),Knock (V),Time B (s),Coil 3 (A)'],
    row: (t, i) => [seconds(t + 0.3), digits(0.2 + i / 100, 3), seconds(t), digits(i, 4)],
  }),
  form('gaps between columns', { head: ['# Time (s)   Current (A)'], between: '   ' }),
  form('quotes, decimal commas between commas', {
    head: ['"Time (s)","I (A)"'],
    comma: true,
    row: (t, i) => [`"${seconds(t)}"`, `"${digits(i, 4)}"`],
  }),
  form(
    'decimal commas between commas',
    { head: ['Time (s),I (A)'], comma: true },
    { refused: /both decimal marks and separators/ },
  ),
  form(
    'points and commas',
    { head: ['Time (s);I (A)'], between: ';', row: (t, i) => [seconds(t), digits(i, 4).replace('.', ',')] },
    { refused: /which one marks the decimals/ },
  ),
  form(
    'a logger of a thousand samples a second',
    { scope: { every: 1e-3, length: 3 } },
    { refused: /sample more often/ },
  ),
  form(
    'units in the cells',
    { row: (t, i) => [`${digits(t * 1e3, 3)} ms`, `${digits(i, 3)} A`] },
    { refused: /without units behind them/ },
  ),
  form(
    'amperes alone, with the interval',
    { head: ['I (A)'], row: (_, i) => [digits(i, 4)] },
    { asked: { interval: 1e-5 } },
  ),
  form(
    'a dwell signal in place of the clamp',
    { head: ['Time (s),CH1'], row: (t, i) => [seconds(t), i > 1 ? '5.00' : '0.00'] },
    { refused: /2 levels only/ },
  ),
];
