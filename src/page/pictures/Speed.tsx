/** Currents of the first run and spark energy over engine speed; a snapshot's lines beside. */
import type { SpeedLines } from '../../pictures/speed-lines.ts';
import type { View } from '../protocol.ts';
import { useBenchState, usePicture } from '../state/use.ts';
import { Chart } from './Chart.tsx';
import type { Limit, Line } from './Legend.tsx';
import type { Axis } from './scale.ts';

const HEADROOM = 1.08;
/** A limit this many times as high as all currents would press them to the ground: it is left out. */
const FAR = 2.5;

export function Speed({ view }: { readonly view: View }) {
  const { snapshot } = useBenchState();
  const picture = usePicture('speed', null, 'speed');
  if (picture === null) return <p class="quiet">Being computed …</p>;
  if ('why' in picture) return <p class="quiet">{picture.why}</p>;
  const { speeds, run, supply } = picture;
  const rpm = speeds.map((at) => at.rpm);
  const x: Axis = { label: 'engine speed', unit: 'rpm', from: Math.min(...rpm), to: Math.max(...rpm) };
  const lineOf = (read: (at: SpeedLines['speeds'][number]) => number | null) =>
    speeds.flatMap((at) => {
      const y = read(at);
      return y === null ? [] : [{ x: at.rpm, y }];
    });
  const then = snapshot && snapshot !== view ? snapshot.json.sweep : [];
  const before = (read: (at: View['json']['sweep'][number]) => number | null) =>
    then.flatMap((at) => {
      const y = read(at);
      return y === null ? [] : [{ x: at.rpm, y }];
    });
  const currents: Line[] = [
    { name: 'effective', points: lineOf((at) => at.effective), look: 'strong' },
    { name: 'peak', points: lineOf((at) => at.peak), look: 'plain' },
    { name: 'average', points: lineOf((at) => at.average), look: 'plain' },
    { name: 'effective, snapshot', points: before((at) => at.main_rms_A), look: 'plain' },
  ];
  const energies: Line[] = [
    { name: 'delivered, weakest coil', points: lineOf((at) => at.delivered), look: 'strong' },
    { name: 'on a stiff supply', points: lineOf((at) => at.stiff), look: 'plain' },
    {
      name: 'on a stiff supply, snapshot',
      points: before(({ energy_J: joules }) => (joules === null ? null : joules * 1e3)),
      look: 'plain',
    },
  ];
  const highest = topOf(currents);
  const limits = [
    { name: `fuse ${picture.fuse} A`, value: picture.fuse },
    { name: `ampacity ${picture.ampacity?.toFixed(1)} A`, value: picture.ampacity },
  ].flatMap(({ name, value }): Limit[] => (value === null || value > FAR * highest ? [] : [{ name, value }]));
  const most = HEADROOM * Math.max(highest, ...limits.map(({ value }) => value));
  return (
    <>
      <Chart
        title={`Current of run ${run} at ${supply.toFixed(1)} V`}
        x={x}
        y={{ label: 'current', unit: 'A', from: 0, to: most }}
        lines={currents.filter(({ points }) => points.length > 0)}
        limits={limits}
      />
      {energies[0]?.points.length === 0 ? (
        <p class="quiet">Energy is not known without the coil’s inductance.</p>
      ) : (
        <Chart
          title="Spark energy of one coil"
          x={x}
          y={{ label: 'energy', unit: 'mJ', from: 0, to: HEADROOM * topOf(energies) }}
          lines={energies.filter(({ points }) => points.length > 0)}
        />
      )}
    </>
  );
}

const topOf = (lines: readonly Line[]): number =>
  Math.max(1e-3, ...lines.flatMap(({ points }) => points.map(({ y }) => y)));
