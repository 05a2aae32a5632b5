/** The lists of a kit: harness, cuts, reels, parts, checks, labels, serial numbers. Expectations worked out by hand. */
import { describe, expect, test } from 'vitest';
import { dropLimit } from '../../src/kit/bench-drop.ts';
import { checks, forceOf } from '../../src/kit/checks.ts';
import { cutList, reels } from '../../src/kit/cut.ts';
import type { Job } from '../../src/kit/job.ts';
import { labels } from '../../src/kit/labels.ts';
import { nets } from '../../src/kit/nets.ts';
import { papers } from '../../src/kit/papers.ts';
import { partsList } from '../../src/kit/parts.ts';
import { released } from '../../src/kit/release.ts';
import { readSerials } from '../../src/kit/serials.ts';
import { crimpKinds } from '../../src/kit/terminals.ts';
import { WORDS } from '../../src/kit/words.ts';
import { banked, straight } from './designs.ts';
import { jobOf as anyJobOf } from './job.ts';

/** The lists need no test card. */
const jobOf = (text: string, readings = false): Job => anyJobOf(text, readings);

const FULL = `  allowance: 10 %
  end_allowance: 20 mm
  waste: 2 %
  strip: { main: 9 mm, drop: 6 mm }
  colours: { main: red, drop: red/white }
  terminals: { drop: { to: "pin, part 12-34" } }
  relay_at: { main: 0.5 m }
  trigger: { gauge: 18 AWG, insulation: TXL, length: 0.8 m, colour: yellow }
  relay_ground: { gauge: 18 AWG, insulation: TXL, length: 0.3 m, colour: black }
  spares: { fuse: 2, terminals: 1 }
`;

describe('the harness', () => {
  test('a run is cut at its fuse and its relay, and the pieces add up to the run', () => {
    const { harness } = jobOf(straight(2, FULL));
    const main = harness.pieces.filter((piece) => piece.wire === 0);
    // 1.5 m with the fuse at 0.15 m (from_source) and the relay at 0.5 m.
    expect(main.map((p) => p.length)).toEqual([0.15, 0.35, 1].map((l) => expect.closeTo(l, 12)));
    expect(main.map((p) => `${p.from.spot.id}:${p.from.terminal} ${p.to.spot.id}:${p.to.terminal}`)).toEqual([
      'BAT+:30 F1:null',
      'F1:null K1:30',
      'K1:87 S1:null',
    ]);
  });

  test('two banks: each trunk begins at the first splice and ends at a splice of its own', () => {
    const { harness } = jobOf(banked(4));
    const ends = (id: string) => harness.pieces.find((p) => p.id === id);
    expect(ends('left trunk/1')?.from.spot.id).toBe('S1');
    expect(ends('left trunk/2')?.to.spot).toBe(ends('drop.1')?.from.spot);
    expect(ends('right trunk/2')?.to.spot).toBe(ends('drop.4')?.from.spot);
    expect(ends('drop.1')?.from.spot).not.toBe(ends('drop.4')?.from.spot);
    expect(ends('coil ground.1')?.to.spot).toBe(ends('left strap')?.from.spot);
    expect(ends('engine strap')?.to.spot.id).toBe('BAT−');
  });

  test('a coil without a return is joined to the battery by an open link, not by a wire', () => {
    const { harness } = jobOf(straight(2).replace(/return:[\s\S]*$/, ''));
    expect(harness.links.map(({ from, to, open }) => [from.id, to.id, open])).toEqual([
      ['coil 1', 'BAT−', true],
      ['coil 2', 'BAT−', true],
    ]);
  });
});

describe('cuts and reels', () => {
  const job = jobOf(straight(2, FULL));

  test('cut length is the length of the design with the allowances', () => {
    // 0.45 m × 1.1 + 2 × 0.02 m = 0.535 m; 0.15 × 1.1 + 0.04 = 0.205.
    const cut = (id: string) => cutList(job).find(({ piece }) => piece.id === id)?.cut;
    expect(cut('drop.2')).toBeCloseTo(0.535, 12);
    expect(cut('main/1')).toBeCloseTo(0.205, 12);
    expect(cut('relay trigger K1')).toBeCloseTo(0.92, 12);
  });

  test('each reel is put on once', () => {
    for (const design of [straight(16), banked(12), straight(2, FULL)]) {
      const seen = cutList(jobOf(design)).map(({ reel }) => JSON.stringify(reel));
      const changes = seen.filter((reel, i) => i === 0 || reel !== seen[i - 1]).length;
      expect(changes).toBe(new Set(seen).size);
      expect(seen).toHaveLength(jobOf(design).harness.pieces.length);
    }
  });

  test('a reel holds the pieces of the batch and the waste', () => {
    const own = reels(job).find(({ reel }) => reel.colour === 'red');
    // main: 1.5 m × 1.1 + 3 pieces × 0.04 m = 1.77 m; × 25 kits × 1.02 = 45.135 m. Ring, fuse holder and receptacle on
    // this wire make three kinds of crimp, each with a first one and 3 samples of 0.2 m: 2.4 m.
    expect(own?.pieces).toBe(3);
    expect(own?.kit).toBeCloseTo(1.77, 12);
    expect(own?.samples).toBeCloseTo(2.4, 12);
    expect(own?.batch).toBeCloseTo(47.535, 10);
  });

  test('where the relay sits is not known: blanks for the pieces, the reel is known all the same', () => {
    const open = jobOf(straight(2));
    const blank = cutList(open).filter(({ cut }) => cut === null);
    expect(blank.map(({ piece }) => piece.id)).toEqual([
      'main/2',
      'main/3',
      'relay trigger K1',
      'relay ground K1',
    ]);
    // 1.5 m − 0.15 m.
    expect(blank[0]?.note).toContain('1.350 m');
    // 1.5 × 1.05 + 3 × 0.02 = 1.635 m, and nothing is made up for the wires of the relay coil.
    expect(reels(open).find(({ reel }) => reel.gauge === '6 AWG')?.kit).toBeCloseTo(1.635, 12);
    expect(reels(open).find(({ reel }) => reel.gauge === null)?.kit).toBeNull();
  });
});

