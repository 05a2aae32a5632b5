/** The first feed run over engine speed: what the main conductor, its fuse and its relay see. */
import type { Quantities } from '../basis/quantity.ts';
import { PHYSICS } from '../basis/sources.ts';

export const sweep = {
  in_main: {
    kind: 'structure',
    symbol: 'a₁',
    label: 'Carried by the first conductor of the feed (1) or not (0)',
    unit: '1',
    per: ['event'],
    value: (at, layout) => (layout.wires[0]?.coils.includes(layout.events[at.event]?.coil ?? -1) ? 1 : 0),
  },
  main_meetings: {
    kind: 'formula',
    symbol: 'N₁',
    label: 'Firings in the first conductor that follow this one after the interval',
    unit: '1',
    per: ['event'],
    across: 'lag',
    formula: 'SUMPRODUCT(MMULT((interval_no[event2]=interval_row)*1, in_main[event]))',
  },
  main_pairs: {
    kind: 'formula',
    symbol: 'N₁',
    label: 'Pairs of firings in the first conductor at this interval',
    unit: '1',
    per: ['lag'],
    formula: 'SUMPRODUCT(main_meetings[event], in_main[event])',
  },
  main_average: {
    kind: 'formula',
    symbol: 'I_avg',
    label: 'Average current of the first conductor',
    unit: 'A',
    per: ['speed'],
    formula: 'SUM(in_main[event])*charge/cycle_time',
  },
  main_effective: {
    kind: 'formula',
    symbol: 'I_eff',
    label: 'Effective current of the first conductor (RMS)',
    unit: 'A',
    per: ['speed'],
    formula: 'SQRT(SUMPRODUCT(interval_weight[lag], main_pairs[lag], product[lag])/cycle_time)',
    source: PHYSICS,
  },
  main_peak: {
    kind: 'formula',
    symbol: 'I_max',
    label: 'Peak current of the first conductor',
    unit: 'A',
    per: ['speed'],
    formula: 'SUMPRODUCT(MAX(MMULT(main_meetings[event,lag], flowing[lag])*in_main[event]))',
  },
} as const satisfies Quantities;
