/** What readings mean, in sentences. */
import { asRead, capital, printNumber, printValue } from '../basis/print.ts';
import { judgedAlone } from '../design/names.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { acrossOhm } from './across.ts';
import type { How, Part } from './causes.ts';
import type { Cost } from './cost.ts';
import type { Cause, Diagnosis, Found } from './diagnose.ts';
import { atPosts, expectedAt, type Where } from './expected.ts';
import { acceptable, type Judged } from './judge.ts';
import { otherInstruments } from './mixed-up.ts';
import type { Next } from './next.ts';
import { instrumentWords, probesOf, SENSE_WORDS, subjectOf } from './places.ts';
import { alikeSize } from './sizes.ts';
import { blinds, type Unseen } from './unseen.ts';

/** Heat in one joint above which it is named a danger [W]. Common practice: a crimp is cooled by little but its wire. */
export const HOT = 1;

const printOhm = (ohm: number): string => printValue(ohm, 'ohm', ohm < 1 ? 'mohm' : 'ohm');
/** `31.2 to 38.0 mΩ` */
const band = (low: number, high: number, unit: string, shown: string): string => {
  const [from] = asRead(low, unit, shown);
  return `${from} to ${asRead(high, unit, shown).join(' ')}`;
};
const times = (low: number, high: number): string =>
  `${printNumber(low, 2)} to ${printNumber(high, 2)} times`;

/** Heat that a resistance makes at full load: the effective current of its worst point [W]. */
export function heatOf(e: Evaluation, wire: number, ohm: number): number {
  return (e.number('worst_effective', { wire }) ?? 0) ** 2 * ohm;
}

/** Name of the place that a cause is at. */
export function placeOf({ design }: Evaluation, part: Part): string {
  switch (part.is) {
    case 'wire':
      return subjectOf(design, { wire: part.wire, coil: null });
    case 'within':
      return subjectOf(design, { wire: part.wire, coil: null, across: part.across });
    case 'run':
      return `all of ${design.runs[part.run]?.name}`;
    case 'source':
      return 'the source';
    case 'coil':
      return subjectOf(design, { wire: null, coil: part.coil });
    case 'coils':
      return 'all coils';
    case 'dwell':
      return 'the dwell';
    case 'supply':
      return part.point === null ? 'the supply' : `the supply at ${design.points[part.point]?.name}`;
    case 'instrument':
      return `the ${SENSE_WORDS[part.sense]}`;
    case 'reading':
      return readingName(design, part.reading);
  }
}

/** The same where it stands beside others: `main or the reading main at idle, multimeter`. */
export const namedOf = (e: Evaluation, part: Part): string =>
  `${part.is === 'reading' ? 'the reading ' : ''}${placeOf(e, part)}`;

/** `main at idle, multimeter` */
export function readingName(design: Evaluation['design'], reading: number): string {
  const r = design.measured[reading];
  if (r === undefined) return '';
  const point = r.point === null ? '' : ` at ${design.points[r.point]?.name}`;
  return `${subjectOf(design, r)}${point}, ${instrumentWords(r)}`;
}

/** What a cause is, short: for a list of causes that cannot be told apart. */
export function causeShort(e: Evaluation, cause: Cause): string {
  const { part, how, size } = cause;
  const place = placeOf(e, part);
  switch (how) {
    case 'resistance':
      return `${place} (${printOhm(size)} too much)`;
    case 'thinner':
      return `${place} (${printNumber(size, 2)} times the resistance of its wire)`;
    case 'ohm':
      return `${place} (${printNumber(size, 2)} times the primary resistance)`;
    case 'henry':
      return `${place} (${printNumber(size, 2)} times the inductance)`;
    case 'turns':
      return `${place} (shorted turns)`;
    case 'open':
      return `${place} (draws nothing)`;
    case 'dwell':
      return `${place} (${printNumber(size, 2)} times what is stated)`;
    case 'supply':
      return `${place} (${asRead(Math.abs(size), 'V').join(' ')} ${size < 0 ? 'low' : 'high'})`;
    case 'scale':
      return `${place} (shows ${printNumber(size, 2)} times what there is)`;
    case 'taken':
      return `the reading ${place} (taken with a different instrument)`;
    case 'misread':
      return `the reading ${place} (misread, or written down wrongly)`;
  }
}

