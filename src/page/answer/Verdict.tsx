/** The verdict with what limits, and the figures of the whole feed; or what keeps it from being that of the design at hand. */
import { useContext, useEffect } from 'preact/hooks';
import type { Problem } from '../../design/problems.ts';
import { hasOwn } from '../../own/found.ts';
import { verdictCounts } from '../../writers/verdict.ts';
import type { FindingText, View } from '../protocol.ts';
import { chooseFile } from '../shell/files.ts';
import { isOther, ownOf } from '../state/bench.ts';
import {
  GoContext,
  useBenchState,
  useOf,
  useShown,
  useSlow,
  useStanding,
  useUnits,
  useVerdict,
} from '../state/use.ts';
import { cellOf } from './Figures.tsx';
import { Margin } from './Margin.tsx';
import { Mark } from './Mark.tsx';
import { Origin } from './Origin.tsx';
import { Progress } from './Progress.tsx';

/** Limits that are named. Arbitrary: what one takes in at a glance. */
const NAMED = 3;
/** Faults that are listed: of a text of a megabyte there can be more than a page can show. Arbitrary. */
const LISTED = 100;

export function VerdictPanel({ view }: { readonly view: View | null }) {
  const { history, answers } = useBenchState('history', 'answers');
  const standing = useStanding();
  const verdict = useVerdict();
  const other = useOf(isOther);
  const current = standing === 'current';
  const working = standing === 'working';
  if (view === null)
    return (
      <section class={`verdict ${current || working ? 'unknown' : 'off'}`} aria-labelledby="verdict">
        <h2 id="verdict">{current ? 'coilfeed bench' : history.now.file}</h2>
        {current ? (
          <p class="quiet">The first answer takes a second …</p>
        ) : working ? (
          <p class="quiet">Working …</p>
        ) : (
          <NotCurrent />
        )}
      </section>
    );
  const { title } = view.json;
  return (
    <section
      class={`verdict ${current && verdict !== 'open' ? verdict : current || working ? '' : 'off'}`}
      aria-labelledby="verdict"
    >
      {/* Nothing of the design before stands beside the name of another file. */}
      <h2 id="verdict">{other ? history.now.file : title}</h2>
      {current || working ? <Word view={view} working={working} /> : <NotCurrent />}
      {(current || working) && view.json.verdict === 'fail' ? (
        <div class={working ? 'gone' : ''}>
          <Remedies key={answers} />
        </div>
      ) : null}
      <Whole view={view} />
    </section>
  );
}

/** While another answer is worked out its words stand in the place of the verdict, and nothing else moves. */
function Word({ view, working }: { readonly view: View; readonly working: boolean }) {
  const { findings } = useShown(view);
  const verdict = useVerdict();
  const own = useOf(ownOf);
  const open = findings.filter((f) => f.verdict === verdict && f.verdict !== 'pass');
  const unknown = view.design.unknowns.length;
  const rows = own?.judged?.rows ?? [];
  const theirs = rows.filter((row) => row.verdict === verdict && verdict !== 'pass').slice(0, NAMED);
  const some = open.length + theirs.length > 0;
  const limits = (some ? open : byMargin(findings)).slice(0, NAMED - theirs.length);
  return (
    <div class={`told ${working ? 'gone' : ''}`}>
      <p class="word">
        {working || verdict === 'open' ? (
          <span class="mark working">Working</span>
        ) : (
          <Mark verdict={verdict} />
        )}
        <span class="quiet">
          {unknown > 0 ? 'on the likeliest: ' : ''}
          {verdictCounts(findings, rows)}
          {hasOwn(view.design) && own === null ? '; the author’s own rules are being worked out' : ''}
        </span>
      </p>
      {unknown > 0 ? (
        <p class="problem">
          {unknown === 1 ? 'One part is' : `${unknown} parts are`} not known: figures stand on the likeliest
          in {unknown === 1 ? 'its' : 'their'} place. See the <a href="#readings">readings</a>.
        </p>
      ) : null}
      {own?.why ? (
        <p class="problem">The author’s own rules could not be worked out here: {own.why}.</p>
      ) : null}
      <ul class="limits" aria-label={some ? `What makes it ${verdict}` : 'What limits'}>
        {limits.map((f) => (
          <Limit key={`${f.rule} ${f.subject}`} f={f} view={view} />
        ))}
        {theirs.map(({ text }, i) => (
          <li key={i} class="theirs">
            The author’s own rule: {text}
          </li>
        ))}
      </ul>
    </div>
  );
}

const byMargin = (findings: readonly FindingText[]): FindingText[] =>
  findings
    .filter((f) => f.verdict === 'pass' && f.margin !== null && Number.isFinite(f.margin))
    .sort((a, b) => (a.margin as number) - (b.margin as number));

