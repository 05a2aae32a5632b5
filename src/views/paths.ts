/** The way of the current, once for each group of coils that have the same one. */
import type { Design } from '../design/design.ts';

export interface Path {
  readonly coils: readonly string[];
  /** Runs of the feed from the battery to the coil, then of the return. */
  readonly feed: readonly string[];
  readonly back: readonly string[];
}

export function paths({ coils, wires, runs }: Design): Path[] {
  const found = new Map<string, { coils: string[]; feed: string[]; back: string[] }>();
  coils.forEach(({ id }, coil) => {
    const own = wires.filter((wire) => wire.coils.includes(coil));
    // Of a run that has a conductor for each coil the name says enough; of another with several, which one.
    const name = (wire: Design['wires'][number]): string =>
      wire.coils.length === 1 ? (runs[wire.run]?.name ?? wire.id) : wire.id;
    const side = (which: 'feed' | 'return'): string[] =>
      own.filter(({ run }) => runs[run]?.side === which).map(name);
    const [feed, back] = [side('feed'), side('return')];
    const key = JSON.stringify([feed, back]);
    const known = found.get(key);
    if (known) known.coils.push(id);
    else found.set(key, { coils: [id], feed, back });
  });
  return [...found.values()];
}

/** `Coils 1, 4: battery > main > drop > coil > coil ground > battery` */
export const pathText = ({ coils, feed, back }: Path): string =>
  `Coil${coils.length === 1 ? '' : 's'} ${coils.join(', ')}: ${['battery', ...feed, 'coil', ...back, 'battery'].join(' → ')}`;