/** What was found and what to look at. */
export function foundSentence(e: Evaluation, found: Found): string {
  const [first, ...others] = found;
  if (first === undefined) return '';
  if (others.length === 0) return causeSentence(e, first);
  return `The readings cannot tell which: ${found.map((c) => `${causeShort(e, c)}, ${percent(c.share)}`).join('; or ')}.`;
}

export const percent = (share: number): string => `${Math.min(99, Math.max(1, Math.round(100 * share)))} %`;

function causeSentence(e: Evaluation, cause: Cause): string {
  const { part, how, size, low, high } = cause;
  const place = capital(placeOf(e, part));
  switch (how) {
    case 'resistance':
      return part.is === 'wire'
        ? resistanceSentence(e, part.wire, cause)
        : part.is === 'within'
          ? withinFound(e, part, cause)
          : sourceSentence(e, cause);
    case 'thinner':
      return (
        `The conductors of ${placeOf(e, part).replace('all of ', '')} all have ${times(low, high)} the resistance that their size and length give: ` +
        'longer or thinner wire than stated. Check what is printed on it.'
      );
    case 'ohm':
    case 'henry':
    case 'turns':
    case 'open':
      return coilSentence(e, cause);
    case 'dwell':
      return `The dwell is ${times(low, high)} what is stated: compare the setting in the controller, and its table over supply voltage.`;
    case 'supply':
      return supplySentence(e, cause);
    case 'scale':
      return `${place} shows ${printNumber(size, 2)} times what there is in all its readings: check its range and the scale of what displays it. Nothing else is wrong with these readings.`;
    case 'taken':
      return mixedSentence(e, cause);
    case 'misread':
      return `The reading ${placeOf(e, part)} does not fit with all the others, and nothing in the install explains it: read it again.`;
  }
}

function mixedSentence(e: Evaluation, { part }: Cause): string {
  const reading = part.is === 'reading' ? e.design.measured[part.reading] : undefined;
  if (reading === undefined) return '';
  const other = { ...reading, instrument: otherOf(e, reading) };
  const [own, there] = [expectedAt(e, reading).expected, expectedAt(e, other).expected];
  const ratio = own && there ? Math.max(own / there, there / own) : null;
  return (
    `The reading ${placeOf(e, part)} is what a different instrument would show there: ${instrumentWords(other)}. ` +
    `${ratio === null ? '' : `Here the two differ by a factor of ${printNumber(ratio)}. `}Set the instrument, peak hold off, and read again.`
  );
}

/** The instrument whose expected reading is nearest. */
function otherOf(e: Evaluation, reading: Evaluation['design']['measured'][number]) {
  const off = (instrument: typeof reading.instrument): number =>
    Math.abs(Math.log(reading.value / (expectedAt(e, { ...reading, instrument }).expected || 1)));
  return otherInstruments(reading).reduce((a, b) => (off(b) < off(a) ? b : a));
}

function resistanceSentence(e: Evaluation, wire: number, { size, low, high }: Cause): string {
  const { id, run } = e.design.wires[wire] as (typeof e.design.wires)[number];
  const { joints, fuse, relay } = e.design.runs[run] as (typeof e.design.runs)[number];
  const own = e.number('joint_ohm') ?? 0;
  const others = [fuse ? 'the fuse with its holder' : '', relay ? 'the relay contact' : ''].filter(Boolean);
  const inOne =
    joints > 0
      ? `${joints === 1 ? 'Its one joint' : `Each of its ${joints} joints`} should have ${printOhm(own)}; if the excess is all in one, that joint has ` +
        `${printOhm(size + own)}${others.length > 0 ? ` (${others.join(' and ')} may have it as well)` : ''}. `
      : '';
  const thinner = alikeSize(e, wire, size);
  return (
    `${id} has ${printOhm(size)} too much (${band(low, high, 'ohm', high < 1 ? 'mohm' : 'ohm')}). ${inOne}` +
    (thinner === null ? '' : `A ${thinner} conductor would do the same: check what is printed on it. `) +
    heatSentence(e, wire, size, high)
  );
}

