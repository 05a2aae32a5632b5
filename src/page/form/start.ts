/** What a part of the design begins with when a person adds it: parts that pass the reader. */
import type { Plain } from '../../saved/document.ts';

const SUPPLY = '14 V';

/** By the place of the part, without numbers: `feed.fuse`. A run of the return is like one of the feed. */
const STARTS: Readonly<Record<string, (count: number) => Plain>> = {
  supply: () => ({ source_resistance: '8 mohm' }),
  points: (count) => ({ name: `point ${count + 1}`, rpm: '3000 rpm', supply: SUPPLY }),
  sweep: () => ({ from: '1000 rpm', to: '7000 rpm', step: '500 rpm', supply: SUPPLY }),
  sizes: () => ({ series: 'AWG' }),
  limits: () => ({ drop: '0.5 V' }),
  'coil.test_point': () => ({ supply: '13.5 V', dwell: '3.0 ms', peak: '10 A' }),
  'ignition.coils': (count) => ({ id: `coil ${count + 1}`, fires_at: [0] }),
  'ignition.dwell': (count) => ({ supply: `${8 + 2 * count} V`, dwell: '3.0 ms' }),
  run: (count) => ({
    run: `run ${count + 1}`,
    carries: 'all',
    length: '1.0 m',
    ambient: '60 degC',
    insulation: 'C',
    gauge: 'auto',
  }),
  'run.fuse': () => ({ type: 'C', rating: 'auto' }),
  'run.relay': () => ({ rating: 'auto' }),
};

/** `count` is how many there are already. Null for a part that begins empty. */
export function startOf(path: readonly (string | number)[], count: number): Plain {
  const place = path.filter((step) => typeof step === 'string').map(String);
  const side = place[0];
  if (side === 'feed' || side === 'return') place[0] = 'run';
  const start = STARTS[place.join('.')]?.(count) ?? {};
  // On the way out what has divided does not join again.
  return side === 'feed' && place.length === 1 && count > 0
    ? { ...(start as object), carries: 'each' }
    : start;
}
