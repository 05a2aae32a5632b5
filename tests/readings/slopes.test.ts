/** Slopes that are taken over from another part in series, against differences of the exact currents for the part itself. */
import { expect, test } from 'vitest';
import { asExpected, keyOf, partsOf } from '../../src/readings/parts.ts';
import { Seen } from '../../src/readings/seen.ts';
import { showIn } from '../../src/readings/show.ts';
import { slopesOf } from '../../src/readings/slopes.ts';
import { run } from '../../src/run.ts';
import { demo, design } from '../design/helpers.ts';

const bare = demo('two-bank-v8').replace(/\nmeasured:[\s\S]*$/, '\n');
const text = `${bare}
measured:
  - { what: supply, point: limiter, meter: 14.2 V }
  - { what: drop, run: main, point: limiter, meter: 0.11 V, scope: 0.2 V }
  - { what: drop, run: left strap, point: limiter, meter: 10 mV }
  - { what: drop, run: branch.3, point: limiter, meter: 7 mV }
  - { what: drop, run: coil ground.3, point: idle, meter: 1 mV }
  - { what: voltage, from: battery +, to: coil 3 +, point: limiter, meter: 0.14 V }
  - { what: supply, coil: "3", point: limiter, meter: 14 V, scope: 13.9 V }
  - { what: current, coil: "3", point: limiter, clamp_average: 1.5 A, clamp_peak: 12 A }
  - { what: current, run: main, point: idle, clamp_average: 1.6 A }
  - { what: resistance, coil: "3", ohmmeter: 0.4 ohm }
  - { what: resistance, run: branch.3, value: 4 mohm }
`;

test('every part of an eight with two banks', () => {
  const e = run(design(text)).evaluation;
  const { measured } = e.design;
  const parts = partsOf(
    e,
    [...new Set(measured.flatMap(({ point }) => (point === null ? [] : [point])))],
    measured,
  );
  const seen = new Seen(parts, measured);
  const expected = seen.with([], []);
  const slopes = slopesOf(seen, expected);
  const wrong = parts.knobs.flatMap((knob, k) => {
    if (knob.of === 'gain' || knob.of === 'supply') return [];
    const [step, own] = [1e-4, asExpected(parts)];
    own[k] = step;
    const show = showIn(parts, own);
    return measured.flatMap((reading, i) => {
      // The peak in a shared conductor is that of whichever coils draw most: it bends where they change places.
      if (reading.instrument === 'scope' && reading.wire === 0) return [];
      const straight = (show(reading) - (expected.shown[i] as number)) / step;
      const slope = slopes[k]?.[i] ?? 0;
      // Steps of 1 mΩ and of 1 % are no differentials: the currents curve by a percent or two over them. What one deviation
      // of the part moves by less than 2e-4 of the reading is a tenth of what a meter errs.
      const small = (2e-4 * (expected.shown[i] as number)) / (parts.spread[k] as number);
      const near = 0.03 * Math.abs(straight) + small;
      return Math.abs(slope - straight) <= near
        ? []
        : [`${keyOf(knob)} on ${reading.what} ${reading.path}: ${slope}, not ${straight}`];
    });
  });
  expect(wrong).toEqual([]);
});
