/** What is drawn is what the model says, in the units that stand at the axes. */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/engine/evaluate.ts';
import { picturesOf } from '../../src/pictures/all.ts';
import { fuseCurves } from '../../src/pictures/curve-lines.ts';
import { bandOf, curvesPicture } from '../../src/pictures/curves.ts';
import { dropPicture } from '../../src/pictures/drop.ts';
import { readingsOf, shareOf, ticksOf, tickTexts, valueAt, valueBy } from '../../src/pictures/read.ts';
import { speedPicture } from '../../src/pictures/speed.ts';
import { speedLines } from '../../src/pictures/speed-lines.ts';
import { tracePicture } from '../../src/pictures/trace.ts';
import { edited } from '../../src/saved/apply.ts';
import { traceOf } from '../../src/transient/trace.ts';
import { design, stated } from '../design/helpers.ts';
import { known } from '../physics/harness.ts';
import { demo, evaluated } from './designs.ts';
import { partsOf } from './scene.ts';

describe('currents in time', () => {
  const e = demo('two-bank-v8');
  const trace = traceOf(e, 3);
  const picture = tracePicture(trace);
  const lines = partsOf(picture, 'line');
  const peakOf = (wire: number): number => trace.wires[wire]?.peak.exact ?? 0;
  /** The line whose highest value is the peak of a conductor: an end of a segment, and those always stay. */
  const lineOf = (wire: number) =>
    lines.find(({ points }) => Math.max(...points.map(({ y }) => y)) === peakOf(wire))?.points ?? [];
  const indexOf = (id: string): number => e.design.wires.findIndex((w) => w.id === id);

  test('a panel for each shared current, with the peak of the trace, over the whole cycle', () => {
    for (const id of ['main', 'left trunk', 'right trunk']) {
      const line = lineOf(indexOf(id));
      expect(line.length, id).toBeGreaterThan(20);
      expect([line[0]?.x, line.at(-1)?.x]).toEqual([0, 720]);
    }
  });

  test('the area under the line is the average current', () => {
    const line = lineOf(indexOf('main'));
    const area = line
      .slice(1)
      .reduce((sum, { x, y }, i) => sum + ((x - (line[i]?.x ?? 0)) * (y + (line[i]?.y ?? 0))) / 2, 0);
    // Left-out points lie within 0.07 % of the line, relative to its peak, which is less than twice the average.
    expect(area / 720 / (trace.wires[indexOf('main')]?.average.exact ?? 0)).toBeCloseTo(1, 2);
  });

  test('each coil is named where it fires, in the firing order', () => {
    // The demo fires 1 5 6 3 7 2 4 8 every 90 degrees; what fires at 0 stands at the end of the cycle.
    expect(partsOf(picture, 'names')[0]?.names.map(({ x, text }) => [x, text])).toEqual([
      [90, '5'],
      [180, '6'],
      [270, '3'],
      [360, '7'],
      [450, '2'],
      [540, '4'],
      [630, '8'],
      [720, '1'],
    ]);
  });

  test('only what was asked for is shown', () => {
    const one = tracePicture(trace, [indexOf('branch.3')]);
    expect(partsOf(one, 'names')[0]?.names.map(({ text }) => text)).toEqual(['3']);
    // No shared current: of three panels none has the area under it.
    expect(partsOf(one, 'area')).toEqual([]);
    expect(one.stacks.map(({ panels }) => panels.length)).toEqual([2, 1]);
  });

  test('the cursor reads what the trace says', () => {
    const [stack] = picture.stacks;
    if (!stack) throw new Error('nothing is drawn');
    const name = readingsOf(stack, 0)[3]?.[0]?.name ?? '';
    const coil = e.design.coils.findIndex(({ id }) => name === `coil ${id}`);
    const firing = e.design.events.findIndex((event) => event.coil === coil);
    const angle = e.design.events[firing]?.angle || 720;
    // At a firing the line jumps; just before it the main run carries the currents of all coils.
    const [shared, , , own, supply] = readingsOf(stack, angle - 1e-9);
    const sum = [...(trace.course.atFiring[firing] ?? [])].reduce((all, current) => all + current, 0);
    expect(shared?.[0]?.value).toBeCloseTo(sum, 4);
    expect(own?.[0]?.value).toBeCloseTo(trace.coils[coil]?.peak.exact ?? 0, 4);
    expect(supply?.[0]?.value).toBeCloseTo(trace.coils[coil]?.supplyAtFiring?.exact ?? 0, 4);
    expect(supply?.[0]?.unit).toBe('V');
  });
});

