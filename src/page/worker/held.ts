/**
 * A design whose text has faults, answered nonetheless: whatever is wrong keeps the last value that could be read, and the
 * rest is taken as it stands.
 *
 *   text ─► readDesign ─► its problems ─► the last good value at each of these places ─► text ─► readDesign …
 */
import type { Design } from '../../design/design.ts';
import { keyText, type Path, type Problem } from '../../design/problems.ts';
import { readTree } from '../../design/tree.ts';
import { edited } from '../../saved/apply.ts';
import type { Edit, Plain } from '../../saved/document.ts';
import { asTyped } from '../form/written.ts';
import { pathOf, valueAt } from '../place.ts';
import type { Given, Held } from '../protocol.ts';
import { readGiven } from './given.ts';

/** A value that is held can show another fault, in what it does not go together with. Arbitrary: few steps are taken. */
const ROUNDS = 6;

interface Readable {
  readonly design: Design;
  /** The text that was answered: the one at hand, with the values that are held. */
  readonly text: string;
  readonly held: readonly Held[];
}

/** The design with its faults held back; null where nothing can stand in for them. `good` is the last text without faults. */
export function readable(
  { text, file, shop }: Given,
  problems: readonly Problem[],
  good: string | null,
): Readable | null {
  if (good === null) return null;
  const base = readTree(good, file).value;
  const held = new Map<string, Held>();
  let [now, wrong] = [text, problems];
  for (let round = 0; round < ROUNDS; round++) {
    const tree = readTree(now, file);
    if (!tree.sound) return null;
    const places = outermost(wrong.map(({ key }) => heldAt(pathOf(key), base, tree.value)));
    if (places.some((path) => path.length === 0)) return null;
    const edits = places.map((key): Edit => ({ key, value: copyOf(valueAt(base, key)) }));
    for (const { key, value } of edits) held.set(keyText(key), { key: keyText(key), value: wordsOf(value) });
    now = edited(now, edits);
    const read = readGiven({ text: now, file, shop });
    if (read.ok) return { design: read.design, text: now, held: [...held.values()] };
    wrong = read.problems;
  }
  return null;
}

/** The place itself, or the part around it: where the two texts differ, and lists are as long as each other. */
function heldAt(path: Path, good: unknown, now: unknown): Path {
  const uneven = path.findIndex((_, i) => {
    const [a, b] = [valueAt(good, path.slice(0, i)), valueAt(now, path.slice(0, i))];
    return Array.isArray(a) && Array.isArray(b) && a.length !== b.length;
  });
  let at = uneven < 0 ? path : path.slice(0, uneven);
  while (at.length > 0 && same(valueAt(good, at), valueAt(now, at))) at = at.slice(0, -1);
  return at;
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
/** Maps of a tree have no prototype. */
const copyOf = (value: unknown): Plain | undefined =>
  value === undefined || value === null ? undefined : (JSON.parse(JSON.stringify(value)) as Plain);

/** Without those that lie inside another one, each once. */
function outermost(paths: readonly Path[]): Path[] {
  const keys = paths.map((path) => JSON.stringify(path).slice(0, -1));
  return paths.filter(
    (_, i) =>
      !keys.some(
        (other, k) =>
          k !== i && (keys[i] === other ? k < i : keys[i]?.startsWith(`${other}${other === '[' ? '' : ','}`)),
      ),
  );
}

const plain = (value: unknown): boolean => typeof value === 'string' || typeof value === 'number';

/** The value that is taken, as a person reads it; empty for one that is left out. */
const wordsOf = (value: Plain | undefined): string =>
  value === undefined ? '' : [value].flat().every(plain) ? asTyped(value) : 'as it was';
