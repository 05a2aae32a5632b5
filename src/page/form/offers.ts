/** What may be given at a place as the design stands: the rest would only be refused. */
import type { Path } from '../../design/problems.ts';
import { placeOf, valueAt } from '../place.ts';
import type { Form, Schema } from '../protocol.ts';

/** Parts of which exactly one is given, and what stands above the choice. */
export const ONE_OF: Readonly<Record<string, { readonly title: string; readonly keys: readonly string[] }>> =
  {
    coil: { title: 'How the coil charges is known by', keys: ['inductance', 'test_point', 'peak'] },
    supply: { title: 'The source is known by', keys: ['source_resistance', 'cold_cranking'] },
  };

/** Which of the parts of which one is given stands there; null where there is none, or no such choice. */
export const givenOf = (root: unknown, path: Path): string | null =>
  ONE_OF[placeOf(path)]?.keys.find((key) => valueAt(root, [...path, key]) !== undefined) ?? null;

/** Whether a key that is not there may be added. */
export function mayAdd(form: Form | null, root: unknown, path: Path, key: string, schema: Schema): boolean {
  const side = path[0] === 'original' ? path[1] : path[0];
  if (side === 'return' && /feed runs only/i.test(schema.description ?? '')) return false;
  const place = placeOf(path);
  const given = givenOf(root, path);
  if (given !== null && ONE_OF[place]?.keys.includes(key)) return false;
  if (place === 'ignition' && key === 'coils') return valueAt(root, ['ignition', 'layout']) === 'listed';
  if (place === 'measured') {
    const what = valueAt(root, [...path, 'what']);
    const keys = form?.readings[String(what)];
    return keys === undefined || keys.includes(key);
  }
  return true;
}
