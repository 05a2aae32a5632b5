/** The papers of a kit: to read here, and as downloads. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Lot, Papers } from '../protocol.ts';
import { endingOf, save } from '../shell/files.ts';
import { Making, useMaking } from '../shell/Making.tsx';
import { useBench, useBenchState, useCurrent, useSlow } from '../state/use.ts';
import { Progress } from './Progress.tsx';

export function Kit() {
  const [open, unfold] = useState(false);
  const [lot, set] = useState<Lot>({ kits: '', serials: '' });
  const [zip, hand] = useState<Uint8Array | null>(null);
  const current = useCurrent();
  return (
    <section aria-labelledby="kit" class="part-kit">
      <h3 id="kit">Papers of a kit</h3>
      <details onToggle={(event) => unfold((event.currentTarget as HTMLDetailsElement).open)}>
        <summary>Instructions, cut lists, labels, build record</summary>
        <div class="fields">
          <Entry
            id="kits"
            label="Kits made at a time: parts, reels and labels are counted for all"
            example="1"
            take={(kits) => set((now) => ({ ...now, kits }))}
          />
          <Entry
            id="serials"
            label="Serial numbers: a page of the build record for each"
            example="A001-A010"
            take={(serials) => set((now) => ({ ...now, serials }))}
          />
        </div>
        {open ? <Book lot={lot} ready={current} zip={zip} /> : null}
        {!open ? null : current ? <Listed lot={lot} hand={hand} /> : <p>Not current: no papers are made.</p>}
      </details>
    </section>
  );
}

interface EntryProps {
  readonly id: string;
  readonly label: string;
  readonly example: string;
  readonly take: (value: string) => void;
}

/** What is being typed stays, whatever is drawn anew meanwhile: the field holds it, and it is taken on leaving. */
const Entry = ({ id, label, example, take }: EntryProps) => (
  <p class="field">
    <label for={id}>{label}</label>
    <input
      id={id}
      type="text"
      autocomplete="off"
      placeholder={example}
      onChange={(event) => take(event.currentTarget.value.trim())}
    />
  </p>
);

interface ListedProps {
  readonly lot: Lot;
  /** Hands all papers to the button beside that of the workbook. */
  readonly hand: (zip: Uint8Array | null) => void;
}

function Listed({ lot, hand }: ListedProps) {
  const { logo } = useBenchState('logo');
  const [found, stop] = useSlow('papers', { ...lot, logo }, JSON.stringify([lot, logo]));
  const [shown, show] = useState<string | null>(null);
  const papers = found.is === 'done' && !('why' in found.reply) ? found.reply : null;
  useEffect(() => {
    hand(papers?.zip ?? null);
    return () => hand(null);
  }, [papers]);
  if (found.is !== 'done') return <Progress of={found} what="The papers are being made" stop={stop} />;
  if ('why' in found.reply) return <p class="problem">{found.reply.why}</p>;
  const { released, words, files }: Papers = found.reply;
  return (
    <>
      {released ? null : <p class="problem">{words}. The papers say so; do not build from them.</p>}
      <ul class="papers">
        {files.map(({ name, what, text }) => (
          <li key={name}>
            <b>{name}</b> <span class="quiet">{what}</span>
            <span class="buttons">
              <button
                type="button"
                class="small"
                aria-pressed={shown === name}
                onClick={() => show(shown === name ? null : name)}
              >
                Preview<span class="of"> of {name}</span>
              </button>
              <button type="button" class="small" onClick={() => save(text, name)}>
                Download<span class="of"> {name}</span>
              </button>
            </span>
            {shown === name ? <Preview name={name} text={text} /> : null}
          </li>
        ))}
      </ul>
    </>
  );
}

const BOOK = 'The workbook of the kit';

interface BookProps {
  readonly lot: Lot;
  readonly ready: boolean;
  readonly zip: Uint8Array | null;
}

/** It stays whatever becomes of the papers: its file may be under way. */
function Book({ lot, ready, zip }: BookProps) {
  const bench = useBench();
  const [said, say] = useState('');
  const { make, stop } = useMaking(BOOK, say);
  return (
    <p class="buttons">
      <button
        type="button"
        disabled={stop !== null || !ready}
        // Of the answer that the papers beside it are of, whatever is typed meanwhile.
        onClick={() => bench.viewed && make('kitbook', { ...bench.viewed, ...lot }, 'kit.xlsx')}
      >
        Workbook of the kit
      </button>
      {zip === null ? null : (
        <button type="button" onClick={() => save(zip, 'kit.zip')}>
          All papers as one ZIP
        </button>
      )}
      <Making what={BOOK} said={said} stop={stop} />
    </p>
  );
}

/** A paper in a place of its own: its style stays inside, and nothing of it runs. */
function Preview({ name, text }: { readonly name: string; readonly text: string }) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const host = box.current;
    if (host === null || endingOf(name) === 'csv') return;
    const root = host.shadowRoot ?? host.attachShadow({ mode: 'open' });
    const type = endingOf(name) === 'svg' ? 'image/svg+xml' : 'text/html';
    // The page forbids style in markup, that of a paper too: it is set here instead.
    const rules: string[] = [];
    const plain = text
      .replace(/<style>([\s\S]*?)<\/style>/g, (_, rule: string) => {
        rules.push(rule.replace(/(^|[\s,}])body\b/g, '$1.paper'));
        return '';
      })
      .replace(/(<[a-z]+(?: [^<>]*)?) style="/g, '$1 data-style="');
    const paper = new DOMParser().parseFromString(plain, type);
    root.adoptedStyleSheets = rules.map((rule) => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(rule);
      return sheet;
    });
    const page = document.createElement('div');
    page.className = 'paper';
    const inside = type === 'text/html' ? [...paper.body.childNodes] : [paper.documentElement];
    page.append(...inside.map((node) => document.importNode(node, true)));
    for (const styled of page.querySelectorAll<HTMLElement | SVGElement>('[data-style]'))
      styled.style.cssText = styled.dataset.style ?? '';
    root.replaceChildren(page);
  }, [name, text]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section class="preview" ref={box} tabIndex={0} aria-label={`Preview of ${name}`}>
      {endingOf(name) === 'csv' ? <pre>{text}</pre> : null}
    </section>
  );
}
