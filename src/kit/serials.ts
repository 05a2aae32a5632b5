/** Serial numbers: `A001-A025`, `A001,A007`, or both. */

/** Pages of one build record: more is a slip of the keys. */
const MOST = 1000;
const LONGEST = 40;

export type Serials =
  | { readonly ok: true; readonly serials: string[] }
  | { readonly ok: false; readonly why: string };

/** Letters and digits on both sides of one hyphen: nobody means a single number by it. */
const TWO_SERIES = /^\p{L}*\d+-\p{L}*\d+$/u;

const wrong = (why: string): Serials => ({ ok: false, why });

/** Reads a list of serial numbers and ranges. A range counts the digits at the end of both, as many as the first has. */
export function readSerials(text: string): Serials {
  const serials: string[] = [];
  for (const item of text.split(',').map((part) => part.trim())) {
    const range = rangeOf(item);
    if (range === null) {
      if (TWO_SERIES.test(item))
        return wrong(`"${item.slice(0, LONGEST)}" looks like a range, but its ends have different letters`);
      if (!/^[\p{L}\p{N}][\p{L}\p{N} ._/-]*$/u.test(item) || item.length > LONGEST)
        return wrong(
          `"${item.slice(0, LONGEST)}" is not a serial number; allowed: letters, digits and . _ / -, at most ${LONGEST}`,
        );
      serials.push(item);
    } else {
      const { prefix, first, last } = range;
      const [from, to] = [Number(first), Number(last)];
      if (to < from) return wrong(`"${item}" goes backward`);
      if (to - from >= MOST) return wrong(`"${item}" is more than ${MOST} numbers`);
      for (let n = from; n <= to; n++) serials.push(prefix + String(n).padStart(first.length, '0'));
    }
    if (serials.length > MOST) return wrong(`more than ${MOST} numbers`);
  }
  const twice = serials.find((serial, i) => serials.indexOf(serial) !== i);
  return twice === undefined ? { ok: true, serials } : wrong(`${twice} is listed twice`);
}

/** A batch beyond this is a slip of the keys. */
const LARGEST_BATCH = 10_000;

export type Batch =
  | { readonly ok: true; readonly batch: number }
  | { readonly ok: false; readonly why: string };

/** Kits made at a time; where nothing is said as many as there are serial numbers. */
export function readBatch(text: string | undefined, serials: number): Batch {
  if (text === undefined) return { ok: true, batch: Math.max(1, serials) };
  const batch = /^\d{1,6}$/.test(text.trim()) ? Number(text) : 0;
  if (batch < 1 || batch > LARGEST_BATCH)
    return { ok: false, why: `takes a whole number, 1 to ${LARGEST_BATCH}, not "${text}"` };
  return serials === 0 || serials === batch
    ? { ok: true, batch }
    : { ok: false, why: `says ${batch} kits beside ${serials} serial numbers; they must agree` };
}

/** A range has the same text before the digits on both sides of a hyphen; serial numbers may hold hyphens as well. */
function rangeOf(item: string): { prefix: string; first: string; last: string } | null {
  for (let at = item.indexOf('-'); at >= 0; at = item.indexOf('-', at + 1)) {
    const [, prefix = '', first] = /^(.*?)(\d{1,9})$/.exec(item.slice(0, at)) ?? [];
    const [, other = '', last] = /^(.*?)(\d{1,9})$/.exec(item.slice(at + 1)) ?? [];
    if (first !== undefined && last !== undefined && prefix === other) return { prefix, first, last };
  }
  return null;
}