function heatSentence(e: Evaluation, wire: number, size: number, high: number): string {
  const [heat, most] = [heatOf(e, wire, size), heatOf(e, wire, high)];
  const danger =
    heat > HOT
      ? `, more than ${HOT} W: a joint that hot chars its insulation and can start a fire. Repair it before the engine runs again.`
      : most > HOT
        ? `, and may be ${printValue(most, 'W')}: above ${HOT} W a joint chars its insulation and can start a fire.`
        : '.';
  return `At full load the excess makes ${printValue(heat, 'W')} of heat${danger}`;
}

function withinFound(
  e: Evaluation,
  part: Extract<Part, { is: 'within' }>,
  { size, low, high }: Cause,
): string {
  const own = acrossOhm(e, part.wire, part.across);
  return (
    `The ${placeOf(e, part)} has ${printOhm(size)} too much (${band(low, high, 'ohm', high < 1 ? 'mohm' : 'ohm')}), where ` +
    `${printOhm(own)} is expected: there, and not in the rest of the run. ${heatSentence(e, part.wire, size, high)}`
  );
}

const sourceSentence = (e: Evaluation, { size, low, high }: Cause): string =>
  `The supply sags at the battery posts as if the source had ${printOhm(size)} too much (${band(low, high, 'ohm', 'mohm')})` +
  `${e.design.supply.source_resistance === null ? '' : `, where ${printOhm(e.design.supply.source_resistance)} is stated`}: ` +
  'a tired battery, or a poor or long cable between alternator and battery.';

function supplySentence(e: Evaluation, { part, size, low, high }: Cause): string {
  const { points, measured } = e.design;
  const at = part.is === 'supply' && part.point !== null ? ` at ${points[part.point]?.name}` : '';
  const by = `${asRead(Math.abs(size), 'V').join(' ')} (${band(Math.min(Math.abs(low), Math.abs(high)), Math.max(Math.abs(low), Math.abs(high)), 'V', 'V')})`;
  const read = measured.find(
    (m) =>
      atPosts(m) &&
      m.instrument === 'meter' &&
      (at === '' || (part.is === 'supply' && m.point === part.point)),
  );
  const stated =
    read === undefined
      ? ''
      : `: ${asRead(read.value, 'V').join(' ')} was read where the point states ${asRead(points[read.point ?? 0]?.supply ?? null, 'V').join(' ')}`;
  return size < 0
    ? `The supply at the battery posts is ${by} low${at}${stated}. Charge and test the battery, and check what the alternator delivers, before anything in the feed is changed.`
    : `The supply at the battery posts is ${by} high${at}${stated}. Check the voltage regulator.`;
}

const WAYS: Readonly<Record<How, string>> = {
  resistance: 'resistance',
  ohm: 'its resistance',
  henry: 'its inductance',
  turns: 'shorted turns',
  open: 'an open winding',
  thinner: 'thinner wire',
  dwell: 'dwell',
  supply: 'supply',
  scale: 'scale',
  taken: 'instrument',
  misread: 'reading',
};

function coilSentence(e: Evaluation, { part, how, ways, size, low, high }: Cause): string {
  const all = part.is === 'coils';
  const place = capital(placeOf(e, part));
  const own = all ? 'their' : 'its';
  const has = all ? 'have' : 'has';
  const what =
    how === 'open'
      ? `${place} draws nothing: an open winding or wire, or a driver that does not switch on`
      : how === 'turns'
        ? `${place} ${has} shorted turns: about ${printNumber(100 * (1 - size), 2)} % of the primary is bridged`
        : `${place} ${has} ${times(low, high)} ${own} ${how === 'ohm' ? 'primary resistance' : 'inductance'}`;
  const why =
    how === 'open'
      ? ''
      : size < 1
        ? all
          ? ', a different type of coil'
          : ': shorted turns, or a different type of coil'
        : how === 'ohm'
          ? ': a poor contact inside its plug, or a different type of coil'
          : ': a different type of coil';
  const or =
    ways.length === 0
      ? ''
      : ` The readings would allow ${ways.map((way) => WAYS[way]).join(' or ')} as well: read the primary with an ohmmeter, unplugged.`;
  const next = all ? '' : ` ${how === 'open' ? SWAP_OPEN : SWAP}`;
  return `${what}${how === 'turns' ? '' : why}.${or}${next}`;
}

