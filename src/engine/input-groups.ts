/** The inputs in groups and in an order as one thinks of them: engine, coil, supply, limits, then the runs. */
import type { QuantityName } from '../model/model.ts';

export interface InputGroup {
  readonly title: string;
  /** All single, all of runs, or all of one other axis. */
  readonly inputs: readonly QuantityName[];
}

export const INPUT_GROUPS: readonly InputGroup[] = [
  {
    title: 'Engine and ignition',
    inputs: ['stroke', 'cylinders', 'rest'],
  },
  { title: 'Further sparks', inputs: ['sparks_below', 'sparks_charge', 'sparks_burn'] },
  { title: 'Firings', inputs: ['event_angle'] },
  { title: 'Dwell by supply', inputs: ['dwell_supply', 'dwell_time'] },
  {
    title: 'Coil',
    inputs: [
      'coil_part',
      'coil_ohm_20',
      'coil_L_given',
      'coil_T',
      'driver_drop',
      'current_limit',
      'coil_series',
    ],
  },
  {
    title: 'Coil: bench test instead of the inductance',
    inputs: ['test_supply', 'test_dwell', 'test_peak', 'test_T'],
  },
  { title: 'Coil: its peak current alone', inputs: ['peak_alone'] },
  {
    title: 'Coil: what its data sheet allows',
    inputs: ['max_dwell', 'max_duty', 'max_peak', 'min_supply'],
  },
  {
    title: 'Battery and alternator',
    inputs: ['source_given', 'cold_cranking', 'resting', 'alternator', 'other_load'],
  },
  { title: 'Operating points', inputs: ['point_rpm', 'point_supply', 'point_dip'] },
  { title: 'Sweep of the engine speed', inputs: ['sweep_from', 'sweep_step', 'sweep_supply'] },
  {
    title: 'Sizes and joints',
    inputs: ['series', 'smallest', 'joint_ohm', 'plug_ohm'],
  },
  {
    title: 'Limits',
    inputs: ['drop_limit', 'energy_limit', 'wire_load_limit', 'fuse_load_limit'],
  },
  {
    title: 'Tolerances',
    inputs: [
      'tolerance_ohm',
      'tolerance_henry',
      'tolerance_dwell',
      'tolerance_length',
      'tolerance_joint',
      'tolerance_supply',
      'coil_warmer',
    ],
  },
  {
    title: 'Runs: wire',
    inputs: [
      'run_gauge',
      'run_smallest',
      'run_largest',
      'parallel',
      'run_insulation',
      'run_material',
      'run_ambient',
      'run_bundle',
      'run_joints',
      'run_contacts',
      'run_also',
      'capacitor',
    ],
  },
  { title: 'Runs: lengths', inputs: ['wire_length'] },
  {
    title: 'Runs: fuse',
    inputs: [
      'fuse_part',
      'fuse_type',
      'fuse_given',
      'fuse_voltage',
      'fuse_ambient',
      'fuse_distance_given',
      'melting',
    ],
  },
  {
    title: 'Runs: relay',
    inputs: [
      'relay_part',
      'relay_given',
      'relay_rated_at',
      'relay_make_limit',
      'relay_tab',
      'relay_contact_ohm',
      'relay_ambient',
      'relay_closes',
      'relay_trigger_drop',
      'relay_coil_ohm',
      'relay_rise',
      'relay_pull_in_20',
      'relay_drop_out_20',
      'relay_coil_max',
      'relay_suppression',
    ],
  },
];
