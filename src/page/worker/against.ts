/** The feed of a design beside the one that it replaces. */
import type { Design } from '../../design/design.ts';
import type { OwnFound } from '../../own/found.ts';
import { compare } from '../../readings/compare.ts';
import { run, withOwn } from '../../run.ts';
import { COMPARED, FEED } from '../../views/views.ts';
import { changeText, comparedRows } from '../../writers/compare-report.ts';
import type { Against } from '../protocol.ts';

/** `own` is what the author added to the new one. */
export function againstOriginal(design: Design, own: readonly OwnFound[] = []): Against | null {
  if (design.original === null) return null;
  const found = compare(
    { name: 'Original', title: design.original.title, result: run(design.original) },
    { name: 'New', title: design.title, result: withOwn(run(design), own) },
  );
  const { sides } = found;
  const heads = ['', ...sides.map(({ name }) => name), 'New to original'];
  const rules = [
    ['Does not pass with the original, passes with the new feed', found.vanish],
    ['Passes with the original, does not with the new feed', found.appear],
    ['Does not pass with either', found.stay],
  ] as const;
  return {
    sides: sides.map(({ name, title, result }) => ({ name, title, verdict: result.verdict })),
    gain: found.gain ?? '',
    tables: [
      ...found.points.map(({ name, at, exact }) => ({
        title: `At ${name}`,
        heads,
        rows: comparedRows(found, COMPARED, at, exact),
      })),
      { title: FEED.title, heads, rows: comparedRows(found, FEED, [{}, {}]) },
    ],
    rules: rules.flatMap(([title, changes]) =>
      changes.length === 0 ? [] : [{ title, names: changes.map(changeText) }],
    ),
  };
}