test.each(['two-bank-v8', 'hill-climb-six'])(
  'the drop by run adds up to that of the worst path: %s',
  (name) => {
    const e = demo(name);
    const bars = partsOf(dropPicture(e), 'box').map(({ x, x2 }) => x2 - x);
    expect(bars.length).toBe(e.design.runs.length);
    const sum = bars.reduce((a, b) => a + b, 0);
    // The model adds it up coil by coil, over the resistances that paths share; here it is run by run.
    expect(sum / 1e3 / known(e, 'worst_drop')).toBeCloseTo(1, 9);
  },
);

describe('over engine speed', () => {
  const e = demo('hill-climb-six');
  const lines = speedLines(e);

  test('the sweep as the model has it', () => {
    expect(lines?.speeds).toHaveLength(29);
    lines?.speeds.forEach((at, i) => {
      const speed = e.design.points.length + i;
      // From 1000 rpm in steps of 250, as the design says.
      expect(at.rpm).toBeCloseTo(1000 + 250 * i, 9);
      expect(at.average).toBe(known(e, 'main_average', { speed }));
      expect(at.effective).toBe(known(e, 'main_effective', { speed }));
      expect(at.peak).toBe(known(e, 'main_peak', { speed }));
      expect((at.stiff ?? 0) / 1e3).toBeCloseTo(known(e, 'energy', { speed }), 12);
    });
  });

  test('less is delivered than on a stiff supply, and about as much as the closed form says', () => {
    for (const { stiff, delivered } of lines?.speeds ?? []) expect(delivered).toBeLessThan(stiff as number);
    // At 14.0 V the sweep has a speed near that of the point "midrange", 4500 rpm: energy goes with the square of the
    // voltage behind the driver, which is 12.8 V in both.
    const point = e.design.points.findIndex(({ name }) => name === 'midrange');
    const closed = Math.min(...e.design.coils.map((_, coil) => known(e, 'coil_energy', { coil, point })));
    const swept = lines?.speeds.find(({ rpm }) => Math.abs(rpm - 4500) < 1)?.delivered ?? 0;
    // Closed form and exact value differ by less than 0.5 % (docs/accuracy.md).
    expect(Math.abs(swept / 1e3 / closed - 1)).toBeLessThan(0.005);
  });

  test('is drawn in A and mJ', () => {
    if (lines === null) throw new Error('no sweep');
    const drawn = partsOf(speedPicture([lines]), 'line');
    for (const key of ['peak', 'effective', 'average', 'delivered', 'stiff'] as const) {
      const wanted = lines.speeds.map((at) => ({ x: at.rpm, y: at[key] }));
      expect(
        drawn.map(({ points }) => points),
        key,
      ).toContainEqual(wanted);
    }
    // The fuse that the demo takes, 20 A, as a line across.
    const fuse = drawn.find(({ label }) => label === 'fuse 20 A');
    expect(fuse?.points).toEqual([
      { x: 1000, y: 20 },
      { x: 8000, y: 20 },
    ]);
  });

  test('a design without a sweep has none', () => {
    const { pictures, left } = picturesOf(evaluated('one coil'));
    expect(pictures.map(({ name }) => name)).toEqual([
      'trace-cranking',
      'trace-limiter',
      'drop',
      'curves-main',
    ]);
    expect(left).toEqual([{ name: 'speed', why: 'The design has no sweep.' }]);
  });
});

