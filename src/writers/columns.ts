/** Plain text in columns, for the terminal. */

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

/** Rows under titles, two spaces between columns, the whole indented by two. */
export function columns(spec: readonly ColumnSpec[], rows: readonly (readonly string[])[]): string {
  const widths = spec.map((c, i) => Math.max(width(c.title), ...rows.map((row) => width(row[i] ?? ''))));
  const line = (cells: readonly string[]): string =>
    `  ${spec.map((c, i) => pad(cells[i] ?? '', widths[i] as number, c.align === 'right')).join('  ')}`.trimEnd();
  return [line(spec.map((c) => c.title)), ...rows.map(line)].join('\n');
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
