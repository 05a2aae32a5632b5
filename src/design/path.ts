/** A place in a design as a person writes it: `feed.main.length`, `points.idle.supply`, `ignition.dwell[0].dwell`. */
import * as z from 'zod';
import { alternatives } from './issues.ts';
import { nearest } from './nearest.ts';
import { keyText, listed, type Path, quote } from './problems.ts';
import { DesignFile } from './schema.ts';

/** What a member of a list is called by. */
const NAMES = ['run', 'name', 'id'] as const;

interface Known {
  /** Word after which the text goes on, and the step that it stands for. */
  readonly words: ReadonlyMap<string, string | number>;
  readonly inside: (step: string | number) => z.core.$ZodType[];
  /** Steps that no list of words holds: the number of a member, the name of a coil. */
  readonly any: 'number' | 'word' | null;
}

function knownAt(schemas: readonly z.core.$ZodType[], value: unknown): Known {
  const words = new Map<string, string | number>();
  let any: Known['any'] = null;
  for (const one of schemas) {
    if (one instanceof z.ZodObject) for (const key of Object.keys(one.shape)) words.set(key, key);
    if (one instanceof z.ZodRecord) any = 'word';
    if (one instanceof z.ZodArray) {
      any ??= 'number';
      if (Array.isArray(value)) for (const [i, member] of value.entries()) words.set(nameOf(member) ?? '', i);
    }
  }
  words.delete('');
  const inside = (step: string | number): z.core.$ZodType[] =>
    schemas.flatMap((one) => {
      if (one instanceof z.ZodObject && typeof step === 'string' && Object.hasOwn(one.shape, step))
        return alternatives(one.shape[step]);
      if (one instanceof z.ZodArray && typeof step === 'number') return alternatives(one.element);
      return one instanceof z.ZodRecord && typeof step === 'string'
        ? alternatives(one.valueType as z.core.$ZodType)
        : [];
    });
  return { words, inside, any };
}

const nameOf = (member: unknown): string | undefined => {
  const own = member as Record<string, unknown> | null;
  const found = NAMES.map((key) => own?.[key]).find((name) => name !== undefined && name !== null);
  return found === undefined ? undefined : String(found);
};

/** The first step of a text, and how long it is; null when it is none that is known. */
function stepOf(text: string, { words, any }: Known): [string | number, number] | null {
  const [bracketed, number, quoted] = /^\[(?:(\d+)|"([^"]*)")\]/.exec(text) ?? [];
  if (bracketed !== undefined && number !== undefined && any === 'number')
    return [Number(number), bracketed.length];
  const named = [...words].filter(
    ([word]) => text.startsWith(word) && /^(?:$|[.[])/.test(text.slice(word.length)),
  );
  const [best] = named.sort(([a], [b]) => b.length - a.length);
  if (best) return [best[1], best[0].length];
  if (any !== 'word') return null;
  const word = quoted ?? wordOf(text);
  return word === '' ? null : [word, bracketed?.length ?? word.length];
}

const wordOf = (text: string): string => /^[^.[]*/.exec(text)?.[0] ?? '';

/** What is wrong with a place, in the words of a problem. */
export interface Wrong {
  readonly found: string;
  readonly taken: string;
}

/**
 * The place that a text means in a design of this plain value; runs and points go by their names. Else what is wrong with
 * it, and the nearest that there is.
 */
export function readPath(text: string, value: unknown): { readonly path: Path } | Wrong {
  const path: (string | number)[] = [];
  let [rest, at, schemas]: [string, unknown, z.core.$ZodType[]] = [text.trim(), value, [DesignFile]];
  while (rest !== '' || path.length === 0) {
    const known = knownAt(schemas, at);
    const step = stepOf(rest, known);
    if (step === null) return noSuch(rest, path, known);
    path.push(step[0]);
    rest = rest.slice(step[1]).replace(/^\./, '');
    schemas = known.inside(step[0]);
    at = (at as Record<string | number, unknown> | null | undefined)?.[step[0]];
  }
  return { path };
}

function noSuch(rest: string, path: Path, { words, any }: Known): Wrong {
  const place = path.length === 0 ? 'a design' : keyText(path);
  const known = [...words.keys()];
  const word = wordOf(rest) || rest;
  const found = `${place} has no ${quote(word)}`;
  if (known.length === 0)
    return {
      found,
      taken: any === 'number' ? `name a member of this list by its number: ${place}[0]` : 'it is a value',
    };
  const near = nearest(word, known);
  return { found, taken: near === null ? `it has ${listed(known)}` : `did you mean ${quote(near)}?` };
}
