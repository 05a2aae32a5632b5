/** The page: the design on one side, the answer on the other. */
import { useEffect, useState } from 'preact/hooks';
import { Assumed, Cautions } from './answer/Assumed.tsx';
import { Buy } from './answer/Buy.tsx';
import { Compare } from './answer/Compare.tsx';
import { cellOf, Figures } from './answer/Figures.tsx';
import { Findings } from './answer/Findings.tsx';
import { Mark } from './answer/Mark.tsx';
import { VerdictPanel } from './answer/Verdict.tsx';
import { Problems } from './form/Problems.tsx';
import { Sections } from './form/Sections.tsx';
import { TextView } from './form/TextView.tsx';
import { Drawn } from './pictures/Drawn.tsx';
import { Feed } from './pictures/Feed.tsx';
import { Speed } from './pictures/Speed.tsx';
import { Trace } from './pictures/Trace.tsx';
import { Wiring } from './pictures/Wiring.tsx';
import type { View } from './protocol.ts';
import { Settings } from './shell/Settings.tsx';
import { type Demo, Toolbar } from './shell/Toolbar.tsx';
import { useBench, useBenchState, useShown } from './state/use.ts';

export function App({ demos }: { readonly demos: readonly Demo[] }) {
  const bench = useBench();
  const { look, view, failed, offered, answers, busy } = useBenchState();
  const narrow = useNarrow();
  useEffect(() => {
    document.documentElement.dataset.look = look;
  }, [look]);
  useEffect(() => {
    const keys = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key === 'z' && !event.shiftKey) bench.undo();
      else if (key === 'y' || (key === 'z' && event.shiftKey)) bench.redo();
      else return;
      event.preventDefault();
    };
    document.addEventListener('keydown', keys);
    return () => document.removeEventListener('keydown', keys);
  }, [bench]);
  // One below the other the answer comes first; the order for the keyboard is that for the eye.
  const design = <Design key="design" />;
  const answer = (
    <div key="answer" id="answer" class="answer" tabIndex={-1}>
      {view === null ? <p class="quiet">The first answer takes a second or two …</p> : <Answer view={view} />}
    </div>
  );
  return (
    <>
      <a class="skip" href="#answer">
        To the answer
      </a>
      <header>
        <h1>
          coilfeed <span>bench</span>
        </h1>
        <Toolbar demos={demos} />
      </header>
      <Status />
      {failed === null ? null : (
        <p class="banner" role="alert">
          The tool failed on this design. The fault is in the tool, not in the design: {failed}
        </p>
      )}
      {offered === null ? null : (
        <p class="banner" role="alert">
          This page did not finish loading last time, so it has opened its own design.{' '}
          <button type="button" onClick={() => bench.takeOffered()}>
            Open the stored design anyway
          </button>{' '}
          <button type="button" onClick={() => bench.clear()}>
            Forget it
          </button>
        </p>
      )}
      <main data-answers={answers} data-busy={busy}>
        {narrow ? [answer, design] : [design, answer]}
      </main>
      <footer>
        <Settings />
      </footer>
    </>
  );
}

/** The width below which both sides stand one below the other; the style has it, too. */
const NARROW = '(max-width: 900px)';

function useNarrow(): boolean {
  const [narrow, set] = useState(() => matchMedia(NARROW).matches);
  useEffect(() => {
    const media = matchMedia(NARROW);
    const follow = (): void => set(media.matches);
    media.addEventListener('change', follow);
    return () => media.removeEventListener('change', follow);
  }, []);
  return narrow;
}

/** The verdict in a line that stays in sight on a small screen. */
function Status() {
  const { view } = useBenchState();
  return view === null ? null : <Summary view={view} />;
}

function Summary({ view }: { readonly view: View }) {
  const { problems } = useBenchState();
  const { feed } = useShown(view);
  return (
    <nav class="status" aria-label="Summary">
      <a href="#answer">
        <Mark verdict={view.json.verdict} />
      </a>
      {feed.heads.map(({ key, label }, i) =>
        key === 'drop_V' || key === 'energy_kept' ? (
          <span key={key}>
            {label} {cellOf(feed, 0, i)}
          </span>
        ) : null,
      )}
      {problems.length > 0 ? <a href="#design">{problems.length} to mend</a> : null}
    </nav>
  );
}

function Design() {
  const [text, setText] = useState(false);
  return (
    <section class="design" aria-labelledby="design">
      <div class="headline">
        <h2 id="design">Design</h2>
        <fieldset class="switch" aria-label="How the design is shown">
          <button type="button" aria-pressed={!text} onClick={() => setText(false)}>
            Forms
          </button>
          <button type="button" aria-pressed={text} onClick={() => setText(true)}>
            Text
          </button>
        </fieldset>
      </div>
      <Problems showText={() => setText(true)} />
      {text ? <TextView /> : <Sections />}
    </section>
  );
}

function Tables({ view }: { readonly view: View }) {
  const { wire, load, coil, point } = useShown(view).tables;
  return (
    <>
      <Figures table={coil} />
      <Figures table={wire} />
      <Figures table={load} />
      <Figures table={point} />
    </>
  );
}

function Answer({ view }: { readonly view: View }) {
  return (
    <>
      <VerdictPanel view={view} />
      <section aria-labelledby="buy">
        <h3 id="buy">What to buy</h3>
        <Buy view={view} />
        <Feed view={view} />
      </section>
      <Findings view={view} />
      <section aria-labelledby="currents">
        <h3 id="currents">Currents and drops</h3>
        <Tables view={view} />
        <Drawn kind="drop" />
      </section>
      <section aria-labelledby="speed">
        <h3 id="speed">Over engine speed</h3>
        <Speed view={view} />
      </section>
      <section aria-labelledby="trace">
        <h3 id="trace">In time</h3>
        <Trace view={view} />
      </section>
      <section aria-labelledby="curves">
        <h3 id="curves">Fuse against conductor</h3>
        <Drawn kind="curves" />
      </section>
      <Compare view={view} />
      <section aria-labelledby="wiring" class="no-print">
        <h3 id="wiring">Wiring diagram</h3>
        <Wiring />
      </section>
      <Assumed view={view} />
      <Cautions />
    </>
  );
}