describe('parts', () => {
  test.each([
    // Coils of 12 V pull in at 6 to 8 V, those of 24 V at twice as much (common practice).
    ['6.5 V', '12 V coil'],
    ['13 V', '24 V coil'],
  ])('a relay that pulls in at %s is ordered with a %s', (pullIn, words) => {
    const text = straight(2).replace('pull_in: 6.5 V', `pull_in: ${pullIn}, coil_max: 32 V`);
    const relay = partsList(jobOf(text)).find(({ kind }) => kind === 'relay');
    expect(relay?.what).toContain(`, ${words} of 90 Ω, pulls in at ${pullIn} `);
  });

  const parts = partsList(jobOf(straight(6, FULL)));
  const of = (kind: string) => parts.filter((part) => part.kind === kind);

  test('fuse, relay and splice, with spares, for one kit and for the batch', () => {
    expect(of('fuse').map((p) => [p.kit, p.spares, p.batch])).toEqual([[3, 2, 75]]);
    expect(of('relay').map((p) => [p.kit, p.batch])).toEqual([[1, 25]]);
    expect(of('splice')[0]?.what).toContain('1 × 6 AWG');
    expect(of('coil connector')[0]?.kit).toBe(6);
  });

  test('terminals: the shop’s own where it names them, spares and test crimps counted', () => {
    const pins = of('terminal').find((p) => p.what.includes('part 12-34'));
    // 6 and a spare; 25 kits of 7, and the first crimp and 3 samples to pull apart.
    expect([pins?.kit, pins?.batch]).toEqual([7, 179]);
  });

  test('what the design does not say is a blank', () => {
    for (const kind of ['sleeve', 'ties']) expect(of(kind)[0]).toMatchObject({ kit: null, order: null });
  });
});

test('a kind of crimp is a terminal on a wire; all ends but those in splices are counted once', () => {
  const job = jobOf(straight(6, FULL));
  const kinds = crimpKinds(job);
  const ends = job.harness.pieces.flatMap(({ from, to }) => [from, to]);
  expect(kinds.reduce((sum, { count }) => sum + count, 0)).toBe(
    ends.filter(({ spot }) => spot.kind !== 'splice').length,
  );
  expect(new Set(kinds.map(({ code }) => code)).size).toBe(kinds.length);
  expect(kinds.find(({ what }) => what === 'pin, part 12-34')?.count).toBe(6);
});

test('six wires and one are more than a stud takes: a bus, and no single splice', () => {
  const parts = partsList(jobOf(straight(6)));
  expect(parts.find(({ kind }) => kind === 'ground point')?.what).toMatch(/^Bus across several studs/);
  expect(parts.find(({ kind }) => kind === 'splice')?.what).toMatch(/^Distribution block/);
  // 2 + 1 on a stud.
  expect(partsList(jobOf(straight(2))).find(({ kind }) => kind === 'ground point')?.what).toMatch(/^Stud/);
});

test('nets: what is joined for good with fuse and relay out and the coils unplugged', () => {
  // Battery to fuse, fuse to relay, the feed behind the relay, trigger, relay ground, the return.
  const found = nets(jobOf(straight(4)).harness).map(({ pieces }) => pieces.length);
  expect(found.toSorted((a, b) => a - b)).toEqual([1, 1, 1, 1, 5, 5]);
  // Every piece is in one net.
  const all = jobOf(banked(8)).harness;
  expect(
    nets(all)
      .flatMap(({ pieces }) => pieces)
      .sort(),
  ).toEqual(all.pieces.map(({ id }) => id).sort());
});

