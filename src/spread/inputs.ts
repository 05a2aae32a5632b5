/** What differs from install to install: each tolerance of the design, for all parts together or for each by itself. */
import type { Design, Spreading } from '../design/design.ts';
import { placeOf } from './distribution.ts';

export interface Input {
  readonly kind: Spreading;
  /** The coil or conductor that it is of; null where it is of all. */
  readonly index: number | null;
  /** What it is, with the run or coil: `length of main`. */
  readonly label: string;
  /** Inputs that are told together: `length of branch`. */
  readonly group: string;
  /** Half the width [1] or [K]; of the coils’ warmth the whole of it. */
  readonly width: number;
}

/** Kinds that differ from part to part; the others are the same for a whole install. */
export const EACH: readonly Spreading[] = [
  'coil_resistance',
  'coil_inductance',
  'current_limit',
  'length',
  'joint_resistance',
];

const NAMES: Readonly<Record<Spreading, string>> = {
  coil_resistance: 'coil resistance',
  coil_inductance: 'coil inductance',
  coil_warmer: 'coil temperature',
  current_limit: 'current limit',
  dwell: 'dwell',
  supply: 'supply',
  ambient: 'ambient temperature',
  length: 'length',
  joint_resistance: 'joints',
};
export const nameOf = (kind: Spreading): string => NAMES[kind];

/** Whether the design has what a tolerance is of. */
const has = ({ coil }: Design, kind: Spreading): boolean => {
  const known = coil.inductance !== null || coil.test_point !== null;
  if (kind === 'coil_inductance') return known;
  if (kind === 'current_limit') return coil.current_limit !== null;
  // Of a coil with a peak alone the current is as stated, whatever its resistance.
  return kind === 'coil_resistance' || kind === 'coil_warmer' ? known && coil.resistance !== null : true;
};

/** In the order in which they are drawn: those for all first, since the first places are filled most evenly. */
export function inputsOf(design: Design): Input[] {
  const { tolerance, coils, wires, runs } = design;
  const kinds: readonly Spreading[] = ['supply', 'coil_warmer', 'dwell', 'ambient', ...EACH];
  return kinds
    .filter((kind) => tolerance[kind] > 0 && has(design, kind))
    .flatMap((kind): Input[] => {
      const width = tolerance[kind];
      const name = NAMES[kind];
      if (!EACH.includes(kind)) return [{ kind, index: null, label: name, group: name, width }];
      if (kind === 'length' || kind === 'joint_resistance')
        return wires.map(({ id, run }, index) => ({
          kind,
          index,
          label: `${name} of ${id}`,
          group: `${name} of ${runs[run]?.name ?? ''}`,
          width,
        }));
      return coils.map(({ id }, index) => ({
        kind,
        index,
        label: `${name}, coil ${id}`,
        group: name,
        width,
      }));
    });
}

/** How far the input is off at a share between 0 and 1 [1] or [K]. A coil is warmer than in the design, not colder. */
export function deviationOf({ kind, width }: Input, share: number, { tolerance }: Design): number {
  const place = placeOf(share, tolerance.distribution[kind]);
  return kind === 'coil_warmer' ? (width * (place + 1)) / 2 : width * place;
}
