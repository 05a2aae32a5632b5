/** Two places that a meter is held between, by name: which conductors lie between them. */

/** What is needed of a run. */
interface Carrying {
  readonly run?: string | undefined;
  readonly carries?: 'all' | 'each' | readonly (string | undefined)[] | undefined;
}

/** The conductors that a coil is fed, or returned, through, as the current meets them. */
const chainOf = (runs: readonly (Carrying | undefined)[], coil: string): string[] =>
  runs.flatMap((run) => {
    const { run: name, carries } = run ?? {};
    if (name === undefined || carries === undefined) return [];
    if (carries === 'each') return [`${name}.${coil}`];
    return carries === 'all' || carries.includes(coil) ? [name] : [];
  });

export const PLACES = 'battery +, battery -, coil 3 +, coil 3 -, or the start or the end of a run: main end';

/** Where a place lies on a chain, counted in conductors; null when it does not. */
function stepOf(
  place: string,
  chain: readonly string[],
  coil: string,
  side: 'feed' | 'return',
): number | null {
  const [plus, minus] = side === 'feed' ? [0, null] : [null, chain.length];
  if (/^battery *(\+|positive)$/i.test(place)) return plus;
  if (/^battery *(-|−|negative)$/i.test(place)) return minus;
  const terminal = /^coil +(.+?) *(\+|-|−)$/i.exec(place);
  if (terminal) {
    if (terminal[1] !== coil) return null;
    if (side === 'feed') return terminal[2] === '+' ? chain.length : null;
    return terminal[2] === '+' ? null : 0;
  }
  const end = /^(.+?) +(start|end)$/i.exec(place);
  const i = end ? chain.indexOf(end[1] as string) : -1;
  return i < 0 ? null : i + (end?.[2]?.toLowerCase() === 'end' ? 1 : 0);
}

/**
 * Ids of the conductors between two places, the first one nearer to battery positive; null when no coil's current flows
 * from the one to the other through conductors of one side.
 */
export function between(
  from: string,
  to: string,
  feed: readonly (Carrying | undefined)[],
  back: readonly (Carrying | undefined)[],
  coils: readonly string[],
): string[] | null {
  for (const side of ['feed', 'return'] as const)
    for (const coil of coils) {
      const chain = chainOf(side === 'feed' ? feed : back, coil);
      const [a, b] = [stepOf(from.trim(), chain, coil, side), stepOf(to.trim(), chain, coil, side)];
      if (a !== null && b !== null && a < b) return chain.slice(a, b);
    }
  return null;
}
