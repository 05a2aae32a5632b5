/**
 * A picture as the command line draws it, by the same program, as wide as its place and in the page's colours. A cursor,
 * moved by pointer or by arrow keys, reads every line.
 */
import { useId, useMemo, useState } from 'preact/hooks';
import { printNumber } from '../../basis/print.ts';
import type { Picture, Stack } from '../../pictures/chart.ts';
import type { Measure, Theme } from '../../pictures/look.ts';
import { type Reading, readingsOf, shareOf, valueBy } from '../../pictures/read.ts';
import { drawStack, type Frame, frameOf } from '../../pictures/svg.ts';
import { useWidth } from './width.ts';

/** The colours of `style.css`, which follow light and dark. */
const THEME: Theme = {
  font: 'inherit',
  paper: 'var(--paper)',
  ink: 'var(--ink)',
  quiet: 'var(--quiet)',
  faint: 'var(--edge)',
  grid: 'var(--line)',
  strong: 'var(--accent)',
  tint: 'var(--tint)',
  danger: 'var(--fail)',
};

/** Steps of the cursor by keyboard over the whole axis. */
const STEPS = 60;
/** Figures of even width, which the page has and a canvas has not, are a little wider. */
const SLACK = 1.03;

let canvas: CanvasRenderingContext2D | null = null;
let family = '';
/** Most texts of a picture stood in the one before, too. */
const widths = new Map<string, number>();
/** Arbitrary: some pictures. */
const MOST_WIDTHS = 5000;
const measure: Measure = (text, size, bold) => {
  const key = `${bold ? 'bold ' : ''}${size}px ${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  canvas ??= document.createElement('canvas').getContext('2d');
  if (canvas === null) return text.length * size * 0.66;
  family ||= getComputedStyle(document.body).fontFamily;
  canvas.font = `${bold ? 'bold ' : ''}${size}px ${family}`;
  const width = canvas.measureText(text).width * SLACK;
  if (widths.size >= MOST_WIDTHS) widths.clear();
  widths.set(key, width);
  return width;
};

export function Chart({ picture }: { readonly picture: Picture }) {
  const [width, box] = useWidth();
  const frame = useMemo(
    () => (width === 0 ? null : frameOf(picture.stacks, width, measure)),
    [picture, width],
  );
  return (
    <section ref={box}>
      <p class="quiet">{picture.subtitle}</p>
      <p class="of">{picture.description}</p>
      {frame === null
        ? null
        : picture.stacks.map((stack, i) => <Plots key={i} stack={stack} frame={frame} width={width} />)}
    </section>
  );
}

interface PlotsProps {
  readonly stack: Stack;
  readonly frame: Frame;
  readonly width: number;
}

function Plots({ stack, frame, width }: PlotsProps) {
  const { title, x } = stack;
  const [cursor, setCursor] = useState<number | null>(null);
  const id = useId();
  const { svg, height, plots } = useMemo(
    () => drawStack(stack, frame, { theme: THEME, measure, id }),
    [stack, frame, id],
  );
  const at = cursor === null ? null : valueBy(x, cursor);
  const readings = readingsOf(stack, at ?? x.from);
  const size = { width, height, viewBox: `0 0 ${width} ${height}` };

  const move = (event: KeyboardEvent): void => {
    const by = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 6, PageDown: -6 }[
      event.key
    ];
    if (by !== undefined) setCursor(clamp((cursor ?? 0.5) + by / STEPS));
    else if (event.key === 'Home') setCursor(0);
    else if (event.key === 'End') setCursor(1);
    else return;
    event.preventDefault();
  };
  const point = (event: PointerEvent): void => {
    const { left } = (event.currentTarget as Element).getBoundingClientRect();
    setCursor(clamp((event.clientX - left - frame.left) / frame.width));
  };

  // Without a line there is nothing to read.
  const read = readings.flat().length > 0;
  const slider = {
    role: 'slider',
    tabIndex: 0,
    'aria-label': `${title}: cursor over ${x.label.toLowerCase()}`,
    'aria-valuemin': x.from,
    'aria-valuemax': x.to,
    'aria-valuenow': at ?? x.from,
    'aria-valuetext': at === null ? 'arrow keys move the cursor' : told(at, x.unit, readings.flat()),
    onKeyDown: move,
    onFocus: () => setCursor((was) => was ?? 0.5),
    onBlur: () => setCursor(null),
    onPointerMove: point,
    onPointerDown: point,
    onPointerLeave: () => setCursor(null),
  } as const;

  return (
    <figure class="chart">
      <div class="plot" {...(read ? slider : { role: 'img', 'aria-label': title })}>
        {/* Every text in it is escaped by `elements.ts`. */}
        <svg {...size} aria-hidden="true" dangerouslySetInnerHTML={{ __html: svg }} />
        {at === null ? null : (
          <svg {...size} class="cursor" aria-hidden="true">
            {plots.map(({ top, height: tall, toX, toY }, i) => (
              <g key={i}>
                <line x1={toX(at)} x2={toX(at)} y1={top} y2={top + tall} />
                {readings[i]?.map(({ name, value }) =>
                  value === null || !inside(stack, i, value) ? null : (
                    <circle key={name} cx={toX(at)} cy={toY(value)} r="3.5" />
                  ),
                )}
              </g>
            ))}
          </svg>
        )}
      </div>
      {read ? (
        <ul class="legend" aria-hidden="true">
          <li class="where">
            {at === null ? 'point at the picture for values' : `at ${printNumber(at)} ${x.unit}`}
          </li>
          {readings.flat().map(({ name, value, unit }) => (
            <li key={name}>
              {name}
              {at === null ? null : ': '}
              {at === null ? null : <b>{printed(value, unit)}</b>}
            </li>
          ))}
        </ul>
      ) : null}
    </figure>
  );
}

const clamp = (value: number): number => Math.min(1, Math.max(0, value));

const inside = ({ panels }: Stack, i: number, value: number): boolean => {
  const panel = panels[i];
  return panel !== undefined && Math.abs(shareOf(panel.y, value) - 0.5) <= 0.5;
};

const printed = (value: number | null, unit: string): string =>
  value === null ? '–' : Number.isFinite(value) ? `${printNumber(value)} ${unit}` : 'never';

const told = (at: number, unit: string, readings: readonly Reading[]): string =>
  [
    `${printNumber(at)} ${unit}`,
    ...readings.map(({ name, value, unit: own }) => `${name}: ${printed(value, own)}`),
  ].join(', ');
