/** `coilfeed trace DESIGN`: the currents in time at one point, or a recorded current beside the computed one. */
import { asRead } from '../basis/print.ts';
import { readValue } from '../basis/read-value.ts';
import type { Design } from '../design/design.ts';
import { nearest } from '../design/nearest.ts';
import { listed, quote } from '../design/problems.ts';
import { readShop } from '../design/shop/read.ts';
import { type Evaluation, evaluate } from '../engine/evaluate.ts';
import { type Found, withCoil } from '../shop/save-coil.ts';
import { whyNoTrace } from '../transient/circuit.ts';
import type { Asked } from '../transient/measured/columns.ts';
import { scaleOf } from '../transient/measured/scale.ts';
import { type Trace, traceOf } from '../transient/trace.ts';
import { traceCsv } from '../writers/trace-csv.ts';
import { traceJson } from '../writers/trace-json.ts';
import { traceReport } from '../writers/trace-report.ts';
import { argsOf } from './args.ts';
import { nameOf, shown as printable, Refusal, readInput, refused, textOf } from './files.ts';
import { inUnits, oneDesign, readGiven } from './given.ts';
import { working } from './progress.ts';
import { readRecordingFile } from './recording.ts';
import { writeFiles } from './write.ts';

interface Call {
  readonly file: string;
  readonly point: string | undefined;
  readonly runs: readonly string[];
  readonly measured: string | undefined;
  /** How to read the recording. */
  readonly asked: Asked;
  readonly supply: string | undefined;
  readonly out: string | undefined;
  readonly set: readonly string[];
  readonly shop: string | undefined;
  /** Name under which the shop's file is to have the coil that was measured. */
  readonly saveCoil: string | undefined;
  readonly units: string | undefined;
  readonly json: boolean;
  readonly force: boolean;
}

/** Returns the exit status: 0 when there is a trace, 2 when the design or the call cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const call = read(argv);
  const given = await readGiven(call.file, { set: call.set, shop: call.shop });
  if (given === null) return 2;
  const design = inUnits(given.design, call.units);
  const point = pointOf(design, call.point);
  const wires = wiresOf(design, call.runs);
  const evaluation = evaluate(design);
  setSupply(evaluation, point, call.supply);
  const why = whyNoTrace(evaluation);
  if (why !== null) throw new Refusal(why);
  const trace = await working('Tracing', () => traceOf(evaluation, point));
  if (call.measured === undefined) await showTrace(trace, wires, call);
  else await showMeasured(trace, wires, call, call.measured);
  return 0;
}

function read(argv: string[]): Call {
  const { positionals, values } = argsOf(argv, {
    one: ['shop', 'save-coil', 'point', 'measured', 'units', 'supply', 'out', ...RECORDED],
    many: ['run', 'set'],
    flags: ['json', 'force'],
  });
  const file = oneDesign(positionals, 'trace');
  const {
    point,
    run: runs = [],
    measured,
    supply,
    out,
    set = [],
    shop,
    units,
    json = false,
    force = false,
  } = values;
  if (out !== undefined && !/\.(csv|svg|png)$/i.test(out))
    throw new Refusal(
      `A trace is written as a picture or a table, not as "${out}": the name must end in .svg, .png or .csv.`,
    );
  if (measured === '-' && file === '-')
    throw new Refusal('Only one of them, design or recording, can come from standard input.');
  const saveCoil = values['save-coil'];
  if (saveCoil !== undefined && (measured === undefined || shop === undefined || shop === '-'))
    throw new Refusal(
      '--save-coil takes a recording and a shop’s file: --measured CLAMP.csv --shop shop.yaml.',
    );
  const asked = askedOf(values);
  const [option] = RECORDED.filter((name) => Object.hasOwn(values, name));
  if (option !== undefined && measured === undefined)
    throw new Refusal(`--${option} says how to read a recording: it goes with --measured.`);
  return { file, point, runs, measured, asked, supply, out, set, shop, saveCoil, units, json, force };
}

/** Options that say how to read a recording. */
const RECORDED = ['column', 'time-column', 'scale', 'interval'] as const;

function askedOf(values: { readonly [K in (typeof RECORDED)[number]]?: string | undefined }): Asked {
  const scale = values.scale === undefined ? undefined : scaleOf(values.scale);
  if (scale === null)
    throw new Refusal(
      `--scale ${quote(values.scale ?? '')} is no factor of a clamp: it takes what the clamp gives for an ampere, such as ` +
        '"100mV/A" or "10A/V".',
    );
  const interval = values.interval === undefined ? null : readValue(values.interval, 's');
  if (interval !== null && !(interval.ok && interval.value > 0 && interval.value < 1))
    throw new Refusal(
      `--interval ${quote(values.interval ?? '')} is no time from one sample to the next: it takes one with its unit, such ` +
        'as "10us".',
    );
  return {
    column: values.column,
    timeColumn: values['time-column'],
    scale,
    interval: interval?.ok ? interval.value : undefined,
  };
}

/** Index of the point of this name; the only one when none is named. */
function pointOf({ points }: Design, name: string | undefined): number {
  const names = points.map((p) => p.name);
  if (name === undefined) {
    if (names.length === 1) return 0;
    throw new Refusal(`Name a point with --point: ${listed(names.map(quote))}.`);
  }
  const found = names.indexOf(name);
  if (found < 0) throw new Refusal(`The design has no point ${quote(name)}. ${hint(name, names)}`);
  return found;
}

