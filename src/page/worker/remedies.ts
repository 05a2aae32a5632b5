/** Remedies that were tried on the design at hand; a second or so, and so not with every answer. */
import type { Units } from '../../basis/shown.ts';
import type { Result } from '../../findings/result.ts';
import { remediesOf } from '../../remedies/tried.ts';
import { run } from '../../run.ts';
import { remedyText } from '../../writers/remedies.ts';

export function remediesShown(result: Result): Record<Units, readonly string[]> {
  const found = remediesOf(result, run);
  const of = (units: Units): string[] => found.map((remedy) => remedyText(remedy, units));
  return { metric: of('metric'), us: of('us'), both: of('both') };
}
