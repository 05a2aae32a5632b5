/**
 * What a recording of a current clamp tells about coil and feed: resistance, inductance, dwell, peak, and the knee.
 *
 * The slope at the begin of a charge is voltage over inductance; how soon it bends, resistance over inductance. The
 * voltage is that left for coil and feed together, so that the resistance found is that of the whole loop: coil, driver's
 * share beyond its stated drop, and conductors.
 */
import { type ChargeFit, fitCharge, type Knee } from './charge-fit.ts';
import { type ChargeSpan, type Found, findCharges } from './charges.ts';
import { type Read, readRecording, refused, TIME_UNITS, type TimeUnit } from './table.ts';

/** A value and the half width of its range of 95 % confidence. */
export interface Estimate {
  readonly value: number;
  readonly within: number;
}

export interface MeasuredCharge {
  /** [s], on the clock of the recording. */
  readonly begin: number;
  /** Length [s] and end current [A]; null for a charge that is not wholly in the recording. */
  readonly dwell: number | null;
  readonly peak: number | null;
  readonly knee: Knee | null;
  /** Samples since the begin: time [s] and current [A]. */
  readonly samples: readonly { readonly after: number; readonly current: number }[];
}

export interface MeasuredTrace {
  readonly samples: number;
  readonly unit: TimeUnit;
  /** Of a sample at rest [A]. */
  readonly noise: number;
  readonly charges: readonly MeasuredCharge[];
  /** [ohm] of the loop, [H]. */
  readonly resistance: Estimate;
  readonly inductance: Estimate;
  /** Mean of the whole charges [s], [A]; null when no charge is whole. */
  readonly dwell: number | null;
  readonly peak: number | null;
  /** What most charges show. */
  readonly knee: Knee | null;
  /** What was taken how, as sentences. */
  readonly notes: readonly string[];
}

export interface Expected {
  /** Voltage left for coil and feed: supply less driver drop [V]. */
  readonly drive: number;
  /** Dwell of the design [s]: to guess a unit of time that the recording does not name. */
  readonly dwell: number;
}

/** More charges say nothing new. */
const MOST_CHARGES = 20;
/** More samples of a charge than this are averaged in groups: the curve is smooth. */
const MOST_SAMPLES = 600;
/** Two-sided 95 % of the normal distribution. */
const SURE = 1.96;

/** Judges the text of a recording, as `readRecording` takes it. Whatever is wrong with it comes back as one sentence. */
export function measureTrace(pieces: Iterable<string>, expected: Expected): Read<MeasuredTrace> {
  const recording = readRecording(pieces);
  if (!recording.ok) return recording;
  const found = findCharges(recording.value);
  if (!found.ok) return found;
  const { spans, time: written } = found.value;
  const { unit: named } = recording.value;
  const unit = named ?? guessed(written, spans, expected.dwell);
  const time = written.map((t) => t * TIME_UNITS[unit]);

  const whole = spans.filter(({ begins, ends }) => begins && ends);
  // Parts of charges are used only where there is nothing better.
  const used = (whole.length > 0 ? whole : spans).slice(0, MOST_CHARGES);
  const fits = used.flatMap((span) => {
    const one = fitSpan(time, found.value, span, spans);
    return one === null ? [] : [{ span, fit: one }];
  });
  if (fits.length === 0) return refused('No curve of a charging coil fits what it shows.');
  const charges = fits.map(({ span, fit }) => chargeOf(time, found.value, span, fit));
  const { resistance, inductance } = estimates(
    fits.map(({ fit }) => fit),
    expected.drive,
  );
  if (resistance.value < 0 && resistance.value + resistance.within < 0)
    return refused(
      'The current in it bends upward all along, as that of no coil does: check the zero of the clamp, and the supply.',
    );
  return {
    ok: true,
    value: {
      samples: recording.value.time.length,
      unit,
      noise: found.value.noise,
      charges,
      resistance,
      inductance,
      dwell: meanOf(charges.map(({ dwell }) => dwell)),
      peak: meanOf(charges.map(({ peak }) => peak)),
      knee: commonKnee(charges),
      notes: [
        ...recording.value.notes,
        ...notesOf(found.value, named === null ? unit : null),
        ...partsOf(spans, whole, used),
      ],
    },
  };
}

