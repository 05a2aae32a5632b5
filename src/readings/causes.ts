/**
 * What can be the matter with an install: every hypothesis as data. Each moves some of the parts by one size, within a
 * range, with a density of that size before anything was read, and has odds of its own: how often it is what a shop finds.
 * All odds and densities are arbitrary; they matter where readings hardly tell.
 */
import type { Instrument, Measured, Sense } from '../design/design.ts';
import { senseOf } from './instruments.ts';
import { otherInstruments } from './mixed-up.ts';
import { type Knob, keyOf, type Parts } from './parts.ts';

/** What a person would look at. */
export type Part =
  /** A conductor with its joints, fuse and relay contact. */
  | { readonly is: 'wire'; readonly wire: number }
  /** One place within a conductor. */
  | { readonly is: 'within'; readonly wire: number; readonly across: string }
  /** All conductors of a run. */
  | { readonly is: 'run'; readonly run: number }
  | { readonly is: 'source' }
  | { readonly is: 'coil'; readonly coil: number }
  | { readonly is: 'coils' }
  | { readonly is: 'dwell' }
  /** The supply at the posts: at one point, or at all. */
  | { readonly is: 'supply'; readonly point: number | null }
  | { readonly is: 'instrument'; readonly sense: Sense }
  | { readonly is: 'reading'; readonly reading: number };

/** In which way. `size` is in ohm, in volts, the natural logarithm of a factor, or an excess over 1, as `unit` says. */
export type How =
  | 'resistance'
  | 'ohm'
  | 'henry'
  | 'turns'
  | 'open'
  | 'thinner'
  | 'dwell'
  | 'supply'
  | 'scale'
  | 'taken'
  | 'misread';

export interface Hypothesis {
  readonly part: Part;
  readonly how: How;
  readonly unit: 'ohm' | 'ln' | 'V' | 'share' | 'read';
  /** What it moves, and how far for a size of 1: indices of the parts' knobs. */
  readonly moves: readonly (readonly [knob: number, by: number])[];
  /** Sizes that it can have; one where both are the same. */
  readonly from: number;
  readonly to: number;
  /** Each decade as likely as the next, or each size as the next. */
  readonly log: boolean;
  /** Before anything was read, against 1 for all hypotheses together with "nothing wrong". */
  readonly odds: number;
  /** This reading was taken so, or says nothing. */
  readonly reading?: { readonly index: number; readonly instrument?: Instrument };
}

/** How often each kind of thing is what is found: shares of all installs that are checked. Arbitrary. */
export const ODDS = {
  sound: 0.5,
  resistance: 0.2,
  thinner: 0.02,
  source: 0.005,
  coil: 0.12,
  coils: 0.004,
  dwell: 0.04,
  supply: 0.08,
  scale: 0.015,
  taken: 0.01,
  misread: 0.01,
} as const;
/** Of what is the matter with a coil. Arbitrary. */
const OF_COIL = { ohm: 0.3, henry: 0.3, turns: 0.25, open: 0.15 } as const;
/** Two things at a time are as likely as both by themselves, times this: the one often has to do with the other. Arbitrary. */
export const TOGETHER = 1;

/** Least and largest sizes that are looked for. Arbitrary. */
const OHMS = [2e-3, 1] as const;
const SOURCE_OHMS = [5e-3, 2] as const;
/** ln of a factor of 3 either way. */
const FACTOR = 1.1;
const TURNS = [-1, -0.05] as const;
const OPEN = Math.log(1e6);
const VOLTS = [-5, 3] as const;
const TIMES = [0.2, 20] as const;
const SCALE = Math.log(2000);
/** Factors by which a clamp or a probe is off when its scale is not that of what shows it: half of all that are off. */
const SCALES = [0.001, 0.01, 0.1, 0.5, 2, 10, 100, 1000];