describe('time-current curves', () => {
  const e = demo('two-bank-v8');
  const found = fuseCurves(e);
  const [curves] = found.curves ?? [];
  if (!curves) throw new Error('no curves');

  test('the band goes through the opening times of ISO 8820-3, type E, for 50 A', () => {
    // Multiples 1.1, 1.35, 2, 3.5 and 6 of the rating; at 1.1 the fuse must hold. Beyond 6 times, 300 A, it opens by the
    // same I²t: at 1000 A after 0.09 of 0.04 s and of 1 s.
    const wanted = [
      [55, 360000, Infinity],
      [67.5, 60, Infinity],
      [67.5, 60, 1800],
      [100, 2, 60],
      [175, 0.2, 7],
      [300, 0.04, 1],
      [600, 0.01, 0.25],
      [1000, 0.0036, 0.09],
    ] as const;
    const band = bandOf(curves.limits, 1000);
    expect(band.length).toBe(wanted.length);
    band.forEach(({ x, y, y2 }, i) => {
      const [amps, first, last] = wanted[i] as (typeof wanted)[number];
      for (const [found, want] of [
        [x, amps],
        [y, first],
        [y2, last],
      ] as const)
        if (Number.isFinite(want)) expect(found / want, `${amps} A`).toBeCloseTo(1, 9);
        else expect(found).toBe(want);
    });
  });

  test('a line for each conductor, through the times that the model has for it', () => {
    expect(curves.conductors.map(({ name }) => name)).toEqual([
      'main',
      'left trunk',
      'right trunk',
      'branch',
    ]);
    const noEnd = known(e, 'no_end');
    curves.conductors.forEach(({ run: feed, points }) => {
      const said = e.grid.axes.grid.flatMap((_, grid) => {
        const time = known(e, 'curve_withstood', { feed, grid });
        return time < noEnd ? [{ current: known(e, 'curve_current', { feed, grid }), time }] : [];
      });
      expect(said.length).toBeGreaterThan(20);
      expect(points.slice(-said.length)).toEqual(said);
    });
  });

  test('the windows of the model are shown, and hatched only where a fault draws the current', () => {
    const [drawn] = fuseCurves(evaluated('shorts that the fuse lets pass')).curves ?? [];
    if (!drawn) throw new Error('no curves');
    const [own, hatched] = [curves, drawn].map((one) => curvesPicture(one, ''));
    if (!own || !hatched) throw new Error('nothing is drawn');
    const open = (one: typeof curves) => one.conductors.flatMap(({ windows }) => windows);
    for (const [one, picture] of [
      [curves, own],
      [drawn, hatched],
    ] as const) {
      const boxes = partsOf(picture, 'box').filter(({ fill }) => fill === 'none');
      expect(boxes.map(({ x, x2 }) => [x, x2])).toEqual(open(one).map(({ from, to }) => [from, to]));
    }
    curves.conductors.forEach(({ run: feed, windows }) => {
      const from = e.number('window_from', { feed, window: 0 });
      expect(windows.map((window) => window.from)).toEqual(from === null ? [] : [from]);
    });
    // The demo has windows that no fault lies in, so nothing is hatched.
    expect(open(curves).length).toBeGreaterThan(0);
    const hatches = (picture: typeof own) => partsOf(picture, 'area').filter(({ fill }) => fill === 'hatch');
    expect(hatches(own)).toEqual([]);
    // No size of the drop makes up for 12 m of a main run of 18 AWG, so none is chosen and the smallest stands: both
    // runs have a window, and a short draws its currents.
    expect(drawn.conductors.map(({ name }) => name)).toEqual(['main', 'drop']);
    const areas = hatches(hatched);
    expect(areas.length).toBe(2);
    drawn.conductors.forEach(({ name, fault, windows: [window, ...others] }, i) => {
      if (!window) throw new Error(`no window of ${name}`);
      expect([window.short, window.stuck, others], name).toEqual([true, false, []]);
      // 1.1 times the 30 A of the fuse, the least current that is compared (ISO 8820-3: there it has to hold).
      expect(window.from, name).toBeCloseTo(33, 9);
      // A short at the far end draws less than the window, one at the near end as much or more: all of it is hatched.
      expect(fault[0], name).toBeLessThan(window.from);
      expect(fault[1], name).toBeGreaterThanOrEqual(window.to);
      const points = areas[i]?.points ?? [];
      expect([points[0]?.x, points.at(-1)?.x], name).toEqual([window.from, window.to]);
      // Inside of the window the conductor's limit comes before the latest opening.
      expect(points.length, name).toBeGreaterThan(2);
      for (const { y, y2 } of points.slice(0, -1)) expect(y, name).toBeLessThan(y2);
    });
    // The window of the main run closes where the fuse becomes quick enough; that of the drop, which is still open at
    // the largest short, ends there.
    const [main, drop] = drawn.conductors;
    expect(main?.fault[1]).toBeGreaterThan(main?.windows[0]?.to ?? Infinity);
    expect(drop?.windows[0]?.to).toBe(drop?.fault[1]);
  });

  test('a fuse by its maker’s curve, which has longest times alone: the line goes through them, and there is no band', () => {
    const curve = [
      { current: '40 A', within: '600 s' },
      { current: '90 A', within: '5 s' },
    ];
    const text = edited(stated('pair-four'), [{ key: ['feed', 0, 'fuse', 'curve'], value: curve }]);
    const [own] = fuseCurves(evaluate(design(text))).curves ?? [];
    if (!own) throw new Error('no curves');
    const picture = curvesPicture(own, '');
    const named = partsOf(picture, 'line').filter(({ name }) => name?.startsWith('fuse'));
    expect(named.map(({ name }) => name)).toEqual(['fuse: opens at the latest']);
    const at = (x: number) => valueAt(named[0]?.points ?? [], x, { x: { log: true }, y: { log: true } });
    // Straight in the logarithms between the two, and none before the first.
    expect([at(39.9), at(40), at(60), at(90)]).toEqual([Infinity, 600, expect.closeTo(54.77, 2), 5]);
    const axes = picture.stacks.flatMap(({ x, panels }) => [x, ...panels.map(({ y }) => y)]);
    for (const { from, to } of axes) expect([from, to].every(Number.isFinite)).toBe(true);
    expect(picture.stacks[0]?.panels[0]?.title).toContain('by its maker’s curve, given from 40.0 A on.');
  });

  test('one picture for each fuse; runs behind fuses of different kinds are named, not drawn', () => {
    const same = fuseCurves(evaluated('a fuse for each bank')).curves ?? [];
    expect(same.map(({ conductors }) => conductors.map(({ name }) => name))).toEqual([
      ['left', 'drop'],
      ['right', 'drop'],
    ]);
    const mixed = fuseCurves(evaluated('fuses of different kinds')).curves ?? [];
    expect(mixed.map(({ left }) => left)).toEqual([['drop'], ['drop']]);
    expect(picturesOf(evaluated('fuses of different kinds')).pictures.map(({ name }) => name)).toEqual([
      'trace-cranking',
      'trace-limiter',
      'drop',
      'speed',
      'curves-left',
      'curves-right',
    ]);
  });
});

