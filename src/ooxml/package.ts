/** The file as a zip archive, of which the same parts give the same bytes. */
import { strToU8, zipSync } from 'fflate';
import { contentTypes } from './parts.ts';

/**
 * The date of every entry: fields of a calendar, without a time zone, since the format stores them so. Any fixed day
 * would do; noon exists in every zone.
 */
const DAY = new Date(2000, 0, 1, 12, 0, 0);

/** Packs the parts by their paths. */
export function pack(parts: ReadonlyMap<string, string>): Uint8Array {
  const paths = [...parts.keys()].sort();
  // The list of parts comes first, as readers of streams expect it.
  const entries: [string, string][] = [
    ['[Content_Types].xml', contentTypes(paths)],
    ...paths.map((path): [string, string] => [path, parts.get(path) as string]),
  ];
  return zipSync(Object.fromEntries(entries.map(([path, text]) => [path, strToU8(text)])), {
    level: 6,
    mtime: DAY,
  });
}
