/**
 * 33 CFR 183.455 (a US federal regulation for boats): how far from the source a fuse may sit.
 */
import type { Quantities } from '../basis/quantity.ts';
import { fromMemory } from '../basis/sources.ts';

const source = fromMemory('high', '33-CFR-183.455');

export const fuseDistance = {
  fuse_distance: {
    symbol: 'ℓ_F,max',
    label: 'Longest conductor between the source and its overcurrent protection',
    unit: 'm',
    shown: 'in',
    // 7 in; the inch is 25.4 mm by definition.
    value: 0.1778,
    source,
    note: 'Measured from the source, or from where the conductor joins its feed.',
  },
  fuse_distance_sheathed: {
    symbol: 'ℓ_F,sh',
    label: 'The same, for a conductor inside a sheath or enclosure all the way',
    unit: 'm',
    shown: 'in',
    // 40 in.
    value: 1.016,
    source,
  },
} as const satisfies Quantities;
