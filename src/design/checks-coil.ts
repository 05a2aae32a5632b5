/** Checks between fields: coil, points, sweep, sizes. */
import { copper } from '../data/copper.ts';
import { reportRepeated } from './checks-names.ts';
import { PRESETS } from './defaults.ts';
import type { Draft } from './draft.ts';
import { rowsOf } from './layout.ts';
import { nearest } from './nearest.ts';
import { listed, quote, type Report } from './problems.ts';
import { seriesOf } from './spellings.ts';
import type { Tree } from './tree.ts';

const WAYS = ['inductance', 'test_point', 'peak'] as const;

export function checkCoil(draft: Draft, tree: Tree, report: Report): void {
  if (!draft.coil) return;
  const { resistance, test_point: test, temperature } = draft.coil;
  /** That of a key that may be left out; nothing where it could not be read. */
  const warm = (given: number | undefined, ...path: string[]): number | undefined =>
    given ?? (tree.has(['coil', ...path]) ? undefined : PRESETS.temperature.value);
  const ways = WAYS.filter((way) => tree.has(['coil', way]));
  const taken = 'give exactly one of inductance, test_point and peak';
  if (ways.length === 0) report(['coil'], 'nothing that tells how the coil charges', taken);
  if (ways.length > 1) report(['coil', ways[1] as string], `found ${listed(ways)} together`, taken, 'key');
  // A misspelled key has been told of.
  const keys = Object.keys((tree.value as { coil?: object }).coil ?? {});
  if (!keys.some((key) => nearest(key, ['resistance']) !== null) && !ways.includes('peak'))
    report(
      ['coil', 'resistance'],
      'missing',
      'takes a value with a unit: ohm, mohm, kohm; only beside peak it may be left out',
    );
  const drop =
    draft.coil.driver_drop ?? (tree.has(['coil', 'driver_drop']) ? undefined : PRESETS.driver_drop.value);
  if (drop !== undefined) {
    draft.points?.forEach((point, i) => {
      if (point?.supply !== undefined && point.supply <= drop)
        report(
          ['points', i, 'supply'],
          `${point.supply} V, not above the driver drop of ${drop} V`,
          `allowed: above ${drop} V, or no coil charges`,
        );
    });
    const sweep = draft.sweep?.supply;
    if (sweep !== undefined && sweep <= drop)
      report(
        ['sweep', 'supply'],
        `${sweep} V, not above the driver drop of ${drop} V`,
        `allowed: above ${drop} V, or no coil charges`,
      );
  }
  if (resistance === undefined || drop === undefined) return;
  const ohmAt = (celsius: number): number => resistance * (1 + copper.alpha_20.value * (celsius - 20));
  const load = warm(temperature, 'temperature');
  if (load !== undefined) checkPeak(draft, ohmAt(load), drop, load, report);
  const celsius = warm(test?.temperature, 'test_point', 'temperature');
  if (test?.supply === undefined || test.peak === undefined || celsius === undefined) return;
  const ohm = ohmAt(celsius);
  const there = test.supply - drop;
  if (test.peak * ohm >= there)
    report(
      ['coil', 'test_point'],
      `${test.peak} A, more than ${test.supply} V can drive`,
      `allowed: below ${Number((there / ohm).toPrecision(4))} A, ${tidy(there)} V over ${tidy(ohm)} ohm at ${tidy(celsius)} degC`,
    );
}

/** A stated peak is at most what the highest supply of the points drives through the coil. */
function checkPeak(draft: Draft, ohm: number, drop: number, celsius: number, report: Report): void {
  const peak = draft.coil?.peak;
  const supplies = [
    ...(draft.points ?? []).map((p) => p?.supply),
    ...(draft.sweep ? [draft.sweep.supply] : []),
  ];
  if (peak === undefined || supplies.length === 0) return;
  const known = supplies.filter((volts) => volts !== undefined);
  const highest = Math.max(...known);
  const most = (highest - drop) / ohm;
  if (known.length < supplies.length || most <= 0 || peak <= most) return;
  report(
    ['coil', 'peak'],
    `${peak} A, more than ${highest} V can drive`,
    `allowed: at most ${Number(most.toPrecision(4))} A, ${tidy(highest - drop)} V over ${tidy(ohm)} ohm at ${tidy(celsius)} degC`,
  );
}

/** Four figures are enough to see which of two numbers is larger; more when they are that close. */
const tidy = (value: number): string => String(Number(value.toPrecision(6)));

/** The charts and the workbook hold this many rows. */
const MOST_ROWS = 200;

export function checkPoints(draft: Draft, report: Report): void {
  reportRepeated(
    (draft.points ?? []).map((p) => p?.name),
    (i) => ['points', i, 'name'],
    report,
  );
  draft.points?.forEach((point, i) => {
    if (point?.dip !== undefined && point.supply !== undefined && point.dip >= point.supply)
      report(
        ['points', i, 'dip'],
        `${point.dip} V, not below the supply of ${point.supply} V`,
        `allowed: below ${point.supply} V, as the lowest instant of that supply`,
      );
  });
  const { from, to, step } = draft.sweep ?? {};
  if (from !== undefined && to !== undefined) {
    if (from > to) report(['sweep', 'from'], `from ${from} rpm down to ${to} rpm`, 'swap from and to');
    else if (step !== undefined && rowsOf(from, to, step) > MOST_ROWS)
      report(
        ['sweep', 'step'],
        `${rowsOf(from, to, step)} speeds`,
        `allowed: at most ${MOST_ROWS}; take a larger step or a shorter sweep`,
      );
  }
  const { source_resistance: source, cold_cranking: cranking } = draft.supply ?? {};
  if (source !== undefined && cranking !== undefined)
    report(
      ['supply', 'cold_cranking'],
      'found source_resistance and cold_cranking together',
      'give one of the two',
      'key',
    );
  const names = draft.points?.map((p) => p?.name);
  draft.coil?.series_resistor?.bypassed_at?.forEach((point, i) => {
    if (point !== undefined && names !== undefined && !names.includes(undefined) && !names.includes(point))
      report(
        ['coil', 'series_resistor', 'bypassed_at', i],
        `the unknown point ${quote(point)}`,
        `allowed: ${names.join(', ')}`,
      );
  });
  const { series, smallest, stock } = draft.sizes ?? {};
  const taken =
    series ?? (smallest === undefined ? stock?.find((s) => s !== undefined) : smallest)?.split(' ')[1];
  for (const [i, one] of (stock ?? []).entries())
    if (one !== undefined && taken !== undefined && seriesOf(one) !== taken)
      report(
        ['sizes', 'stock', i],
        `found ${quote(one)} in the series ${taken}`,
        'takes sizes of one series',
      );
  if (series !== undefined && smallest !== undefined && seriesOf(smallest) !== series)
    report(
      ['sizes', 'smallest'],
      `found ${quote(smallest)} in the series ${series}`,
      `takes a size in ${series}`,
    );
}
