/** Random designs as a person could write them: every layout, series and way of knowing a coil, fuses and relays. */

/** A small generator of random numbers, so that every run of the tests sees the same designs. */
export function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    // Xorshift of 32 bits; 0 would stay 0.
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
}

type Document = Record<string, unknown>;

/** A design as the reader takes it, as JSON; `seed` is not 0. */
export function documentOf(seed: number): Document {
  const random = generator(seed * 2654435761);
  for (let i = 0; i < 8; i++) random();
  const between = (low: number, high: number): number => low + (high - low) * random();
  const whole = (low: number, high: number): number => Math.floor(between(low, high + 1));
  const some = <T>(...choices: T[]): T => choices[whole(0, choices.length - 1)] as T;
  const chance = (share: number): boolean => random() < share;
  const round = (value: number, digits = 3): number => Number(value.toPrecision(digits));
  const with_ = (value: number, unit: string): string => `${round(value)} ${unit}`;

  const layout = some('coil_per_cylinder', 'wasted_coil_per_cylinder', 'coil_per_pair', 'single_coil');
  const stroke = layout === 'coil_per_cylinder' || layout === 'single_coil' ? some(2, 4) : 4;
  // Pairs need a partner one turn away: even numbers of cylinders, evenly firing.
  const cylinders = layout === 'coil_per_pair' ? 2 * whole(1, 4) : whole(1, 8);
  const cycle = stroke * 180;
  const order = Array.from({ length: cylinders }, (_, i) => i + 1);
  const uneven = (layout === 'coil_per_cylinder' || layout === 'single_coil') && chance(0.6);
  const angles = order.map((_, i) => Math.round(((i + (uneven ? between(0, 0.8) : 0)) * cycle) / cylinders));

  const known = some('inductance', 'test_point', 'peak');
  const coil: Document = {
    resistance: with_(between(0.25, 0.9), 'ohm'),
    driver_drop: with_(between(0.5, 1.5), 'V'),
    temperature: `${whole(-30, 110)} degC`,
  };
  if (known === 'inductance') coil.inductance = with_(between(0.8, 5), 'mH');
  if (known === 'test_point')
    coil.test_point = { supply: '13.5 V', dwell: '3 ms', peak: with_(between(4, 9), 'A') };
  if (known === 'peak') coil.peak = with_(between(6, 20), 'A');
  if (chance(0.5)) coil.current_limit = with_(between(8, 25), 'A');
  if (chance(0.5)) coil.max_dwell = with_(between(2, 8), 'ms');

  const series = some('AWG', 'SAE', 'mm2');
  const sizes = {
    AWG: ['18 AWG', '12 AWG', '6 AWG'],
    SAE: ['18 SAE', '12 SAE', '6 SAE'],
    mm2: ['1 mm2', '4 mm2', '16 mm2'],
  };
  const run = (name: string, carries: string): Document => ({
    run: name,
    carries,
    length: with_(between(0.15, 3), 'm'),
    ambient: `${whole(20, 120)} degC`,
    insulation: some('B', 'C', 'D', 'TXL'),
    bundle: whole(1, 8),
    gauge: chance(0.7) ? 'auto' : some(...sizes[series]),
    joints: whole(0, 5),
  });
  const fuse = (): Document => ({
    type: some('C', 'F', 'E', 'SF30'),
    rating: 'auto',
    ambient: `${whole(20, 90)} degC`,
    ...(chance(0.5) ? { from_source: with_(between(0.05, 0.5), 'm') } : {}),
  });
  const relay = (): Document => ({
    rating: chance(0.5) ? 'auto' : `${some(30, 40, 70)} A`,
    ...(chance(0.5) ? { rated_at: '85 degC' } : {}),
    coil: '90 ohm',
    ...(chance(0.5) ? { pull_in: with_(between(5, 8), 'V') } : {}),
    contact: with_(between(1, 8), 'mohm'),
    ambient: `${whole(20, 100)} degC`,
  });
  const main = run('main', 'all');
  if (chance(0.8)) main.fuse = fuse();
  if (chance(0.6)) main.relay = relay();
  const feed = [main, ...(chance(0.8) ? [run('drop', 'each')] : [])];
  const back = [
    ...(chance(0.6) ? [run('coil ground', 'each')] : []),
    ...(chance(0.8) ? [run('strap', 'all')] : []),
  ];

  const points = Array.from({ length: whole(1, 4) }, (_, i) => ({
    name: i === 0 && chance(0.6) ? 'cranking' : `point ${i + 1}`,
    rpm: `${whole(150, 8000)} rpm`,
    supply: with_(between(9, 15), 'V'),
  }));
  return {
    coilfeed: 1,
    title: `Invented design ${seed}`,
    engine: { cylinders, stroke, firing_order: order, ...(uneven ? { firing_angles: angles } : {}) },
    ignition: {
      layout,
      dwell: chance(0.5)
        ? with_(between(1, 5), 'ms')
        : [
            { supply: '8 V', dwell: with_(between(4, 7), 'ms') },
            { supply: '12 V', dwell: with_(between(2, 4), 'ms') },
            { supply: '15 V', dwell: with_(between(1, 2), 'ms') },
          ],
      rest: with_(between(0.3, 1.5), 'ms'),
    },
    coil,
    ...(chance(0.6)
      ? {
          supply: {
            source_resistance: with_(between(3, 15), 'mohm'),
            alternator: '90 A',
            other_load: '40 A',
          },
        }
      : {}),
    points,
    ...(chance(0.4) ? { sweep: { from: '800 rpm', to: '6000 rpm', step: '400 rpm', supply: '14 V' } } : {}),
    sizes: { series, smallest: sizes[series][0] },
    feed,
    ...(back.length > 0 ? { return: back } : {}),
    limits: { drop: with_(between(0.2, 0.9), 'V') },
  };
}
