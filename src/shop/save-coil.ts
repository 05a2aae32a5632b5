/** A coil that was measured, added to a shop's file; the rest of the file keeps its words. */
import { copper } from '../data/copper.ts';
import type { Design } from '../design/design.ts';
import type { Shop } from '../design/shop/shop.ts';
import { edited } from '../saved/apply.ts';

/** What a recording told of the coil itself: as warm as in the recording [ohm], [H]. */
export interface Found {
  readonly ohm: number;
  readonly henry: number;
  /** Where the recording is, for whoever reads the file. */
  readonly from: string;
}

const digits = (value: number): number => Number(value.toPrecision(4));

/** The text of the shop's file with the coil; its temperature and its driver are those of the design. */
export function withCoil(text: string, shop: Shop, name: string, found: Found, { coil }: Design): string {
  const cold = found.ohm / (1 + copper.alpha_20.value * (coil.temperature - 20));
  const member = {
    name,
    resistance: `${digits(cold)} ohm`,
    inductance: `${digits(found.henry * 1000)} mH`,
    driver_drop: `${digits(coil.driver_drop)} V`,
    from: found.from,
  };
  const count = shop.coils?.length ?? 0;
  return edited(text, [
    count === 0 ? { key: ['coils'], value: [member] } : { key: ['coils', count], value: member },
  ]);
}
