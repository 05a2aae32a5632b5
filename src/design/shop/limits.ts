/** Between which sizes the terminals of a run, and the connector of the coil, let its wire be. */
import { AWG_SIZES, awg } from '../../data/awg.ts';
import { SAE_SIZES, sae } from '../../data/sae.ts';
import type { Partially } from '../draft.ts';
import { keyText, quote, type Report } from '../problems.ts';
import type { DesignFile } from '../schema.ts';
import { asSold } from '../sold.ts';
import type { Bound, Shop, Used } from './shop.ts';

/** What a design takes from a shop. */
export interface OfShop {
  readonly shop: Shop | null;
  readonly used: readonly Used[];
}

/** Area of a size [mm²]: AWG by its definition, SAE by its least area, metric sizes by their name. */
export function areaOf(size: string): number {
  const [number = '', series] = size.split(' ');
  if (series === 'mm2') return Number(number);
  if (series === 'SAE')
    return (SAE_SIZES.rows.find(({ gauge }) => gauge === number)?.area ?? 0) * sae.circular_mil.value;
  const steps = awg.awg_number.value - (AWG_SIZES.rows.find(({ gauge }) => gauge === number)?.number ?? 0);
  return (Math.PI / 4) * (awg.awg_diameter.value * awg.awg_ratio.value ** (steps / awg.awg_steps.value)) ** 2;
}

/** Parts by their size, the thinnest first. */
export const sizesInOrder = <T extends { readonly size: string }>(parts: readonly T[]): T[] =>
  parts.toSorted((a, b) => areaOf(a.size) - areaOf(b.size));

type Runs = readonly (
  | {
      readonly run?: string | undefined;
      readonly carries?: unknown;
      readonly side: 'feed' | 'return';
      readonly fuse?: unknown;
      readonly relay?: unknown;
    }
  | undefined
)[];

/** Whether a run ends in the connectors of coils: a wire for each, of the feed the last one, of the return the first. */
function endsAtCoil(runs: Runs, index: number): boolean {
  const own = runs[index];
  if (own?.carries !== 'each' && !(Array.isArray(own?.carries) && own.carries.length === 1)) return false;
  const side = runs.flatMap((run, i) => (run?.side === own?.side ? [i] : []));
  const order = own?.side === 'feed' ? side : side.toReversed();
  const later = order.slice(order.indexOf(index) + 1).map((i) => runs[i]?.carries);
  const covers = (carries: unknown): boolean =>
    carries === 'all' ||
    carries === 'each' ||
    (Array.isArray(own?.carries) &&
      Array.isArray(carries) &&
      own.carries.every((coil) => carries.includes(coil)));
  return !later.some(covers);
}

/** The parts at both ends of a run that take only some sizes of wire. */
function partsAt(runs: Runs, index: number, { shop, used }: OfShop): { part: Takes; by: string }[] {
  const name = runs[index]?.run;
  if (shop === null || name === undefined) return [];
  const ends = ['from', 'to'].flatMap((end) => {
    const path = keyText(['kit', 'terminals', name, end]);
    const known = used.find((one) => one.path === path)?.name;
    const part = shop.terminals?.find((one) => one.name === known);
    return part === undefined ? [] : [{ part, by: `the terminal ${quote(part.name)}` }];
  });
  const inside = (['fuse', 'relay'] as const).flatMap((device) => {
    const known = used.find(({ path }) => path === `kit.parts.${device}_terminal`)?.name;
    const part = shop.terminals?.find((one) => one.name === known);
    return part === undefined || !runs[index]?.[device]
      ? []
      : [{ part, by: `the terminal ${quote(part.name)}` }];
  });
  const coil = shop.coils?.find((one) => one.name === used.find(({ path }) => path === 'coil')?.name);
  const connector =
    coil?.largest === undefined || !endsAtCoil(runs, index)
      ? []
      : [{ part: { largest: coil.largest }, by: `the connector of the coil ${quote(coil.name)}` }];
  return [...ends, ...inside, ...connector];
}
interface Takes {
  readonly smallest?: string | undefined;
  readonly largest?: string | undefined;
}

/** The smallest and the largest wire that all parts at the ends of a run take; null where none says. */
export function boundsOf(
  runs: Runs,
  index: number,
  own: OfShop,
): { smallest: Bound | null; largest: Bound | null } {
  const parts = partsAt(runs, index, own);
  const most = (key: keyof Takes, sign: 1 | -1): Bound | null =>
    parts
      .flatMap(({ part, by }) => (part[key] === undefined ? [] : [{ size: part[key], by }]))
      .sort((a, b) => sign * (areaOf(b.size) - areaOf(a.size)))[0] ?? null;
  return { smallest: most('smallest', 1), largest: most('largest', -1) };
}

/** Two sizes of the same number differ by less than this between AWG and SAE [1]; so they are taken as one. */
export const SAME_NUMBER = 0.13;

/** A stated size, as it is sold, must be one that the terminals of its run take. */
export function checkTerminals(draft: Partially<DesignFile>, own: OfShop, report: Report): void {
  const sides = (['feed', 'return'] as const).flatMap((side) =>
    (draft[side] ?? []).map((run, i) => ({ run, side, path: [side, i] })),
  );
  const runs = sides.map(({ run, side }) => (run === undefined ? undefined : { ...run, side }));
  sides.forEach(({ run, path }, i) => {
    const gauge = run?.gauge;
    if (gauge === undefined || gauge === 'auto' || gauge === 'unknown') return;
    const { smallest, largest } = boundsOf(runs, i, own);
    const area = areaOf(asSold(gauge, run?.insulation ?? ''));
    if (largest !== null && area > areaOf(largest.size) * (1 + 1e-9))
      report(
        [...path, 'gauge'],
        `${gauge}, larger than ${largest.by} takes`,
        `allowed: up to ${largest.size}`,
      );
    if (smallest !== null && area < areaOf(smallest.size) * (1 - SAME_NUMBER))
      report(
        [...path, 'gauge'],
        `${gauge}, smaller than ${smallest.by} takes`,
        `allowed: from ${smallest.size}`,
      );
  });
}
