/** What is drawn is what the model says, in the units that stand at the axes. */
import { describe, expect, test } from 'vitest';
import { picturesOf } from '../../src/pictures/all.ts';
import { bandOf } from '../../src/pictures/band.ts';
import { fuseCurves } from '../../src/pictures/curve-lines.ts';
import { curvesPicture } from '../../src/pictures/curves.ts';
import { speedPicture } from '../../src/pictures/speed.ts';
import { speedLines } from '../../src/pictures/speed-lines.ts';
import { tracePicture } from '../../src/pictures/trace.ts';
import { traceOf } from '../../src/transient/trace.ts';
import { known } from '../physics/harness.ts';
import { demo, evaluated } from './designs.ts';
import { layersOf } from './scene.ts';

const numbers = (rows: readonly Record<string, unknown>[] | undefined, key: string): number[] =>
  (rows ?? []).map((row) => row[key]).filter((value): value is number => typeof value === 'number');

describe('currents in time', () => {
  const e = demo('two-bank-v8');
  const trace = traceOf(e, 3);
  const layers = layersOf(tracePicture(trace));

  test('a panel for each shared current, with the peak of the trace, over the whole cycle', () => {
    const lines = layers.filter(
      (rows) => rows.length > 20 && rows.every((row) => 'x' in row && !('id' in row)),
    );
    for (const id of ['main', 'left trunk', 'right trunk']) {
      const wire = e.design.wires.findIndex((w) => w.id === id);
      const peak = trace.wires[wire]?.peak.exact;
      // The peak is an end of a segment, and those always stay in the line.
      const line = lines.find((rows) => Math.max(...numbers(rows, 'y')) === peak);
      expect(line, id).toBeDefined();
      expect(numbers(line, 'x')[0]).toBe(0);
      expect(numbers(line, 'x').at(-1)).toBe(720);
    }
  });

  test('the area under the line is the average current', () => {
    const main = e.design.wires.findIndex((w) => w.id === 'main');
    const line =
      layers.find((rows) => Math.max(...numbers(rows, 'y')) === trace.wires[main]?.peak.exact) ?? [];
    const [x, y] = [numbers(line, 'x'), numbers(line, 'y')];
    const area = x
      .slice(1)
      .reduce(
        (sum, at, i) => sum + ((at - (x[i] as number)) * ((y[i] as number) + (y[i + 1] as number))) / 2,
        0,
      );
    // Left-out points lie within 0.07 % of the line, relative to its peak, which is less than twice the average.
    expect(area / 720 / (trace.wires[main]?.average.exact ?? 0)).toBeCloseTo(1, 2);
  });

  test('each coil is named where it fires, in the firing order', () => {
    const named = layers.find((rows) => rows[0] && 'worst' in rows[0]) ?? [];
    // The demo fires 1 5 6 3 7 2 4 8 every 90 degrees; what fires at 0 stands at the end of the cycle.
    expect(named.map(({ x, text }) => [x, text])).toEqual([
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
    const drop = e.design.wires.findIndex((w) => w.id === 'drop.3');
    const one = layersOf(tracePicture(trace, [drop]));
    expect(one.find((rows) => rows[0] && 'worst' in rows[0])?.map(({ text }) => text)).toEqual(['3']);
    // No shared current: none of the lines has the peak of the main run.
    const main = trace.wires[0]?.peak.exact ?? 0;
    expect(
      Math.max(
        ...one.flatMap((rows) =>
          'to' in (rows[0] ?? {}) ? [] : numbers(rows, 'y').filter((y) => y !== 14.2),
        ),
      ),
    ).toBeLessThan(main);
  });
});

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
    const layers = layersOf(speedPicture([lines]));
    for (const key of ['peak', 'effective', 'average', 'delivered', 'stiff'] as const) {
      const wanted = lines.speeds.map((at) => ({ x: at.rpm, y: at[key] }));
      expect(layers, key).toContainEqual(wanted);
    }
    // The fuse that the demo takes, 20 A, as a line across.
    expect(layers).toContainEqual([{ y: 20 }]);
  });

  test('a design without a sweep has none', () => {
    const { pictures, left } = picturesOf(evaluated('one coil'));
    expect(pictures.map(({ name }) => name)).toEqual(['trace-cranking', 'trace-limiter', 'curves-main']);
    expect(left).toEqual([{ name: 'speed', why: 'The design has no sweep.' }]);
  });
});

describe('time-current curves', () => {
  const e = demo('two-bank-v8');
  const found = fuseCurves(e);
  const [curves] = found.curves ?? [];
  if (!curves) throw new Error('no curves');

  test('the band goes through the gates of ISO 8820-3, type E, for 50 A', () => {
    const top = 1e6;
    const band = bandOf(curves.gates, 1000, top);
    // Multiples 1.1, 1.35, 2, 3.5 and 6; at 1.1 the fuse must hold, behind 6 the times stay.
    expect(band).toEqual([
      { x: 55, y: 360000, y2: top },
      { x: 67.5, y: 60, y2: top },
      { x: 67.5, y: 60, y2: 1800 },
      { x: 100, y: 2, y2: 60 },
      { x: 175, y: 0.2, y2: 7 },
      { x: 300, y: 0.04, y2: 1 },
      { x: 1000, y: 0.04, y2: 1 },
    ]);
  });

  test('a line for each conductor, through what the model says that it endures', () => {
    expect(curves.conductors.map(({ name }) => name)).toEqual(['main', 'left trunk', 'right trunk', 'drop']);
    const forEver = known(e, 'for_ever');
    curves.conductors.forEach(({ run: feed, points }) => {
      const said = e.grid.axes.grid.flatMap((_, grid) => {
        const time = known(e, 'curve_wire', { feed, grid });
        return time < forEver ? [{ current: known(e, 'curve_current', { feed, grid }), time }] : [];
      });
      expect(said.length).toBeGreaterThan(20);
      expect(points.slice(-said.length)).toEqual(said);
    });
  });

  test('the windows of the model are hatched, from their begin to their end', () => {
    const picture = curvesPicture(curves, e.design.title);
    const strokes = layersOf(picture).filter(
      (rows) => rows[0] && 'y2' in rows[0] && !('low' in rows[0]) && rows.length > 8,
    );
    curves.conductors.forEach(({ run: feed, windows }) => {
      const from = e.number('window_from', { feed, window: 0 });
      expect(windows.map((window) => window.from)).toEqual(from === null ? [] : [from]);
      if (from === null) return;
      const hatch = strokes.find((rows) => numbers(rows, 'x')[0] === from);
      expect(numbers(hatch, 'x').at(-1)).toBeCloseTo(known(e, 'window_to', { feed, window: 0 }), 9);
      // Inside of the window the conductor's limit comes before the latest opening.
      for (const { y, y2 } of (hatch ?? []).slice(1, -1)) expect(y).toBeLessThan(y2 as number);
    });
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
      'speed',
      'curves-left',
      'curves-right',
    ]);
  });
});
