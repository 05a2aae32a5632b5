/**
 * What a recording of a current clamp tells about coil and feed: resistance, inductance, dwell, peak, and the knee.
 *
 * The slope at the start of a charge is voltage over inductance; how soon it bends, resistance over inductance. The
 * voltage is that left for coil and feed together, so that the resistance found is that of the whole loop: coil, driver's
 * share beyond its stated drop, and conductors.
 */
import { printNumber, printValue } from '../../basis/print.ts';
import { type ChargeFit, fitCharge, type Knee } from './charge-fit.ts';
import { type Found, findCharges } from './charges.ts';
import type { Asked } from './columns.ts';
import { type Estimate, estimates, farFromMedian, meanOf } from './estimate.ts';
import { TIME_UNITS, type TimeUnit } from './heading.ts';
import { type Read, refused } from './lines.ts';
import { median } from './noise.ts';
import { notesOf } from './notes.ts';
import { type Recording, readRecording } from './table.ts';
import { type ChargeSpan, startOf } from './zero.ts';

export interface MeasuredCharge {
  /** [s], on the clock of the recording. */
  readonly start: number;
  /** Length [s] and end current [A]; null for a charge that is not wholly in the recording. */
  readonly dwell: number | null;
  readonly peak: number | null;
  readonly knee: Knee | null;
  /** Samples since the start: time [s] and current [A]. */
  readonly samples: readonly { readonly after: number; readonly current: number }[];
}

export interface MeasuredTrace {
  readonly samples: number;
  readonly unit: TimeUnit;
  /** Of a sample at rest [A]. */
  readonly noise: number;
  readonly charges: readonly MeasuredCharge[];
  /** Charges far from the others, which were left out. */
  readonly leftOut: number;
  /** [ohm] of the loop, [H]. */
  readonly resistance: Estimate;
  readonly inductance: Estimate;
  /** Mean of the whole charges [s], [A]; null when no charge is whole. */
  readonly dwell: number | null;
  readonly peak: number | null;
  /** Median time from one charge to the next [s]; null for a single one. */
  readonly spacing: number | null;
  /** What most charges show. */
  readonly knee: Knee | null;
  /** What was taken how, as sentences. */
  readonly notes: readonly string[];
}

export interface Expected {
  /** Voltage left for coil and feed: supply less driver drop [V]. */
  readonly drive: number;
  /** Dwell [s] and peak current of a coil [A] by the design: they tell units that the recording does not name. */
  readonly dwell: number;
  readonly peak: number;
}

/** More charges say nothing new. */
const MOST_CHARGES = 20;
/** More samples of a charge than this are averaged in groups: the curve is smooth. */
const MOST_SAMPLES = 600;
/** A converter's step of more than this share of the peak leaves peak and zero in the dark. Arbitrary. */
const COARSE = 0.04;

/** Judges the text of a recording, as `readRecording` takes it. Whatever is wrong with it comes back as one sentence. */
export function measureTrace(
  pieces: Iterable<string>,
  expected: Expected,
  asked: Asked = {},
): Read<MeasuredTrace> {
  const read = readRecording(pieces, asked);
  if (!read.ok) return read;
  const recording = read.value;
  const timed = inSeconds(recording, expected.dwell);
  if (!timed.ok) return timed;
  const amperes = inAmperes(recording, timed.value.found, expected.peak);
  if (!amperes.ok) return amperes;
  const found = amperes.value;
  const { spans, time } = found;

  const whole = spans.filter(({ starts, ends }) => starts && ends);
  // Parts of charges are used only where there is nothing better.
  const used = (whole.length > 0 ? whole : spans).slice(0, MOST_CHARGES);
  const all = used.flatMap((span) => {
    const fit = fitSpan(found, span, spans);
    return fit === null ? [] : [{ fit, charge: chargeOf(found, span, fit) }];
  });
  if (all.length === 0) return refused('No curve of a charging coil fits what it shows.');
  const far = farFromMedian(all.map(({ fit, charge }) => [fit.slope, charge.dwell, charge.peak]));
  const kept = all.filter((_, i) => !far[i]);
  if (kept.length < used.length / 2)
    return refused(
      `Of ${used.length} charges only ${kept.length} are alike and rise as those of a coil do: clamp the wire of one coil alone, ` +
        'away from the others, with a faster or less disturbed instrument.',
    );
  const charges = kept.map(({ charge }) => charge);
  const peak = meanOf(charges.map((charge) => charge.peak));
  if (found.step > COARSE * (peak ?? tallest(found)))
    return refused(
      `The instrument shows the current in steps of ${printValue(found.step, 'A')}, and the charges reach ` +
        `${printValue(peak ?? tallest(found), 'A')}: choose a smaller range.`,
    );
  const { resistance, inductance } = estimates(
    kept.map(({ fit }) => fit),
    expected.drive,
  );
  if (resistance.value < 0 && resistance.value + resistance.within < 0)
    return refused(
      'The current in it bends upward all along, as that of no coil does: check the zero of the clamp, and the supply.',
    );
  const starts = whole.map(({ first }) => time[first] as number);
  return {
    ok: true,
    value: {
      samples: recording.time.length,
      unit: timed.value.unit,
      noise: found.noise,
      charges,
      leftOut: all.length - kept.length,
      resistance,
      inductance,
      dwell: meanOf(charges.map(({ dwell }) => dwell)),
      peak,
      spacing: starts.length < 2 ? null : median(starts.slice(1).map((at, i) => at - (starts[i] as number))),
      knee: commonKnee(charges),
      notes: [
        ...recording.notes,
        ...(recording.unitNamed
          ? []
          : [
              `Nothing says what ${recording.column} is in; by the peak of the design it is ${found.shownIn}.`,
            ]),
        ...notesOf(found, recording.unit === null ? timed.value.unit : null),
        ...partsOf(spans, whole, used),
        ...leftOutOf(all.length, kept.length, used.length),
      ],
    },
  };
}

