/** Plain text in columns, for the terminal. */
import type { Head } from '../views/table.ts';

/** Columns of a terminal that are counted on. */
export const WIDTH = 80;

export interface ColumnSpec {
  readonly title: string;
  readonly align?: 'left' | 'right';
}

/** Width on screen; combining marks and the like do not occur in what is printed here. */
const width = (text: string): number => [...text].length;
const pad = (text: string, to: number, right: boolean): string => {
  const gap = ' '.repeat(Math.max(0, to - width(text)));
  return right ? gap + text : text + gap;
};
const GAP = 2;

/** Rows under titles, two spaces between columns, the whole indented by two. Titles of several lines stand at the bottom. */
export function columns(spec: readonly ColumnSpec[], rows: readonly (readonly string[])[]): string {
  const titles = spec.map((c) => c.title.split('\n'));
  const tall = Math.max(...titles.map((lines) => lines.length));
  const heads = Array.from({ length: tall }, (_, line) =>
    titles.map((lines) => lines[line - tall + lines.length] ?? ''),
  );
  const all = [...heads, ...rows];
  const widths = spec.map((_, i) => Math.max(...all.map((row) => width(row[i] ?? ''))));
  return all
    .map((cells) =>
      `  ${spec.map((c, i) => pad(cells[i] ?? '', widths[i] as number, c.align === 'right')).join('  ')}`.trimEnd(),
    )
    .join('\n');
}

/** Rows whose first cell goes on below, indented, where the table would be too wide. */
export function fitted(spec: readonly ColumnSpec[], rows: readonly (readonly string[])[]): string[][] {
  const widths = spec.map(({ title }, i) =>
    Math.max(width(title), ...rows.map((row) => width(row[i] ?? ''))),
  );
  const room = WIDTH - widths.slice(1).reduce((sum, own) => sum + GAP + own, GAP);
  return rows.flatMap(([first = '', ...others]) => {
    const [mark, text] = [first.slice(0, GAP), first.slice(GAP)];
    const lines = fold(text, room, '  ').split('\n');
    return lines.map((line, i) => (i === 0 ? [mark + line.slice(GAP), ...others] : [`  ${line}`]));
  });
}

/** As wide as a title may run before it is broken, where there is room for it. */
const TITLE = 12;

/** What stands in columns: a table of a view, or of its like. */
interface Columns {
  readonly heads: readonly Pick<Head, 'label' | 'unit' | 'words'>[];
  readonly rows: readonly (readonly string[])[];
}

/** A table; what is too wide goes on below, or is left out when the table is to be `short`. */
export function tableText({ heads, rows }: Columns, short = false): string {
  /** Widths of the columns when a title may run on to `title`. */
  const widthsAt = (title: number): number[] =>
    heads.map(({ label, unit }, i) => {
      const cells = rows.map((row) => width(row[i] ?? ''));
      const folded = fold(label, title, '').split('\n').map(width);
      return Math.max(...cells, ...folded, width(unit));
    });
  const sum = (widths: readonly number[], of: readonly number[]): number =>
    of.reduce((all, i) => all + (widths[i] as number) + GAP, 0);
  const least = widthsAt(1);
  const count = heads.findIndex(({ words }) => !words);
  const fixed = heads.map((_, i) => i).slice(0, Math.max(1, count));
  const blocks: number[][] = [];
  for (let i = fixed.length; i < heads.length; i++) {
    const block = blocks.at(-1);
    if (block === undefined || sum(least, [...fixed, ...block, i]) > WIDTH) blocks.push([i]);
    else block.push(i);
  }
  return (short ? blocks.slice(0, 1) : blocks)
    .map((block) => {
      const shown = [...fixed, ...block];
      let title = TITLE;
      while (title > 1 && sum(widthsAt(title), shown) > WIDTH) title -= 1;
      return columns(
        shown.map((at) => {
          const { label, unit, words } = heads[at] as Columns['heads'][number];
          const lines = fold(label, title, '');
          return { title: unit === '' ? lines : `${lines}\n${unit}`, align: words ? 'left' : 'right' };
        }),
        rows.map((row) => shown.map((at) => row[at] ?? '')),
      );
    })
    .join('\n\n');
}

/** Text broken at spaces to at most `limit` columns, every line behind `indent`. */
export function fold(text: string, limit: number, indent: string): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && width(line) + 1 + width(word) > limit - width(indent)) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].map((l) => indent + l).join('\n');
}

/** A line of a list, behind a dash. */
export const bullet = (text: string): string => fold(text, WIDTH, '    ').replace('    ', '  - ');
