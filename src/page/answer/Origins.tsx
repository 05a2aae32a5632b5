/** Beside the page a panel that shows where a number comes from; the worker works the tree out. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { known, of } from '../../explain/outline.ts';
import type { Told } from '../../explain/tree.ts';
import type { Figure, Nothing } from '../protocol.ts';
import { OriginContext, useBench, useBenchState, useUnits } from '../state/use.ts';
import { Source, Tree } from './Tree.tsx';

/** Holds the panel, so that opening it draws nothing else anew. */
export function Origins({ children }: { readonly children: ComponentChildren }) {
  const [way, go] = useState<readonly Figure[]>([]);
  const [open] = useState(() => (figure: Figure) => go([figure]));
  const asked = way.at(-1);
  return (
    <OriginContext.Provider value={open}>
      {children}
      {asked === undefined ? null : (
        <Panel
          asked={asked}
          further={(figure) => go([...way, figure])}
          back={way.length > 1 ? () => go(way.slice(0, -1)) : null}
          close={() => go([])}
        />
      )}
    </OriginContext.Provider>
  );
}

interface PanelProps {
  readonly asked: Figure;
  readonly further: (figure: Figure) => void;
  readonly back: (() => void) | null;
  readonly close: () => void;
}

function Panel({ asked, further, back, close }: PanelProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const title = useRef<HTMLHeadingElement>(null);
  const answer = useOrigin(asked);
  useEffect(() => dialog.current?.showModal(), []);
  // A reader of the screen starts at the top of each tree.
  useEffect(() => {
    title.current?.focus();
    dialog.current?.scrollTo(0, 0);
  }, [answer]);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: a press beside the panel closes it, as Escape does
    <dialog
      ref={dialog}
      class="panel"
      aria-labelledby="origin"
      onClose={close}
      onClick={(event) => event.target === event.currentTarget && event.currentTarget.close()}
    >
      <div class="inside">
        <div class="headline">
          <h2 id="origin" ref={title} tabIndex={-1}>
            {answer !== null && 'label' in answer
              ? `${answer.label}${of(answer)}: ${known(answer.text)}`
              : 'Where it comes from'}
          </h2>
          <span class="buttons">
            {back === null ? null : (
              <button type="button" onClick={back}>
                Back
              </button>
            )}
            <button type="button" onClick={() => dialog.current?.close()}>
              Close
            </button>
          </span>
        </div>
        <Shown answer={answer} further={further} />
      </div>
    </dialog>
  );
}

function Shown({
  answer,
  further,
}: { readonly answer: Told | Nothing | null } & Pick<PanelProps, 'further'>) {
  if (answer === null) return <p class="quiet">Being worked out …</p>;
  if ('why' in answer) return <p>{answer.why}</p>;
  return (
    <>
      <p>
        <Source told={answer} />
      </p>
      <Tree told={answer} further={further} />
    </>
  );
}

/** The tree of a number; null while it is worked out. */
function useOrigin(asked: Figure): Told | Nothing | null {
  const bench = useBench();
  const { view } = useBenchState('view');
  const [answer, set] = useState<Told | Nothing | null>(null);
  const units = useUnits();
  useEffect(() => {
    let wanted = true;
    set(null);
    bench.client.call('explain', { ...asked, units }).then(
      (reply) => wanted && set(reply),
      (error: Error) =>
        wanted && set({ why: `The tool failed on this number. The fault is in the tool: ${error.message}` }),
    );
    return () => {
      wanted = false;
    };
  }, [bench, asked, units, view]);
  return answer;
}
