/** Axes and grid of a plot: as many names as there is room for. */
import type { Axis } from './chart.ts';
import { lettered, path, SIZE, stroked } from './elements.ts';
import type { Measure, Pen, Plot } from './look.ts';
import { LEVELS, shareOf, ticksOf, tickTexts } from './read.ts';

/** Height of the name of an axis or of its values, and space before a name [px]. */
export const ROW = 15;
const PAD = 7;
/** Least space between two names along an axis, and least distance of two down one [px]. */
const APART = 12;
const APART_DOWN = 30;

interface Named {
  readonly value: number;
  /** One below the other. */
  readonly texts: readonly string[];
}

/** Names down an axis of a length [px]; none of an axis that has no name itself. */
export const namesDown = (axis: Axis, length: number): Named[] =>
  axis.label === '' ? [] : named(axis, (found) => found.length * APART_DOWN <= length + APART_DOWN);

/** Names along an axis of a length [px]. */
const namesAcross = (axis: Axis, length: number, measure: Measure): Named[] =>
  named(axis, (found) => {
    const widest = Math.max(...found.flatMap(({ texts }) => texts.map((text) => measure(text, SIZE.small))));
    const places = found.map(({ value }) => shareOf(axis, value) * length);
    return places.slice(1).every((place, i) => place - (places[i] as number) >= widest + APART);
  });

/** The most names that fit; the fewest where none do. */
function named(axis: Axis, fits: (found: readonly Named[]) => boolean): Named[] {
  for (let level = LEVELS; ; level--) {
    const values = ticksOf(axis, level);
    const texts = axis.names
      ? values.map((value) => axis.names?.[value] ?? '')
      : tickTexts(values, axis.log).map((text) => (axis.unit === '°' ? `${text}°` : text));
    const { also } = axis;
    const second = also
      ? tickTexts(
          values.map((value) => value * also.per),
          undefined,
          2,
        )
      : [];
    const found = values.map((value, i) => ({
      value,
      texts: [texts, second].flatMap((row) => row.slice(i, i + 1)),
    }));
    if (level === 0 || fits(found)) return found;
  }
}

/** `Drop in V`; nothing is said of a unit where there is none. */
const titleOf = ({ label, unit }: Axis): string => (unit === '' ? label : `${label} in ${unit}`);

/** The lines of the grid, the left axis with its names, and the line of the lower one. */
export function drawGrid(x: Axis, y: Axis, plot: Plot, { theme, measure }: Pen): string {
  const { left, top, width, height, toX, toY } = plot;
  const down = namesDown(y, height);
  const lines = [
    ...namesAcross(x, width, measure).map(({ value }) => path`M${toX(value)} ${top}v${height}`),
    ...down.map(({ value }) => path`M${left} ${toY(value)}h${width}`),
  ];
  const title = titleOf(y);
  return [
    stroked(lines.join(''), theme.grid, 1),
    stroked(path`M${left} ${top}v${height}h${width}`, theme.faint, 1),
    ...down.map(({ value, texts: [text = ''] }) =>
      lettered(text, left - PAD, toY(value) + 4, theme, { color: 'quiet', anchor: 'end' }),
    ),
    lettered(title, SIZE.small, top + height / 2, theme, { color: 'quiet', anchor: 'middle', upward: true }),
  ].join('');
}

/** The names of the lower axis, and the height that they take [px]. */
export function drawAcross(x: Axis, plot: Plot, { theme, measure }: Pen): { svg: string; height: number } {
  const { left, top, width, height, toX } = plot;
  const also = x.also ? `, below it ${x.also.label} in ${x.also.unit}` : '';
  const rows = x.also ? 2 : 1;
  const text = (words: string, at: number, row: number): string =>
    lettered(words, at, top + height + row * ROW, theme, { color: 'quiet', anchor: 'middle' });
  const names = namesAcross(x, width, measure).flatMap(({ value, texts }) =>
    texts.map((words, i) => text(words, toX(value), i + 1)),
  );
  const title = text(`${titleOf(x)}${also}`, left + width / 2, rows + 1.2);
  return { svg: names.join('') + title, height: (rows + 1.5) * ROW };
}
