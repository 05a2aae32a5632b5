/** What readings mean, in sentences. */
import { asRead, printNumber, printValue } from '../basis/print.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { Cause, Explained } from './diagnose.ts';
import { atPosts, expectedAt } from './expected.ts';
import type { Judged } from './judge.ts';
import { instrumentWords, subjectOf } from './places.ts';
import { alikeSize } from './sizes.ts';

/** Heat in one joint above which it is named a danger [W]. Common practice: a crimp is cooled by little but its wire. */
export const HOT = 1;

const printOhm = (ohm: number): string => printValue(ohm, 'ohm', ohm < 1 ? 'mohm' : 'ohm');

/** Heat that a resistance makes at full load: the effective current of its worst point [W]. */
export function heatOf(e: Evaluation, wire: number | null, ohm: number): number {
  const source = e.design.wires.findIndex(({ coils }) => coils.length === e.design.coils.length);
  const amps = e.number('worst_effective', { wire: wire ?? Math.max(0, source) }) ?? 0;
  return amps ** 2 * ohm;
}

/** Name of the place that a cause is at. */
export function placeOf(e: Evaluation, cause: Cause): string {
  switch (cause.kind) {
    case 'resistance':
      return cause.wire === null ? 'the source' : subjectOf(e.design, { wire: cause.wire, coil: null });
    case 'draw':
      return cause.coil === null ? 'all coils' : `coil ${e.design.coils[cause.coil]?.id}`;
    case 'instrument':
      return readingName(e, cause.reading);
  }
}

/** `main at idle, multimeter` */
export function readingName(e: Evaluation, reading: number): string {
  const r = e.design.measured[reading];
  if (r === undefined) return '';
  const point = r.point === null ? '' : ` at ${e.design.points[r.point]?.name}`;
  return `${subjectOf(e.design, r)}${point}, ${instrumentWords(r)}`;
}

/** What a cause is, short: for a list of causes that cannot be told apart. */
export function causeShort(e: Evaluation, cause: Cause): string {
  switch (cause.kind) {
    case 'resistance':
      return `${placeOf(e, cause)} (${printOhm(cause.ohm)} too much)`;
    case 'draw':
      return `${placeOf(e, cause)} (drawing ${printNumber(cause.factor)} times what they should)`;
    case 'instrument':
      return `the reading ${placeOf(e, cause)} (taken with: ${instrumentWords({ what: e.design.measured[cause.reading]?.what ?? 'drop', instrument: cause.instrument })})`;
  }
}

/** What a cause means and what to look at. */
export function causeSentence(e: Evaluation, { cause, orElse }: Explained): string {
  if (orElse.length > 0) {
    const all = [cause, ...orElse].map((c) => causeShort(e, c));
    return (
      `The readings cannot tell which: ${all.join('; or ')}. Each would explain them. ` +
      'Measure the drop over each of these places by itself, or at another point.'
    );
  }
  switch (cause.kind) {
    case 'resistance':
      return cause.wire === null ? sourceSentence(e, cause.ohm) : resistanceSentence(e, cause.wire, cause);
    case 'draw':
      return drawSentence(e, cause);
    case 'instrument':
      return mixedSentence(e, cause);
  }
}

function mixedSentence(e: Evaluation, cause: Extract<Cause, { kind: 'instrument' }>): string {
  const reading = e.design.measured[cause.reading];
  if (reading === undefined) return '';
  const other = { ...reading, instrument: cause.instrument };
  const [own, there] = [expectedAt(e, reading).expected, expectedAt(e, other).expected];
  const ratio = own && there ? Math.max(own / there, there / own) : null;
  return (
    `The reading ${placeOf(e, cause)} is what a different instrument would show there: ${instrumentWords(other)}. ` +
    `${ratio === null ? '' : `Here the two differ by a factor of ${printNumber(ratio)}. `}Set the instrument, peak hold off, and read again.`
  );
}

function resistanceSentence(
  e: Evaluation,
  wire: number,
  { ohm, within }: { readonly ohm: number; readonly within: number },
): string {
  const { id, run } = e.design.wires[wire] as (typeof e.design.wires)[number];
  const { joints, fuse, relay } = e.design.runs[run] as (typeof e.design.runs)[number];
  const own = e.number('joint_ohm') ?? 0;
  const heat = heatOf(e, wire, ohm);
  const others = [fuse ? 'the fuse with its holder' : '', relay ? 'the relay contact' : ''].filter(Boolean);
  const inOne =
    joints > 0
      ? `${joints === 1 ? 'Its one joint' : `Each of its ${joints} joints`} should have ${printOhm(own)}; if the excess is all in one, that joint has ` +
        `${printOhm(ohm + own)}${others.length > 0 ? ` (${others.join(' and ')} may have it as well)` : ''}. `
      : '';
  const thinner = alikeSize(e, wire, ohm);
  return (
    `${id} has ${printOhm(ohm)} too much (±${printOhm(within)}). ${inOne}` +
    (thinner === null ? '' : `A ${thinner} conductor would do the same: check what is printed on it. `) +
    `At full load that is ${printValue(heat, 'W')} of heat` +
    (heat > HOT
      ? `, more than ${HOT} W: a joint that hot chars its insulation and can start a fire. Repair it before the engine runs again.`
      : '.')
  );
}

const sourceSentence = (e: Evaluation, ohm: number): string =>
  `The supply sags at the battery posts as if the source had ${printOhm(ohm)}` +
  `${e.design.supply.source_resistance === null ? '' : `, where ${printOhm(e.design.supply.source_resistance)} is stated`}: ` +
  'a tired battery, a poor connection at its posts, or a long cable between alternator and battery.';

function drawSentence(e: Evaluation, cause: Extract<Cause, { kind: 'draw' }>): string {
  const { coil, factor } = cause;
  const times = `${printNumber(factor)} times`;
  if (coil === null)
    return factor > 1
      ? `All coils draw ${times} what they should: the dwell is longer than stated, or the coils have less resistance or inductance. Check the dwell setting first.`
      : `All coils draw only ${times} what they should: the dwell is shorter than stated, the coils are warm, or they have more resistance or inductance. Check the dwell setting first.`;
  return factor > 1
    ? `${placeOf(e, cause)} draws ${times} what it should: shorted turns, a different type of coil, or a driver that switches off late.`
    : `${placeOf(e, cause)} draws only ${times} what it should: a poor contact in its own wires, an open winding, or a driver that does not switch on fully.`;
}

/** What a reading says by itself; empty when it is within its range. */
export function readingSentence(judged: Judged): string {
  const { reading, expected, stands, ratio, excess, wouldBe } = judged;
  if (stands === 'within') return '';
  if (stands === 'unknown') return 'There is nothing to compare it with.';
  const parts: string[] = [];
  if (atPosts(reading))
    return `The posts are ${stands === 'low' ? 'below' : 'above'} the ${asRead(expected.expected, 'V').join(' ')} stated for this point: set the supply of the point to this, and everything read there is judged by it.`;
  if (ratio !== null) parts.push(`${printNumber(ratio)} times what is expected`);
  if (excess !== null && Math.abs(excess) > 0)
    parts.push(
      excess > 0
        ? `as if the run had ${printOhm(excess)} too much`
        : `as if it had ${printOhm(-excess)} too little`,
    );
  const mixed =
    wouldBe === null
      ? ''
      : ` It is within the range of a different instrument (${instrumentWords({ what: reading.what, instrument: wouldBe })}): was that one used?`;
  return `${capital(parts.join(', '))}.${mixed}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
