/** An install as found: what to measure and what is acceptable, entries for what was read, and what the readings mean. */
import { useState } from 'preact/hooks';
import type { Path } from '../../design/problems.ts';
import { withUnit } from '../form/info.ts';
import { asTyped } from '../form/written.ts';
import { valueAt } from '../place.ts';
import type { CardLine, CheckText } from '../protocol.ts';
import { useBench, useBenchState, useReply, useSlow } from '../state/use.ts';
import { Mark } from './Mark.tsx';
import { Progress } from './Progress.tsx';
import { Table } from './Table.tsx';

export function Readings() {
  const { tree } = useBenchState('tree');
  const measured = valueAt(tree.value, ['measured']);
  const some = Array.isArray(measured) && measured.length > 0;
  return (
    <section aria-labelledby="readings" class="part-readings">
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
        <Mark verdict={check.verdict} /> <span class="quiet">{check.line}</span>
      </p>
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
  const lines = useReply('testcard', null, 'testcard', 0) ?? [];
  if ('why' in lines) return <p class="problem">{lines.why}</p>;
  return (
    <Table
      caption="Test card"
      told
      columns={[
        { title: 'What' },
        { title: 'at' },
        { title: 'with' },
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
          `${line.low === line.high ? line.low : `${line.low}–${line.high}`} ${line.unit}`,
          line.entry === null ? (
            <span class="quiet">by its form</span>
          ) : (
            <Entry key={line.key} line={line} entry={line.entry} />
          ),
        ],
      }))}
    />
  );
}

interface EntryProps {
  readonly line: CardLine;
  readonly entry: Readonly<Record<string, string>>;
}

/** A reading of the design, or one to come. */
function Entry({ line, entry }: EntryProps) {
  const bench = useBench();
  const { tree } = useBenchState('tree');
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
      value={draft ?? (at < 0 ? '' : asTyped(valueAt(all[at], [line.key])))}
      {...(draft === null ? {} : { 'data-typed': '' })}
      onInput={(event) => setDraft(event.currentTarget.value)}
      onBlur={write}
      onKeyDown={(event) => event.key === 'Enter' && write()}
    />
  );
}
