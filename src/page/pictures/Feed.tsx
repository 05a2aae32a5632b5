/** The feed from battery to battery, with the size of every conductor; the one that is pointed at gives its values. */
import { useState } from 'preact/hooks';
import type { View } from '../protocol.ts';
import { useShown } from '../state/use.ts';
import { type FeedLayout, feedLayout, type Laid } from './feed-layout.ts';
import { useWidth } from './width.ts';

const ROW = 30;
/** Room for the names of the columns, and for the battery at either end [px]. */
const TOP = 46;
const END = 34;
const COLUMN = 88;
/** Between two columns [px]. */
const GAP = 18;

export function Feed({ view }: { readonly view: View }) {
  const { findings, wires } = useShown(view);
  const [width, box] = useWidth();
  const [chosen, choose] = useState<string | null>(null);
  const { json } = view;
  const layout = feedLayout(json);
  const count = layout.columns.length;
  const column = Math.max(COLUMN, (width - 2 * END - GAP) / count);
  const size = { width: 2 * END + GAP + count * column, height: TOP + layout.coils.length * ROW + 12 };
  const x = (at: number): number => END + GAP / 2 + at * column;
  const y = (row: number): number => TOP + (row + 0.5) * ROW;
  const failing = new Set(findings.flatMap((f) => (f.verdict === 'fail' ? [f.subject] : [])));
  const wordsOf = (id: string): string => wires[json.runs.findIndex((wire) => wire.id === id)] ?? '';
  const wire = json.runs.find(({ id }) => id === chosen) ?? json.runs[0];
  return (
    <figure class="feed" ref={box}>
      <figcaption>The feed: thicker lines are larger conductors</figcaption>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section class="scroll" tabIndex={0} aria-label="Diagram of the feed">
        <svg width={size.width} height={size.height} viewBox={`0 0 ${size.width} ${size.height}`}>
          <title>Diagram of the feed</title>
          <Names layout={layout} x={x} column={column} />
          <Ends layout={layout} x={x} y={y} count={count} />
          {layout.joints.map(({ from, to }) => {
            const start = from.column < 0 ? x(0) - GAP / 2 - 6 : x(from.column + 1) - GAP / 2;
            const end = to.column >= count ? x(count) + GAP / 2 - 6 : x(to.column) + GAP / 2;
            const middle = to.column >= count ? (start + end) / 2 : end - GAP / 2;
            return (
              <path
                key={`${from.column},${from.row},${to.column},${to.row}`}
                class="joint"
                d={`M${start} ${y(from.row)}H${middle}V${y(to.row)}H${end}`}
              />
            );
          })}
          {layout.coils.map((id, row) => (
            <g key={id} class="coil" transform={`translate(${x(layout.coilColumn) + GAP / 2} ${y(row)})`}>
              <rect x="0" y="-10" width={column - GAP} height="20" rx="3" />
              <text x={(column - GAP) / 2} y="4" text-anchor="middle">
                coil {id}
              </text>
            </g>
          ))}
          {layout.wires.map((laid) => (
            <Conductor
              key={laid.wire.id}
              laid={laid}
              left={x(laid.column) + GAP / 2}
              top={y(laid.row)}
              length={column - GAP}
              chosen={laid.wire.id === wire?.id}
              failing={failing.has(laid.wire.run)}
              parts={{
                fuse: json.fuses.some(({ run }) => run === laid.wire.id),
                relay: json.relays.some(({ run }) => run === laid.wire.id),
              }}
              words={wordsOf(laid.wire.id)}
              choose={() => choose(laid.wire.id)}
            />
          ))}
        </svg>
      </section>
      <p class="reading" aria-live="polite">
        {wire === undefined ? '' : wordsOf(wire.id)}
      </p>
    </figure>
  );
}

/** Names of the columns; those of neighbours stand at two heights, so that longer ones have room. */
function Names({
  layout,
  x,
  column,
}: {
  readonly layout: FeedLayout;
  readonly x: (at: number) => number;
  readonly column: number;
}) {
  const room = Math.floor((2 * column - 16) / 7);
  return (
    <>
      {layout.columns.map((name, i) => (
        <text key={name} class="name" x={x(i) + column / 2} y={i % 2 === 0 ? 14 : 30} text-anchor="middle">
          {name.length > room ? `${name.slice(0, room - 1)}…` : name}
        </text>
      ))}
    </>
  );
}

interface EndsProps {
  readonly layout: FeedLayout;
  readonly x: (at: number) => number;
  readonly y: (row: number) => number;
  readonly count: number;
}

function Ends({ layout, x, y, count }: EndsProps) {
  const middle = y((layout.coils.length - 1) / 2);
  return (
    <>
      <g class="battery" transform={`translate(${x(0) - GAP / 2 - 20} ${middle})`}>
        <circle r="13" />
        <text y="5" text-anchor="middle">
          +
        </text>
      </g>
      <g class="battery" transform={`translate(${x(count) + GAP / 2 + 8} ${middle})`}>
        <circle r="13" />
        <text y="5" text-anchor="middle">
          −
        </text>
      </g>
    </>
  );
}

interface ConductorProps {
  readonly laid: Laid;
  readonly left: number;
  readonly top: number;
  readonly length: number;
  readonly chosen: boolean;
  readonly failing: boolean;
  readonly parts: { readonly fuse: boolean; readonly relay: boolean };
  readonly words: string;
  readonly choose: () => void;
}

/** Width of a conductor's line [px]: by its diameter. */
const thickness = (area: number | null): number => 1.5 + Math.min(6, Math.sqrt(area ?? 0) * 0.9);

function Conductor({ laid, left, top, length, chosen, failing, parts, words, choose }: ConductorProps) {
  const { wire } = laid;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button of HTML cannot stand in an SVG
    <g
      class={`wire ${chosen ? 'chosen' : ''} ${failing ? 'failing' : ''}`}
      role="button"
      tabIndex={0}
      aria-label={`${words}${failing ? '; a finding fails' : ''}`}
      aria-pressed={chosen}
      transform={`translate(${left} ${top})`}
      onFocus={choose}
      onPointerEnter={choose}
      onClick={choose}
      onKeyDown={(event) => event.key === 'Enter' && choose()}
    >
      <rect class="hit" x="0" y={-ROW / 2 + 1} width={length} height={ROW - 2} />
      <line x1="0" x2={length} y1="0" y2="0" stroke-width={thickness(wire.area_mm2)} />
      {parts.fuse ? <rect class="fuse" x={length * 0.12} y="-5" width="16" height="10" /> : null}
      {parts.relay ? (
        <path class="relay" d={`M${length * 0.72} -7h14v14h-14z M${length * 0.72 + 2} 5l10 -10`} />
      ) : null}
      <text x={length / 2} y={parts.fuse || parts.relay ? -11 : -6} text-anchor="middle">
        {failing ? '✕ ' : ''}
        {(wire.gauge ?? '–').replace('mm2', 'mm²')}
      </text>
    </g>
  );
}
