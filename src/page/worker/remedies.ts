/** Remedies that were tried on the design at hand; a second or so, and so not with every answer. */
import { UNITS, type Units } from '../../basis/shown.ts';
import type { Result } from '../../findings/result.ts';
import { remediesOf } from '../../remedies/tried.ts';
import { run } from '../../run.ts';
import { remedyText } from '../../writers/remedies.ts';

export function remediesShown(result: Result): Record<Units, readonly string[]> {
  const found = remediesOf(result, run);
  return Object.fromEntries(
    UNITS.map((units) => [units, found.map((remedy) => remedyText(remedy, units))]),
  ) as Record<Units, readonly string[]>;
}
