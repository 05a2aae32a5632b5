/** Currents of the first run and spark energy over engine speed; a snapshot's lines beside. */
import { useMemo } from 'preact/hooks';
import type { Picture } from '../../pictures/chart.ts';
import { speedPicture } from '../../pictures/speed.ts';
import type { AtSpeed, SpeedLines } from '../../pictures/speed-lines.ts';
import type { View } from '../protocol.ts';
import { useBenchState, useReply } from '../state/use.ts';
import { Chart } from './Chart.tsx';
import { Dated } from './Dated.tsx';

export function Speed({ view }: { readonly view: View }) {
  const { snapshot } = useBenchState('snapshot');
  const { reply: lines, late } = useReply('speed', null, 'speed');
  const beside = snapshot === view ? null : snapshot;
  const picture = useMemo(
    () => (lines === null || 'why' in lines ? null : pictureOf(lines, beside)),
    [lines, beside],
  );
  if (lines === null) return <p class="quiet">Being computed …</p>;
  if (picture === null) return <p class="quiet">{'why' in lines ? lines.why : ''}</p>;
  return (
    <Dated late={late}>
      <Chart picture={picture} />
    </Dated>
  );
}

function pictureOf(lines: SpeedLines, beside: View | null): Picture {
  const then = beside === null ? null : linesOf(beside, lines);
  return then === null ? speedPicture([lines]) : speedPicture([{ ...lines, name: 'now' }, then]);
}

/** The sweep of a snapshot, at its own supply; what its coils got behind the feed is not kept. */
function linesOf({ json, design }: View, { axes }: SpeedLines): SpeedLines | null {
  const { runs, sweep } = design;
  const speeds = json.sweep.flatMap((at): AtSpeed[] => {
    const { rpm, main_average_A: average, main_rms_A: effective, main_peak_A: peak, energy_J: joules } = at;
    if (rpm === null || average === null || effective === null || peak === null) return [];
    const stiff = joules === null ? null : joules * 1e3;
    return [{ rpm, average, effective, peak, stiff, delivered: null, clipped: false }];
  });
  if (sweep === null || speeds.length === 0) return null;
  const run = runs[0]?.name ?? '';
  return { name: 'snapshot', speeds, run, supply: sweep.supply, fuse: null, ampacity: null, axes };
}
