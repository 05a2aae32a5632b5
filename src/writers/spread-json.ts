/** A spread as JSON, and the installs as a table of comma separated values. */
import { unit as readUnit } from '../basis/units.ts';
import type { Figure } from '../spread/figures.ts';
import type { Block, Spread } from '../spread/spread.ts';
import { keyEnding } from '../views/view.ts';
import { csv } from './csv.ts';

export const SPREAD_FORMAT = 'coilfeed-spread/1';

export const METHOD = {
  sequence: 'Halton 1960, digits permuted at random: Owen 2017, arXiv:1706.02808',
  shares:
    'first-order, from given data: Plischke, Borgonovo and Smith 2013, corrected for chance (omega squared)',
} as const;

const keyOf = (figure: Figure): string => figure.key + ('rule' in figure ? '' : keyEnding(figure.name));

/** Values in SI units, areas in mm², temperatures in °C; shares from 0 to 1; null for what is not known. */
export function spreadJson({
  design,
  seed,
  samples,
  inputs,
  verdict,
  figures,
  passing,
  rules,
  weakest,
}: Spread) {
  return {
    format: SPREAD_FORMAT,
    title: design.title,
    seed,
    samples,
    verdict,
    passing,
    method: METHOD,
    inputs: inputs.map(({ kind, label, group, index, width }) => ({
      kind,
      label,
      group,
      of: index === null ? ('all' as const) : ('each' as const),
      width,
      distribution: design.tolerance.distribution[kind],
    })),
    figures: figures.map(({ figure, nominal, median, low, high, least, most, shares }) => ({
      figure: keyOf(figure),
      label: figure.label,
      unit: readUnit(figure.unit) && figure.unit,
      nominal,
      median,
      low_5: low,
      high_95: high,
      least,
      most,
      shares,
    })),
    rules,
    weakest,
  };
}

/** A row for each install: its number, its figures, the number of the coil that is left with least. */
export function installsCsv(
  figures: readonly Figure[],
  blocks: readonly Block[],
  coils: readonly string[],
): string {
  const wide = figures.length;
  let install = 0;
  const rows = blocks.flatMap((block) =>
    Array.from(block.weakest, (coil, k) => {
      install += 1;
      const values = Array.from(block.figures.subarray(k * wide, (k + 1) * wide), (value) =>
        Number.isFinite(value) ? value : null,
      );
      return [install, ...values, coils[coil] ?? null];
    }),
  );
  return csv([['install', ...figures.map(keyOf), 'weakest_coil'], ...rows]);
}
