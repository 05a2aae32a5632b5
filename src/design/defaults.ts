/**
 * What is taken where a design says nothing. Every use is listed in the result (`Design.assumed`) with its reason.
 * `text` is how an author would have written it.
 */

export interface Preset<T> {
  readonly value: T;
  readonly text: string;
  readonly why: string;
}

/** Value in the unit that stands in the comment, as in `Design`. */
export const PRESETS = {
  units: { value: 'metric', text: 'metric', why: 'arbitrary' },
  /** [V] */
  driver_drop: { value: 0, text: '0 V', why: 'gives the largest current' },
  /** [degC] */
  temperature: {
    value: 20,
    text: '20 degC',
    why: 'the temperature for which resistances are given; a cold coil draws most',
  },
  /** [s] */
  rest: { value: 1e-3, text: '1.0 ms', why: 'arbitrary' },
  /** [s] */
  burn: { value: 0.5e-3, text: '0.5 ms', why: 'arbitrary' },
  bundle: { value: 1, text: '1', why: 'taken as laid alone' },
  joints: { value: 2, text: '2', why: 'a crimp at each end' },
  contacts: { value: 0, text: '0', why: 'no plug in the run' },
  aim: { value: 'copper', text: 'copper', why: 'as it always was' },
  series: { value: 'AWG', text: 'AWG', why: 'arbitrary' },
  /** [1] */
  wire_load: { value: 0.8, text: '80 %', why: 'arbitrary' },
  /** [1] */
  fuse_load: {
    value: 0.75,
    text: '75 %',
    why: 'quoted, source not named: a continuous load of at most 75 % of the rating at 25 °C',
  },
  /** [ohm] */
  joint_resistance: {
    value: 0.3e-3,
    text: '0.3 mohm',
    why: 'arbitrary; good crimps are below 0.5 mohm (quoted, source not named)',
  },
  /** [ohm] */
  contact_resistance: {
    value: 5e-3,
    text: '5 mohm',
    why: 'quoted, source not named: sheets of plugs have 4 to 10 mohm for each pair',
  },
  /** [ohm] */
  contact: {
    value: 2e-3,
    text: '2 mohm',
    why: 'quoted, source not named: usual; sheets allow 20 to 30 mohm',
  },
  /** [V] */
  trigger_drop: { value: 0.3, text: '0.3 V', why: 'arbitrary' },
  /** [K] */
  coil_rise: {
    value: 40,
    text: '40 K',
    why: 'arbitrary, cautious: a coil that was energised just before; one sheet has 39 K',
  },
  /** [degC] */
  test_temperature: {
    value: null,
    text: '20 degC',
    why: 'the temperature for which the resistance is given',
  },
  /** [J] */
  energy: { value: 0.01, text: '10 mJ', why: 'common practice: ignitions store some 20 to 200 mJ' },
  /** [ohm] */
  source: {
    value: null,
    text: '(12.6 V − 7.2 V)/cold_cranking, a third of it for the largest faults',
    why: 'SAE J537 (quoted): a cold battery; the third for a warm one is arbitrary',
  },
  closes: {
    value: 'before cranking',
    text: 'before cranking',
    why: 'arbitrary: an ignition wire is live from key-on',
  },
  rerating: {
    value: null,
    text: '0.45 % less for each kelvin above 25 degC',
    why: 'quoted, source not named: the steepest of a maker’s table; the data sheet takes precedence',
  },
  /** [1] Half the width of the range. */
  coil_resistance: { value: 0.1, text: '10 %', why: 'arbitrary' },
  coil_inductance: { value: 0.1, text: '10 %', why: 'arbitrary' },
  dwell_tolerance: { value: 0.05, text: '5 %', why: 'arbitrary' },
  length_tolerance: { value: 0.1, text: '10 %', why: 'arbitrary' },
  joint_tolerance: { value: 0.5, text: '50 %', why: 'arbitrary' },
  supply_tolerance: { value: 0.02, text: '2 %', why: 'arbitrary' },
  /** Errors of instruments. */
  meter: {
    value: null,
    text: '0.5 % + 2 digits of 2000',
    why: 'common practice: a hand-held multimeter on direct voltage',
  },
  scope: { value: null, text: '3 % + 1 digit of 250', why: 'common practice: eight bits, 3 % of gain' },
  clamp: {
    value: null,
    text: '3 % + 5 digits of 4000',
    why: 'common practice: a clamp on direct current, set to zero before',
  },
  ohmmeter: { value: null, text: '1 % + 2 digits of 2000', why: 'common practice: four leads' },
  trace: { value: null, text: '5 %', why: 'arbitrary: the fit goes with the scale of the clamp' },
  log: { value: null, text: '1 % + 0.02 ms', why: 'arbitrary' },
  camera: { value: null, text: '2 % + 2 K', why: 'common practice: a thermal camera on a dull surface' },
  limit_tolerance: { value: 0.05, text: '5 %', why: 'arbitrary' },
  /** [K] */
  ambient_tolerance: { value: 10, text: '10 K', why: 'arbitrary' },
  /** [K] */
  coil_warmer: { value: 60, text: '60 K', why: 'arbitrary: a coil at work on a warm engine' },
} as const satisfies Record<string, Preset<number | string | null>>;

