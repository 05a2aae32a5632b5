/**
 * Puts the parts of the shop's file in the place of each `use` of a design, before schema and checks see it: what follows
 * reads an ordinary design. A value that came from the shop's file keeps its place there, so that a problem names it.
 */
import * as z from 'zod';
import type { Design } from '../design.ts';
import { runKey } from '../layout.ts';
import { nearest } from '../nearest.ts';
import { keyText, type Path, quote, type Report } from '../problems.ts';
import { use } from '../schema-coils.ts';
import type { Tree } from '../tree.ts';
import { idOf } from '../walk.ts';
import type { Shelf } from './read.ts';
import { DROPS, type Kind, type Used } from './shop.ts';

export interface Resolved {
  readonly tree: Tree;
  readonly used: readonly Used[];
  /** Places whose part is not known: nothing can be said of what is missing there. */
  readonly open: readonly Path[];
}

type Plain = Record<string, unknown>;
const isMap = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Keys of a part that are the shop's affair and no value of a design. */
const OWN = ['name', 'connector', 'largest', 'from', 'stock', 'price'];

/** The part of the shop that a run has as its fuse or its relay. */
export function usedIn(design: Design, run: number, device: 'fuse' | 'relay'): Used | undefined {
  const path = keyText([...runKey(design, run), device]);
  return design.used.find((one) => one.path === path);
}

/** What may be used where. `text` puts a name or one value there, and not a map of values. */
interface Place {
  readonly path: Path;
  readonly kind: Kind;
  readonly text?: 'name' | 'accuracy';
}

/** Which kind of the shop's parts stands behind a part of the kit. */
const KIT_PARTS: Readonly<Record<string, Kind>> = {
  fuse_holder: 'holders',
  relay_socket: 'holders',
  fuse_terminal: 'terminals',
  relay_terminal: 'terminals',
  splice: 'splices',
  ground: 'terminals',
  sleeve: 'sleeves',
  label: 'labels',
};

function places(value: unknown): Place[] {
  const at = (path: Path): unknown =>
    path.reduce<unknown>((of, step) => (of as Plain | null | undefined)?.[step as string], value);
  const uses = (path: Path): boolean => {
    const there = at(path);
    return isMap(there) && Object.hasOwn(there, 'use');
  };
  const keys = (path: Path): string[] => {
    const there = at(path);
    return isMap(there) ? Object.keys(there) : [];
  };
  const runs = [[], ['original']].flatMap((base) =>
    ['feed', 'return'].flatMap((side) => {
      const list = at([...base, side]);
      return (Array.isArray(list) ? list : []).map((_, i) => [...base, side, i]);
    }),
  );
  const all: Place[] = [
    { path: ['coil'], kind: 'coils' },
    ...runs.flatMap((run): Place[] => [
      { path: [...run, 'fuse'], kind: 'fuses' },
      { path: [...run, 'relay'], kind: 'relays' },
    ]),
    ...keys(['kit', 'terminals']).flatMap((run) =>
      ['from', 'to'].map(
        (end): Place => ({ path: ['kit', 'terminals', run, end], kind: 'terminals', text: 'name' }),
      ),
    ),
    ...Object.entries(KIT_PARTS).map(
      ([part, kind]): Place => ({ path: ['kit', 'parts', part], kind, text: 'name' }),
    ),
    ...keys(['instruments']).map(
      (sense): Place => ({ path: ['instruments', sense], kind: 'instruments', text: 'accuracy' }),
    ),
  ];
  return all.filter(({ path }) => uses(path));
}

/** The value with another one at a path; what leads there is copied, so that nobody else's is written over. */
function put(value: unknown, [step, ...rest]: Path, what: unknown): unknown {
  if (step === undefined) return what;
  if (Array.isArray(value)) return value.map((one, i) => (i === step ? put(one, rest, what) : one));
  const own = value as Plain;
  return Object.assign(Object.create(null), own, { [step]: put(own[step], rest, what) });
}

