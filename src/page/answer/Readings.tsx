/** An install as found: what to measure and what is acceptable, entries for what was read, and what the readings mean. */
import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import { printRange } from '../../basis/print.ts';
import type { Path } from '../../design/problems.ts';
import { withUnit } from '../form/info.ts';
import { asTyped } from '../form/written.ts';
import { problemsAt, valueAt } from '../place.ts';
import type { CardLine, CheckText } from '../protocol.ts';
import { GoContext, useBench, useBenchState, useGuessed, useReply, useSlow } from '../state/use.ts';
import { LiveMark } from './Mark.tsx';
import { Progress } from './Progress.tsx';
import { Table } from './Table.tsx';

export function Readings() {
  const { tree } = useBenchState('tree');
  const measured = valueAt(tree.value, ['measured']);
  const unknown = useGuessed();
  const some = unknown || (Array.isArray(measured) && measured.length > 0);
  const box = useRef<HTMLElement>(null);
  useStill(box);
  return (
    <section aria-labelledby="readings" class="part-readings" ref={box}>
      <h3 id="readings">Readings on an install</h3>
      {some ? (
        <Meaning />
      ) : (
        <p class="quiet">
          Enter what your instruments show: they are judged, and what explains them is named.
        </p>
      )}
      <Card />
    </section>
  );
}

/** What stands above the card grows and shrinks while readings are entered: the entry at hand stays where it is. */
function useStill(box: { readonly current: HTMLElement | null }): void {
  useEffect(() => {
    const section = box.current;
    if (section === null) return;
    const hand = (): Element | null =>
      document.activeElement instanceof HTMLInputElement && section.contains(document.activeElement)
        ? document.activeElement
        : null;
    let was: { readonly of: Element | null; readonly top: number } = { of: null, top: 0 };
    const look = (): void => {
      const of = hand();
      was = { of, top: of?.getBoundingClientRect().top ?? 0 };
    };
    const grown = new ResizeObserver(() => {
      const of = hand();
      if (of !== null && of === was.of) {
        const top = of.getBoundingClientRect().top - was.top;
        // On a narrow screen the page itself scrolls, else the answer.
        for (const scrolled of [section.closest('.answer'), window])
          scrolled?.scrollBy({ top, behavior: 'instant' });
      }
      look();
    });
    grown.observe(section);
    section.addEventListener('focusin', look);
    document.addEventListener('scroll', look, { capture: true, passive: true });
    return () => {
      grown.disconnect();
      section.removeEventListener('focusin', look);
      document.removeEventListener('scroll', look, { capture: true });
    };
  }, [box]);
}

/** What the readings come to. */
function Meaning() {
  const [found, stop] = useSlow('check', {}, '');
  if (found.is !== 'done') return <Progress of={found} what="Readings are being weighed" stop={stop} />;
  return <Told check={found.reply} />;
}

const STANDS: Readonly<Record<string, string>> = { within: '✓ within', low: '✕ low', high: '✕ high' };