/** `Drop: worst coil’s path, coil 8 at limiter: 0.488 V of ≤ 0.5 V` */
function Limit({ f, view: { json } }: { readonly f: FindingText; readonly view: View }) {
  const { worst_coil: coil, worst_point: point } = json.totals;
  const where = f.rule === 'drop' ? `coil ${coil ?? '–'} at ${point ?? '–'}` : f.subject;
  return (
    <li class={f.verdict}>
      <span>
        {f.title}
        {where === '' ? '' : `, ${where}`}
      </span>{' '}
      {f.value === '' ? null : (
        <span class="measure">
          <Origin of={f.origins.value} label={`${f.title} ${f.value}`}>
            {f.value}
          </Origin>{' '}
          <span class="quiet">
            <Origin of={f.origins.limit} label={`Limit ${f.limit}`}>
              {f.limit}
            </Origin>
          </span>
        </span>
      )}
      {f.margin === null || !Number.isFinite(f.margin) ? null : (
        <Margin share={f.margin} marginal={f.marginal} />
      )}
    </li>
  );
}

const placeOf = ({ file, line, column, key }: Problem): string => `${file}:${line}:${column} ${key}`;

/** What is wrong with the text, with the way to it, and what was taken in its place. */
function NotCurrent() {
  const go = useContext(GoContext);
  const { problems, beside, held, failed, view, shop } = useBenchState(
    'problems',
    'beside',
    'held',
    'failed',
    'view',
    'shop',
  );
  const own = useOf(ownOf);
  // A design that was opened alone names a file that stands beside it on disk; one that was opened may have faults.
  const alone = beside.length > 0 || (shop === null && problems.some(({ key }) => key === 'shop'));
  const all = [...problems, ...beside];
  const count = all.length;
  return (
    <div class="told" role="status">
      <p class="word">
        <span class="mark off">
          {failed === null
            ? `Not current: ${count === 1 ? '1 thing' : `${count} things`} to mend`
            : 'Not current: the tool failed'}
        </span>
      </p>
      <ol class="problems">
        {all.slice(0, LISTED).map((p) => (
          <li key={`${p.file}:${p.line}:${p.column} ${p.key} ${p.found}`}>
            {problems.includes(p) ? (
              <button type="button" class="link" onClick={() => go(p)}>
                {placeOf(p)}
              </button>
            ) : (
              // Of the shop's file there is no form.
              placeOf(p)
            )}
            : {p.found}; {p.taken}
          </li>
        ))}
        {count > LISTED ? <li>and {count - LISTED} more</li> : null}
      </ol>
      {alone ? <OpenShop /> : null}
      {held.length > 0 ? (
        <p>
          What follows takes{' '}
          {held.map(({ key, value }, i) => (
            <span key={key}>
              {i > 0 ? '; ' : ''}
              <code>{key}</code> {value === '' ? 'as left out' : value}
            </span>
          ))}
          , as it could be read last, and everything else as it stands.
        </p>
      ) : view === null ? (
        <p>The answer comes once that is mended.</p>
      ) : own !== null && own.judged !== null && own.judged.problems.length > 0 ? (
        <p>What follows is worked out without it.</p>
      ) : (
        <p>What follows is of an earlier text: it does not follow what is typed.</p>
      )}
    </div>
  );
}

/** Whoever opened the file from here goes on with the answer: the button goes before that is there. */
function OpenShop() {
  useEffect(
    () => () => {
      if (document.activeElement === document.body) document.getElementById('answer')?.focus();
    },
    [],
  );
  return (
    <p>
      <button type="button" onClick={chooseFile}>
        Open the shop’s file …
      </button>
    </p>
  );
}

function Whole({ view }: { readonly view: View }) {
  const { feed } = useShown(view);
  // Of an alternator that is not stated there is no share.
  const heads = feed.heads
    .map((head, i) => ({ ...head, i }))
    .filter(({ quantity, i }) => quantity !== 'alternator_share' || cellOf(feed, 0, i) !== '–');
  return (
    <dl class="figures">
      {heads.map(({ key, label, quantity, i }) => (
        <div key={key}>
          <dt>{label}</dt>
          <dd>
            <span class="big">
              {quantity === null ? (
                cellOf(feed, 0, i)
              ) : (
                <Origin of={{ quantity, at: {} }} label={`${label} ${cellOf(feed, 0, i)}`}>
                  {cellOf(feed, 0, i)}
                </Origin>
              )}
            </span>
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** What was tried and helps, least change first. */
function Remedies() {
  const units = useUnits();
  const [found, stop] = useSlow('remedies', {}, '');
  const told = found.is === 'done' ? found.reply[units] : undefined;
  return (
    <div class="remedies" aria-busy={told === undefined}>
      <h3>What would pass</h3>
      <Progress of={found} what="Changes are being tried" stop={stop} />
      {told?.length === 0 ? <p>No single change that was tried helps.</p> : null}
      <ul>
        {told?.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  );
}
