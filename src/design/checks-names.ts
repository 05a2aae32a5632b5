/** What several checks share. */
import { type Path, quote, type Report } from './problems.ts';

/** The list when every member could be read. */
export const whole = <T>(list: (T | undefined)[] | undefined): T[] | undefined =>
  list?.every((member): member is T => member !== undefined) ? list : undefined;

/** Reports members of a list whose name was there before; case is ignored, as it is in a spreadsheet. */
export function reportRepeated(
  names: readonly (string | undefined)[],
  pathOf: (i: number) => Path,
  report: Report,
): boolean {
  const seen = new Set<string>();
  let unique = true;
  names.forEach((name, i) => {
    if (name === undefined) return;
    if (seen.has(name.toLowerCase())) {
      report(pathOf(i), `${quote(name)} a second time`, 'use each name once; capitals make no difference');
      unique = false;
    }
    seen.add(name.toLowerCase());
  });
  return unique;
}
