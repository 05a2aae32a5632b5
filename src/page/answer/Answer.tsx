/** The answer: the verdict and the feed first, then everything behind them, with links that stay in sight. */
import { Drawn } from '../pictures/Drawn.tsx';
import { Feed } from '../pictures/Feed.tsx';
import { Speed } from '../pictures/Speed.tsx';
import { Trace } from '../pictures/Trace.tsx';
import { Wiring } from '../pictures/Wiring.tsx';
import type { View } from '../protocol.ts';
import { PatientContext, useBenchState, useCurrent, useShown } from '../state/use.ts';
import { Assumed, Cautions } from './Assumed.tsx';
import { Budget } from './Budget.tsx';
import { Buy } from './Buy.tsx';
import { Compare } from './Compare.tsx';
import { Figures } from './Figures.tsx';
import { Findings } from './Findings.tsx';
import { Inputs } from './Inputs.tsx';
import { Kit } from './Kit.tsx';
import { Readings } from './Readings.tsx';
import { Sliders } from './Sliders.tsx';
import { VerdictPanel } from './Verdict.tsx';

const LINKS = [
  ['verdict', 'Verdict'],
  ['feed', 'Feed'],
  ['buy', 'Buy'],
  ['findings', 'Findings'],
  ['currents', 'Currents'],
  ['speed', 'Over speed'],
  ['trace', 'In time'],
  ['curves', 'Fuses'],
  ['readings', 'Readings'],
  ['compare', 'Compare'],
  ['wiring', 'Wiring'],
  ['kit', 'Kit'],
  ['cautions', 'Cautions'],
] as const;

export function Answer() {
  const current = useCurrent();
  return (
    <div id="answer" class={`answer ${current ? '' : 'stale'}`} tabIndex={-1}>
      <nav class="links" aria-label="Parts of the answer">
        {LINKS.map(([id, name]) => (
          <a key={id} href={`#${id}`}>
            {name}
          </a>
        ))}
      </nav>
      {current ? null : <p class="notcurrent">Not current: do not build from this</p>}
      <First />
      <PatientContext.Provider value={true}>
        <Behind />
      </PatientContext.Provider>
    </div>
  );
}

/** What follows a slider at every step. */
function First() {
  const { view } = useBenchState('view');
  return (
    <>
      <VerdictPanel view={view} />
      {view === null ? null : (
        <section aria-labelledby="feed" class="part-feed">
          <Feed view={view} />
          <Sliders view={view} />
          <Budget view={view} />
        </section>
      )}
    </>
  );
}

function Behind() {
  const { view } = useBenchState('view');
  return view === null ? null : <Whole view={view} />;
}

function Whole({ view }: { readonly view: View }) {
  const { coil, wire, load, point } = useShown(view).tables;
  return (
    <>
      <Section id="buy" title="What to buy">
        <Buy view={view} />
      </Section>
      <Inputs />
      <Findings view={view} />
      <Section id="currents" title="Currents and drops">
        <Figures table={coil} />
        <Figures table={wire} />
        <Figures table={load} />
        <Figures table={point} />
        <Drawn kind="drop" />
      </Section>
      <Section id="speed" title="Over engine speed">
        <Speed view={view} />
      </Section>
      <Section id="trace" title="In time">
        <Trace view={view} />
      </Section>
      <Section id="curves" title="Fuse against conductor">
        <Drawn kind="curves" />
      </Section>
      <Readings />
      <Compare view={view} />
      <Section id="wiring" title="Wiring diagram">
        <Wiring />
      </Section>
      <Kit />
      <Assumed view={view} />
      <Cautions />
    </>
  );
}

interface SectionProps {
  readonly id: string;
  readonly title: string;
  readonly children: preact.ComponentChildren;
}

const Section = ({ id, title, children }: SectionProps) => (
  <section aria-labelledby={id} class={`part-${id}`}>
    <h3 id={id}>{title}</h3>
    {children}
  </section>
);