test('box, allowances and record follow what is delivered', () => {
  const of = (delivered: string) => jobOf(straight(2, `  delivered: ${delivered}\n`), true);
  const [loose, crimped, assembled] = ['loose', 'crimped', 'assembled'].map((word) => {
    const job = of(word);
    const all = papers(job, WORDS);
    return { job, box: all.get('instructions.html') ?? '', record: all.get('build-record.html') ?? '' };
  });
  expect(loose?.box).toContain('Trim each one to fit');
  expect(crimped?.box).not.toContain('Trim each one');
  expect(assembled?.box).not.toContain('Join the wires at the splices');
  expect(assembled?.record).toContain('from each net to all others');
  expect(loose?.record).not.toContain('from each net to all others');
  // 0.45 m, 5 % and 2 × 10 mm; a wire with its terminals has the length of the design.
  expect(cutList((loose as { job: Job }).job).find(({ piece }) => piece.id === 'drop.1')?.cut).toBeCloseTo(
    0.4925,
    12,
  );
  expect(cutList((crimped as { job: Job }).job).find(({ piece }) => piece.id === 'drop.1')?.cut).toBeCloseTo(
    0.45,
    12,
  );
});

describe('checks', () => {
  test('pull-out forces by gauge, with their status', () => {
    // UL 486A: 16 AWG 30 lbf. MIL-T-7928: 16 AWG 50 lbf, 8 AWG 225 lbf from memory.
    expect(forceOf('16 AWG', 'ul')).toMatchObject({ pounds: 30, source: 'UL 486A (quoted)' });
    expect(forceOf('16 AWG', 'mil').pounds).toBe(50);
    expect(forceOf('8 AWG', 'mil')).toEqual({
      pounds: 225,
      source: 'MIL-T-7928 (from memory, medium confidence)',
    });
  });

  test('no force is made up for a size that is not in the tables', () => {
    for (const gauge of ['3 AWG', '16 SAE', '2.5 mm2', null])
      expect([forceOf(gauge, 'ul').pounds, forceOf(gauge, 'mil').pounds]).toEqual([null, null]);
  });

  test('one first piece for each reel', () => {
    const job = jobOf(banked(8));
    expect(checks(job)).toHaveLength(reels(job).length);
  });

  test('the limit of the drop test is Ohm’s law over the cold wire as it is cut', () => {
    // Engine strap, 0.5 m of 4 AWG: ρ/58·1.02/21.15 mm² (ASTM B258) × (0.5 × 1.05 + 0.02) m + 2 joints of 0.3 mΩ, at 5 A.
    const job = jobOf(straight(6));
    const wire = job.result.evaluation.design.wires.findIndex(({ id }) => id === 'engine strap');
    const ohm = (1.02 / 58 / 21.1511) * 0.545 + 2 * 0.3e-3;
    expect(dropLimit(job, wire)).toBeCloseTo(5 * ohm, 6);
  });

  test('a test current that a wire may not carry gives no limit', () => {
    const job = jobOf(straight(6, '  test_current: 90 A\n'));
    expect(dropLimit(job, 0)).toBeNull();
  });
});

test('every wire has a label at each end that names the other end, fuses say that they stay', () => {
  const job = jobOf(straight(4));
  const all = labels(job);
  for (const { id } of job.harness.pieces) expect(all.filter((l) => l.of === id)).toHaveLength(2);
  const [a, b] = all.filter((l) => l.of === 'drop.3');
  expect(a?.lines).toEqual(['drop.3', 'S1 → coil 3:15']);
  expect(b?.lines).toEqual(['drop.3', 'coil 3:15 → S1']);
  expect(all.find((l) => l.of === 'F1')?.lines.join(' ')).toContain('never a larger one');
});

test('a design that fails or is unknown is not released', () => {
  expect(released(jobOf(straight(6)).result).ok).toBe(true);
  const fails = released(jobOf(straight(16).replace('gauge: 6 AWG', 'gauge: 22 AWG')).result);
  expect(fails).toMatchObject({ ok: false, words: 'NOT RELEASED FOR BUILDING: the design fails' });
  const unknown = released(jobOf(straight(6).replace('source_resistance: 8 mohm, ', '')).result);
  expect(unknown.words).toBe('NOT RELEASED FOR BUILDING: the design cannot be judged in full');
});

test.each([
  ['A001-A003', ['A001', 'A002', 'A003']],
  ['A1-A3, B7', ['A1', 'A2', 'A3', 'B7']],
  ['98-101', ['98', '99', '100', '101']],
  ['T-07-A9', ['T-07-A9']],
  ['T-008-T-010', ['T-008', 'T-009', 'T-010']],
])('serial numbers %s', (text, serials) => {
  expect(readSerials(text)).toEqual({ ok: true, serials });
});

test.each(['', 'A1-B3', '98-A1', 'A003-A001', 'A1,A1', '1-2000', '=cmd', 'A\u0000', '<b>', 'x'.repeat(41)])(
  'no serial numbers: %j',
  (text) => {
    expect(readSerials(text).ok).toBe(false);
  },
);
