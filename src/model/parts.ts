/** Which part of the shop’s file a design uses: in a workbook their values follow these names. */
import type { Quantities } from '../basis/quantity.ts';

export const parts = {
  coil_part: {
    symbol: 'coil',
    label: 'Coil of the shop’s file',
    unit: 'text',
    path: 'coil.use',
    note: 'What is not typed over follows it.',
  },
  fuse_part: {
    symbol: 'fuse_s',
    label: 'Fuse: which one of the shop’s file',
    unit: 'text',
    per: ['run'],
    path: 'runs.{run}.fuse.use',
    note: 'What is not typed over follows it.',
  },
  relay_part: {
    symbol: 'relay_s',
    label: 'Relay: which one of the shop’s file',
    unit: 'text',
    per: ['run'],
    path: 'runs.{run}.relay.use',
    note: 'What is not typed over follows it.',
  },
} as const satisfies Quantities;
