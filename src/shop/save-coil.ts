/** A coil that was measured, added to a shop's file; every other letter of the file stays. */
import { copper } from '../data/copper.ts';
import type { Design } from '../design/design.ts';
import { appended } from '../saved/append.ts';

/** What a recording told of the coil itself: as warm as in the recording [ohm], [H]. */
export interface Found {
  readonly ohm: number;
  readonly henry: number;
  /** Where the recording is, for whoever reads the file. */
  readonly from: string;
}

const digits = (value: number): number => Number(value.toPrecision(4));

/** The text of the shop's file with the coil; its temperature and its driver are those of the design. */
export function withCoil(text: string, name: string, found: Found, { coil }: Design): string {
  const cold = found.ohm / (1 + copper.alpha_20.value * (coil.temperature - 20));
  const member = {
    name,
    resistance: `${digits(cold)} ohm`,
    inductance: `${digits(found.henry * 1000)} mH`,
    driver_drop: `${digits(coil.driver_drop)} V`,
    from: found.from,
  };
  return appended(text, 'coils', member);
}
