/** Fault currents of every conductor, against the sum of the resistances by hand, and when its fuse opens on them. */
import { describe, expect, test } from 'vitest';
import { overall } from '../../src/findings/read.ts';
import { toJson } from '../../src/writers/json.ts';
import { designOf, type Judged, judge, type Parts, wireAt } from './feeds.ts';
import { ALPHA_20, ampacityOf, fuseOhm, limitsOf, openingOf, sizeOf } from './truth.ts';

/** Rounding of doubles after a power and a few sums. */
const DUST = 1e-9;
const apart = (a: number, b: number): number => Math.abs(a / b - 1);

/** One conductor by hand. `ahead` and `fuse` name others. */
interface Hand {
  id: string;
  gauge: string;
  metres: number;
  /** [°C] */
  ambient: number;
  joints: number;
  fuse?: { type: string; rating: number };
  contact?: number;
  ahead: string[];
  /** Conductor whose fuse protects it. */
  protector: string | null;
  /** Effective current [A], where it warms the conductor. */
  rms?: number;
}

const JOINT = 0.4e-3;
const CHASSIS = 0.005;
const VOLTS = { least: 9.6, most: 14 };

const fixed = ({ joints, fuse, contact = 0 }: Hand): number =>
  joints * JOINT + (fuse ? fuseOhm(fuse.type, fuse.rating) : 0) + contact;
const cold = (h: Hand): number => sizeOf(h.gauge).ohm * h.metres + fixed(h);
const warm = (h: Hand): number => {
  const amps = ampacityOf(h.gauge, { insulation: 'C', ambient: h.ambient, bundle: 1 }) ?? Number.NaN;
  const rise = (limitsOf('C').rating - h.ambient) * ((h.rms ?? 0) / amps) ** 2;
  return sizeOf(h.gauge).ohm * h.metres * (1 + ALPHA_20 * (h.ambient + rise - 20)) + fixed(h);
};

function check(judged: Judged, hands: Hand[], source: number): void {
  const by = new Map(hands.map((h) => [h.id, h]));
  const sum = (ids: string[], of: (h: Hand) => number): number =>
    ids.reduce((all, id) => all + of(by.get(id) as Hand), 0);
  for (const h of hands) {
    const wire = wireAt(judged.e, h.id);
    expect(wire, h.id).toBeGreaterThanOrEqual(0);
    const own = h.fuse ? fuseOhm(h.fuse.type, h.fuse.rating) : 0;
    const most = VOLTS.most / (source + sum(h.ahead, cold) + own + CHASSIS);
    const least = VOLTS.least / (source + sum(h.ahead, warm) + warm(h) + CHASSIS);
    expect(apart(judged.number('fault_max', { wire }), most), `${h.id}, largest`).toBeLessThan(DUST);
    expect(apart(judged.number('fault_min', { wire }), least), `${h.id}, smallest`).toBeLessThan(DUST);
    const fuse = h.protector === null ? null : by.get(h.protector)?.fuse;
    expect(judged.e.number('nearest_fuse', { wire }), `${h.id}, fuse`).toBe(fuse?.rating ?? null);
    const opens = fuse ? openingOf(fuse.type, fuse.rating, least) : null;
    const found = judged.e.number('wire_opening', { wire });
    if (opens === null || opens === Infinity)
      expect(found, `${h.id}, opens`).toBe(opens === null ? null : judged.number('no_end'));
    else expect(apart(found ?? Number.NaN, opens), `${h.id}, opens`).toBeLessThan(DUST);
  }
  // A fuse is as slow as for the smallest of the fault currents behind it.
  for (const h of hands.filter(({ fuse }) => fuse)) {
    const behind = hands.filter(({ protector }) => protector === h.id);
    const fault = Math.min(
      ...behind.map((b) => VOLTS.least / (source + sum(b.ahead, warm) + warm(b) + CHASSIS)),
    );
    const opens = openingOf(h.fuse?.type ?? '', h.fuse?.rating ?? Number.NaN, fault);
    const { evaluation } = { evaluation: judged.e };
    const json = toJson({ evaluation, findings: [], verdict: overall([]) }) as {
      fuses: { run: string; opens_s: number | null }[];
    };
    const found = json.fuses.find(({ run }) => run === h.id)?.opens_s;
    if (opens === Infinity) expect(found, h.id).toBeNull();
    else expect(apart(found ?? Number.NaN, opens), h.id).toBeLessThan(DUST);
  }
}

