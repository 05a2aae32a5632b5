/** What a diagnosis names, as words: for expectations. */
import type { Evaluation } from '../../src/engine/evaluate.ts';
import type { Part } from '../../src/readings/causes.ts';
import type { Diagnosis } from '../../src/readings/diagnose.ts';

/** `main`, `coil 3`, `reading 0`, or what else it is. */
export function partName({ design }: Evaluation, part: Part): string {
  switch (part.is) {
    case 'wire':
      return design.wires[part.wire]?.id ?? '';
    case 'within':
      return `${part.across} of ${design.wires[part.wire]?.id}`;
    case 'run':
      return `all of ${design.runs[part.run]?.name}`;
    case 'coil':
      return `coil ${design.coils[part.coil]?.id}`;
    case 'reading':
      return `reading ${part.reading}`;
    case 'instrument':
      return part.sense;
    default:
      return part.is;
  }
}

/** For each thing that was found the parts that it may be. */
export const namesOf = (e: Evaluation, { found }: Diagnosis): string[][] =>
  found.map((causes) => causes.map(({ part }) => partName(e, part)));