/** Indices of the conductors that are named, by their own name or by that of their run; all when none is. */
function wiresOf({ wires, runs }: Design, asked: readonly string[]): number[] {
  const names = [...new Set([...runs.map((r) => r.name), ...wires.map((w) => w.id)])];
  const found = asked.flatMap((name) => {
    const own = wires.flatMap((w, i) => (w.id === name || runs[w.run]?.name === name ? [i] : []));
    if (own.length === 0) throw new Refusal(`The design has no run ${quote(name)}. ${hint(name, names)}`);
    return own;
  });
  return asked.length === 0 ? [...wires.keys()] : [...new Set(found)];
}

const hint = (name: string, names: readonly string[]): string => {
  const near = nearest(name, names);
  return near === null ? `It has ${listed(names.map(quote))}.` : `Did you mean ${quote(near)}?`;
};

/** Another supply than the point's, such as the one that was measured beside the recording. */
function setSupply(e: Evaluation, point: number, text: string | undefined): void {
  if (text === undefined) return;
  const found = readValue(text, 'V');
  if (!found.ok || !(found.value >= 1 && found.value <= 60))
    throw new Refusal(
      `--supply ${quote(text)} is not a supply; allowed: 1 V to 60 V, with the unit, such as "13.8 V".`,
    );
  e.set('point_supply', { point }, found.value);
}

async function showTrace(
  trace: Trace,
  wires: readonly number[],
  { file, out, json, force }: Call,
): Promise<void> {
  const options = { force, inputs: [file] };
  if (out !== undefined && isPicture(out)) {
    const [{ tracePicture }, { asFile }] = await Promise.all([
      import('../pictures/trace.ts'),
      import('./pictures.ts'),
    ]);
    await writeFiles([await asFile(out, tracePicture(trace, wires))], options);
  } else if (out !== undefined) await writeFiles([{ path: out, bytes: traceCsv(trace, wires) }], options);
  show(json ? traceJson(trace, wires) : traceReport(trace, wires), out, json);
}

const isPicture = (path: string): boolean => /\.(svg|png)$/i.test(path);

async function showMeasured(
  trace: Trace,
  wires: readonly number[],
  { file, out, runs, asked, shop, saveCoil, json, force }: Call,
  path: string,
): Promise<void> {
  const [{ measureTrace }, { compare }, writers, text] = await Promise.all([
    import('../transient/measured/measure.ts'),
    import('../transient/measured/compare.ts'),
    import('../writers/measured-report.ts'),
    readRecordingFile(path),
  ]);
  const { circuit, evaluation } = trace;
  // The coil of the first conductor that carries only one; by name that of the wire the clamp sat on.
  const single = wires.find((wire) => evaluation.design.wires[wire]?.coils.length === 1);
  const coil = single === undefined ? 0 : (evaluation.design.wires[single]?.coils[0] as number);
  const { drive, dwell } = circuit;
  const expected = { drive, dwell, peak: trace.coils[coil]?.peak.exact ?? 0 };
  const measured = measureTrace(text, expected, asked);
  if (!measured.ok) throw new Refusal(`The recording ${nameOf(path)} cannot be used. ${measured.why}`);
  const compared = compare(trace, coil, runs.length > 0 ? (wires[0] ?? null) : null, measured.value);
  const options = { force, inputs: [file, path] };
  if (out !== undefined && isPicture(out)) {
    const [{ measuredPicture }, { asFile }] = await Promise.all([
      import('../pictures/measured.ts'),
      import('./pictures.ts'),
    ]);
    await writeFiles([await asFile(out, measuredPicture(trace, measured.value, compared))], options);
  } else if (out !== undefined)
    await writeFiles([{ path: out, bytes: writers.measuredCsv(compared) }], options);
  show(
    json
      ? writers.measuredJson(trace, measured.value, compared)
      : writers.measuredReport(trace, measured.value, compared),
    out,
    json,
  );
  if (saveCoil === undefined || shop === undefined) return;
  const feed = compared.resistance - circuit.ohm;
  await save(saveCoil, shop, evaluation.design, {
    ohm: measured.value.resistance.value - feed,
    henry: measured.value.inductance.value,
    from: `recording ${printable(path)}, less ${asRead(feed, 'ohm', 'mohm').join(' ')} of its feed`,
  });
}

/** Adds the coil to the shop's file. */
async function save(name: string, path: string, design: Design, found: Found): Promise<void> {
  if (design.coil.series_resistor !== null)
    throw new Refusal(
      '--save-coil: a resistor stands before the coil, and a recording cannot tell the two apart.',
    );
  const bytes = await readInput(path);
  const text = textOf(bytes, path);
  // A mark of its encoding is no part of the text.
  const mark = bytes[0] === 0xef ? '\uFEFF' : '';
  const before = readShop({ text, file: printable(path) });
  // It was read with the design, and is as it was then.
  if (!before.ok) throw new Refusal(`${nameOf(path)} cannot be read.`);
  if (before.shop.coils?.some((coil) => coil.name === name))
    throw new Refusal(`${nameOf(path)} has a coil ${quote(name)} already; choose another name.`);
  const now = withCoil(text, name, found, design);
  const after = readShop({ text: now, file: printable(path) });
  if (!after.ok) {
    refused(after.problems);
    throw new Refusal(`The coil cannot be added to ${nameOf(path)}.`);
  }
  // The call names the file that is to have it.
  await writeFiles([{ path, bytes: mark + now }], { force: true });
  process.stderr.write(`${nameOf(path)} has the coil ${quote(name)} now.\n`);
}

/** Prints a report or an object; where the file went is said on the side where it does no harm. */
function show(what: string | object, out: string | undefined, json: boolean): void {
  process.stdout.write(typeof what === 'string' ? what : `${JSON.stringify(what, null, 2)}\n`);
  const kind = out !== undefined && isPicture(out) ? 'Picture' : 'Table';
  if (out !== undefined) (json ? process.stderr : process.stdout).write(`\n${kind}: ${printable(out)}\n`);
}
