/** The drop from battery positive to the worst coil and back as one bar: run by run, and in each what makes it. */
import { ticks } from 'd3-array';
import { useWidth } from '../pictures/width.ts';
import type { Budget as Spent, View } from '../protocol.ts';
import { useShown } from '../state/use.ts';
import { Origin } from './Origin.tsx';

/** Height of the bar, of the names above it and of the scale below it [px]. */
const BAR = 16;
const NAME = 14;
const SCALE = 24;
/** Marks on the scale, about. */
const MARKS = 5;
const WORDS = {
  conductor: 'conductor',
  joints: 'joints and plugs',
  fuse: 'fuse',
  relay: 'relay contact',
} as const;

export function Budget({ view }: { readonly view: View }) {
  const { budget } = useShown(view);
  const [width, box] = useWidth();
  if (budget.runs.length === 0) return null;
  return (
    <figure class="budget" ref={box}>
      <figcaption>
        Drop from the battery to coil {budget.coil} and back, at {budget.point}:{' '}
        <strong>{budget.text}</strong> of {budget.limitText}
      </figcaption>
      {width === 0 ? null : <Bar budget={budget} width={width} />}
      <ol class="spent">
        {budget.runs.map(({ run, text, share, of }) => (
          <li key={run}>
            {run}{' '}
            <Origin of={of} label={`Drop of ${run} ${text}`}>
              {text}
            </Origin>{' '}
            <span class="quiet">{share}</span>
          </li>
        ))}
      </ol>
      <ul class="kinds">
        {(Object.keys(WORDS) as (keyof typeof WORDS)[])
          .filter((what) => budget.runs.some(({ parts }) => parts.some((part) => part.what === what)))
          .map((what) => (
            <li key={what}>
              <svg width="12" height="12" aria-hidden="true">
                <rect class={`spend ${what}`} x="0.5" y="0.5" width="11" height="11" />
              </svg>{' '}
              {WORDS[what]}
            </li>
          ))}
      </ul>
    </figure>
  );
}

function Bar({ budget: { runs, volts, limit }, width }: { readonly budget: Spent; readonly width: number }) {
  const most = Math.max(volts, limit) * 1.04 || 1;
  const x = (value: number): number => (value / most) * (width - 1);
  let at = 0;
  const pieces = runs.map(({ run, volts: own, parts }) => {
    const from = at;
    at += own;
    let inside = from;
    return {
      run,
      from,
      to: at,
      parts: parts.map(({ what, share }) => {
        const start = inside;
        inside += own * share;
        return { what, from: start, to: inside };
      }),
    };
  });
  const coil = pieces[runs.filter(({ side }) => side === 'feed').length - 1]?.to ?? 0;
  const [top, bottom] = [NAME, NAME + BAR];
  const height = bottom + SCALE;
  return (
    <svg class="bar" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {pieces.map(({ run, from, to, parts }) => (
        <g key={run}>
          {parts.map((part) => (
            <rect
              key={part.what}
              class={`spend ${part.what}`}
              x={x(part.from)}
              y={top}
              width={Math.max(0, x(part.to) - x(part.from))}
              height={BAR}
            />
          ))}
          <path class="mark" d={`M${x(to)} ${top - 4}V${bottom}`} />
          {x(to) - x(from) > 6.5 * run.length ? (
            <text x={(x(from) + x(to)) / 2} y={top - 4} text-anchor="middle">
              {run}
            </text>
          ) : null}
        </g>
      ))}
      <path class="coil" d={`M${x(coil)} ${bottom + 1}l-5 8h10z`} />
      <path class="limit" d={`M${x(limit)} ${top - 6}V${bottom + 5}`} />
      {ticks(0, most, MARKS).map((value) => (
        <g key={value}>
          <path class="tick" d={`M${x(value) + 0.5} ${bottom}v4`} />
          <text
            class="scale"
            x={x(value)}
            y={bottom + 19}
            text-anchor={value === 0 ? 'start' : x(value) > width - 20 ? 'end' : 'middle'}
          >
            {value}
            {value === 0 ? ' V' : ''}
          </text>
        </g>
      ))}
    </svg>
  );
}
