/** Designs whose pictures are looked at: one for each thing that makes a picture hard to draw. */
import type { Evaluation } from '../../src/engine/evaluate.ts';
import { evaluate } from '../../src/engine/evaluate.ts';
import { design as designOf, demo as textOf } from '../design/helpers.ts';
import { modelOf } from '../physics/harness.ts';

const run = { ambient: '70 degC', insulation: 'C', joints: 2, gauge: 'auto' };

export interface Wanted {
  coils: number;
  title?: string;
  stroke?: number;
  dwell?: number;
  limit?: number;
  rpm?: number;
  supply?: object;
  coil?: object;
  layout?: string;
  listed?: { id: string; fires_at: number[] }[];
  /** Banks of this many coils, each with a trunk. */
  bank?: number;
  feed?: object[];
  sweep?: object | null;
  rest?: number;
}

/** A plain object that the reader takes. */
export function design(w: Wanted): object {
  const cycle = w.stroke === 2 ? 360 : 720;
  const order = Array.from({ length: w.coils }, (_, i) => i + 1);
  const banks = w.bank ? Array.from({ length: w.coils / w.bank }, (_, b) => b) : [];
  const size = w.bank ?? 0;
  return {
    coilfeed: 1,
    title: w.title ?? `An engine with ${w.coils} cylinders`,
    engine: {
      cylinders: w.coils,
      stroke: w.stroke ?? 4,
      firing_order: order,
      firing_angles: order.map((_, i) => (i * cycle) / w.coils),
    },
    ignition: {
      layout: w.layout ?? 'coil_per_cylinder',
      ...(w.listed ? { coils: w.listed } : {}),
      dwell: `${w.dwell ?? 3} ms`,
      rest: `${w.rest ?? 0.8} ms`,
    },
    coil: {
      resistance: '0.42 ohm',
      driver_drop: '1.2 V',
      ...(w.coil ?? { inductance: '2.4 mH' }),
      ...(w.limit ? { current_limit: `${w.limit} A` } : {}),
    },
    supply: w.supply ?? { source_resistance: '8 mohm' },
    points: [
      { name: 'cranking', rpm: '200 rpm', supply: '9.6 V' },
      { name: 'limiter', rpm: `${w.rpm ?? 7000} rpm`, supply: '14.2 V' },
    ],
    ...(w.sweep === null
      ? {}
      : { sweep: w.sweep ?? { from: '1000 rpm', to: '8000 rpm', step: '1000 rpm', supply: '14 V' } }),
    sizes: { series: 'AWG', smallest: '18 AWG' },
    feed: w.feed ?? [
      { ...run, run: 'main', carries: 'all', length: '1.5 m', fuse: { type: 'E', rating: 'auto' } },
      ...banks.map((b) => ({
        ...run,
        run: `trunk of bank number ${b + 1}`,
        carries: order.slice(b * size, (b + 1) * size).map(String),
        length: `${0.5 + 0.2 * b} m`,
      })),
      { ...run, run: 'drop', carries: 'each', length: '0.4 m' },
    ],
    return: [
      { ...run, run: 'ground', carries: 'each', length: '0.3 m' },
      { ...run, run: 'strap', carries: 'all', gauge: '4 AWG', length: '0.5 m' },
    ],
  };
}

const trunk = (
  name: string,
  carries: string | string[],
  rating: string,
  gauge = 'auto',
  length = '2.0 m',
): object => ({
  ...run,
  run: name,
  carries,
  gauge,
  length,
  fuse: { type: 'C', rating },
});
const drop = { ...run, run: 'drop', carries: 'each', length: '0.4 m' };
const ids = (from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, i) => String(from + i));

/** By what is special. */
export const DESIGNS = {
  'one coil': { coils: 1, rpm: 3600, sweep: null },
  'six coils': { coils: 6 },
  'eight coils': { coils: 8, bank: 4 },
  'sixteen coils in four banks': {
    coils: 16,
    bank: 4,
    title:
      'Record boat, sixteen cylinders in four banks, each with a trunk of its own and a coil on every plug',
  },
  'a limit that is reached': { coils: 6, limit: 9, dwell: 4.5, rpm: 5000 },
  'dwell cut short': { coils: 4, stroke: 2, dwell: 6, rpm: 9000 },
  'no time left for any dwell': { coils: 4, stroke: 2, rest: 20, rpm: 9000 },
  'a poor feed': { coils: 8, feed: [trunk('main', 'all', '30 A', '18 AWG'), drop] },
  'shorts that the fuse lets pass': {
    coils: 8,
    feed: [trunk('main', 'all', '30 A', '18 AWG', '12 m'), drop],
  },
  'a fuse for each bank': {
    coils: 8,
    feed: [trunk('left', ids(1, 4), '30 A', '16 AWG'), trunk('right', ids(5, 8), '30 A'), drop],
  },
  'fuses of different kinds': {
    coils: 8,
    feed: [trunk('left', ids(1, 4), '30 A'), trunk('right', ids(5, 8), '20 A'), drop],
  },
  'pairs with long names': {
    coils: 16,
    layout: 'listed',
    listed: ids(1, 8).map((id, i) => ({
      id: `coil of cylinder ${id} and ${i + 9}`,
      fires_at: [i * 45, 360 + i * 45],
    })),
  },
  'two sparks at once': { coils: 8, layout: 'wasted_coil_per_cylinder', dwell: 2.5, rpm: 6000 },
  'one speed': { coils: 6, sweep: { from: '2000 rpm', to: '2000 rpm', step: '500 rpm', supply: '14 V' } },
} as const satisfies Record<string, Wanted>;

const made = new Map<string, Evaluation>();

/** The model of one of them, evaluated once. */
export function evaluated(name: keyof typeof DESIGNS): Evaluation {
  const there = made.get(name) ?? modelOf(design(DESIGNS[name]));
  made.set(name, there);
  return there;
}

/** The model of a demo. */
export function demo(name: string): Evaluation {
  return evaluate(designOf(textOf(name)));
}