export function causesOf(parts: Parts, readings: readonly Measured[]): Hypothesis[] {
  const { e, source, copper, within } = parts;
  const { wires, coils, runs } = e.design;
  const at = (knob: Knob): number => parts.index.get(keyOf(knob)) as number;
  const all = [...coils.keys()];
  const points = [...parts.circuits.keys()];
  const supplies = points.map((point) => at({ of: 'supply', point }));
  const several = runs.flatMap((_, run) => {
    const own = wires.flatMap((wire, i) => (wire.run === run ? [i] : []));
    return own.length > 1 ? [{ run, own }] : [];
  });
  // A camera shows a point of a scale, and no multiple of anything.
  const senses = [...new Set(readings.map(({ instrument }) => senseOf(instrument)))].filter(
    (sense) => sense !== 'camera',
  );
  const one = <T>(share: number, of: readonly T[]): number => share / Math.max(1, of.length);
  const factor = { unit: 'ln', from: -FACTOR, to: FACTOR, log: false } as const;
  return [
    ...wires.map(
      (_, wire): Hypothesis => ({
        part: { is: 'wire', wire },
        how: 'resistance',
        unit: 'ohm',
        moves: [[at({ of: 'wire', wire }), 1]],
        from: OHMS[0],
        to: OHMS[1],
        log: true,
        odds: one(ODDS.resistance, wires) * (1 - sharesOf(parts, wire)),
      }),
    ),
    ...within.map(
      ({ wire, across }): Hypothesis => ({
        part: { is: 'within', wire, across },
        how: 'resistance',
        unit: 'ohm',
        moves: [[at({ of: 'within', wire, across }), 1]],
        from: OHMS[0],
        to: OHMS[1],
        log: true,
        odds: one(ODDS.resistance, wires) / placesIn(parts, wire),
      }),
    ),
    {
      part: { is: 'source' },
      how: 'resistance',
      unit: 'ohm',
      moves: [[at({ of: 'wire', wire: source }), 1]],
      from: SOURCE_OHMS[0],
      to: SOURCE_OHMS[1],
      log: true,
      odds: ODDS.source,
    },
    ...several.map(
      ({ run, own }): Hypothesis => ({
        part: { is: 'run', run },
        how: 'thinner',
        unit: 'share',
        moves: own.map((wire) => [at({ of: 'wire', wire }), copper[wire] as number]),
        from: TIMES[0],
        to: TIMES[1],
        log: true,
        odds: one(ODDS.thinner, several),
      }),
    ),
    ...all.flatMap((coil): Hypothesis[] => {
      const part = { is: 'coil', coil } as const;
      const [ohm, henry] = [at({ of: 'ohm', coil }), at({ of: 'henry', coil })];
      const odds = (how: keyof typeof OF_COIL): number => one(ODDS.coil, all) * OF_COIL[how];
      return [
        { part, how: 'ohm', ...factor, moves: [[ohm, 1]], odds: odds('ohm') },
        { part, how: 'henry', ...factor, moves: [[henry, 1]], odds: odds('henry') },
        {
          part,
          how: 'turns',
          unit: 'ln',
          // The wire goes with the turns, the inductance with their square.
          moves: [
            [ohm, 1],
            [henry, 2],
          ],
          from: TURNS[0],
          to: TURNS[1],
          log: false,
          odds: odds('turns'),
        },
        {
          part,
          how: 'open',
          unit: 'ln',
          moves: [[ohm, 1]],
          from: OPEN,
          to: OPEN,
          log: false,
          odds: odds('open'),
        },
      ];
    }),
    ...(all.length > 1 ? (['ohm', 'henry'] as const) : []).map(
      (how): Hypothesis => ({
        part: { is: 'coils' },
        how,
        ...factor,
        moves: all.map((coil) => [at({ of: how, coil }), 1]),
        odds: ODDS.coils / 2,
      }),
    ),
    { part: { is: 'dwell' }, how: 'dwell', ...factor, moves: [[at({ of: 'dwell' }), 1]], odds: ODDS.dwell },
    ...(points.length > 1 ? [null, ...points] : points).map(
      (point): Hypothesis => ({
        part: { is: 'supply', point },
        how: 'supply',
        unit: 'V',
        moves: point === null ? supplies.map((knob) => [knob, 1]) : [[at({ of: 'supply', point }), 1]],
        from: VOLTS[0],
        to: VOLTS[1],
        log: false,
        odds: point === null ? ODDS.supply : ODDS.supply / (points.length + 1),
      }),
    ),
    ...senses.flatMap((sense): Hypothesis[] => {
      const gain = at({ of: 'gain', sense });
      const common = {
        part: { is: 'instrument', sense },
        how: 'scale',
        unit: 'ln',
        moves: [[gain, 1]],
        log: false,
      } as const;
      const odds = one(ODDS.scale, senses) / 2;
      return [
        { ...common, from: -SCALE, to: SCALE, odds },
        ...SCALES.map(Math.log).map((ln) => ({ ...common, from: ln, to: ln, odds: odds / SCALES.length })),
      ];
    }),
    ...readings.flatMap((reading, index): Hypothesis[] => [
      ...otherInstruments(reading).map(
        (instrument): Hypothesis => ({
          part: { is: 'reading', reading: index },
          how: 'taken',
          unit: 'read',
          moves: [],
          from: 0,
          to: 0,
          log: false,
          odds: one(ODDS.taken, readings) / otherInstruments(reading).length,
          reading: { index, instrument },
        }),
      ),
      {
        part: { is: 'reading', reading: index },
        how: 'misread',
        unit: 'read',
        moves: [],
        from: 0,
        to: 0,
        log: false,
        odds: one(ODDS.misread, readings),
        reading: { index },
      },
    ]),
  ];
}

/** Places in a conductor that can go bad: joints, plugs, fuse, relay contact, and the wire itself. Each as likely: arbitrary. */
function placesIn({ e, within }: Parts, wire: number): number {
  const { joints, contacts, fuse, relay } = e.design.runs[e.design.wires[wire]?.run ?? -1] ?? {
    joints: 0,
    contacts: 0,
    fuse: null,
    relay: null,
  };
  const all = joints + contacts + (fuse ? 1 : 0) + (relay ? 1 : 0);
  return 1 + Math.max(all, within.filter((one) => one.wire === wire).length);
}

/** Of the odds of a conductor what goes to its places that readings tell of. */
const sharesOf = (parts: Parts, wire: number): number =>
  parts.within.filter((one) => one.wire === wire).length / placesIn(parts, wire);

export const samePart = (a: Part, b: Part): boolean => JSON.stringify(a) === JSON.stringify(b);

/** ln of the density of a size before anything was read. */
export function lnDensity({ from, to, log }: Hypothesis, size: number): number {
  if (from === to) return 0;
  const within = Math.max(from, Math.min(to, size));
  return log ? -Math.log(within * Math.log(to / from)) : -Math.log(to - from);
}
