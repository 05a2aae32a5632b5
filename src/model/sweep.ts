/** The first feed run over engine speed: what the main conductor, its fuse and its relay see. */
import type { Quantities } from '../basis/quantity.ts';
import { DEFINITION, PHYSICS } from '../basis/sources.ts';

export const sweep = {
  in_main: {
    symbol: 'a₁',
    label: 'Carried by the first conductor of the feed (1) or not (0)',
    unit: '1',
    per: ['event'],
    value: (at, layout) => (layout.wires[0]?.coils.includes(layout.events[at.event]?.coil ?? -1) ? 1 : 0),
  },
  main_meetings: {
    symbol: 'N₁,m',
    label: 'Firings in the first conductor that follow this one after the interval',
    unit: '1',
    per: ['lag'],
    across: 'event',
    formula: 'SUMPRODUCT(MMULT((interval_no[event2]=interval_row)*1, in_main[event]))',
    source: DEFINITION,
  },
  main_pairs: {
    symbol: 'N₁',
    label: 'Times that the overlap at this interval counts in the first conductor',
    unit: '1',
    per: ['lag'],
    formula: 'interval_weight*SUMPRODUCT(MMULT(main_meetings[event], in_main[event]))',
    source: DEFINITION,
  },
  main_average: {
    symbol: 'I_avg',
    short: 'Average current',
    label: 'Average current of the first conductor',
    unit: 'A',
    per: ['speed'],
    formula: 'SUM(in_main[event])*charge/cycle_time',
    source: PHYSICS,
  },
  main_effective: {
    symbol: 'I_eff',
    short: 'Effective current',
    label: 'Effective current of the first conductor (RMS)',
    unit: 'A',
    per: ['speed'],
    formula: 'SQRT(SUMPRODUCT(MMULT(product[lag], main_pairs[lag]))/cycle_time)',
    source: PHYSICS,
  },
  main_peak: {
    symbol: 'I_max',
    short: 'Peak current',
    label: 'Peak current of the first conductor',
    unit: 'A',
    per: ['speed'],
    formula: 'MAX(MMULT(flowing[lag], main_meetings[lag,event]))',
    source: PHYSICS,
  },
} as const satisfies Quantities;
