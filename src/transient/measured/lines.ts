/** The text of a recording as lines and cells: whatever separates them, whatever marks the decimals. */

export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };
export const refused = (why: string): { readonly ok: false; readonly why: string } => ({ ok: false, why });

export interface Line {
  /** From 1. */
  readonly number: number;
  readonly text: string;
}

/**
 * The lines that are not empty, one after the other. A recording has up to a million: neither the whole text nor all of
 * its lines ever stand in memory. A line ends by a line feed, or by a carriage return where there is no line feed.
 */
export function* linesOf(pieces: Iterable<string>): Generator<Line> {
  const end = someHas(pieces, '\n') ? '\n' : '\r';
  let [rest, number] = ['', 1];
  const placed = (text: string): Line => ({
    number,
    text: number === 1 ? text.replace(/^\ufeff/, '') : text,
  });
  for (const piece of pieces) {
    let start = 0;
    for (let at = piece.indexOf(end); at >= 0; at = piece.indexOf(end, start)) {
      const line = rest + piece.slice(start, at);
      if (line.trim() !== '') yield placed(line);
      rest = '';
      start = at + 1;
      number += 1;
    }
    rest += piece.slice(start);
  }
  if (rest.trim() !== '') yield placed(rest);
}

function someHas(pieces: Iterable<string>, sign: string): boolean {
  for (const piece of pieces) if (piece.includes(sign)) return true;
  return false;
}

/** What parts the cells of a line; '' for a single column. */
export type Separator = '\t' | ';' | ',' | '|' | ' ' | '';

/** Cells of a line, without their quotes and the gaps around them. A separator between quotes is none. */
export function cellsOf(text: string, separator: Separator): string[] {
  if (text.includes('"')) return quoted(text, separator).map((cell) => cell.trim());
  return partsOf(text, separator).map((cell) => cell.trim());
}

const partsOf = (text: string, separator: Separator): string[] =>
  separator === '' ? [text] : separator === ' ' ? text.trim().split(/\s+/) : text.split(separator);

/** Cells with quotes: what stands between two of them is kept together. */
function quoted(text: string, separator: Separator): string[] {
  const kept: string[] = [];
  const masked = text.replace(/"([^"]*)"/g, (_, inside: string) => `\ue000${kept.push(inside) - 1}\ue001`);
  return partsOf(masked, separator).map((cell) =>
    cell.replace(/\ue000(\d+)\ue001/g, (_, index) => kept[Number(index)] as string).replaceAll('"', ''),
  );
}

/** One cell of a line; the same as that of `cellsOf`, without the others where that is cheap. */
export function cellOf(text: string, separator: Separator, column: number): string {
  if (separator === ' ' || separator === '' || text.includes('"'))
    return cellsOf(text, separator)[column] ?? '';
  let start = 0;
  for (let i = 0; i < column; i++) {
    start = text.indexOf(separator, start) + 1;
    if (start === 0) return '';
  }
  const end = text.indexOf(separator, start);
  return text.slice(start, end < 0 ? undefined : end).trim();
}

/** `1.5`, `1,5`, `-2e-3`; null for anything else, also for what is not finite. */
export function numberOf(cell: string): number | null {
  if (!/^[-+\u2212]?(\d+[.,]?\d*|[.,]\d+)(e[-+]?\d+)?$/i.test(cell)) return null;
  const value = Number(cell.replace(',', '.').replace('\u2212', '-'));
  return Number.isFinite(value) ? value : null;
}

/** What instruments write where the signal left their range. 9.9e37 is "not a number" of SCPI, IEEE 488.2. */
export const beyond = (cell: string): boolean =>
  /^[-+\u2212]?(∞|inf(inity)?|ol|o\.l\.?|over(flow|range|load)?|9\.9\d*e\+?37)$/i.test(cell);

/** Nothing, or a word for it. */
export const blank = (cell: string): boolean => cell === '' || /^(-+|nan|n\/a|null|none)$/i.test(cell);

/** Time of the day [s], `13:45:02.123456`, also behind a date; null for anything else. */
export function clockOf(cell: string): number | null {
  const [, hours, minutes, seconds, part] =
    /(?:^|[ T])(\d{1,2}):(\d\d):(\d\d)(?:[.,:](\d+))?Z?$/.exec(cell) ?? [];
  return hours === undefined
    ? null
    : Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds) + Number(`0.${part ?? 0}`);
}

/** The separator by which most cells of these lines are numbers; the first of the list where several do alike. */
export function separatorOf(lines: readonly Line[]): Separator {
  const share = (separator: Separator): number => {
    const there = lines.filter(({ text }) => partsOf(text.trim(), separator).length > 1).length;
    if (there < lines.length / 2) return 0;
    const cells = lines.flatMap(({ text }) => cellsOf(text, separator));
    const good = cells.filter(
      (cell) => numberOf(cell) !== null || cell === '' || beyond(cell) || clockOf(cell) !== null,
    );
    return good.length / cells.length;
  };
  const [best = ''] = (['\t', ';', ',', '|', ' '] as const)
    .map((separator) => [separator, share(separator)] as const)
    .reduce<readonly [Separator, number]>((a, b) => (b[1] > a[1] + 0.01 ? b : a), ['', 0.5]);
  return best;
}
