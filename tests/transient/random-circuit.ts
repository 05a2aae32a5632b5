/** Random circuits: any coils, firings, feeds and limits that a design could lead to, and worse ones. */
import fc from 'fast-check';
import type { Circuit } from '../../src/transient/circuit.ts';

/** Shares between 0 and 1 that are spread over the ranges below. */
const share = fc.noBias(fc.integer({ min: 0, max: 1_000_003 })).map((n) => n / 1_000_003);

interface Shares {
  coils: number;
  perCoil: number;
  angles: number[];
  values: number[];
  together: boolean;
  limited: boolean;
}

const shares: fc.Arbitrary<Shares> = fc.record({
  coils: fc.integer({ min: 1, max: 16 }),
  perCoil: fc.integer({ min: 1, max: 2 }),
  angles: fc.array(share, { minLength: 32, maxLength: 32 }),
  values: fc.array(share, { minLength: 40, maxLength: 40 }),
  together: fc.boolean(),
  limited: fc.boolean(),
});

function circuitOf({ coils, perCoil, angles, values, together, limited }: Shares): Circuit {
  let next = 0;
  const spread = (low: number, high: number): number =>
    low * (high / low) ** (values[next++ % values.length] as number);
  const cycle = spread(0.004, 0.6);
  const dwell = Math.min(spread(0.0008, 0.05), (cycle / perCoil) * spread(0.5, 1));
  const firings = Array.from({ length: coils * perCoil }, (_, i) => {
    const coil = i % coils;
    // Where coils fire together two of them have the same angles.
    const own = together ? Math.floor(coil / 2) : coil;
    const base = ((angles[own] as number) * cycle) / perCoil;
    return { coil, at: (base + (Math.floor(i / coils) * cycle) / perCoil) % cycle };
  });
  const supply = spread(6, 18);
  const drive = supply - spread(0.1, 3);
  const ohm = spread(0.2, 3);
  const half = Array.from({ length: Math.ceil(coils / 2) }, (_, i) => i);
  const all = Array.from({ length: coils }, (_, i) => i);
  return {
    supply,
    drive,
    ohm,
    henry: spread(0.0005, 0.02),
    limit: limited ? (drive / ohm) * spread(0.1, 0.9) : Number.POSITIVE_INFINITY,
    dwell,
    cycle,
    cycleAngle: 720,
    coils,
    firings,
    wires: [
      { coils: all, ohm: spread(0.001, 3), also: 0 },
      { coils: half, ohm: spread(0.001, 0.1), also: spread(0.01, 8) },
      ...all.map((coil) => ({ coils: [coil], ohm: spread(0.001, 0.1), also: 0 })),
      { coils: all, ohm: spread(0.0005, 0.1), also: spread(0.01, 8) },
    ],
  };
}

export const circuits: fc.Arbitrary<Circuit> = shares.map(circuitOf);
