/**
 * The largest design that is allowed, by each bound of the format at once: 24 points, 200 rows of the sweep, 16 coils
 * with 64 firings, 64 conductors. Invented, and of no use but to see what it costs.
 */

const COILS = Array.from({ length: 16 }, (_, i) => `c${i + 1}`);
/** Crank angle between firings of the whole engine, and between those of one coil [deg]. */
const APART = 720 / 64;
const TURN = 720 / 4;

const coils = COILS.map((id, i) => {
  const angles = [0, 1, 2, 3].map((turn) => i * APART + turn * TURN);
  return `    - { id: ${id}, fires_at: [${angles.join(', ')}] }`;
});

const points = Array.from({ length: 24 }, (_, i) => {
  const [rpm, supply] = [300 + 100 * i, 12 + i / 12];
  return `  - { name: point ${i}, rpm: ${rpm} rpm, supply: ${supply.toFixed(2)} V }`;
});

const run = (name: string, carries: string, metres: number, more = ''): string =>
  `  - { run: ${name}, carries: ${carries}, length: ${metres} m, ambient: 60 degC, insulation: TXL, bundle: 2, gauge: auto, joints: 2${more} }`;

/** A quarter of the coils. */
const quarters = [0, 1, 2, 3].map((quarter) => `[${COILS.slice(4 * quarter, 4 * quarter + 4).join(', ')}]`);
const FUSE = ', fuse: { type: E, rating: auto, ambient: 60 degC, from_source: 0.15 m }';

/** Text of the design. */
export const largest = (): string =>
  [
    'coilfeed: 1',
    'title: The largest design that is allowed',
    'engine: { cylinders: 4, stroke: 4, firing_order: [1, 3, 4, 2] }',
    'ignition:',
    '  layout: listed',
    '  coils:',
    ...coils,
    '  dwell: 0.8 ms',
    '  rest: 0.2 ms',
    'coil: { resistance: 0.5 ohm, inductance: 1.2 mH, driver_drop: 1 V }',
    'points:',
    ...points,
    'sweep: { from: 400 rpm, to: 2390 rpm, step: 10 rpm, supply: 13.8 V }',
    'feed:',
    // 4 conductors, then 4, 16 and 16.
    run('main', 'all', 0.5, FUSE),
    ...['second', 'third', 'fourth'].map((name) => run(name, 'all', 0.3)),
    ...quarters.map((carries, i) => run(`trunk ${i + 1}`, carries, 0.4)),
    run('branch', 'each', 0.2),
    run('lead', 'each', 0.1),
    'return:',
    // 16 conductors, then 4 and 4.
    run('coil ground', 'each', 0.2),
    ...quarters.map((carries, i) => run(`strap ${i + 1}`, carries, 0.3)),
    ...['fifth', 'sixth', 'seventh', 'battery ground'].map((name) => run(name, 'all', 0.2)),
    '',
  ].join('\n');
