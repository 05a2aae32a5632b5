/** Designs with thin branches, and the currents at which their fuse is slower than the conductor, by a dense scan. */
import { designOf, type Judged, judge } from './feeds.ts';
import { type Dice, dice } from './random.ts';
import {
  ampacityOf,
  type Conductor,
  limitsOf,
  openingOf,
  ratingsOf,
  SERIES,
  sizeOf,
  soundAt,
} from './truth.ts';

/** Currents of the scan, spaced evenly in the logarithm. */
const SCAN = 100_000;
export interface Window {
  from: number;
  to: number;
}

/** Windows between two currents by trying each step. */
function scan(c: Conductor, from: number, fuse: { type: string; rating: number }, low: number, high: number) {
  const found: Window[] = [];
  let open: number | null = null;
  for (let k = 0; k <= SCAN; k++) {
    const amps = low * (high / low) ** (k / SCAN);
    const sound = soundAt(c, from, amps, openingOf(fuse.type, fuse.rating, amps));
    if (!sound && open === null) open = amps;
    if (sound && open !== null) {
      found.push({ from: open, to: amps });
      open = null;
    }
  }
  if (open !== null) found.push({ from: open, to: high });
  return found;
}

const TYPES = ['C', 'E', 'SF30', 'F'];
const INSULATIONS = ['A', 'B', 'C', 'D', 'F', 'G', 'H', 'GPT', 'TXL', 'SGX'];

export function branchDesign(d: Dice): object {
  const series = d.one(['AWG', 'SAE', 'mm2']);
  const sizes = SERIES[series] as readonly string[];
  const type = d.one(TYPES);
  const ratings = ratingsOf(type).filter((rating) => rating >= 15 && rating <= 80);
  const run = (name: string, carries: string, gauge: string) => {
    const insulation = d.one(INSULATIONS);
    return {
      run: name,
      carries,
      gauge,
      insulation,
      length: `${d.spread(0.2, 3)} m`,
      ambient: `${d.between(20, Math.min(110, limitsOf(insulation).rating - 15))} degC`,
      bundle: d.one([1, 1, 2, 3, 6]),
      joints: 2,
    };
  };
  return designOf({
    cylinders: d.one([2, 3, 4]),
    coil: {
      resistance: `${d.spread(0.25, 1)} ohm`,
      inductance: '3 mH',
      driver_drop: '1 V',
      ...(d.chance(0.5) ? { current_limit: `${d.between(8, 25)} A` } : {}),
    },
    supply: { source_resistance: `${d.spread(3, 25)} mohm` },
    sizes: { series },
    feed: [
      {
        ...run('main', 'all', sizes[d.whole(3, 7)] as string),
        fuse: { type, rating: `${d.one(ratings)} A` },
      },
      run('branch', 'each', sizes[d.whole(0, 2)] as string),
    ],
    limits: { joint_resistance: '0.3 mohm' },
  });
}

/** One feed run of a design. */
export interface Case {
  seed: number;
  judged: Judged;
  feed: number;
  model: Window[];
  truth: Window[];
  stuck: number;
  short: Window;
}

/** All feed runs of a design. */
export function examine(seed: number): Case[] {
  const judged = judge(branchDesign(dice(seed)));
  const { e, number } = judged;
  return e.design.runs.map((run, feed): Case => {
    const conductor = {
      ...limitsOf(run.insulation),
      ...sizeOf(run.gauge),
      ambient: run.ambient,
      amps: ampacityOf(run.gauge, run) ?? Number.NaN,
    };
    const fuse = e.design.runs[0]?.fuse;
    if (!fuse || fuse.rating === 'auto') throw new Error('the fuse is stated');
    const low = 1.1 * fuse.rating;
    const high = Math.max(number('start_fault', { run: feed }), low);
    const model = e.grid.axes.window.flatMap((_, window) => {
      const from = e.number('window_from', { feed, window });
      const to = e.number('window_to', { feed, window });
      return from === null || to === null ? [] : [{ from, to }];
    });
    return {
      seed,
      judged,
      feed,
      model,
      truth: scan(
        conductor,
        number('load_T', { run: feed }),
        { type: fuse.type, rating: fuse.rating },
        low,
        high,
      ),
      stuck: number('stuck_current', { run: feed }),
      short: { from: number('end_fault', { run: feed }), to: number('start_fault', { run: feed }) },
    };
  });
}
