/** Every table of figures that people or programs read. A quantity that is added to one of these lists is read everywhere. */
import type { View } from './view.ts';

/** What one coil draws, before the feed. */
export const POINT = {
  title: 'One coil, stiff supply',
  row: 'operating point',
  read: [
    'speed as rpm',
    'supply',
    'dwell_asked',
    'dwell',
    'clipped',
    'duty',
    'peak',
    'energy',
    'coils_power as power',
  ],
  more: ['firing_rate as firings'],
} as const satisfies View;

/** What a coil is left with. */
export const COIL = {
  title: 'Worst coil behind this feed',
  row: 'coil and point',
  read: [
    'coil_drop as drop',
    'coil_supply as supply',
    'coil_peak as peak',
    'coil_energy as energy',
    'energy_kept',
    'coil_restoring_dwell as dwell_to_restore',
  ],
} as const satisfies View;

/** A conductor by itself; of a run the one that carries most. */
export const WIRE = {
  title: 'Conductors',
  row: 'conductor',
  read: [
    'worst_effective as worst_rms',
    'ampacity',
    'wire_T as conductor',
    'wire_ohm as resistance',
    'run_drop_share as drop_share',
    'worst_point',
    'run_ambient as ambient',
    'area',
  ],
  more: ['gauge', 'auto as gauge_chosen', 'wire_length as length', 'fault_max', 'fault_min'],
} as const satisfies View;

/** A conductor at a point. */
export const LOAD = {
  title: 'Currents and drops',
  row: 'conductor and point',
  read: ['average', 'effective as rms', 'peak_current as peak', 'drop_average', 'drop_peak'],
} as const satisfies View;

export const FUSE = {
  title: 'Fuses',
  row: 'fuse',
  read: [
    'fuse_type as type',
    'fuse_rating as rating',
    'fuse_load as load',
    'fuse_ambient as ambient',
    'fuse_opens as opens',
  ],
} as const satisfies View;

export const RELAY = {
  title: 'Relays',
  row: 'relay',
  read: [
    'relay_rating as rating',
    'relay_load as load',
    'relay_ambient as ambient',
    'relay_pull_in as pull_in',
    'relay_close_supply as coil_closing',
    'relay_drop_out as drop_out',
    'relay_hold_supply as coil_lowest',
    'relay_allowed as allowed',
    'relay_coil_power as coil',
    'relay_supply as coil_cranking',
    'contact_drop',
    'contact_heat as contact',
    'trigger_current as trigger',
  ],
  more: ['cranking_supply as supply_cranking', 'make_current as make'],
} as const satisfies View;

/** A short to the chassis somewhere in a run of the feed. */
export const FAULT = {
  title: 'Shorts to the chassis, by feed run',
  row: 'feed run',
  read: ['run_fuse', 'start_fault', 'end_fault', 'end_opening', 'open_limit', 'window_from', 'window_to'],
} as const satisfies View;

/** The first conductor of the feed over engine speed. */
export const SWEEP = {
  title: 'Over engine speed',
  row: 'speed of the sweep',
  read: [
    'speed as rpm',
    'dwell',
    'duty',
    'main_average',
    'main_effective as main_rms',
    'main_peak',
    'peak',
    'energy',
  ],
} as const satisfies View;

/** Where the worst drop arises. */
export const SHARE = {
  title: 'Share of the runs in the drop of the worst path',
  row: 'run',
  read: ['run_drop as drop', 'run_drop_share as drop_share'],
} as const satisfies View;

/** The whole feed. */
export const FEED = {
  title: 'The whole feed',
  row: 'feed',
  read: [
    'worst_drop as drop',
    'drop_limit',
    'least_kept as energy_kept',
    'worst_total as average',
    'alternator_share',
    'copper_total as copper',
  ],
  more: ['worst_coil', 'worst_drop_point as worst_point', 'joints_total as joints'],
} as const satisfies View;

/** What two feeds are compared by, at a point. */
export const COMPARED = {
  title: 'Side by side',
  row: 'point that both have',
  read: [
    'total_average as average',
    'main_effective as rms',
    'main_peak as peak',
    'coils_power as power',
    'least_supply as supply',
    'weakest_energy as energy',
    'weakest_kept as energy_kept',
    'weakest_dwell as dwell_to_restore',
    'wiring_heat as heat',
  ],
} as const satisfies View;

/** What is bought for a run. */
export const BUY = {
  title: 'What to buy',
  row: 'run',
  read: [
    'gauge',
    'auto as gauge_chosen',
    'area',
    'run_insulation as insulation',
    'run_wires as count',
    'run_shortest',
    'run_longest',
    'run_length as length',
    'fuse_rating',
    'fuse_type',
    'relay_rating',
  ],
} as const satisfies View;

/** The coil itself. */
export const COIL_ITSELF = {
  title: 'The coil',
  row: 'design',
  read: ['coil_ohm_20 as resistance', 'coil_L as inductance', 'bound'],
} as const satisfies View;

export const VIEWS = {
  COIL_ITSELF,
  BUY,
  POINT,
  COIL,
  WIRE,
  LOAD,
  FUSE,
  RELAY,
  FAULT,
  SWEEP,
  SHARE,
  FEED,
  COMPARED,
};