/** What tells a coil from its plug and its driver. */
const SWAP =
  'Exchange it with the coil beside it: if the fault goes with it, replace it; if it stays, look at the plug.';
const SWAP_OPEN =
  'Exchange it with the coil beside it: if the fault goes with it, replace it; if it stays, look at its wires, its plug and its driver.';

/** `Now 1.2 W of heat in the run and 68 mJ at the weakest coil at idle; mended, 0.04 W and 71 mJ.` Empty: it costs nothing. */
export function costSentence({ design }: Evaluation, { heat, energy }: Cost): string {
  const say = (end: 'now' | 'after', first: string, second: string): string =>
    [
      ...(heat === null ? [] : [`${printValue(heat[end], 'W')}${first}`]),
      ...(energy === null ? [] : [`${printValue(energy[end], 'J', 'mJ')}${second}`]),
    ].join(' and ');
  if (heat === null && energy === null) return '';
  const at = energy === null ? '' : ` at ${design.points[energy.point]?.name}`;
  return `Now ${say('now', ' of heat in the run', ` at the weakest coil${at}`)}; mended, ${say('after', '', '')}.`;
}

/** Where nothing is suspected and a run is not seen at all: the drop over it, and what is sound there. */
function blindSentence(e: Evaluation, where: Where): string {
  const { low, high, unit, shown } = acceptable(e, where);
  const sound =
    low === null || high === null
      ? ''
      : `: ${asRead(low, unit, shown)[0]} to ${asRead(high, unit, shown).join(' ')} if nothing is wrong`;
  const at = ` at ${e.design.points[where.point ?? -1]?.name}`;
  return `${capital(instrumentWords(where))}, ${probesOf(e.design, where)}${at}${sound}. No reading tells of that run yet.`;
}

/** What to measure next, and what it would show; empty when nothing would tell more. */
export function nextSentence(
  e: Evaluation,
  next: Next | null,
  { found }: Diagnosis,
  blind: Where | null = null,
): string {
  if (blind !== null) return blindSentence(e, blind);
  if (next === null) return withinSentence(e, found);
  const { where, shows } = next;
  const { unit, shown } = expectedAt(e, where);
  const [first, second] = shows;
  const say = (value: number): string => asRead(value, unit, shown).join(' ');
  const named = (model: (typeof shows)[number]['model']): string =>
    model.causes.length === 0
      ? 'nothing is wrong'
      : `it is ${model.causes.map(({ part }) => namedOf(e, part)).join(' and ')}`;
  const tells =
    first && second
      ? `: about ${say(first.value)} if ${named(first.model)}, about ${say(second.value)} if ${named(second.model)}`
      : '';
  const at = where.point === null ? '' : ` at ${e.design.points[where.point]?.name}`;
  const what =
    where.what === 'dwell'
      ? 'Dwell from the log of the controller'
      : `${capital(instrumentWords(where))}, ${probesOf(e.design, where)}`;
  return `${what}${at}${tells}.`;
}

/** Within a conductor that was found: which of its parts. */
function withinSentence({ design }: Evaluation, found: Diagnosis['found']): string {
  const [[cause, ...others] = []] = found;
  if (cause?.part.is !== 'wire' || cause.how !== 'resistance' || others.length > 0) return '';
  const { id, run } = design.wires[cause.part.wire] as (typeof design.wires)[number];
  const { joints, contacts, fuse, relay } = design.runs[run] as (typeof design.runs)[number];
  const parts = [
    ...(fuse ? ['the fuse with its holder'] : []),
    ...(relay ? ['the relay contact'] : []),
    ...(contacts > 0 ? ['each plug'] : []),
    ...(joints > 0 ? ['each joint'] : []),
  ];
  return parts.length === 0
    ? ''
    : `Multimeter within ${id}, under the same load: across ${parts.join(', across ')}. The one with nearly all of the drop is the bad one.`;
}