const textOf = (h: Hand, carries: unknown, run = h.id): Parts['feed'][number] => ({
  run,
  carries,
  length: `${h.metres} m`,
  ambient: `${h.ambient} degC`,
  gauge: h.gauge,
  joints: h.joints,
  ...(h.fuse ? { fuse: { type: h.fuse.type, rating: `${h.fuse.rating} A` } } : {}),
  ...(h.contact === undefined ? {} : { relay: { rating: '50 A', contact: `${h.contact} ohm` } }),
});

const limits = { joint_resistance: `${JOINT} ohm` };
const each = (run: string, of: Omit<Hand, 'id'>, coils = ['1', '2', '3', '4']): Hand[] =>
  coils.map((coil) => ({ ...of, id: `${run}.${coil}` }));

describe('fault currents, against the sum of the resistances', () => {
  test('battery, main conductor, trunk, drops: one fuse', () => {
    const main: Hand = {
      id: 'main',
      gauge: '8 AWG',
      metres: 1.5,
      ambient: 60,
      joints: 4,
      fuse: { type: 'E', rating: 40 },
      contact: 3e-3,
      ahead: [],
      protector: 'main',
    };
    const trunk: Hand = {
      id: 'trunk',
      gauge: '6 mm2',
      metres: 0.8,
      ambient: 80,
      joints: 2,
      ahead: ['main'],
      protector: 'main',
    };
    const drop = {
      gauge: '16 SAE',
      metres: 0.5,
      ambient: 95,
      joints: 3,
      ahead: ['main', 'trunk'],
      protector: 'main',
    };
    const hands = [main, trunk, ...each('drop', drop)];
    const design = designOf({
      feed: [textOf(main, 'all'), textOf(trunk, 'all'), textOf({ ...drop, id: 'drop' }, 'each')],
      limits,
    });
    check(judge(design), hands, 8e-3);
  });

  test('two banks, each with its fuse, and drops of different length', () => {
    const banks = ['left', 'right'].map(
      (id, i): Hand => ({
        id,
        gauge: i === 0 ? '10 AWG' : '12 AWG',
        metres: 1 + i,
        ambient: 70,
        joints: 2,
        fuse: { type: i === 0 ? 'C' : 'SF30', rating: i === 0 ? 25 : 30 },
        ahead: [],
        protector: id,
      }),
    );
    const drops = ['1', '2', '3', '4'].map((coil, i): Hand => {
      const bank = i < 2 ? 'left' : 'right';
      return {
        id: `drop.${coil}`,
        gauge: '18 AWG',
        metres: 0.2 + 0.3 * i,
        ambient: 90,
        joints: 1,
        ahead: [bank],
        protector: bank,
      };
    });
    const lengths = Object.fromEntries(drops.map(({ metres }, i) => [`${i + 1}`, `${metres} m`]));
    const design = designOf({
      feed: [
        textOf(banks[0] as Hand, ['1', '2']),
        textOf(banks[1] as Hand, ['3', '4']),
        { ...textOf(drops[0] as Hand, 'each', 'drop'), length: lengths },
      ],
      supply: { source_resistance: '15 mohm' },
      limits,
    });
    const judged = judge(design);
    check(judged, [...banks, ...drops], 15e-3);
    // The run of the drops stands behind two fuses: it is judged by the larger one and the smallest fault.
    expect(judged.number('run_fuse', { run: 2 })).toBe(30);
    expect(judged.number('end_fault', { run: 2 })).toBe(
      Math.min(...drops.map(({ id }) => judged.number('fault_min', { wire: wireAt(judged.e, id) }))),
    );
  });

  test('a fuse for each coil behind a main fuse', () => {
    const main: Hand = {
      id: 'main',
      gauge: '6 AWG',
      metres: 2,
      ambient: 50,
      joints: 2,
      fuse: { type: 'E', rating: 60 },
      ahead: [],
      protector: 'main',
    };
    const own = { gauge: '14 AWG', metres: 0.3, ambient: 80, joints: 2, fuse: { type: 'F', rating: 15 } };
    const fused = each('fused', { ...own, ahead: ['main'], protector: null }).map((h) => ({
      ...h,
      protector: h.id,
    }));
    const tail = ['1', '2', '3', '4'].map(
      (coil): Hand => ({
        id: `tail.${coil}`,
        gauge: '16 AWG',
        metres: 0.4,
        ambient: 100,
        joints: 1,
        ahead: ['main', `fused.${coil}`],
        protector: `fused.${coil}`,
      }),
    );
    const design = designOf({
      feed: [
        textOf(main, 'all'),
        textOf({ ...own, id: 'fused', ahead: [], protector: null }, 'each'),
        textOf(tail[0] as Hand, 'each', 'tail'),
      ],
      limits,
    });
    check(judge(design), [main, ...fused, ...tail], 8e-3);
  });

  test('the conductors at the temperature of their load', () => {
    // Rectangular pulses of 20 A: four of 3 ms in 20 ms in the main conductor, one in each drop.
    const [all, one] = [20 * Math.sqrt(12 / 20), 20 * Math.sqrt(3 / 20)];
    const main: Hand = {
      id: 'main',
      gauge: '12 AWG',
      metres: 1,
      ambient: 60,
      joints: 0,
      fuse: { type: 'E', rating: 30 },
      ahead: [],
      protector: 'main',
      rms: all,
    };
    const drop = {
      gauge: '18 AWG',
      metres: 0.5,
      ambient: 90,
      joints: 0,
      ahead: ['main'],
      protector: 'main',
      rms: one,
    };
    const design = designOf({
      feed: [textOf(main, 'all'), textOf({ ...drop, id: 'drop' }, 'each')],
      coil: { resistance: '0.5 ohm', peak: '20 A' },
      limits,
    });
    check(judge(design), [main, ...each('drop', drop)], 8e-3);
  });
});