/** So many times the dwell hold more charges than are taken, at any speed. Arbitrary. */
const STRETCH = 1000;
/** And so many samples at least. Arbitrary. */
const LEAST = 200_000;

/** The charges of the first stretch that has some: a long recording is not looked through to its end. */
function firstFound(
  written: Float64Array,
  current: Float64Array,
  factor: number,
  dwell: number,
): Read<Found> {
  const step = (factor * ((written.at(-1) as number) - (written[0] as number))) / (written.length - 1);
  const size = Math.max(LEAST, Math.ceil((STRETCH * dwell) / step));
  let wrong: Read<Found> | null = null;
  for (let from = 0; from === 0 || from + size / 2 < written.length; from += size) {
    // What is left behind the last stretch belongs to it.
    const to = from + 1.5 * size > written.length ? written.length : from + size;
    const found = findCharges(
      { time: written.subarray(from, to).map((t) => t * factor), current: current.subarray(from, to) },
      dwell,
    );
    if (found.ok) return found;
    wrong ??= found;
  }
  return wrong ?? refused('It has no samples.');
}

/** A charge as long as so many times the dwell, or so small a part of it, is in another unit of time. Arbitrary. */
const OTHER_UNIT = 5;

/** The recording with times in seconds, and its charges; a unit that is not named is that by which a charge lasts as long as the dwell. */
function inSeconds(recording: Recording, dwell: number): Read<{ unit: TimeUnit; found: Found }> {
  const { time: written, current, unit: told } = recording;
  const found = (unit: TimeUnit): Read<Found> => firstFound(written, current, TIME_UNITS[unit], dwell);
  if (told !== null) {
    const one = found(told);
    return one.ok ? { ok: true, value: { unit: told, found: one.value } } : one;
  }
  const whole = (written.at(-1) as number) - (written[0] as number);
  const possible = (['s', 'ms', 'us'] as const).filter((unit) => {
    const seconds = whole * TIME_UNITS[unit];
    return seconds > dwell && seconds / written.length < dwell / 10;
  });
  const tried = possible.map((unit) => ({ unit, found: found(unit) }));
  const fitting = tried.flatMap(({ unit, found: one }) => {
    if (!one.ok) return [];
    const { spans, time } = one.value;
    const long = median(spans.map(({ first, last }) => (time[last] as number) - (time[first] as number)));
    return long < dwell * OTHER_UNIT && long > dwell / OTHER_UNIT ? [{ unit, found: one.value }] : [];
  });
  const [one, more] = fitting;
  if (one !== undefined && more === undefined) return { ok: true, value: one };
  // What is wrong in each unit is wrong with the recording.
  const same = tried.find(({ found: other }) => !other.ok)?.found;
  if (tried.length === 1 && same?.ok === false) return same;
  return refused(
    `No unit of time is named in it, and ${more === undefined ? 'in none of s, ms and µs' : 'in several units'} its charges ` +
      `last about as long as the dwell of ${printValue(dwell, 's')}. Name it above the column, such as "time (ms)", or give ` +
      '"--interval".',
  );
}

/** Taken as amperes without a word for it only within this factor of the design: another clamp is off by more. */
const LIKELY = 2;
/** Volts and millivolts are a thousand apart: within this factor of the design only one of them is. */
const EITHER = 30;

const tallest = ({ current, spans }: Found): number =>
  median(
    spans.map(({ first, last }) => current.subarray(first, last + 1).reduce((a, b) => Math.max(a, b), 0)),
  );

