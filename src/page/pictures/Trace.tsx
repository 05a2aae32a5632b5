/** The currents in time over one working cycle, at a point or at any speed of the sweep. */
import { useId, useState } from 'preact/hooks';
import type { View } from '../protocol.ts';
import { useReply } from '../state/use.ts';
import { Chart } from './Chart.tsx';
import { Dated } from './Dated.tsx';

export function Trace({ view }: { readonly view: View }) {
  const { points, sweep } = view.json;
  // A point by its name, a speed by its place in the sweep; the last point stands for one that the design has not.
  const [chosen, choose] = useState<string | number>('');
  const id = useId();
  const point = points.findIndex(({ name }) => name === chosen);
  const speed =
    typeof chosen === 'number' && sweep.length > 0
      ? points.length + Math.min(chosen, sweep.length - 1)
      : point < 0
        ? points.length - 1
        : point;
  const { reply: picture, late } = useReply('trace', { speed }, String(speed));
  const onSweep = speed >= points.length;
  return (
    <>
      <div class="controls">
        <span>
          <label for={`${id}-point`}>Point </label>
          <select
            id={`${id}-point`}
            value={onSweep ? '' : points[speed]?.name}
            onChange={(event) => choose(event.currentTarget.value)}
          >
            {onSweep ? <option value="">a speed of the sweep</option> : null}
            {points.map(({ name, rpm }) => (
              <option key={name} value={name}>
                {name}, {Math.round(rpm ?? 0)} rpm
              </option>
            ))}
          </select>
        </span>
        {sweep.length > 1 ? (
          <span class="grow">
            <label for={`${id}-speed`}>or speed </label>
            <input
              id={`${id}-speed`}
              type="range"
              min={0}
              max={sweep.length - 1}
              value={onSweep ? speed - points.length : nearest(view, speed)}
              aria-valuetext={`${Math.round((onSweep ? sweep[speed - points.length]?.rpm : points[speed]?.rpm) ?? 0)} rpm`}
              onInput={(event) => choose(Number(event.currentTarget.value))}
            />
          </span>
        ) : null}
      </div>
      {picture === null ? (
        <p class="quiet">Being computed …</p>
      ) : 'why' in picture ? (
        <p class="quiet">{picture.why}</p>
      ) : (
        <Dated late={late}>
          <Chart picture={picture} />
        </Dated>
      )}
    </>
  );
}

/** The speed of the sweep next to that of a point. */
function nearest({ json: { points, sweep } }: View, speed: number): number {
  const wanted = points[speed]?.rpm ?? 0;
  const away = (i: number): number => Math.abs((sweep[i]?.rpm ?? 0) - wanted);
  return sweep.reduce((best, _, i) => (away(i) < away(best) ? i : best), 0);
}
