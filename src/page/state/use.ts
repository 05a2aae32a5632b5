/** The state, for components. */
import { createContext } from 'preact';
import { useContext, useEffect, useState } from 'preact/hooks';
import type { Calls, Figure, Kind, Shown, View } from '../protocol.ts';
import type { Bench, State } from './bench.ts';

export const BenchContext = createContext<Bench | null>(null);

/** Shows where a number comes from. */
export const OriginContext = createContext<(of: Figure) => void>(() => {});

export function useBench(): Bench {
  const bench = useContext(BenchContext);
  if (bench === null) throw new Error('a component stands outside of the page');
  return bench;
}

/** The state, and again whenever it changes. */
export function useBenchState(): State {
  const bench = useBench();
  const [state, set] = useState(bench.state);
  useEffect(() => {
    set(bench.state);
    return bench.subscribe(() => set(bench.state));
  }, [bench]);
  return state;
}

/** A result as it is read, in the units that are wished for. */
export function useShown(view: View): Shown {
  const { system } = useBenchState();
  return view.shown[system === 'design' ? view.design.units : system];
}

/** Pictures wait for a pause in typing, so that numbers come first [ms]. */
const PAUSE = 120;

/** A picture of the newest design; the last one stays until the next is there. */
export function usePicture<K extends Kind>(
  kind: K,
  ask: Calls[K]['ask'],
  key: string,
  pause = PAUSE,
): Calls[K]['reply'] | null {
  const bench = useBench();
  const { view } = useBenchState();
  const [picture, set] = useState<Calls[K]['reply'] | null>(null);
  // `key` stands for what `ask` holds.
  useEffect(() => {
    if (view === null) return;
    let wanted = true;
    const clock = setTimeout(() => {
      bench.client.call(kind, ask).then(
        (reply) => wanted && set(reply),
        // A fault of the tool shows where the design is answered; a picture that is missing adds nothing to it.
        () => wanted && set(null),
      );
    }, pause);
    return () => {
      wanted = false;
      clearTimeout(clock);
    };
  }, [bench, kind, key, view]);
  return picture;
}