/** The same in amperes; a unit that is not named is taken only where the design leaves no other. */
function inAmperes(
  { factors, unitNamed, column }: Recording,
  found: Found,
  peak: number,
): Read<Found & { readonly shownIn: string }> {
  const shown = tallest(found);
  const away = (factor: number): number => Math.abs(Math.log((shown * factor) / peak));
  const factor = factors.reduce((a, b) => (away(b) < away(a) ? b : a));
  if (!unitNamed && away(factor) > Math.log(factors.length > 1 ? EITHER : LIKELY))
    return refused(
      `Nothing in it says what ${column} is in. Taken as amperes its charges reach ${printNumber(shown * factor)} A, and ` +
        `those of the design ${printNumber(peak)} A. Say what the clamp gives for an ampere, such as "--scale 100mV/A"; ` +
        '"--scale 1A/A" where the column is in amperes.',
    );
  return {
    ok: true,
    value: {
      ...found,
      shownIn: factors.length === 1 ? 'amperes' : factor === factors[0] ? 'volts' : 'millivolts',
      current: factor === 1 ? found.current : found.current.map((value) => value * factor),
      noise: found.noise * factor,
      step: found.step * factor,
      offset: found.offset * factor,
      drift: found.drift * factor,
      threshold: found.threshold * factor,
    },
  };
}

function fitSpan(
  { time, current, noise, step, threshold, group: before }: Found,
  { first, last, starts, ends }: ChargeSpan,
  all: readonly ChargeSpan[],
): ChargeFit | null {
  const length = last - first + 1;
  // What the clamp shows of the fall before, and its ringing, is over by then.
  const other = all.findLast((one) => one.last < first);
  const free = other === undefined ? -1 : other.last + Math.min(5 + (length >> 2), (first - other.last) >> 1);
  const hidden = startOf(threshold / Math.max(2 * threshold, current[last] as number)) * length;
  const from = starts ? Math.max(free + 1, first - Math.ceil(length / 4 + hidden)) : first;
  // The last sample may lie in the fall already.
  const to = ends ? last - 1 : last;
  const group = Math.max(1, Math.ceil((to - from + 1) / MOST_SAMPLES));
  const averaged = (values: Float64Array): number[] =>
    Array.from({ length: Math.floor((to - from + 1) / group) }, (_, i) => {
      const part = values.subarray(from + i * group, from + (i + 1) * group);
      return part.reduce((a, b) => a + b, 0) / part.length;
    });
  return fitCharge(
    averaged(time),
    averaged(current),
    (time[first] as number) -
      (starts ? hidden * (((time[last] as number) - (time[first] as number)) / length) : 0),
    noise / Math.sqrt(group * before),
    step,
  );
}

function chargeOf({ time, current }: Found, span: ChargeSpan, fit: ChargeFit): MeasuredCharge {
  const { first, last, starts, ends } = span;
  const end = ends ? ((time[last] as number) + (time[last + 1] as number)) / 2 : (time[last] as number);
  return {
    start: fit.start,
    dwell: starts && ends ? end - fit.start : null,
    peak: ends ? fit.curve(end) : null,
    knee: fit.knee,
    samples: Array.from(time.subarray(first, last + 1), (t, i) => ({
      after: t - fit.start,
      current: current[first + i] as number,
    })),
  };
}

/** The knee that more than half of the charges show, with its mean current and time. */
function commonKnee(charges: readonly MeasuredCharge[]): Knee | null {
  for (const kind of ['limit', 'clipped', 'saturation'] as const) {
    const same = charges.flatMap(({ knee }) => (knee?.kind === kind ? [knee] : []));
    if (same.length * 2 <= charges.length) continue;
    return {
      kind,
      current: meanOf(same.map(({ current }) => current)) as number,
      after: meanOf(same.map(({ after }) => after)) as number,
    };
  }
  return null;
}

function partsOf(
  spans: readonly ChargeSpan[],
  whole: readonly ChargeSpan[],
  used: readonly ChargeSpan[],
): string[] {
  const parts = spans.length - whole.length;
  if (whole.length === 0)
    return ['No charge lies wholly in the recording: dwell is not known, and the rest is less sure.'];
  return [
    ...(parts > 0 ? [`${parts} charge${parts > 1 ? 's' : ''} cut off by the recording: left out.`] : []),
    ...(whole.length > used.length
      ? [`Of ${whole.length} charges the first ${used.length} were taken.`]
      : []),
  ];
}

function leftOutOf(all: number, kept: number, used: number): string[] {
  return [
    ...(used > all ? [`${used - all} of ${used} charges fit no curve of a charging coil: left out.`] : []),
    ...(all > kept
      ? [
          `${all - kept} of ${all} charges differ from the median by more than noise explains: left out.` +
            (all - kept > all / 5 ? ' Does the wire carry several coils, or does one of them misfire?' : ''),
        ]
      : []),
  ];
}