describe('axes', () => {
  const axis = { label: '', unit: '', from: 0, to: 23.7 };

  test('are named at short numbers within them, with as many places as the steps need', () => {
    expect(ticksOf(axis, 2)).toEqual([0, 5, 10, 15, 20]);
    expect(tickTexts(ticksOf({ ...axis, from: 13.71, to: 14.23 }, 1))).toEqual(['13.8', '14.0', '14.2']);
    expect(ticksOf({ ...axis, from: 0.01, to: 1000, log: true }, 1)).toEqual([0.01, 0.1, 1, 10, 100, 1000]);
    expect(ticksOf({ ...axis, from: 40, to: 1100, log: true }, 3)).toEqual([50, 100, 200, 500, 1000]);
    expect(tickTexts([0, 5000, 10_000])).toEqual(['0', '5000', '10\u202f000']);
    expect(tickTexts([-0.5, 0, 0.5])).toEqual(['−0.5', '0.0', '0.5']);
  });

  test('share and value are the inverse of each other', () => {
    for (const log of [{}, { log: true }] as const) {
      const one = { ...axis, from: 2, to: 200, ...log };
      expect(shareOf(one, valueBy(one, 0.3))).toBeCloseTo(0.3, 12);
    }
    expect(valueBy({ ...axis, from: 1, to: 100, log: true }, 0.5)).toBeCloseTo(10, 12);
  });

  test('the cursor reads between points, after a step, and nothing beside the line', () => {
    const line = [
      { x: 0, y: 0 },
      { x: 10, y: 20 },
      { x: 10, y: 0 },
      { x: 20, y: 5 },
    ];
    expect([5, 10, 20, 21, -1].map((x) => valueAt(line, x))).toEqual([10, 0, 5, null, null]);
    // Straight in logarithms: halfway from 1 to 100 is 10.
    const log = { ...axis, log: true } as const;
    const decades = [
      { x: 1, y: 1 },
      { x: 100, y: 100 },
    ];
    expect(valueAt(decades, 10, { x: log, y: log })).toBeCloseTo(10, 12);
    // A conductor that can carry nothing withstands every current for no time.
    const none = [1, 100].map((x) => ({ x, y: 0 }));
    expect([1, 10, 100].map((x) => valueAt(none, x, { x: log, y: log }))).toEqual([0, 0, 0]);
  });
});