/** The part of a name; null, and a problem said, when there is none. */
function find(
  { path, kind }: Place,
  name: unknown,
  shelf: Shelf | null | undefined,
  report: Report,
): { part: Plain; index: number } | null {
  const at = [...path, 'use'];
  // What is no name at all the schema tells of.
  if (!z.safeParse(use('part'), name).success || shelf === null) return null;
  if (shelf === undefined) {
    report(
      at,
      `uses ${quote(String(name))} of no shop’s file`,
      'name the file: shop: shop.yaml, or --shop FILE',
    );
    return null;
  }
  const list = (isMap(shelf.raw) ? shelf.raw[kind] : undefined) ?? [];
  // That it is no list is said already.
  if (!Array.isArray(list)) return null;
  const parts: unknown[] = list;
  const known = parts.flatMap((part) =>
    isMap(part) && typeof part.name === 'string' ? [part.name.trim()] : [],
  );
  const wanted = String(name).trim();
  const index = parts.findIndex(
    (part) => isMap(part) && typeof part.name === 'string' && part.name.trim() === wanted,
  );
  if (index >= 0) return { part: parts[index] as Plain, index };
  report(
    at,
    `${quote(wanted)} is not among the ${kind} of ${quote(shelf.file)}`,
    nearNames(wanted, known, kind),
  );
  return null;
}

/** The nearest first, then what else there is. */
function nearNames(wanted: string, known: readonly string[], kind: Kind): string {
  const near = nearest(wanted, known);
  if (near !== null) return `did you mean ${quote(near)}?`;
  if (known.length === 0) return `it has no ${kind}`;
  const some = known.slice(0, 6).map(quote).join(', ');
  return `it has ${some}${known.length > 6 ? ` and ${known.length - 6} more` : ''}`;
}

/** The design's tree with every `use` filled in; of a file that is null and cannot be read all is said already. */
export function useShop(tree: Tree, shelf: Shelf | null | undefined, report: Report): Resolved {
  const moved = new Map<string, Path>();
  const used: Used[] = [];
  const open: Path[] = [];
  let value = tree.value;
  for (const place of places(tree.value)) {
    const { path, kind, text } = place;
    const own = path.reduce<unknown>((of, step) => (of as Plain)[step as string], tree.value) as Plain;
    const found = find(place, own.use, shelf, report);
    if (found === null) {
      open.push(path);
      continue;
    }
    const { part, index } = found;
    const from = [...(shelf?.base ?? []), kind, index];
    const beside: string[] = [];
    const keys: string[] = [];
    if (text === 'name') moved.set(idOf(path), [...from, 'name']);
    else if (text !== undefined) {
      value = put(value, path, part[text]);
      moved.set(idOf(path), [...from, text]);
      if (part.kind !== path.at(-1)) {
        report(
          [...path, 'use'],
          `${quote(String(own.use))} is of the kind ${quote(String(part.kind))}`,
          `takes one of the kind ${path.at(-1)}`,
        );
        open.push(path);
      }
    } else {
      const dropped = Object.entries(DROPS[kind] ?? {}).flatMap(([key, keys]) =>
        Object.hasOwn(own, key) ? keys : [],
      );
      const filled: Plain = Object.assign(Object.create(null), own);
      for (const [key, given] of Object.entries(part)) {
        if (OWN.includes(key)) continue;
        if (Object.hasOwn(own, key) || dropped.includes(key)) beside.push(key);
        else {
          filled[key] = given;
          keys.push(key);
          moved.set(idOf([...path, key]), [...from, key]);
        }
      }
      value = put(value, path, filled);
    }
    used.push({
      path: keyText(path),
      kind,
      name: String(part.name).trim(),
      from: typeof part.from === 'string' ? part.from.trim() : null,
      keys,
      stated: Object.keys(own).filter((key) => key !== 'use'),
      beside,
    });
  }
  return { tree: moved.size === 0 ? tree : filledTree(tree, value, moved, shelf as Shelf), used, open };
}

function filledTree(tree: Tree, value: unknown, moved: ReadonlyMap<string, Path>, shelf: Shelf): Tree {
  /** Where a path stands in the shop's file; null for what stands in the design. */
  const there = (path: Path): Path | null => {
    for (let n = path.length; n > 0; n--) {
      const from = moved.get(idOf(path.slice(0, n)));
      if (from) return [...from, ...path.slice(n)];
    }
    return null;
  };
  return {
    ...tree,
    value,
    has: (path) => {
      const from = there(path);
      return from === null ? tree.has(path) : shelf.tree.has(from);
    },
    place: (path, on) => {
      const from = there(path);
      return from === null
        ? tree.place(path, on)
        : { ...shelf.tree.place(from, on), file: shelf.file, key: keyText(from) };
    },
  };
}
