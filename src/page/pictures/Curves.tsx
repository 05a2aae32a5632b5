/** Time-current curves: each fuse of the feed, and the conductors behind it. */
import { printNumber } from '../../basis/print.ts';
import type { FuseCurves } from '../../pictures/curve-lines.ts';
import { usePicture } from '../state/use.ts';
import { Chart } from './Chart.tsx';
import type { Band, Limit, Line } from './Legend.tsx';

/** What a chart shows of times [s]: from where a fuse is quickest to about a quarter of an hour. */
const TIMES = { least: 0.01, most: 1000 };

export function Curves() {
  const picture = usePicture('curves', null, 'curves');
  if (picture === null) return <p class="quiet">Being computed …</p>;
  if ('why' in picture) return <p class="quiet">{picture.why}</p>;
  return (
    <>
      {picture.map((curves) => (
        <Fuse key={curves.name} curves={curves} />
      ))}
    </>
  );
}

function Fuse({
  curves: { name, rating, type, gates, conductors, stuck, left },
}: {
  readonly curves: FuseCurves;
}) {
  const most = 1.2 * Math.max(2 * rating, ...conductors.flatMap(({ fault }) => fault));
  const last = gates.at(-1);
  const gateLine = (read: (gate: FuseCurves['gates'][number]) => number) => [
    ...gates.map((gate) => ({ x: gate.current, y: read(gate) })),
    ...(last ? [{ x: most, y: read(last) }] : []),
  ];
  const lines: Line[] = [
    { name: 'fuse, at the latest', points: gateLine((g) => g.slowest), look: 'strong' },
    { name: 'fuse, at the earliest', points: gateLine((g) => g.fastest), look: 'plain' },
    ...conductors.map(
      (conductor): Line => ({
        name: `${conductor.name}, ${conductor.size}`,
        points: conductor.points.map(({ current, time }) => ({ x: current, y: time })),
        look: 'plain',
      }),
    ),
  ];
  const limits: Limit[] =
    stuck === null
      ? []
      : [{ name: `a driver stuck on, ${printNumber(stuck)} A`, value: stuck, upright: true }];
  const bands = conductors.flatMap(({ name: run, windows }) =>
    windows.map(
      ({ from, to, stuck: byDriver, short }): Band => ({
        name: `${run} not protected, ${printNumber(from)} to ${printNumber(to)} A${
          byDriver || short
            ? ` (${[byDriver ? 'a driver stuck on' : '', short ? 'a short' : ''].filter(Boolean).join(', ')} can draw that)`
            : ' (nothing here draws that)'
        }`,
        from,
        to,
      }),
    ),
  );
  return (
    <>
      <Chart
        title={`Fuse of ${name}, ${printNumber(rating, 2)} A type ${type}, and how long its conductors endure`}
        x={{
          label: 'current',
          unit: 'A',
          from: 0.9 * Math.min(rating, stuck ?? rating),
          to: most,
          log: true,
        }}
        y={{ label: 'time', unit: 's', from: TIMES.least, to: TIMES.most, log: true }}
        lines={lines}
        limits={limits}
        bands={bands}
        height={280}
      />
      <ul class="quiet faults">
        {conductors.map(({ name: run, fault: [end, start] }) => (
          <li key={run}>
            A short in {run} draws {printNumber(end)} A at its end to {printNumber(start)} A at its begin.
          </li>
        ))}
        {left.map((run) => (
          <li key={run}>{run} lies behind fuses of different kinds and cannot be compared.</li>
        ))}
      </ul>
    </>
  );
}