/** What these readings would not show: first where anything could hide, then for each run how much; nothing where all would show. */
export function unseenSentences(e: Evaluation, all: readonly Unseen[]): string[] {
  const { design } = e;
  const wires = all.flatMap((one) => (one.part.is === 'wire' ? [{ ...one, wire: one.part.wire }] : []));
  const of = (run: number) => wires.filter(({ wire }) => design.wires[wire]?.run === run);
  const blind = design.runs.flatMap(({ name }, run) => {
    const [own, hidden] = [of(run), of(run).filter(blinds)];
    const id = ({ wire }: (typeof own)[number]): string => design.wires[wire]?.id ?? '';
    if (hidden.length === 0) return [];
    if (hidden.length === own.length) return [name];
    const seen = own.filter((one) => !blinds(one));
    return [
      hidden.length > seen.length ? `${name} but for ${seen.map(id).join(', ')}` : hidden.map(id).join(', '),
    ];
  });
  const some = design.runs.flatMap(({ name }, run) => {
    const own = of(run).filter((one) => !blinds(one));
    if (own.length === 0) return [];
    const worst = own.reduce((a, b) => ((b.size ?? 0) > (a.size ?? 0) ? b : a));
    if ((worst.watts ?? 0) < HOT && (worst.volts ?? 0) < SEEN) return [];
    const where = own.length > 1 ? `${name}, in one of its wires` : (design.wires[worst.wire]?.id ?? name);
    const hot = (worst.watts ?? 0) >= HOT ? ': a joint there may be hot enough to char its insulation' : '';
    return [
      `${where}: less than ${printOhm(worst.size ?? 0)} (${printValue(worst.watts ?? 0, 'W')}, ${printValue(worst.volts ?? 0, 'V', 'mV')} at the peak) would not show${hot}.`,
    ];
  });
  const coils = all.filter(({ part, how }) => part.is === 'coil' && (how === 'ohm' || how === 'henry'));
  return [
    ...(blind.length === 0
      ? []
      : [`${blind.join('; ')}: no reading would show a bad joint there, however hot it gets.`]),
    ...some,
    ...(coils.length > 0 && coils.every(({ size }) => size === null)
      ? ['The coils: no reading would show a bad one. Read the peak current of each, or its primary.']
      : []),
  ];
}

/** A drop at the peak that costs spark [V]; what hides below is not worth a line. Arbitrary. */
const SEEN = 0.1;

/** What a reading says by itself; empty when it is within its range. */
export function readingSentence(judged: Judged): string {
  const { reading, expected, stands, ratio, excess, wouldBe } = judged;
  if (stands === 'within') return '';
  if (stands === 'unknown') return 'There is nothing to compare it with.';
  const parts: string[] = [];
  // What they mean stands among what to mend.
  if (judgedAlone(reading)) return '';
  if (reading.what === 'temperature') return warmSentence(judged);
  if (atPosts(reading))
    return `The posts are ${stands === 'low' ? 'below' : 'above'} the ${asRead(expected.expected, 'V').join(' ')} stated for this point; everything else read there is judged by what was read at the posts.`;
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

/** Whether nothing but a ratio is to be said of a reading. */
export const onlyRatio = ({ reading, stands, excess, wouldBe }: Judged): boolean =>
  (stands === 'low' || stands === 'high') &&
  !judgedAlone(reading) &&
  reading.what !== 'temperature' &&
  !atPosts(reading) &&
  excess === null &&
  wouldBe === null;

export function ratiosSentence(all: readonly Judged[]): string {
  const ratios = all.flatMap(({ ratio }) => ratio ?? []);
  return `${all.length} readings are ${printNumber(Math.min(...ratios))} to ${printNumber(Math.max(...ratios))} times what is expected.`;
}

/** A rise over what is expected, whichever of the two is given. */
function warmSentence({ reading, expected, stands }: Judged): string {
  const ambient = reading.ambient ?? 0;
  const [rise, usual] = [reading.value - ambient, (expected.expected ?? 0) - ambient];
  return `${asRead(rise, 'K').join(' ')} above the air around it, where about ${asRead(usual, 'K').join(' ')} is expected${stands === 'low' ? ': was the camera on a shiny surface, or the current not flowing?' : '.'}`;
}
