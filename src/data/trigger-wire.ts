/** How thick the wire between the original ignition wire and the relay must be: its fuse is the one that is there. */
import { AMPACITY, ENGINE_SPACE } from './ampacity.ts';

/** Insulation of the lowest rating that is used under a bonnet [degC], and its column of the table. */
const RATING = 105;
/** Sizes that such a wire has. */
const MOST = 4;

/** Allowable amperage in engine spaces by 33 CFR 183.425 table 5 and its note 1 [A], thin before thick. */
export const TRIGGER_SIZES: readonly { readonly gauge: string; readonly amps: number }[] = AMPACITY.rows
  .slice(0, MOST)
  .map(({ gauge, at_105 }) => ({
    gauge: `${gauge} AWG`,
    amps: at_105 * (ENGINE_SPACE.rows.find(({ rating }) => rating === RATING)?.factor ?? Number.NaN),
  }));

/** The thinnest one behind a fuse [A]; null beyond the sizes that such a wire has. */
export const leastBehind = (fuse: number): string | null =>
  TRIGGER_SIZES.find(({ amps }) => amps >= fuse)?.gauge ?? null;
