/**
 * Random installs as a shop meets them: what the papers say (a design file), what is really there (each part with its own
 * deviation, at its own temperature), and at most one fault. Nothing of the model goes into it: copper and gauges by their
 * definitions, resistances of fuses as typical parts have them.
 */
import { type Dice, dice } from '../../protection/random.ts';

/** A conductor as it is. */
export interface TrueWire {
  readonly id: string;
  readonly side: 'feed' | 'return';
  /** Indices of the coils that it carries. */
  readonly coils: readonly number[];
  /** [ohm] */
  ohm: number;
}

export interface TrueCoil {
  /** At its temperature [ohm], [H]. */
  ohm: number;
  henry: number;
  /** Unplugged, cooled down for some time [ohm]. */
  cold: number;
}

export interface TruePoint {
  readonly name: string;
  readonly rpm: number;
  /** At the posts, the coils at rest [V]. */
  volts: number;
  /** [s] */
  dwell: number;
}

export type Fault =
  | { readonly kind: 'none' }
  | { readonly kind: 'resistance'; readonly wire: string; readonly ohm: number }
  | { readonly kind: 'size'; readonly wire: string; readonly ohm: number }
  | { readonly kind: 'source'; readonly ohm: number }
  | {
      readonly kind: 'coil';
      readonly coil: string;
      readonly how: 'R' | 'L' | 'turns' | 'open';
      readonly by: number;
    }
  | { readonly kind: 'dwell'; readonly by: number }
  | { readonly kind: 'battery'; readonly volts: number }
  | { readonly kind: 'clamp'; readonly by: number };

export interface Install {
  readonly seed: number;
  /** What the shop's file says. */
  readonly document: Record<string, unknown>;
  readonly fault: Fault;
  readonly coilIds: readonly string[];
  readonly wires: readonly TrueWire[];
  readonly coils: readonly TrueCoil[];
  readonly points: readonly TruePoint[];
  /** Firings of one cycle: coil, and share of the cycle. */
  readonly firings: readonly { readonly coil: number; readonly at: number }[];
  /** [V], [A], [ohm] */
  readonly driverDrop: number;
  readonly limit: number;
  readonly sourceOhm: number;
  /** What the clamp shows over what flows. */
  readonly clampScale: number;
}

/** Resistance of a metre of copper at 20 °C [ohm]: 1/58 ohm·mm²/m and 0.127 mm · 92^((36 − n)/39), the definitions. */
const perMetre = (awg: number): number => 1 / 58 / ((Math.PI / 4) * (0.127 * 92 ** ((36 - awg) / 39)) ** 2);
/** Of copper, IEC 60028 (quoted) [1/K]. */
const ALPHA = 0.00393;

/** Each part anywhere within its tolerance, none likelier than the other. */
const off = (d: Dice, tolerance: number): number => 1 + tolerance * d.between(-1, 1);

interface Nominal {
  readonly id: string;
  readonly side: 'feed' | 'return';
  readonly coils: readonly number[];
  readonly awg: number;
  readonly length: number;
  readonly ambient: number;
  readonly joints: number;
  /** Fuse and relay contact [ohm]. */
  readonly extra: number;
}

/** How a coil that was built otherwise differs: each up or down, as far as the issue of the day is. */
const upOrDown = (d: Dice): number => (d.chance(0.5) ? d.between(0.6, 0.75) : d.between(1.35, 2.2));

export type Kind = Fault['kind'];

