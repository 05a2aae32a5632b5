/** The sheets that hold the model: what each is called and what a reader needs to know of it. */

export const INPUTS = 'Inputs';

export interface SheetOf {
  readonly sheet: string;
  readonly title: string;
  /** What a reader needs to know, in one line. */
  readonly about: string;
}

/** Sheet of each combination of row axes, in the order of the flow. */
export const SHEETS: Readonly<Record<string, SheetOf>> = {
  '': {
    sheet: 'Values',
    title: 'Constants, limits and what exists once',
    about: 'Everything that has one value in the whole design. Each name can be used in formulas.',
  },
  coil: { sheet: 'Coils', title: 'Coils', about: 'One row for each coil.' },
  event: {
    sheet: 'Firings',
    title: 'Firings',
    about:
      'One row for each firing of a cycle: how far every other one is from it, and what their paths share.',
  },
  lag: {
    sheet: 'Intervals',
    title: 'Intervals between firings',
    about: 'Each different interval once, and how many pairs of firings meet at it in each conductor.',
  },
  point: { sheet: 'Points', title: 'Operating points', about: 'One row for each operating point.' },
  dwell_row: { sheet: 'Dwell', title: 'Dwell by supply', about: 'The dwell that the controller asks for.' },
  speed: {
    sheet: 'Speeds',
    title: 'Charge of one coil',
    about:
      'One row for each operating point, then one for each speed of the sweep: one coil on a stiff supply, and what two charges have in common.',
  },
  'point,event': {
    sheet: 'Instants',
    title: 'Instants of firing',
    about: 'What flows at the instant of each firing, the drop that it makes, and how that drop is shared.',
  },
  'point,burst': {
    sheet: 'Sparks',
    title: 'Further sparks',
    about:
      'One row for each operating point and distance between two charges of a burst: what they have in common.',
  },
  'point,burst,event': {
    sheet: 'SparkInstants',
    title: 'Instants of further sparks',
    about: 'What flows in every coil when a further charge ends.',
  },
  'coil,point': {
    sheet: 'Delivered',
    title: 'What each coil is left with',
    about: 'Supply, current and energy of every coil behind this feed, at every point.',
  },
  wire: { sheet: 'Conductors', title: 'Conductors', about: 'One row for each conductor of every run.' },
  'wire,point': {
    sheet: 'Loads',
    title: 'Current and drop of every conductor',
    about: 'Average, effective and peak current and the drops that they make, at every point.',
  },
  feed: {
    sheet: 'FeedRuns',
    title: 'Fuse against conductor',
    about: 'One row for each feed run: what its fuse makes of a short, and whether it opens in time.',
  },
  grid: {
    sheet: 'Curves',
    title: 'Time-current curves',
    about:
      'How long the fuse takes to open and how long the conductor withstands, at every step, for every feed run.',
  },
  run: {
    sheet: 'EachRun',
    title: 'Runs',
    about: 'One row for each run: load, protection, and the size taken.',
  },
  turn: {
    sheet: 'Turns',
    title: 'Sizes, turn by turn',
    about:
      'One row for each turn of the pass in which sizes are chosen: what every run has when it starts, and which candidates fit.',
  },
  candidate: {
    sheet: 'Candidates',
    title: 'Candidates',
    about:
      'The places of the sizes that a run may take: the series in order, in the last place a size as stated.',
  },
  size: { sheet: 'Sizes', title: 'Conductor sizes', about: 'Every size that the tool knows.' },
  amps_row: {
    sheet: 'Ampacity',
    title: 'Ampacity',
    about: 'The published table, and the areas of its sizes.',
  },
  amps_column: { sheet: 'Ratings', title: 'Columns of the ampacity table', about: 'Ratings of insulation.' },
  insulation: {
    sheet: 'Insulation',
    title: 'Insulation',
    about: 'Classes and types, and what they withstand.',
  },
  fuse_type: { sheet: 'FuseTypes', title: 'Types of fuse', about: 'One row for each type.' },
  fuse_size: { sheet: 'Fuses', title: 'Fuses', about: 'Rated currents of each type.' },
  bundle_row: { sheet: 'Bundles', title: 'Bundles', about: 'Conductors bundled together.' },
  tab: { sheet: 'Tabs', title: 'Flat tabs', about: 'What a tab of each width carries.' },
  opening: {
    sheet: 'Openings',
    title: 'Opening-time limits of the fuses',
    about: 'Times in which a fuse opens, by its current.',
  },
  window: { sheet: 'Windows', title: 'Windows', about: 'Currents at which a conductor is not protected.' },
  spread: {
    sheet: 'Spread',
    title: 'Spread of the readings',
    about:
      'Three times the same calculation: with the least currents that tolerances allow, as designed, with the largest.',
  },
  'spread,point': {
    sheet: 'SpreadCharge',
    title: 'Charge of one coil behind the feed',
    about: 'One row for each operating point, three times.',
  },
  'spread,event': {
    sheet: 'SpreadPaths',
    title: 'Paths of the coils',
    about: 'One row for each firing, three times: what its path shares with the others.',
  },
  'spread,point,event': {
    sheet: 'SpreadInstants',
    title: 'Instants of firing',
    about: 'What flows at the instant of each firing, three times.',
  },
  'spread,wire': {
    sheet: 'SpreadWires',
    title: 'Resistance of every conductor',
    about: 'One row for each conductor, three times.',
  },
  'spread,wire,point': {
    sheet: 'Expected',
    title: 'What instruments show at a conductor',
    about: 'One row for each conductor and point, three times.',
  },
  'spread,coil,point': {
    sheet: 'ExpectedCoils',
    title: 'What instruments show at a coil',
    about: 'One row for each coil and point, three times.',
  },
  relay_size: { sheet: 'Relays', title: 'Relays', about: 'Customary contact ratings.' },
};

/** Every sheet that a workbook of ours can have, whoever lays it out. */
export const OURS: readonly string[] = [
  INPUTS,
  ...Object.values(SHEETS).map(({ sheet }) => sheet),
  ...[
    'Feed',
    'WhatIf',
    'Results',
    'Runs',
    'Protection',
    'TestCard',
    'Sweep',
    'Findings',
    'Sources',
    'Own',
    'Guide',
  ],
  ...['Parts', 'Cuts', 'Pieces', 'Labels', 'Record'],
  ...[
    'Compare',
    'Checks',
    'Spellings',
    'Judged',
    'Worst',
    'Said',
    'Kept',
    'Weighed',
    'Charted',
    'Choices',
    'Shelf',
    'Quantities',
    'Design',
  ],
];

export const INPUT_SHEET: SheetOf = {
  sheet: INPUTS,
  title: 'Inputs',
  about:
    'Fill in the framed cells; empty means not known, or none. In grey italics: taken where the design says nothing.',
};
