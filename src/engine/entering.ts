/** How inputs are entered in a workbook: in whose units, and the conductors in which order. */
import type { System } from '../basis/shown.ts';
import type { Design } from '../design/design.ts';

export interface Entering {
  readonly system: System;
  /** Place of each conductor among all, where that is not its own number. */
  readonly wires: readonly number[];
}

/** In metric units, all in the order of the model: as the first workbooks had them. */
export const METRIC: Entering = { system: 'metric', wires: [] };

/** In the units of the reader; of each run the conductors of numbered coils by their numbers, not as they fire. */
export function entering({ units, wires, coils }: Design): Entering {
  const number = (wire: number): number => Number(coils[wires[wire]?.coils[0] ?? -1]?.id);
  const run = (wire: number): number => wires[wire]?.run as number;
  const sorted = [...wires.keys()].sort((a, b) => run(a) - run(b) || number(a) - number(b) || a - b);
  return {
    system: units === 'us' ? 'us' : 'metric',
    wires: [...wires.keys()].map((wire) => sorted.indexOf(wire)),
  };
}
