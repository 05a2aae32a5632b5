/** The voltage at the coil of a relay: what is expected there, and what too little of it means. */
import { expect, test } from 'vitest';
import { checked } from '../../src/readings/check.ts';
import { run } from '../../src/run.ts';
import { design } from '../design/helpers.ts';
import { caseText } from './cases.ts';

const text = caseText('relay-drops-out').replace(/\nmeasured:[\s\S]*$/, '\n');
const of = (...readings: string[]) =>
  checked(run(design(`${text}measured:\n${readings.map((r) => `  - ${r}\n`).join('')}`)));
const relay = (volts: string, point = 'idle') =>
  `{ what: trigger, run: main, point: ${point}, meter: ${volts} }`;
const told = (c: ReturnType<typeof of>) =>
  c.mend.filter(({ rule, subject }) => rule === null && subject === 'relay of main').map(({ harm }) => harm);

test('the posts less the drop of its wire is within the range: 13.6 V − 0.3 V', () => {
  const { readings, mend, diagnosis } = of(relay('13.3 V'));
  expect(readings[0]?.stands).toBe('within');
  expect(readings[0]?.expected.expected).toBeCloseTo(13.3, 9);
  expect(mend.every(({ rule }) => rule !== null)).toBe(true);
  expect(diagnosis.found).toEqual([]);
});

test('below the hot pull-in of 7.2 V · (234.5 + 125)/(234.5 + 20) = 10.17 V it may not close', () => {
  expect(told(of(relay('10.1 V')))).toEqual(['stop']);
  expect(told(of(relay('10.3 V')))).toEqual(['note']);
});

test('a relay that closes with the key only has to hold: 1.2 V is 1.70 V when hot', () => {
  const early = text.replace('closes: while cranking', 'closes: before cranking');
  const at = (volts: string) =>
    told(checked(run(design(`${early}measured:\n  - ${relay(volts, 'cranking')}\n`))));
  expect(at('1.6 V')).toEqual(['stop']);
  expect(at('6.0 V')).toEqual(['note']);
});

test('what a meter held while the starter turned starts from the dip, as the scope does: 8.0 V − 0.3 V', () => {
  const dips = text.replace('supply: 9.2 V }', 'supply: 9.2 V, dip: 8.0 V }');
  const held = (instrument: string, volts: string) =>
    checked(
      run(
        design(
          `${dips}measured:\n  - { what: trigger, run: main, point: cranking, ${instrument}: ${volts} }\n`,
        ),
      ),
    );
  for (const instrument of ['least', 'scope']) {
    const sound = held(instrument, '7.7 V');
    expect(sound.readings[0]?.expected.expected).toBeCloseTo(7.7, 9);
    expect(sound.readings[0]?.stands).toBe('within');
    expect(told(sound)).toEqual([]);
    expect(told(held(instrument, '6.5 V'))).toEqual(['note']);
  }
});

test('it is judged by itself: what the feed is said to have stays the same', () => {
  const feed = '{ what: drop, run: main, point: idle, meter: 10 mV }';
  const [alone, beside] = [of(feed), of(relay('9.0 V'), feed)];
  expect(beside.diagnosis.sound).toBeCloseTo(alone.diagnosis.sound, 12);
  expect(beside.readings.map(({ reading }) => reading.what)).toEqual(['drop', 'trigger']);
});