function Told({ check }: { readonly check: CheckText }) {
  return (
    <div class="check">
      <p class="word">
        <LiveMark verdict={check.verdict} /> <span class="quiet">{check.line}</span>
      </p>
      {check.unknown.length > 0 ? (
        <>
          <h4>What is not known, most decisive first</h4>
          <ul>
            {check.unknown.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </>
      ) : null}
      {check.causes.length > 0 ? (
        <>
          <h4>What it is</h4>
          <ul class="causes">
            {check.causes.map(({ text, share }) => (
              <li key={text}>
                {share === '' ? null : <b>{share}</b>} {text}
              </li>
            ))}
            {check.sound === '' ? null : (
              <li>
                <b>{check.sound}</b> nothing is wrong
              </li>
            )}
          </ul>
        </>
      ) : null}
      {check.next === '' ? null : (
        <>
          <h4>What to measure next</h4>
          <p>{check.next}</p>
        </>
      )}
      {check.mend.length > 0 ? (
        <>
          <h4>What to mend, worst first</h4>
          <ol>
            {check.mend.map(({ title, says, detail, cost }) => (
              <li key={`${title} ${says}`}>
                <b>{title}.</b> {says} <span class="quiet">{[detail, cost].filter(Boolean).join(' ')}</span>
              </li>
            ))}
          </ol>
        </>
      ) : null}
      <ul class="causes">
        {check.readings.map(({ where, stands, text }) => (
          <li key={where}>
            <b>{STANDS[stands] ?? stands}</b> {where}
            {text === '' ? '' : `: ${text}`}
          </li>
        ))}
      </ul>
      {check.why === '' ? null : <p class="quiet">{check.why}</p>}
      {check.unseen.length > 0 ? (
        <details>
          <summary>What these readings would not show</summary>
          <ul>
            {check.unseen.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  );
}

/** The test card where it is open. */
function Card() {
  const [open, unfold] = useState(false);
  return (
    <details onToggle={(event) => unfold((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>What to measure, what is acceptable, and what was read</summary>
      {open ? <Lines /> : null}
    </details>
  );
}

/** The lines of the test card, with an entry in each that takes a number. */
function Lines() {
  const lines = useReply('testcard', null, 'testcard', 0).reply ?? [];
  const [hand, take] = useState<CardLine | null>(null);
  if ('why' in lines) return <p class="problem">{lines.why}</p>;
  return (
    <>
      <Table
        caption="Test card"
        told
        columns={[
          { title: 'What' },
          { title: 'at' },
          { title: 'with', whole: true },
          { title: 'probes' },
          { title: 'acceptable', number: true },
          { title: 'read' },
        ]}
        rows={lines.map((line) => ({
          key: `${line.where} ${line.point} ${line.instrument}`,
          cells: [
            line.where,
            line.point,
            line.instrument,
            line.probes,
            rangeOf(line),
            line.entry === null ? (
              <span class="quiet">by its form</span>
            ) : (
              <Entry key={line.key} line={line} entry={line.entry} take={take} />
            ),
          ],
        }))}
      />
      <Help line={hand} />
    </>
  );
}

/** Place of the help below the card. */
const HELP = 'card-help';

/** What is acceptable at the entry at hand, and what is wrong with a reading: in a place of its own, so that nothing moves. */
function Help({ line }: { readonly line: CardLine | null }) {
  const go = useContext(GoContext);
  const { problems } = useBenchState('problems');
  const [wrong] = problemsAt(problems, ['measured'], true);
  return (
    <div class="card-help">
      {wrong === undefined ? null : (
        <p class="problem">
          ✕{' '}
          <button type="button" class="link problem" onClick={() => go(wrong)}>
            {wrong.key}
          </button>{' '}
          {wrong.found}; {wrong.taken}
        </p>
      )}
      <p id={HELP}>
        {line === null ? (
          <span class="quiet">A bare number takes the unit of its line.</span>
        ) : (
          <>
            <b>{[line.where, line.point, line.instrument].filter(Boolean).join(', ')}</b>: acceptable{' '}
            {rangeOf(line)} <span class="quiet">{line.probes}</span>{' '}
            <a href="#readings">What the readings mean</a>
          </>
        )}
      </p>
    </div>
  );
}

const rangeOf = ({ low, high, unit }: CardLine): string => `${printRange(low, high)} ${unit}`;

interface EntryProps {
  readonly line: CardLine;
  readonly entry: Readonly<Record<string, string>>;
  readonly take: (line: CardLine) => void;
}

/** A reading of the design, or one to come. */
function Entry({ line, entry, take }: EntryProps) {
  const bench = useBench();
  const { tree, problems } = useBenchState('tree', 'problems');
  const measured = valueAt(tree.value, ['measured']);
  const all: unknown[] = Array.isArray(measured) ? measured : [];
  const at = all.findIndex(
    (one) =>
      valueAt(one, [line.key]) !== undefined &&
      ['what', 'run', 'coil', 'point'].every((key) => asTyped(valueAt(one, [key])) === (entry[key] ?? '')),
  );
  const [draft, setDraft] = useState<string | null>(null);
  const write = (): void => {
    if (draft === null) return;
    setDraft(null);
    const value = withUnit(draft.trim(), line.takes);
    const path: Path = ['measured', at];
    if (value === '' && at >= 0) bench.edit(all.length === 1 ? ['measured'] : path, undefined);
    else if (value !== '' && at >= 0) bench.edit([...path, line.key], value);
    else if (value !== '') {
      const reading = { ...entry, [line.key]: value };
      if (all.length === 0) bench.edit(['measured'], [reading]);
      else bench.rearrange(['measured'], { put: reading, at: all.length });
    }
  };
  return (
    <input
      type="text"
      class="entry"
      aria-label={`${line.where} ${line.point}, ${line.instrument}, ${line.unit}`}
      placeholder={line.unit}
      disabled={!tree.sound}
      aria-invalid={at >= 0 && draft === null && problemsAt(problems, ['measured', at], true).length > 0}
      aria-describedby={HELP}
      onFocus={() => take(line)}
      value={draft ?? (at < 0 ? '' : asTyped(valueAt(all[at], [line.key])))}
      {...(draft === null ? {} : { 'data-typed': '' })}
      onInput={(event) => setDraft(event.currentTarget.value)}
      onBlur={write}
      onKeyDown={(event) => event.key === 'Enter' && write()}
    />
  );
}
