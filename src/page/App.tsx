/** The page: the design on one side, the answer on the other; on a phone one of the two, by a switch in reach of the thumb. */
import { useEffect, useState } from 'preact/hooks';
import { Answer } from './answer/Answer.tsx';
import { Spoken } from './answer/Spoken.tsx';
import { Design } from './form/Design.tsx';
import { Banners } from './shell/Banners.tsx';
import { useDrop } from './shell/drop.ts';
import type { Demo } from './shell/files.ts';
import { useKeys } from './shell/keys.ts';
import { Toolbar } from './shell/Toolbar.tsx';
import { isCurrent } from './state/bench.ts';
import { GoContext, type To, useBench, useBenchState } from './state/use.ts';

export type Side = 'design' | 'answer';

export function App({ demos }: { readonly demos: readonly Demo[] }) {
  const bench = useBench();
  const { look, view, answers, busy, problems, failed } = useBenchState();
  const [side, turn] = useState<Side>('answer');
  const [to, go] = useState<To | null>(null);
  const [said, say] = useState('');
  const current = isCurrent({ problems, failed });
  useEffect(() => {
    document.documentElement.dataset.look = look;
  }, [look]);
  useEffect(() => {
    document.title = !current
      ? 'Not current – coilfeed bench'
      : view === null
        ? 'coilfeed bench'
        : `${view.json.verdict.toUpperCase()} – ${view.json.title} – coilfeed bench`;
  }, [current, view]);
  useKeys(bench);
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
        <Toolbar demos={demos} said={said} say={say} />
        <p class="motto">
          Sizes and checks the wires, fuse and relay that feed ignition coils: change the design, and the
          answer follows.
        </p>
      </header>
      <Banners />
      <main data-answers={answers} data-busy={busy} data-side={side} class={over ? 'over' : ''}>
        <Design to={to} />
        <Answer />
      </main>
      <Spoken />
      <Turn side={side} turn={turn} wrong={problems.length} />
    </GoContext.Provider>
  );
}

interface TurnProps {
  readonly side: Side;
  readonly turn: (side: Side) => void;
  readonly wrong: number;
}

/** Design or answer, on a screen that has room for one of them. */
const Turn = ({ side, turn, wrong }: TurnProps) => (
  <nav class="turn switch" aria-label="What is shown">
    <button type="button" aria-pressed={side === 'design'} onClick={() => turn('design')}>
      Design{wrong > 0 ? <span class="badge"> {wrong} to mend</span> : null}
    </button>
    <button type="button" aria-pressed={side === 'answer'} onClick={() => turn('answer')}>
      Answer
    </button>
  </nav>
);
