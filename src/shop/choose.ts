/** What a design leaves to the shop: its relays, and its sizes where the least price is asked for. */
import type { Design } from '../design/design.ts';
import type { Result } from '../findings/result.ts';
import { withCheapest } from './cheapest.ts';
import { withRelays } from './relays.ts';

/** The design with what the shop's file decides beyond the model; the same design where there is nothing to decide. */
export const fromShelf = (design: Design, judge: (design: Design) => Result): Design =>
  design.shop === null ? design : withCheapest(withRelays(design, judge));
