/** The reference page of how far each value may go. */
import * as z from 'zod';
import { unitsTaken } from '../basis/read-value.ts';
import { RANGED } from '../design/fields.ts';
import { alternatives } from '../design/issues.ts';
import { RANGES, type Range } from '../design/ranges.ts';
import { DesignFile } from '../design/schema.ts';
import { ShopFile } from '../design/shop/schema.ts';
import { code, grid, MADE } from './markdown.ts';

const HEAD = `# Ranges of the values

What the reader of a design takes, and the workbook in its entries. A range catches slips and keeps the arithmetic
away from values that no part has; whether a value is sound is told by the [findings](findings.md). The spellings of the
units are in [format.md](format.md#values-and-units).`;

/** What stands before the keys of a shop's file. */
const SHOP = 'shop.yaml: ';

/** Keys of the design, and of a shop's file, by what their range is of, in the order of the format. */
export function keysByRange(): Map<string, string[]> {
  const keys = new Map<string, string[]>();
  const walk = (schema: z.core.$ZodType, path: string): void => {
    const range = RANGED.get(schema);
    if (range) {
      const known = keys.get(range.of) ?? [];
      if (!known.includes(path)) keys.set(range.of, [...known, path]);
      return;
    }
    for (const one of alternatives(schema)) {
      if (one !== schema) walk(one, path);
      else if (one instanceof z.ZodObject)
        for (const [key, inner] of Object.entries(one.shape))
          walk(inner as z.core.$ZodType, path === '' || path === SHOP ? path + key : `${path}.${key}`);
      else if (one instanceof z.ZodArray) walk(one.element, `${path}[]`);
      else if (one instanceof z.ZodRecord) walk(one.valueType, path);
      else if (one instanceof z.ZodPipe) walk(one.in, path);
    }
  };
  walk(DesignFile, '');
  walk(ShopFile, SHOP);
  return keys;
}

/** Text of `docs/ranges.md`. */
export function rangesPage(): string {
  const keys = keysByRange();
  const rows = Object.values(RANGES).map((range: Range) => [
    range.of,
    range.text,
    range.unit === '1' ? '' : unitsTaken(range.unit).join(', '),
    range.why,
    // The other feed has the keys of the first, and a part of the shop those of the design.
    (keys.get(range.of) ?? [])
      .filter(
        (key, _, keys) =>
          !key.startsWith('original.') && (!key.startsWith(SHOP) || keys[0]?.startsWith(SHOP)),
      )
      .map(code)
      .join(', '),
  ]);
  return `${MADE}\n\n${HEAD}\n\n${grid(['what', 'allowed', 'units', 'why', 'keys'], rows)}\n`;
}