export function install(seed: number, kind: Kind): Install {
  const d = dice(seed);
  const cylinders = d.one([4, 4, 6, 8, 8]);
  const wasted = cylinders < 8 && d.chance(0.15);
  const uneven = d.chance(0.25);
  const angles = Array.from({ length: cylinders }, (_, i) =>
    Math.round((720 * (i + (uneven && i % 2 === 1 ? -0.2 : 0))) / cylinders),
  );
  const order = Array.from({ length: cylinders }, (_, i) => i + 1);
  const banked = cylinders === 8 && d.chance(0.6);
  const strapped = d.chance(0.85);
  const R = d.between(0.35, 0.8);
  const L = d.spread(1.6, 3.8);
  const driverDrop = d.between(0.7, 1.4);
  const peak = d.between(8, 14);
  // Dwell for about that peak at 13 V, by the line of the inductance alone and a third for the resistance.
  const dwell = Number(Math.min(4.5, (L * peak * 1.25) / 12).toFixed(2));
  const limit = d.chance(0.25) ? Number((peak * d.between(0.95, 1.2)).toFixed(1)) : Number.POSITIVE_INFINITY;
  const coilT = d.chance(0.5) ? 20 : 50;
  const idle = d.whole(750, 1100);
  const fast = d.whole(5200, cylinders === 8 || wasted ? 6000 : 7400);
  const supplies = { idle: d.between(13.4, 14), fast: d.between(13.8, 14.4), crank: d.between(9, 10.5) };
  const trunk = d.one([8, 10, 12]);
  const branch = d.one([14, 16]);
  const strap = d.one([4, 6, 8]);
  const ids = order.map(String);
  const all = ids.map((_, i) => i);
  const fuse = d.one([30, 40, 50]);
  const contact = d.between(2, 6);
  // The drop of a blade fuse at its rated current is about 0.1 V, so a little less than 100 mV over its rating when cool.
  const fuseOhm = 0.085 / fuse;
  const side = (i: number): 'l' | 'r' => (i % 4 === 0 || i % 4 === 3 ? 'l' : 'r');
  const banks = banked
    ? (['l', 'r'] as const).map((s) => ({ s, coils: all.filter((i) => side(i) === s) }))
    : [];
  const lengths = {
    main: d.between(1, 2.2),
    bank: [d.between(0.4, 0.9), d.between(0.6, 1.2)],
    ground: d.between(0.2, 0.4),
    strap: d.between(0.4, 0.8),
  };
  const drops = all.map(() => d.between(0.3, 0.7));
  const hot = d.between(70, 95);
  const nominal: Nominal[] = [
    {
      id: 'main',
      side: 'feed',
      coils: all,
      awg: trunk,
      length: lengths.main,
      ambient: 60,
      joints: 4,
      extra: fuseOhm + contact / 1000,
    },
    ...banks.map(
      ({ s, coils }, i): Nominal => ({
        id: `bank ${s}`,
        side: 'feed',
        coils,
        awg: trunk + 2,
        length: lengths.bank[i] as number,
        ambient: hot,
        joints: 2,
        extra: 0,
      }),
    ),
    ...all.map(
      (i): Nominal => ({
        id: `drop.${ids[i]}`,
        side: 'feed',
        coils: [i],
        awg: branch,
        length: drops[i] as number,
        ambient: hot,
        joints: 2,
        extra: 0,
      }),
    ),
    ...all.map(
      (i): Nominal => ({
        id: `ground.${ids[i]}`,
        side: 'return',
        coils: [i],
        awg: branch,
        length: lengths.ground,
        ambient: hot,
        joints: 2,
        extra: 0,
      }),
    ),
    ...(strapped
      ? [
          {
            id: 'strap',
            side: 'return',
            coils: all,
            awg: strap,
            length: lengths.strap,
            ambient: hot,
            joints: 2,
            extra: 0,
          } as const,
        ]
      : []),
  ];
  const document = {
    coilfeed: 1,
    title: `Install ${seed}`,
    engine: { cylinders, stroke: 4, firing_order: order, firing_angles: angles },
    ignition: {
      layout: wasted ? 'wasted_coil_per_cylinder' : 'coil_per_cylinder',
      dwell: `${dwell} ms`,
      rest: '0.8 ms',
    },
    coil: {
      resistance: `${R} ohm`,
      inductance: `${L} mH`,
      driver_drop: `${driverDrop} V`,
      temperature: `${coilT} degC`,
      ...(limit < 1000 ? { current_limit: `${limit} A` } : {}),
    },
    points: [
      { name: 'cranking', rpm: '220 rpm', supply: `${supplies.crank} V` },
      { name: 'idle', rpm: `${idle} rpm`, supply: `${supplies.idle} V` },
      { name: 'fast', rpm: `${fast} rpm`, supply: `${supplies.fast} V` },
    ],
    feed: [
      {
        run: 'main',
        carries: 'all',
        length: `${lengths.main} m`,
        ambient: '60 degC',
        insulation: 'C',
        gauge: `${trunk} AWG`,
        joints: 4,
        fuse: { type: 'E', rating: `${fuse} A`, ambient: '60 degC', from_source: '0.15 m' },
        relay: { rating: '50 A', contact: `${contact} mohm`, pull_in: '6.8 V' },
      },
      ...banks.map(({ s, coils }, i) => ({
        run: `bank ${s}`,
        carries: coils.map((c) => ids[c]),
        length: `${lengths.bank[i]} m`,
        ambient: `${hot} degC`,
        insulation: 'C',
        gauge: `${trunk + 2} AWG`,
        joints: 2,
      })),
      {
        run: 'drop',
        carries: 'each',
        ambient: `${hot} degC`,
        insulation: 'C',
        gauge: `${branch} AWG`,
        joints: 2,
        length: Object.fromEntries(ids.map((id, i) => [id, `${drops[i]} m`])),
      },
    ],
    return: [
      {
        run: 'ground',
        carries: 'each',
        length: `${lengths.ground} m`,
        ambient: `${hot} degC`,
        insulation: 'C',
        gauge: `${branch} AWG`,
        joints: 2,
      },
      ...(strapped
        ? [
            {
              run: 'strap',
              carries: 'all',
              length: `${lengths.strap} m`,
              ambient: `${hot} degC`,
              insulation: 'C',
              gauge: `${strap} AWG`,
              joints: 2,
            },
          ]
        : []),
    ],
  };

  // What is really there, by the tolerances that hold when the file says nothing: 10 %, 10 %, 60 K, 5 %, 10 %, 50 %.
  const warm = coilT + 60 * d.between(0, 1);
  const dwellOff = off(d, 0.05);
  const wires: TrueWire[] = nominal.map(({ id, side: s, coils, awg, length, ambient, joints, extra }) => {
    const T = d.between(20, ambient + 10);
    const copper = perMetre(awg) * length * off(d, 0.1) * (1 + ALPHA * (T - 20));
    const crimps = Array.from({ length: joints }, () => 0.3e-3 * off(d, 0.5)).reduce((a, b) => a + b, 0);
    return { id, side: s, coils, ohm: copper + crimps + extra * off(d, 0.5) };
  });
  const cooled = 20 + (warm - 20) * d.between(0, 1);
  const coils: TrueCoil[] = all.map(() => {
    const own = R * off(d, 0.1);
    return {
      ohm: own * (1 + ALPHA * (warm - 20)),
      henry: L * 1e-3 * off(d, 0.1),
      cold: own * (1 + ALPHA * (cooled - 20)),
    };
  });
  const points: TruePoint[] = [
    ['cranking', 220, supplies.crank] as const,
    ['idle', idle, supplies.idle] as const,
    ['fast', fast, supplies.fast] as const,
  ].map(([name, rpm, volts]) => ({ name, rpm, volts: volts * off(d, 0.01), dwell: dwell * 1e-3 * dwellOff }));
  const events = angles.flatMap((angle, coil) => [
    { coil, at: angle / 720 },
    ...(wasted ? [{ coil, at: ((angle + 360) % 720) / 720 }] : []),
  ]);
  const firings = events.sort((a, b) => a.at - b.at);

  const fault = faultOf(d, kind, nominal, ids);
  const broken = { sourceOhm: 0, clampScale: 1 };
  switch (fault.kind) {
    case 'resistance':
    case 'size': {
      const wire = wires.find(({ id }) => id === fault.wire) as TrueWire;
      wire.ohm += fault.ohm;
      break;
    }
    case 'source':
      broken.sourceOhm = fault.ohm;
      break;
    case 'coil': {
      const coil = coils[ids.indexOf(fault.coil)] as TrueCoil;
      if (fault.how === 'open') coil.ohm = Number.POSITIVE_INFINITY;
      if (fault.how === 'R') {
        coil.ohm *= fault.by;
        coil.cold *= fault.by;
      }
      if (fault.how === 'L') coil.henry *= fault.by;
      if (fault.how === 'turns') {
        coil.ohm *= fault.by;
        coil.cold *= fault.by;
        coil.henry *= fault.by ** 2;
      }
      break;
    }
    case 'dwell':
      for (const point of points) point.dwell *= fault.by;
      break;
    case 'battery':
      for (const point of points) point.volts -= fault.volts;
      break;
    case 'clamp':
      broken.clampScale = fault.by;
      break;
    case 'none':
  }
  return { seed, document, fault, coilIds: ids, wires, coils, points, firings, driverDrop, limit, ...broken };
}