test('a short must open the fuse within 5 s, the smallest fault current counting', () => {
  const long = (metres: number) =>
    judge(
      designOf({
        feed: [
          { run: 'main', gauge: '8 AWG', fuse: { type: 'E', rating: '40 A' } },
          { run: 'far', carries: 'each', gauge: '18 AWG', length: `${metres} m` },
        ],
      }),
    ).finding('fault_opens', 'far');
  expect(long(1).verdict).toBe('pass');
  const far = long(6);
  expect(far.verdict).toBe('fail');
  const ohms =
    8e-3 +
    CHASSIS +
    [
      { gauge: '8 AWG', metres: 1 },
      { gauge: '18 AWG', metres: 6 },
    ].reduce((sum, { gauge, metres }) => sum + sizeOf(gauge).ohm * metres * (1 + ALPHA_20 * 40), 0) +
    0.1 / 40;
  expect(apart(far.value ?? Number.NaN, openingOf('E', 40, VOLTS.least / ohms))).toBeLessThan(1e-6);
  expect(far.limit).toBe(5);
});

test('conductors of one run behind fuses of two types: the run is judged by the slower one', () => {
  // 56 A at the end of each branch: the 20 A of type E may take 16 s on it, the larger one of type C only 9 s.
  const judged = judge(
    designOf({
      feed: [
        { run: 'left', carries: ['1', '2'], gauge: '6 AWG', fuse: { type: 'C', rating: '30 A' } },
        { run: 'right', carries: ['3', '4'], gauge: '6 AWG', fuse: { type: 'E', rating: '20 A' } },
        { run: 'branch', carries: 'each', gauge: '18 AWG', length: '6 m' },
      ],
    }),
  );
  const slowest = [
    { id: 'branch.1', type: 'C', rating: 30 },
    { id: 'branch.3', type: 'E', rating: 20 },
  ].map(({ id, type, rating }) =>
    openingOf(type, rating, judged.number('fault_min', { wire: wireAt(judged.e, id) })),
  );
  expect(slowest[1]).toBeGreaterThan(slowest[0] as number);
  expect(judged.finding('fault_opens', 'branch').value).toBeGreaterThanOrEqual(
    (slowest[1] ?? NaN) * (1 - DUST),
  );
});