/** Smallest size of a series when the design names none. */
export const SMALLEST = {
  AWG: '18 AWG',
  SAE: '18 SAE',
  mm2: '0.75 mm2',
} as const;
export const SMALLEST_WHY = 'arbitrary; the ampacity table starts at 18 AWG';

/** What the papers of a kit take where its block says nothing: choices of ours, each stated on the papers. */
export const KIT_PRESETS = {
  units: { value: 'both', text: 'both', why: 'arbitrary' },
  /** [1] */
  allowance: { value: 0.05, text: '5 %', why: 'arbitrary; trimmed when the wire is fitted' },
  /** [m] */
  end_allowance: { value: 0.01, text: '10 mm', why: 'arbitrary; for stripping and one more crimp' },
  /** [1], [m]: wire that is delivered with its terminals is not trimmed. */
  made_allowance: { value: 0, text: '0 %', why: 'arbitrary; a wire with its terminals is not trimmed' },
  made_end_allowance: { value: 0, text: '0 mm', why: 'arbitrary; a wire with its terminals is not trimmed' },
  delivered: {
    value: 'loose',
    text: 'loose',
    why: 'arbitrary; wire and terminals apart, crimped where they are fitted',
  },
  /** [m] */
  sample_length: { value: 0.2, text: '200 mm', why: 'arbitrary; what a pull tester grips' },
  /** [ohm] */
  continuity: { value: 0.5, text: '0.5 ohm', why: 'arbitrary; by a hand meter, its leads deducted' },
  /** [ohm] */
  isolation: { value: 100e3, text: '100 kohm', why: 'arbitrary; by a hand meter' },
  /** [V] */
  insulation_volts: { value: 500, text: '500 V', why: 'arbitrary; direct voltage, by an insulation tester' },
  /** [ohm] */
  insulation_least: { value: 10e6, text: '10000 kohm', why: 'arbitrary; a dry, new harness shows far more' },
  /** [m] */
  cut_tolerance: { value: 0.005, text: '5 mm', why: 'arbitrary' },
  /** [m] */
  strip_tolerance: {
    value: 0.0005,
    text: '0.5 mm',
    why: 'arbitrary; the terminal maker’s figure takes precedence',
  },
  /** [1] */
  waste: { value: 0.03, text: '3 %', why: 'arbitrary' },
  samples: { value: 3, text: '3', why: 'arbitrary' },
  /** [A] */
  test_current: { value: 5, text: '5 A', why: 'arbitrary; steady, from a supply that limits the current' },
  spare_fuses: { value: 1, text: '1', why: 'arbitrary; of the same rating' },
  spare_relays: { value: 0, text: '0', why: 'arbitrary' },
  spare_terminals: { value: 0, text: '0', why: 'arbitrary' },
} as const satisfies Record<string, Preset<number | string>>;
