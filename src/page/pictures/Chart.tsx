/**
 * Lines over an axis. It is as wide as its place, so that letters keep their size on a phone; lines are told apart by
 * their dashes; a cursor, moved by pointer or by arrow keys, gives the values.
 */
import { useId, useState } from 'preact/hooks';
import { printNumber } from '../../basis/print.ts';
import { type Band, dash, Legend, type Limit, type Line, printed } from './Legend.tsx';
import { type Axis, type Point, shareOf, ticksOf, valueAt, valueBy } from './scale.ts';
import { useWidth } from './width.ts';

interface ChartProps {
  readonly title: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly lines: readonly Line[];
  readonly limits?: readonly Limit[];
  readonly bands?: readonly Band[];
  readonly height?: number;
}

/** Room around the plot [px]. */
const ROOM = { left: 52, right: 12, top: 8, bottom: 40 };
/** Steps of the cursor by keyboard over the whole axis. */
const STEPS = 60;

export function Chart({ title, x, y, lines, limits = [], bands = [], height = 230 }: ChartProps) {
  const [width, box] = useWidth();
  const [cursor, setCursor] = useState<number | null>(null);
  const id = useId();
  const plot = {
    width: Math.max(10, width - ROOM.left - ROOM.right),
    height: height - ROOM.top - ROOM.bottom,
  };
  const px = (value: number): number => ROOM.left + clamp(shareOf(x, value)) * plot.width;
  const py = (value: number): number =>
    ROOM.top + (1 - (Number.isFinite(value) ? clamp(shareOf(y, value), -0.02, 1.02) : 1.02)) * plot.height;
  const named = lines.filter(({ look }) => look !== 'quiet');
  const at = cursor === null ? null : valueBy(x, cursor);
  const plain = named.filter(({ look }) => look === 'plain');
  const readings = named.map((line) => ({
    line,
    // The line to look at is a plain one, the others have dashes.
    dash: dash(plain.indexOf(line) + 1),
    value: at === null ? null : valueAt(line.points, at, x.log),
  }));
  const words =
    at === null
      ? 'arrow keys move the cursor'
      : [
          `${printNumber(at)} ${x.unit}`,
          ...readings.map(({ line, value }) => `${line.name} ${printed(value, y.unit)}`),
        ].join(', ');

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
    const left = (event.currentTarget as Element).getBoundingClientRect().left;
    setCursor(clamp((event.clientX - left - ROOM.left) / plot.width));
  };

  return (
    <figure class="chart" ref={box}>
      <figcaption>{title}</figcaption>
      <div
        class="plot"
        role="slider"
        tabIndex={0}
        aria-label={`${title}: cursor over ${x.label}`}
        aria-valuemin={x.from}
        aria-valuemax={x.to}
        aria-valuenow={at ?? x.from}
        aria-valuetext={words}
        onKeyDown={move}
        onFocus={() => setCursor((was) => was ?? 0.5)}
        onBlur={() => setCursor(null)}
        onPointerMove={point}
        onPointerDown={point}
        onPointerLeave={() => setCursor(null)}
      >
        <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
          <clipPath id={id}>
            <rect x={ROOM.left} y={ROOM.top} width={plot.width} height={plot.height} />
          </clipPath>
          <pattern
            id={`${id}-hatch`}
            width="6"
            height="6"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line class="hatch" x1="0" y1="0" x2="0" y2="6" />
          </pattern>
          {ticksOf(y, 6).map((tick) => (
            <g key={tick}>
              <line class="grid" x1={ROOM.left} x2={ROOM.left + plot.width} y1={py(tick)} y2={py(tick)} />
              <text class="tick" x={ROOM.left - 6} y={py(tick) + 4} text-anchor="end">
                {tickText(tick)}
              </text>
            </g>
          ))}
          {ticksOf(x, Math.max(2, Math.floor(plot.width / 70))).map((tick) => (
            <g key={tick}>
              <line class="grid" y1={ROOM.top} y2={ROOM.top + plot.height} x1={px(tick)} x2={px(tick)} />
              <text class="tick" x={px(tick)} y={ROOM.top + plot.height + 15} text-anchor="middle">
                {tickText(tick)}
              </text>
            </g>
          ))}
          <text class="axis" x={ROOM.left + plot.width} y={height - 6} text-anchor="end">
            {x.label} in {x.unit}
          </text>
          <text
            class="axis"
            x={-(ROOM.top + plot.height / 2)}
            y={12}
            text-anchor="middle"
            transform="rotate(-90)"
          >
            {y.label} in {y.unit}
          </text>
          <g clip-path={`url(#${id})`}>
            {bands.map(({ name, from, to }) => (
              <rect
                key={name}
                x={px(from)}
                y={ROOM.top}
                width={Math.max(1, px(to) - px(from))}
                height={plot.height}
                fill={`url(#${id}-hatch)`}
              />
            ))}
            {limits.map(({ name, value, upright }) =>
              upright ? (
                <line
                  key={name}
                  class="limit"
                  x1={px(value)}
                  x2={px(value)}
                  y1={ROOM.top}
                  y2={ROOM.top + plot.height}
                />
              ) : (
                <line
                  key={name}
                  class="limit"
                  x1={ROOM.left}
                  x2={ROOM.left + plot.width}
                  y1={py(value)}
                  y2={py(value)}
                />
              ),
            )}
            {[...lines].sort(byLook).map((line) => (
              <path
                key={line.name}
                class={`line ${line.look}`}
                d={pathOf(line.points, px, py)}
                stroke-dasharray={readings.find((reading) => reading.line === line)?.dash ?? ''}
              />
            ))}
          </g>
          {at === null ? null : (
            <g class="cursor">
              <line x1={px(at)} x2={px(at)} y1={ROOM.top} y2={ROOM.top + plot.height} />
              {readings.map(({ line, value }) =>
                value === null || !Number.isFinite(value) ? null : (
                  <circle key={line.name} cx={px(at)} cy={py(value)} r="3" />
                ),
              )}
            </g>
          )}
        </svg>
      </div>
      <Legend at={at} x={x} y={y} readings={readings} limits={limits} bands={bands} hatch={`${id}-hatch`} />
    </figure>
  );
}

const clamp = (value: number, least = 0, most = 1): number => Math.min(most, Math.max(least, value));

const tickText = (tick: number): string =>
  Math.abs(tick) >= 1e5 || (tick !== 0 && Math.abs(tick) < 1e-3)
    ? `10${superscript(Math.round(Math.log10(Math.abs(tick))))}`
    : String(tick).replace('-', '−');

const superscript = (power: number): string =>
  [...String(power)].map((sign) => (sign === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(sign)])).join('');

/** Quiet lines behind, the strong one on top. */
const ORDER = { quiet: 0, plain: 1, strong: 2 };
const byLook = (a: Line, b: Line): number => ORDER[a.look] - ORDER[b.look];

const pathOf = (points: readonly Point[], px: (v: number) => number, py: (v: number) => number): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${px(x).toFixed(1)} ${py(y).toFixed(1)}`).join('');
