/**
 * NEC (NFPA 70) 310.15: ambient correction factors on a 40 °C base. Check values for I′ = I·sqrt((TR−T′a)/(TR−Ta)).
 */
import { cite } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const NEC_AMBIENT = table({
  title: 'Ambient correction factors, 40 °C base',
  source: cite('NEC', 'quoted', '310.15'),
  key: ['rating', 'ambient'],
  columns: {
    rating: { unit: 'degC', label: 'Insulation rating' },
    ambient: { unit: 'degC', label: 'Ambient temperature' },
    factor: { unit: '1', label: 'Factor' },
  },
  rows: [
    [60, 50, 0.71],
    [60, 55, 0.5],
    [90, 50, 0.89],
    [90, 60, 0.77],
    [150, 100, 0.67],
    [150, 120, 0.52],
    [200, 100, 0.79],
    [250, 100, 0.85],
    [250, 180, 0.58],
  ],
  check: { rows: 9, sums: { rating: 1300, ambient: 815, factor: 6.28 } },
});
