/** Wires that are joined for good, with the fuses out, the relays open and the coils unplugged: what an insulation test can part. */
import type { End, Harness, Spot } from './places.ts';

export interface Net {
  /** Names of its pieces. */
  readonly pieces: readonly string[];
  /** Where it can be reached. */
  readonly ends: readonly End[];
}

/** At these a wire ends by itself: every terminal is a place of its own. */
const PARTED: readonly Spot['kind'][] = ['fuse', 'relay', 'coil'];

export function nets({ pieces }: Harness): Net[] {
  const groups: { pieces: Set<string>; places: Set<string>; ends: Map<string, End> }[] = [];
  pieces.forEach((piece, i) => {
    const ends = [piece.from, piece.to].map((end, side) => ({
      end,
      key: PARTED.includes(end.spot.kind) ? `${i} ${side}` : end.spot.id,
    }));
    const touched = groups.filter((group) => ends.some(({ key }) => group.places.has(key)));
    const joined = {
      pieces: new Set([...touched.flatMap((group) => [...group.pieces]), piece.id]),
      places: new Set([...touched.flatMap((group) => [...group.places]), ...ends.map(({ key }) => key)]),
      ends: new Map([
        ...touched.flatMap((group) => [...group.ends]),
        ...ends.map(({ end, key }) => [key, end] as const),
      ]),
    };
    for (const group of touched) groups.splice(groups.indexOf(group), 1);
    groups.push(joined);
  });
  return groups.map((group) => ({ pieces: [...group.pieces], ends: [...group.ends.values()] }));
}