/** The unit in which a charge lasts about as long as the dwell of the design. */
function guessed(time: Float64Array, spans: readonly ChargeSpan[], dwell: number): TimeUnit {
  const lengths = spans.map(({ first, last }) => (time[last] as number) - (time[first] as number));
  const longest = Math.max(...lengths);
  const away = (unit: TimeUnit): number => Math.abs(Math.log((longest * TIME_UNITS[unit]) / (dwell || 3e-3)));
  return (Object.keys(TIME_UNITS) as TimeUnit[]).reduce((a, b) => (away(b) < away(a) ? b : a));
}

function fitSpan(
  time: Float64Array,
  { current, noise }: Found,
  { first, last, begins, ends }: ChargeSpan,
  all: readonly ChargeSpan[],
): ChargeFit | null {
  const length = last - first + 1;
  // What the clamp shows of the fall before is over by then.
  const free = Math.max(-1, ...all.filter((other) => other.last < first).map((other) => other.last + 5));
  const from = begins ? Math.max(free + 1, first - Math.ceil(length / 4)) : first;
  // The last sample may lie in the fall already.
  const to = ends ? last - 1 : last;
  const group = Math.max(1, Math.ceil((to - from + 1) / MOST_SAMPLES));
  const averaged = (values: Float64Array): number[] =>
    Array.from({ length: Math.floor((to - from + 1) / group) }, (_, i) => {
      const part = values.subarray(from + i * group, from + (i + 1) * group);
      return part.reduce((a, b) => a + b, 0) / part.length;
    });
  return fitCharge(averaged(time), averaged(current), time[first] as number, noise);
}

function chargeOf(time: Float64Array, { current }: Found, span: ChargeSpan, fit: ChargeFit): MeasuredCharge {
  const { first, last, begins, ends } = span;
  const end = ends ? ((time[last] as number) + (time[last + 1] as number)) / 2 : (time[last] as number);
  return {
    begin: fit.begin,
    dwell: begins && ends ? end - fit.begin : null,
    peak: ends ? fit.curve(end) : null,
    knee: fit.knee,
    samples: Array.from(time.subarray(first, last + 1), (t, i) => ({
      after: t - fit.begin,
      current: current[first + i] as number,
    })),
  };
}

/** Mean over the charges, each counted by how sure it is; wider where they disagree by more than that. */
function estimates(
  fits: readonly ChargeFit[],
  drive: number,
): { resistance: Estimate; inductance: Estimate } {
  const each = fits.map(({ slope: s, rate: k, variances: v }) => ({
    inductance: { value: drive / s, variance: (drive / s ** 2) ** 2 * v.slope },
    resistance: {
      value: (drive * k) / s,
      variance: (drive / s) ** 2 * (v.rate + (k / s) ** 2 * v.slope - ((2 * k) / s) * v.both),
    },
  }));
  const mean = (values: readonly { value: number; variance: number }[]): Estimate => {
    // A recording without any noise has variances of 0: all count alike.
    const weights = values.map(({ value, variance }) => 1 / Math.max(variance, 1e-24 * value ** 2 + 1e-300));
    const total = weights.reduce((a, b) => a + b, 0);
    const value = values.reduce((sum, one, i) => sum + one.value * (weights[i] as number), 0) / total;
    const spread = values.reduce((sum, one, i) => sum + (one.value - value) ** 2 * (weights[i] as number), 0);
    const wider = values.length > 1 ? Math.max(1, spread / (values.length - 1)) : 1;
    return { value, within: SURE * Math.sqrt(wider / total) };
  };
  return {
    resistance: mean(each.map((one) => one.resistance)),
    inductance: mean(each.map((one) => one.inductance)),
  };
}

function meanOf(values: readonly (number | null)[]): number | null {
  const there = values.filter((value) => value !== null);
  return there.length === 0 ? null : there.reduce((a, b) => a + b, 0) / there.length;
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

function notesOf({ turned, offset, noise, group }: Found, guess: TimeUnit | null): string[] {
  const shifted = Math.abs(offset) > Math.max(0.02, noise);
  return [
    ...(group > 1
      ? [`Each ${group} samples were averaged to one: they are far closer than a charge needs.`]
      : []),
    ...(guess ? [`No unit of time is named; "${guess}" makes the charges about as long as the dwell.`] : []),
    ...(turned
      ? ['The current falls where a coil charges: the clamp sits the other way round; it was turned.']
      : []),
    ...(shifted
      ? [`At rest the clamp shows ${offset.toFixed(2).replace('-', '−')} A; that was taken off.`]
      : []),
  ];
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
