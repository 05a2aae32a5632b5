/** The sheets of a workbook as a person sees them: what stands in the cells, which take something, under which heading. */
import { strFromU8, unzipSync } from 'fflate';
import { type Cells, readCells } from '../../peers/cells.ts';
import type { Shown } from '../../peers/hands.ts';
import { sheetPart } from '../edit.ts';

export interface Spot {
  /** `D17` */
  readonly at: string;
  readonly row: number;
  readonly column: number;
  readonly value: number | string | null;
  /** What stands at the left of the row. */
  readonly label: string;
  /** What stands above the column, in the heading of the table. */
  readonly heading: string;
}

export const letters = (column: number): string =>
  column < 26
    ? String.fromCharCode(65 + column)
    : letters(Math.floor(column / 26) - 1) + letters(column % 26);
export const cellAt = (row: number, column: number): string => `${letters(column)}${row}`;

/** Cells of the sheet of the inputs that are not locked, without those for notes. */
export function inputsOf(bytes: Uint8Array): Spot[] {
  const parts = unzipSync(bytes);
  const xml = (name: string): string => strFromU8(parts[name] as Uint8Array);
  const formats = /<cellXfs[\s\S]*?<\/cellXfs>/.exec(xml('xl/styles.xml'))?.[0] ?? '';
  const open = [...formats.matchAll(/<xf [^>]*?(?:\/>|>[\s\S]*?<\/xf>)/g)].map(([xf]) =>
    /locked="0"/.test(xf),
  );
  const cells: Cells = readCells(bytes);
  const inputs = cells.get('Inputs') ?? new Map();
  const text = (row: number, column: number): string => String(inputs.get(cellAt(row, column))?.value ?? '');
  const notes = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.split('').findIndex((_, c) => text(4, c) === 'Your notes');
  return [...xml(sheetPart(parts, 'Inputs')).matchAll(/<c r="([A-Z]+)(\d+)"(?: s="(\d+)")?/g)].flatMap(
    ([, letter = '', digits = '', style = '0']): Spot[] => {
      if (open[Number(style)] !== true) return [];
      const [row, column] = [
        Number(digits),
        [...letter].reduce((n, c) => n * 26 + c.charCodeAt(0) - 64, 0) - 1,
      ];
      // The heading of a table ends a gap, or the page.
      let top = row;
      while (
        top > 1 &&
        text(top - 1, 0) !== '' &&
        !/^(Your notes?|Check)$/.test(text(top, 7)) &&
        text(top, 8) !== 'Check'
      )
        top--;
      const heading = text(top, column);
      if (column === notes) return [];
      const { value } = inputs.get(`${letter}${row}`) ?? { value: null };
      return [
        { at: `${letter}${row}`, row, column, value: value as Spot['value'], label: text(row, 0), heading },
      ];
    },
  );
}

/** What the first sheet answers. */
export interface Answer {
  /** Null where it gives no verdict. */
  readonly verdict: string | null;
  /** fail, unknown, advice, pass */
  readonly counts: readonly Shown[];
  /** Of each run: size, rating of its fuse, of its relay. */
  readonly runs: readonly (readonly Shown[])[];
  /** [V] */
  readonly drop: Shown;
  /** The line that names what cannot be taken. */
  readonly said: string;
}

/** `first` are the rows of the first sheet, `runs` those of the sheet Runs. */
export function answerOn(first: readonly (readonly Shown[])[], runs: readonly (readonly Shown[])[]): Answer {
  const row = (label: string): number => first.findIndex(([cell]) => cell === label);
  const below = first[row('Verdict') + 1] ?? [];
  const word = String(below[0] ?? '');
  const named = first[row('Drop of the worst coil’s path at the worst point')] ?? [];
  /** Of each run what stands under a heading, in the table that has it beside a word. */
  const column = (title: string): Map<Shown, Shown> => {
    const top = runs.findIndex((cells) => cells[0] === 'Run' && cells.includes(title));
    const at = runs[top]?.indexOf(title) ?? -1;
    const found = new Map<Shown, Shown>();
    // Behind the heading and the line of the units.
    for (let r = top + 2; top >= 0 && runs[r]?.[0] != null; r++)
      found.set(runs[r]?.[0] as Shown, runs[r]?.[at] ?? null);
    return found;
  };
  const [sizes, fuses, relays] = [column('Size'), column('Fuse rating'), column('Relay rating')];
  return {
    verdict: ['PASS', 'FAIL', 'UNKNOWN'].includes(word) ? word : null,
    counts: below.slice(2, 6),
    runs: [...sizes].map(([run, size]) => [size, fuses.get(run) ?? null, relays.get(run) ?? null]),
    drop: named.find((cell) => typeof cell === 'number') ?? null,
    said: String(first[2]?.[0] ?? '') || word,
  };
}
