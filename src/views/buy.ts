/** What is bought for every run, in words. */
import { printInsulation, printSize } from '../basis/print.ts';
import type { Units } from '../basis/shown.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { labelOf, printQuantity } from './print.ts';
import { BUY } from './views.ts';

export interface Bought {
  readonly run: string;
  /** `10 AWG, class C` */
  readonly size: string;
  readonly chosen: boolean;
  /** `6 × 0.450 m` */
  readonly lengths: string;
  /** `20 A fuse, type E`, `50 A relay` */
  readonly parts: readonly string[];
}

export const BUY_TITLES = ['Run', labelOf('gauge'), '', labelOf('wire_length'), 'In it'];

export function bought(e: Evaluation): Bought[] {
  const { units } = e.design;
  return e.design.runs.map((spec, run): Bought => {
    const at = { run };
    const length = (system: Units): string => {
      const [least = '', most = ''] = (['run_shortest', 'run_longest'] as const).map((name) =>
        printQuantity(name, e.number(name, at), system),
      );
      return least === most ? least : between(least, most);
    };
    const lengths = units === 'both' ? `${length('metric')} (${length('us')})` : length(units);
    const insulation = String(e.value('run_insulation', at));
    const fuse =
      spec.fuse &&
      `${printQuantity('fuse_rating', e.number('fuse_rating', at))} fuse, type ${e.value('fuse_type', at)}`;
    const relay = spec.relay && `${printQuantity('relay_rating', e.number('relay_rating', at))} relay`;
    return {
      run: spec.name,
      size: `${printSize(String(e.value('gauge', at)))}, ${printInsulation(insulation)}`,
      chosen: e.number('auto', at) === 1,
      // Conductors in parallel are bought, too.
      lengths: `${(e.number('run_wires', at) ?? 1) * spec.conductors} × ${lengths}`,
      parts: [fuse, relay].filter((part) => part !== null),
    };
  });
}

/** `0.200–0.580 m`: one unit for both ends where it is the same. */
function between(least: string, most: string): string {
  const unit = /^(\S+)( \S+)$/.exec(least);
  return unit && most.endsWith(unit[2] as string) ? `${unit[1]}–${most}` : `${least} to ${most}`;
}

export const BUY_TITLE = BUY.title;
