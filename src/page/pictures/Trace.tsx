/** The currents in time over one working cycle, at a point or at any speed of the sweep. */
import { useId, useState } from 'preact/hooks';
import type { View } from '../protocol.ts';
import { usePicture } from '../state/use.ts';
import { Chart } from './Chart.tsx';
import type { Line } from './Legend.tsx';
import type { Axis } from './scale.ts';

const HEADROOM = 1.08;

export function Trace({ view }: { readonly view: View }) {
  const { points, sweep } = view.json;
  const [chosen, choose] = useState(points.length - 1);
  const id = useId();
  // The design may have lost points or speeds since the choice.
  const speed = Math.min(chosen, points.length + sweep.length - 1);
  const picture = usePicture('trace', { speed }, String(speed));
  const onSweep = speed >= points.length;
  return (
    <>
      <div class="controls">
        <span>
          <label for={`${id}-point`}>Point </label>
          <select
            id={`${id}-point`}
            value={onSweep ? '' : speed}
            onChange={(event) => choose(Number(event.currentTarget.value))}
          >
            {onSweep ? <option value="">a speed of the sweep</option> : null}
            {points.map(({ name, rpm }, i) => (
              <option key={name} value={i}>
                {name}, {Math.round(rpm)} rpm
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
              onInput={(event) => choose(points.length + Number(event.currentTarget.value))}
            />
          </span>
        ) : null}
      </div>
      {picture === null ? (
        <p class="quiet">Being computed …</p>
      ) : 'why' in picture ? (
        <p class="quiet">{picture.why}</p>
      ) : (
        <Lines picture={picture} />
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

type Picture = Exclude<ReturnType<typeof usePicture<'trace'>>, null | { why: string }>;

function Lines({
  picture: { rpm, supply, dwell, cycleAngle, coils, shared, worst },
}: {
  readonly picture: Picture;
}) {
  const x: Axis = { label: 'crank angle', unit: '°', from: 0, to: cycleAngle, steps: [30, 90, 180, 360] };
  const first = coils.find(({ coil }) => coil === worst);
  const others = coils.filter(({ coil }) => coil !== worst);
  const quiet = (name: string, pick: (coil: (typeof coils)[number]) => Line['points']): Line[] =>
    others.map((one) => ({ name: `${name} ${one.id}`, points: pick(one), look: 'quiet' }));
  const currents: Line[] = [
    ...shared.map(({ name, points }): Line => ({ name, points, look: 'plain' })),
    { name: `coil ${first?.id}, the lowest supply`, points: first?.current ?? [], look: 'strong' },
    ...quiet('coil', (coil) => coil.current),
  ];
  const supplies: Line[] = [
    { name: `at coil ${first?.id}`, points: first?.supply ?? [], look: 'strong' },
    ...quiet('at coil', (coil) => coil.supply),
  ];
  const lowest = Math.min(supply, ...supplies.flatMap(({ points }) => points.map(({ y }) => y)));
  const room = Math.max(0.05, supply - lowest) * 0.12;
  return (
    <>
      <p class="quiet">
        {Math.round(rpm)} rpm, {supply.toFixed(1)} V at the battery, dwell {(dwell * 1e3).toFixed(2)} ms. The
        other coils stand behind in thin lines.
      </p>
      <Chart
        title="Currents over one working cycle"
        x={x}
        y={{ label: 'current', unit: 'A', from: 0, to: HEADROOM * topOf(currents) }}
        lines={currents}
      />
      <Chart
        title="Supply at the coils"
        x={x}
        y={{ label: 'supply', unit: 'V', from: lowest - room, to: supply + room }}
        lines={supplies}
        limits={[{ name: `battery posts ${supply.toFixed(2)} V`, value: supply }]}
        height={190}
      />
    </>
  );
}

const topOf = (lines: readonly Line[]): number =>
  Math.max(1, ...lines.flatMap(({ points }) => points.map(({ y }) => y)));
