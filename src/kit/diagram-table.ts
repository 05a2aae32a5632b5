/** The table of wires on the diagram, where it leaves room for one: in columns of rows, beside the drawing or below it. In mm. */
import type { Evaluation } from '../engine/evaluate.ts';
import { BOLD, FONT } from './diagram-graph.ts';
import { leftText, line } from './diagram-symbols.ts';
import { endName } from './labels.ts';
import { onPaper } from './lengths.ts';
import type { Harness } from './places.ts';
import { printedSize } from './terminals.ts';
import { textWidth } from './text-size.ts';

const ROW = 3.9;
/** Between columns, and between blocks. */
const [SPACE, BLOCK] = [1.5, 6];
const MOST_BLOCKS = 3;

interface Size {
  readonly width: number;
  readonly height: number;
}

/** A free place on the page. */
export interface Free extends Size {
  readonly x: number;
  readonly y: number;
}

export interface WireTable extends Free {
  draw(x: number, y: number): string;
}

/** Between the drawing and the table. */
const GUTTER = 4;

const HEAD = ['Wire', 'From – to', 'Size', 'Insul.', 'Colour', 'Length'];

export const wireRows = ({ pieces }: Harness, e: Evaluation): string[][] =>
  pieces.map(({ id, from, to, gauge, insulation, colour, length }) => [
    id,
    `${endName(from)} – ${endName(to)}`,
    printedSize(gauge),
    insulation ?? '____',
    colour ?? '____',
    length === null ? '____' : onPaper(length, 'piece', e.design.kit.units),
  ]);

/** In the first of the places that has room for it; null where none has. */
export function wireTable(rows: readonly string[][], places: readonly Free[]): WireTable | null {
  const columns = HEAD.map((head, i) =>
    Math.max(
      textWidth(head) * FONT * BOLD,
      ...rows.map((row) => textWidth(row[i] as string) * FONT * (i === 0 ? BOLD : 1)),
    ),
  );
  const width = columns.reduce((sum, one) => sum + one + SPACE, 0);
  for (const place of places)
    for (let blocks = 1; blocks <= MOST_BLOCKS; blocks++) {
      const each = Math.ceil(rows.length / blocks);
      const whole = { width: blocks * width + (blocks - 1) * BLOCK, height: (each + 1) * ROW + 1 };
      if (whole.width + GUTTER > place.width || whole.height + GUTTER > place.height) continue;
      return {
        ...whole,
        x: place.x + GUTTER,
        y: place.y + GUTTER,
        draw: (x, y) => block(rows, columns, each, width, x, y),
      };
    }
  return null;
}

function block(
  rows: readonly string[][],
  columns: readonly number[],
  each: number,
  width: number,
  x: number,
  y: number,
): string {
  const parts: string[] = [];
  for (let from = 0, left = x; from < rows.length; from += each, left += width + BLOCK) {
    const own = [HEAD, ...rows.slice(from, from + each)];
    own.forEach((row, i) => {
      let at = left;
      row.forEach((cell, n) => {
        parts.push(leftText([cell], at, y + i * ROW, i === 0 || n === 0));
        at += (columns[n] as number) + SPACE;
      });
      if (i < own.length)
        parts.push(
          line(left, y + (i + 1) * ROW - 0.1, left + width - SPACE, y + (i + 1) * ROW - 0.1, ' class="thin"'),
        );
    });
  }
  return parts.join('');
}
