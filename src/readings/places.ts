/** Where the probes go, and what the instruments are called: words only. */
import type { Design, Instrument, Sense } from '../design/design.ts';
import type { Where } from './expected.ts';

/** The instrument as it is set. */
export const INSTRUMENT_WORDS: Readonly<Record<Instrument, string>> = {
  meter: 'multimeter, V DC',
  least: 'multimeter, MIN held',
  scope: 'scope, peak',
  clamp_average: 'clamp, A DC',
  clamp_effective: 'clamp, true RMS AC+DC',
  clamp_peak: 'clamp on scope, peak',
  value: 'milliohm meter',
  ohmmeter: 'ohmmeter',
  trace: 'trace',
  log: 'log',
  camera: 'thermal camera',
};

export const SENSE_WORDS: Readonly<Record<Sense, string>> = {
  meter: 'multimeter',
  scope: 'scope',
  clamp: 'clamp',
  ohmmeter: 'ohmmeter',
  trace: 'trace',
  log: 'log',
  camera: 'thermal camera',
};

/** A supply is read at its lowest. */
export const instrumentWords = ({ what, instrument }: Pick<Where, 'what' | 'instrument'>): string =>
  (what === 'supply' || what === 'trigger') && instrument === 'scope'
    ? 'scope, least'
    : INSTRUMENT_WORDS[instrument];

/** `main`, `coil 3`, `battery`. */
export function subjectOf(
  design: Design,
  {
    what,
    wire,
    coil,
    between,
    across,
  }: Pick<Where, 'wire' | 'coil'> & Partial<Pick<Where, 'what' | 'between' | 'across'>>,
): string {
  if (between) return between.map((one) => design.wires[one]?.id).join(' + ');
  if (what === 'dwell') return 'dwell';
  if (what === 'resting') return 'battery at rest';
  if (wire !== null) {
    const id = design.wires[wire]?.id ?? '';
    if (what === 'trigger') return `relay of ${id}`;
    return across ? `${across} of ${id}` : id;
  }
  return coil === null ? 'battery' : `coil ${design.coils[coil]?.id}`;
}

/** Where the two probes, or the clamp, go. */
export function probesOf(design: Design, where: Where): string {
  const { what, wire, coil, between } = where;
  if (what === 'dwell') return 'in the log of the controller';
  if (between) {
    const [first, last] = [between[0] as number, between.at(-1) as number];
    return `red on ${endsOf(design, first)[0]}, black on ${endsOf(design, last)[1]}`;
  }
  if (what === 'resting') return 'battery posts, everything off for an hour, red on positive';
  if (wire === null) {
    if (coil === null) return 'battery posts, red on positive';
    const name = `coil ${design.coils[coil]?.id}`;
    if (what === 'resistance' || what === 'inductance') return `primary of ${name}, unplugged`;
    return what === 'supply' ? `supply and ground terminals of ${name}` : `around the supply wire of ${name}`;
  }
  const { id } = design.wires[wire] as Design['wires'][number];
  if (what === 'current') return `around ${id}, no other wire in the clamp`;
  if (what === 'temperature')
    return `${where.across ? `${where.across}` : 'hottest place'} of ${id} after five minutes${where.ambient == null ? ', less the air' : ''}`;
  if (where.across) return `across the ${where.across} of ${id}, red on the side that the current comes from`;
  if (what === 'trigger') return `across the coil of the relay of ${id}, red on the wire that triggers it`;
  const [from, to] = endsOf(design, wire);
  if (what === 'resistance') return `${id} alone, disconnected at both ends: ${from}, and ${to}`;
  return `red on ${from}, black on ${to}`;
}

/** The two ends of a conductor as current meets them. */
export function endsOf(design: Design, wire: number): [string, string] {
  const own = design.wires[wire] as Design['wires'][number];
  const side = design.runs[own.run]?.side;
  // Conductors of the same side that share a coil with this one; the order of the runs is that of the current.
  const beside = design.wires.filter(
    ({ run, coils }) =>
      run !== own.run && design.runs[run]?.side === side && coils.some((coil) => own.coils.includes(coil)),
  );
  const before = beside.filter(({ run }) => run < own.run).at(-1);
  const after = beside.find(({ run }) => run > own.run);
  const several = own.coils.length > 1;
  const terminal = (kind: string): string =>
    several ? `${kind} of its coils` : `coil ${design.coils[own.coils[0] ?? -1]?.id} ${kind}`;
  const ends = (name: string): string => `the end of ${name}`;
  if (side === 'feed')
    return [
      before ? ends(before.id) : 'battery positive',
      after ? `the start of ${named(design, after)}` : terminal('+'),
    ];
  return [
    before ? ends(named(design, before)) : terminal('−'),
    after ? `the start of ${after.id}` : 'battery negative',
  ];
}

/** A conductor by its run; where that divides, the first of those that meet there, at whose end all of them are. */
function named(design: Design, { run, coils }: Design['wires'][number]): string {
  const name = design.runs[run]?.name ?? '';
  const divides = design.wires.filter((wire) => wire.run === run).length > 1;
  return divides ? `${name} of coil ${design.coils[coils[0] ?? -1]?.id}` : name;
}
