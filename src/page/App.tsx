/** The page: the design on one side, the answer on the other; on a phone one of the two, by a switch in reach of the thumb. */
import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { Answer } from './answer/Answer.tsx';
import { Spoken } from './answer/Spoken.tsx';
import { Design } from './form/Design.tsx';
import type { Given } from './protocol.ts';
import { Banners } from './shell/Banners.tsx';
import { useDrop } from './shell/drop.ts';
import { useKeys, useSight } from './shell/keys.ts';
import { Start } from './shell/Start.tsx';
import { Toolbar } from './shell/Toolbar.tsx';
import {
  GoContext,
  PatientContext,
  type To,
  useBench,
  useBenchState,
  useOf,
  useStanding,
  useVerdict,
} from './state/use.ts';

export type Side = 'design' | 'answer';

export function App({ demos }: { readonly demos: readonly Given[] }) {
  const bench = useBench();
  const { look } = useBenchState('look');
  const [side, turn] = useSides();
  const [to, go] = useState<To | null>(null);
  const [said, say] = useState('');
  const [starting, start] = useState(false);
  useEffect(() => {
    document.documentElement.dataset.look = look;
  }, [look]);
  useKeys(bench);
  useSight();
  const over = useDrop(bench, say);
  return (
    <GoContext.Provider
      value={(where) => {
        turn('design');
        go({ ...where });
      }}
    >
      <a class="skip" href="#answer">
        To the answer
      </a>
      <header>
        <h1>
          coilfeed <span>bench</span>
        </h1>
        <Toolbar demos={demos} said={said} say={say} start={() => start(true)} />
        <p class="motto">
          Sizes and checks the wires, fuse and relay that feed ignition coils: change the design, and the
          answer follows.
        </p>
      </header>
      <Banners start={() => start(true)} />
      {starting ? (
        <Start
          close={() => start(false)}
          done={() => {
            turn('answer');
            document.getElementById('answer')?.focus();
          }}
        />
      ) : null}
      <Main side={side} over={over}>
        <PatientContext.Provider value={true}>
          <Design to={to} />
        </PatientContext.Provider>
        <Answer />
      </Main>
      <Spoken />
      <Title />
      <Turn side={side} turn={turn} />
    </GoContext.Provider>
  );
}

/** Where one of the two sides is shown, each stays where it was scrolled to. */
function useSides(): [Side, (side: Side) => void] {
  const [side, set] = useState<Side>('answer');
  const tops = useRef<Partial<Record<Side, number>>>({});
  useLayoutEffect(() => {
    const top = tops.current[side];
    // At the start there is nothing to scroll, and to ask for it takes a layout.
    if (top !== undefined) scrollTo({ top, behavior: 'instant' });
  }, [side]);
  const turn = (next: Side): void => {
    tops.current = { [next]: 0, ...tops.current, [side]: scrollY };
    set(next);
  };
  return [side, turn];
}

interface MainProps {
  readonly side: Side;
  readonly over: boolean;
  readonly children: ComponentChildren;
}

/** Says how far the answer is, and draws nothing of it anew. */
function Main({ side, over, children }: MainProps) {
  const { answers, busy, moving } = useBenchState('answers', 'busy', 'moving');
  return (
    <main data-answers={answers} data-busy={busy || moving} data-side={side} class={over ? 'taking' : ''}>
      {children}
    </main>
  );
}

/** The title of the window. */
function Title() {
  const { view } = useBenchState('view');
  const standing = useStanding();
  const verdict = useVerdict();
  // With the verdict, and not after it is painted.
  useLayoutEffect(() => {
    document.title =
      standing === 'working'
        ? 'Working – coilfeed bench'
        : standing !== 'current'
          ? 'Not current – coilfeed bench'
          : view === null
            ? 'coilfeed bench'
            : `${verdict === 'open' ? 'Working' : verdict.toUpperCase()} – ${view.json.title} – coilfeed bench`;
  }, [standing, verdict, view]);
  return null;
}

interface TurnProps {
  readonly side: Side;
  readonly turn: (side: Side) => void;
}

/** Design or answer, on a screen that has room for one of them. */
function Turn({ side, turn }: TurnProps) {
  const wrong = useOf(({ problems }) => problems.length);
  return (
    <nav class="turn switch" aria-label="What is shown">
      <button type="button" aria-pressed={side === 'design'} onClick={() => turn('design')}>
        Design{wrong > 0 ? <span class="badge"> {wrong} to mend</span> : null}
      </button>
      <button type="button" aria-pressed={side === 'answer'} onClick={() => turn('answer')}>
        Answer
      </button>
    </nav>
  );
}
