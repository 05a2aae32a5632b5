/** The state, for components. */
import { createContext } from 'preact';
import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import type { Units } from '../../basis/shown.ts';
import type { Overall } from '../../findings/finding.ts';
import type { Calls, Figure, Given, Kind, Nothing, Owned, Shown, View } from '../protocol.ts';
import {
  type Bench,
  isCurrent,
  type SlowKind,
  type Standing,
  type State,
  standingOf,
  verdictOf,
} from './bench.ts';
import { Stopped } from './client.ts';

export const BenchContext = createContext<Bench | null>(null);

/** Shows where a number comes from. */
export const OriginContext = createContext<(of: Figure) => void>(() => {});

/** A place of the design, for the way to its form: a key, or a line of the text where the forms do not show it. */
export interface To {
  readonly key: string;
  readonly line?: number;
  readonly column?: number;
  /** Of a part that was moved: the button that moved it, to be pressed again. */
  readonly act?: string;
}

/** Leads to the form of a place. */
export const GoContext = createContext<(to: To) => void>(() => {});

/** Whether what is drawn can wait while a slider moves. */
export const PatientContext = createContext(false);

export function useBench(): Bench {
  const bench = useContext(BenchContext);
  if (bench === null) throw new Error('a component stands outside of the page');
  return bench;
}

/** What `of` makes of the state, and again when that is another: what is not concerned is not drawn anew. */
export function useOf<T>(of: (state: State) => T, same: (a: T, b: T) => boolean = Object.is): T {
  const bench = useBench();
  const patient = useContext(PatientContext);
  const [, draw] = useState({});
  const value = of(bench.state);
  const drawn = useRef({ of, value });
  drawn.current = { of, value };
  useEffect(() => {
    const follow = (): void => {
      if (!same(drawn.current.of(bench.state), drawn.current.value)) draw({});
    };
    follow();
    return bench.subscribe(follow, patient);
  }, [bench, patient]);
  return value;
}

/** The parts of the state that are named, and again when one of them changes. */
export const useBenchState = <K extends keyof State>(...keys: readonly K[]): Pick<State, K> =>
  useOf<Pick<State, K>>(
    (state) => state,
    (a, b) => keys.every((key) => a[key] === b[key]),
  );

/** Whether the answer is that of the text at hand. */
export const useCurrent = (): boolean => useOf(isCurrent);
export const useStanding = (): Standing => useOf(standingOf);
/** On the view with the author’s own rules; open as long as they are not evaluated. */
export const useVerdict = (): Overall | 'open' => useOf(verdictOf);

/** Whether parts of the design are not known: figures then stand on the likeliest. */
export const useGuessed = (): boolean =>
  useOf(({ view }) => view !== null && view.design.unknowns.length > 0);

/** The units that are wished for. */
export const useUnits = (): Units =>
  useOf(({ system, view }) => (system === 'design' ? (view?.design.units ?? 'metric') : system));

/** A result as it is read, in the units that are wished for. */
export function useShown({ shown }: View): Shown {
  const wished = shown[useUnits()];
  // Until the answer in other units is there it stands in those that it has.
  return wished ?? (Object.values(shown)[0] as Shown);
}

/** Pictures wait for a pause in typing, so that numbers come first; those out of sight for a longer one [ms]. Arbitrary. */
const PAUSE = 120;
const LONGER = 600;
/** The heading under which a picture stands. */
const HEADINGS: Partial<Readonly<Record<Kind, string>>> = {
  drop: 'currents',
  speed: 'speed',
  trace: 'trace',
  curves: 'curves',
  diagram: 'wiring',
};

/** Whether a picture stands more than a screen away from what is seen. */
function isFar(kind: Kind): boolean {
  const box = document
    .getElementById(HEADINGS[kind] ?? '')
    ?.closest('section')
    ?.getBoundingClientRect();
  return box !== undefined && (box.top > 2 * innerHeight || box.bottom < -innerHeight);
}

export interface Replied<K extends Kind> {
  readonly reply: Calls[K]['reply'] | Nothing | null;
  /** The reply is to an earlier question, or of an earlier answer. */
  readonly late: boolean;
}

/** What is asked of the newest answer, such as a picture, or why there is none; the last reply stays until the next is there. */
export function useReply<K extends Kind>(
  kind: K,
  ask: Calls[K]['ask'],
  key: string,
  pause?: number,
): Replied<K> {
  const bench = useBench();
  const { view } = useBenchState('view');
  const [found, set] = useState<{
    readonly reply: Calls[K]['reply'] | Nothing;
    readonly of: View;
    readonly key: string;
  } | null>(null);
  // `key` stands for what `ask` holds.
  useEffect(() => {
    if (view === null) return;
    let asked = false;
    let wanted = true;
    const take = (reply: Calls[K]['reply'] | Nothing): void => {
      if (!wanted) return;
      bench.drawing.delete(start);
      set({ reply, of: view, key });
    };
    const start = (): void => {
      if (asked) return;
      asked = true;
      bench.client
        .call(kind, ask)
        .then(take, (error: Error) => take({ why: `This could not be worked out: ${error.message}.` }));
    };
    bench.drawing.add(start);
    const clock = setTimeout(start, pause ?? (isFar(kind) ? LONGER : PAUSE));
    return () => {
      wanted = false;
      bench.drawing.delete(start);
      clearTimeout(clock);
    };
  }, [bench, kind, key, view]);
  return { reply: found?.reply ?? null, late: found !== null && (found.of !== view || found.key !== key) };
}

/** Long work waits for a longer pause in typing [ms]. */
const SLOW = 800;

export type Slow<T> =
  | { readonly is: 'waiting' }
  | { readonly is: 'done'; readonly reply: T }
  | { readonly is: 'stopped'; readonly again: () => void }
  | { readonly is: 'failed'; readonly why: string; readonly again: () => void };

/** Long work on the newest answer; with a way to give it up. `wanted` says whether anybody looks at it. */
export function useSlow<K extends SlowKind>(
  kind: K,
  more: Omit<Calls[K]['ask'], keyof (Given & Owned)>,
  key: string,
  wanted = true,
): [Slow<Calls[K]['reply']>, () => void] {
  const bench = useBench();
  const { view } = useBenchState('view');
  const [state, set] = useState<Slow<Calls[K]['reply']>>({ is: 'waiting' });
  const [round, start] = useState(0);
  const again = (): void => start(round + 1);
  const cancel = useRef(() => {});
  // `key` stands for what `more` holds.
  useEffect(() => {
    if (view === null || !wanted) return;
    let current = true;
    set({ is: 'waiting' });
    const clock = setTimeout(() => {
      bench.slow(kind, more).then(
        (reply) => current && set({ is: 'done', reply }),
        (error: Error) =>
          current &&
          // Stopped by another one beside, whose worker this one shares.
          set(
            error instanceof Stopped ? { is: 'stopped', again } : { is: 'failed', why: error.message, again },
          ),
      );
    }, SLOW);
    cancel.current = () => {
      current = false;
      clearTimeout(clock);
    };
    return cancel.current;
  }, [bench, kind, key, view, wanted, round]);
  return [
    state,
    () => {
      cancel.current();
      bench.stop();
      set({ is: 'stopped', again });
    },
  ];
}