function faultOf(d: Dice, kind: Kind, nominal: readonly Nominal[], ids: readonly string[]): Fault {
  const wire = d.one([nominal[0] as Nominal, ...nominal, nominal.at(-1) as Nominal]);
  switch (kind) {
    case 'none':
      return { kind };
    case 'resistance':
      return { kind, wire: wire.id, ohm: d.spread(4e-3, 0.4) };
    case 'size': {
      // Four to six sizes thinner, or two to four times as long.
      const times = d.chance(0.5) ? perMetre(wire.awg + d.whole(4, 6)) / perMetre(wire.awg) : d.between(2, 4);
      return { kind, wire: wire.id, ohm: (times - 1) * perMetre(wire.awg) * wire.length * (1 + ALPHA * 40) };
    }
    case 'source':
      return { kind, ohm: d.spread(0.03, 0.2) };
    case 'coil': {
      const how = d.one(['R', 'R', 'R', 'L', 'L', 'L', 'turns', 'open'] as const);
      return { kind, coil: d.one(ids), how, by: how === 'turns' ? d.between(0.55, 0.8) : upOrDown(d) };
    }
    case 'dwell':
      return { kind, by: d.chance(0.5) ? d.between(0.55, 0.75) : d.between(1.3, 1.6) };
    case 'battery':
      return { kind, volts: d.between(0.8, 2.5) };
    case 'clamp':
      return { kind, by: d.one([0.1, 10, 0.5, 2]) };
  }
}
