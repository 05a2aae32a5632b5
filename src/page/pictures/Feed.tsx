/**
 * The feed from battery to battery: every conductor, fuse, relay and coil by its share of what it may. The part that is chosen
 * tells its figures, where they come from, and leads to its form.
 */
import { useContext, useRef, useState } from 'preact/hooks';
import { shortened } from '../../pictures/words.ts';
import { Origin } from '../answer/Origin.tsx';
import { MODES, type Mode, type PartOf, type Share, type View } from '../protocol.ts';
import { GoContext, useReply, useShown, useUnits } from '../state/use.ts';
import { GAP, nextTo, type Placed, type Scene, sceneOf } from './feed-scene.ts';
import { useWidth } from './width.ts';

const NAMES: Readonly<Record<Mode, string>> = {
  load: 'Load',
  drop: 'Drop',
  temperature: 'Temperature',
  energy: 'Energy',
};
const ABOUT: Readonly<Record<Mode, string>> = {
  load: 'Effective current over what each part may carry; of coils the peak current.',
  drop: 'Drop on the path of the worst coil, and of each coil, over the drop that is allowed.',
  temperature: 'Temperature of each conductor over the rating of its insulation.',
  energy: 'Spark energy of each coil, least energy over it; resistance of each conductor.',
};

/** How near a part is to its limit, in steps that have a colour and a stroke each. */
const TONES = [
  [0.5, 'low', 'up to 50 %'],
  [0.75, 'mid', 'to 75 %'],
  [0.9, 'high', 'to 90 %'],
  [1, 'near', 'to the limit'],
  [Number.POSITIVE_INFINITY, 'over', 'above'],
] as const;
const toneOf = ({ share }: Pick<Share, 'share'>): string =>
  share === null ? 'none' : (TONES.find(([most]) => share <= most)?.[1] ?? 'over');

const keyOf = ({ kind, id }: Pick<PartOf, 'kind' | 'id'>): string => `${kind} ${id}`;

export function Feed({ view }: { readonly view: View }) {
  const { parts } = useShown(view);
  const [width, box, paper] = useWidth();
  const [mode, setMode] = useState<Mode>('load');
  const [chosen, choose] = useState('');
  const scene = width === 0 ? null : sceneOf(view.json, parts, width, paper);
  const placed = scene?.parts.find((one) => keyOf(one.part) === chosen) ?? scene?.parts[0];
  return (
    <figure class="feed" ref={box}>
      <div class="headline">
        <h3 id="feed">The feed</h3>
        <fieldset class="switch" aria-label="What colours and figures of the feed tell">
          {MODES.map((one) => (
            <button type="button" key={one} aria-pressed={mode === one} onClick={() => setMode(one)}>
              {NAMES[one]}
            </button>
          ))}
        </fieldset>
        <ul class="tones">
          {TONES.map(([most, tone, words]) => (
            <li key={most}>
              <svg width="22" height="10" aria-hidden="true">
                <line class={`tone ${tone}`} x1="0" x2="22" y1="5" y2="5" />
              </svg>{' '}
              {words}
            </li>
          ))}
        </ul>
      </div>
      <figcaption class="quiet">{ABOUT[mode]}</figcaption>
      {scene === null || placed === undefined ? null : (
        <>
          <Picture
            scene={scene}
            mode={mode}
            chosen={placed.part}
            choose={(one) => choose(keyOf(one))}
            view={view}
          />
          <Told part={placed.part} mode={mode} />
        </>
      )}
    </figure>
  );
}

interface PictureProps {
  readonly scene: Scene;
  readonly mode: Mode;
  readonly chosen: PartOf;
  readonly choose: (part: PartOf) => void;
  readonly view: View;
}

/** Of the names above the columns: from line to line, from the last to the rows, and a letter [px]. */
const LINE = 13;
const UNDER = 8;
const LETTER = 7;

/** The names above the columns: each column beside a lower one, so that a name has twice its width, up to the edge; else name under name. */
function headsOf({ columns, length }: Pick<Scene, 'columns' | 'length'>): {
  readonly heads: readonly (readonly string[])[];
  readonly upper: number;
  readonly lines: number;
} {
  const heads = columns.map(({ names, from, to }) => {
    const middle = (from + to) / 2;
    const most = Math.floor((2 * Math.min(to - from + GAP, middle, length - middle)) / LETTER);
    const whole = names.join(', ');
    return whole.length <= most ? [whole] : names.map((name) => shortened(name, most));
  });
  const tallest = (odd: number): number =>
    Math.max(0, ...heads.flatMap((lines, i) => (i % 2 === odd ? [lines.length] : [])));
  return { heads, upper: tallest(0), lines: tallest(0) + tallest(1) };
}

function Picture({ scene, mode, chosen, choose, view }: PictureProps) {
  const { down, length, breadth, columns, joints, parts, ends } = scene;
  const svg = useRef<SVGSVGElement>(null);
  const { heads, upper, lines } = headsOf(scene);
  const top = down ? 0 : lines * LINE + UNDER;
  const at = (along: number, across: number): [number, number] =>
    down ? [across, along] : [along, across + top];
  const [width, height] = down ? [breadth, length] : [length, breadth + top + 4];
  const failing = new Set(view.json.findings.flatMap((f) => (f.verdict === 'fail' ? [f.subject] : [])));
  const fails = ({ kind, id }: PartOf): boolean =>
    kind !== 'coil' && failing.has(view.json.runs.find((run) => run.id === id)?.run ?? '');
  const move = (event: KeyboardEvent): void => {
    const now = parts.find(({ part }) => keyOf(part) === keyOf(chosen));
    const [right, below] =
      { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] }[event.key] ?? [];
    if (right === undefined || below === undefined || now === undefined) return;
    event.preventDefault();
    const next = down ? nextTo(parts, now, below, right) : nextTo(parts, now, right, below);
    if (next === null) return;
    choose(next.part);
    svg.current?.querySelector<SVGElement>(`[data-part="${CSS.escape(keyOf(next.part))}"]`)?.focus();
  };
  const { told, beside } = labelsOf(parts, mode, scene);
  return (
    <section class="scroll" aria-label="Diagram of the feed">
      <svg
        ref={svg}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="application"
        aria-label="The feed, from battery to battery; arrow keys go from part to part"
        onKeyDown={move}
      >
        {joints.map(({ from, bend, to }, i) => {
          const [a, b, c, d] = [at(...from), at(bend, from[1]), at(bend, to[1]), at(...to)];
          return <path key={i} class="joint" d={`M${a}L${b}L${c}L${d}`} />;
        })}
        {ends.map(({ sign, along, across }) => {
          const [x, y] = at(along, across);
          return (
            <g key={sign} class="battery" transform={`translate(${x} ${y})`}>
              <circle r="12" />
              <text y="4.5" text-anchor="middle">
                {sign}
              </text>
            </g>
          );
        })}
        {parts.map((placed) => (
          <Drawn
            key={keyOf(placed.part)}
            placed={placed}
            at={at}
            scene={scene}
            share={placed.part.shares[mode] ?? null}
            area={view.json.runs.find(({ id }) => id === placed.part.id)?.area_mm2 ?? null}
            failing={fails(placed.part)}
            chosen={placed.part === chosen}
            choose={() => choose(placed.part)}
          />
        ))}
        {columns.map(({ names, from, to }, i) =>
          down ? (
            <text key={i} class="name crossed" x={2} y={from - 19}>
              {headOf(names, beside.get(i) ?? [], breadth)}
            </text>
          ) : (
            heads[i]?.map((name, line) => (
              <text
                key={name}
                class="name"
                x={(from + to) / 2}
                y={LINE * (line + 1 + (i % 2 === 0 ? 0 : upper)) - 1}
                text-anchor="middle"
              >
                {name}
              </text>
            ))
          ),
        )}
        {/* Beside the parts, whose own names say the same and more. */}
        {parts.map((placed) => (
          <Label
            key={keyOf(placed.part)}
            placed={placed}
            at={middleOf(placed, at)}
            scene={scene}
            failing={fails(placed.part)}
            lines={told.get(placed.part) ?? []}
            holder={placed.part.kind === 'wire' && parts.some((one) => holds(placed.part, one.part))}
            room={down ? roomBeside(placed, parts, scene) : 0}
            lone={!parts.some(({ part }) => part.kind === 'relay' && part.id === placed.part.id)}
          />
        ))}
      </svg>
    </section>
  );
}

/** The names of a column of a feed that runs down, each shortened alike, and what stands beside them: sizes, from least to most. */
function headOf(names: readonly string[], lines: readonly (readonly string[])[], breadth: number): string {
  const sizes = [...new Set(lines.map(([size]) => size))].join(', ');
  const figures = [...new Set(lines.flatMap(([, figure]) => figure ?? []))].sort(
    (a, b) => Number.parseFloat(a) - Number.parseFloat(b),
  );
  const spread = figures.length > 1 ? `${figures[0]} to ${figures.at(-1)}` : (figures[0] ?? '');
  const beside = [sizes, spread].map((text) => (text === '' ? '' : ` · ${text}`)).join('');
  const most = Math.floor((breadth / LETTER - beside.length) / names.length) - 2;
  return names.map((name) => shortened(name, Math.max(2, most))).join(', ') + beside;
}

/** Up to the next part of its kind in a feed that runs down, or to the edge [px]. */
const roomBeside = ({ part, column, across }: Placed, parts: readonly Placed[], { breadth }: Scene): number =>
  parts.reduce(
    (room, one) =>
      one.column === column && one.part.kind === part.kind && one.across > across
        ? Math.min(room, one.across - across)
        : room,
    breadth - across,
  );

/** Whether a fuse or a relay lies in a conductor. */
const holds = (wire: PartOf, part: PartOf): boolean =>
  part.id === wire.id && part.kind !== 'wire' && part.kind !== 'coil';

interface Labels {
  readonly told: ReadonlyMap<PartOf, readonly string[]>;
  /** Of a feed that runs down: what stands beside the name of a column, of each conductor. */
  readonly beside: ReadonlyMap<number, readonly (readonly string[])[]>;
}

/** Where conductors lie closer than this a label finds no room between them [px]. */
const CLOSE = 64;
/** Where rows of a feed along the page lie closer than this a figure finds no room below its line [px]. */
const TIGHT = 17;
const isTight = (one: Placed, other: Placed): boolean =>
  one !== other && one.column === other.column && Math.abs(one.across - other.across) < TIGHT;

/** What stands at each part; where all conductors of a run would say the same it stands once. */
function labelsOf(parts: readonly Placed[], mode: Mode, { down, pitch }: Scene): Labels {
  const told = new Map<PartOf, readonly string[]>();
  const beside = new Map<number, readonly (readonly string[])[]>();
  const said = new Set<string>();
  for (const placed of parts) {
    const { part, column } = placed;
    const own = linesOf(part, mode, down);
    const same = `${part.kind} ${part.key} ${own.join()}`;
    const close =
      down &&
      pitch < CLOSE &&
      parts.filter((one) => one.column === column && one.part.kind === part.kind).length > 2;
    if (close && part.kind === 'wire' && !said.has(same))
      beside.set(column, [...(beside.get(column) ?? []), own]);
    const once = part.kind === 'coil' || !said.has(same);
    // What lies in a conductor has its own figure below the line.
    const joined =
      part.kind === 'wire' && parts.some((one) => holds(part, one.part) || (!down && isTight(one, placed)));
    told.set(part, !once || (close && part.kind === 'wire') ? [] : joined ? [own.join(' · ')] : own);
    // A size is not said again for want of a figure beside it.
    said.add(same).add(`${part.kind} ${part.key} ${part.name}`);
  }
  return { told, beside };
}

/** A name, and the figure of the view that is shown. */
function linesOf({ kind, id, name, shares }: PartOf, mode: Mode, down: boolean): string[] {
  const share = shares[mode];
  if (kind === 'coil') return down ? [id] : [`coil ${id}`, share?.text ?? ''].filter(Boolean);
  const percent = share?.share != null && mode !== 'temperature';
  return [name, percent ? `${Math.round((share.share ?? 0) * 100)} %` : (share?.text ?? '')].filter(Boolean);
}

interface DrawnProps {
  readonly placed: Placed;
  readonly at: Place;
  readonly scene: Scene;
  readonly share: Share | null;
  readonly area: number | null;
  readonly failing: boolean;
  readonly chosen: boolean;
  readonly choose: () => void;
}

type Place = (along: number, across: number) => [number, number];

function middleOf({ from, to, across }: Placed, at: Place): [number, number] {
  const [[x, y], [x2, y2]] = [at(from, across), at(to, across)];
  return [(x + x2) / 2, (y + y2) / 2];
}

/** Width of a conductor's line [px]: by its diameter. */
const thickness = (area: number | null): number => 2 + Math.min(6, Math.sqrt(area ?? 0) * 0.9);

function Drawn({ placed, at, scene, share, area, failing, chosen, choose }: DrawnProps) {
  const { part, from, to, across } = placed;
  const { down, pitch } = scene;
  const half = part.kind === 'fuse' || part.kind === 'relay' ? 12 : Math.min(15, pitch / 2 - 1);
  const tall = Math.min(26, pitch - 3);
  const [x, y] = at(from, across);
  const [x2, y2] = at(to, across);
  const middle = middleOf(placed, at);
  const hit = down
    ? { x: x - half, y, width: 2 * half, height: y2 - y }
    : { x, y: y - half, width: x2 - x, height: 2 * half };
  const words = `${part.kind === 'wire' ? '' : `${part.kind} `}${part.kind === 'coil' ? part.id : part.kind === 'wire' ? `${part.id}: ${part.name}` : `in ${part.id}: ${part.name}`}`;
  const told = share === null ? '' : `, ${share.text}${share.limit === '' ? '' : ` of ${share.limit}`}`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button of HTML cannot stand in an SVG
    <g
      class={`part ${part.kind} ${share === null ? 'none' : toneOf(share)} ${chosen ? 'chosen' : ''} ${failing ? 'failing' : ''}`}
      role="button"
      // In small letters: in a picture the browser knows no other spelling, and would stop at every part.
      tabindex={chosen ? 0 : -1}
      data-part={keyOf(part)}
      aria-label={`${words}${told}${failing ? '; a finding fails' : ''}`}
      aria-pressed={chosen}
      onFocus={choose}
      onClick={choose}
    >
      <rect class="hit" {...hit} />
      {part.kind === 'wire' ? (
        <line class="conductor" x1={x} x2={x2} y1={y} y2={y2} stroke-width={thickness(area)} />
      ) : part.kind === 'coil' ? (
        <rect
          class="body"
          rx="2"
          {...(down
            ? { x: x - pitch / 2 + 2, y, width: pitch - 4, height: y2 - y }
            : { x, y: y - tall / 2, width: x2 - x, height: tall })}
        />
      ) : (
        <rect
          class="body"
          x={middle[0] - 8}
          y={middle[1] - (part.kind === 'fuse' ? 5 : 8)}
          width="16"
          height={part.kind === 'fuse' ? 10 : 16}
        />
      )}
      {part.kind === 'relay' ? (
        <path class="blade" d={`M${middle[0] - 5} ${middle[1] + 4}L${middle[0] + 5} ${middle[1] - 5}`} />
      ) : null}
    </g>
  );
}

interface LabelProps {
  readonly placed: Placed;
  readonly at: readonly [number, number];
  readonly scene: Scene;
  readonly lines: readonly string[];
  readonly failing: boolean;
  /** Something lies in it. */
  readonly holder: boolean;
  /** To the right of it in a feed that runs down [px]. */
  readonly room: number;
  /** Without a relay behind it: there is room to the right. */
  readonly lone: boolean;
}

/** Names above a line and figures below it; beside it in a feed that runs down. */
function Label({
  placed: { part, from, to },
  at: [x, y],
  scene,
  lines,
  failing,
  holder,
  room,
  lone,
}: LabelProps) {
  const { down, pitch } = scene;
  const [name = '', figure = ''] = lines;
  const { kind } = part;
  const look = `label ${kind} ${failing ? 'failing' : ''}`;
  if (name === '') return null;
  const inside = [name, figure].filter(Boolean).join(' · ');
  if (kind === 'coil') {
    const most = Math.floor((down ? pitch - 4 : to - from) / LETTER);
    // A figure stays whole, whatever the name.
    const own = name.replace('coil ', '');
    const short = shortened(own, Math.max(down ? 2 : 3, most - (inside.length - name.length)));
    return (
      <text class={look} x={x} y={y + 4} text-anchor="middle">
        {inside.length > most ? inside.replace(name, short) : inside}
      </text>
    );
  }
  const mark = failing && kind === 'wire' ? '✕ ' : '';
  const both = mark + [name, figure].filter(Boolean).join(' · ');
  if (down) {
    const beside = Math.min(kind === 'wire' && !holder ? 8 : 18, pitch / 2 + 4);
    // What would run over the next part or over the edge stands in two lines.
    const words = beside + LETTER * both.length > room ? both.split(' · ') : [both];
    return words.map((line, i) => (
      <text key={line} class={look} x={x + beside} y={y + 4 + LINE * (i - (words.length - 1) / 2)}>
        {line}
      </text>
    ));
  }
  if (kind !== 'wire')
    // A fuse lies close to where its run parts from the one before: what stands under it keeps off that line.
    return (
      <text class={look} x={lone ? from : x} y={y + 21} text-anchor={lone ? 'start' : 'middle'}>
        {both}
      </text>
    );
  return (
    <>
      <text class={`size ${look}`} x={x} y={y - (holder ? 12 : 6)} text-anchor="middle">
        {mark + name}
      </text>
      <text class={look} x={x} y={y + 14} text-anchor="middle">
        {figure}
      </text>
    </>
  );
}

/** The figures of the chosen part, each with where it comes from, and the way to its form. */
function Told({ part, mode }: { readonly part: PartOf; readonly mode: Mode }) {
  const go = useContext(GoContext);
  const { kind, id } = part;
  const units = useUnits();
  const { reply: found } = useReply('card', { kind, id, units }, `${keyOf(part)} ${units}`, 0);
  const failed = found !== null && 'why' in found;
  const card = failed ? null : found;
  const share = part.shares[mode];
  return (
    <div class="card">
      <div class="headline">
        <p class="reading" aria-live="polite">
          <strong>{failed ? found.why : (card?.title ?? '')}</strong>{' '}
          {share == null ? null : (
            <Origin
              of={share.of}
              label={`${NAMES[mode]} ${share.text}${share.limit === '' ? '' : ` of ${share.limit}`}`}
            >
              {share.text}
              {share.limit === '' ? '' : ` of ${share.limit}`}
            </Origin>
          )}
        </p>
        <button type="button" class="small" onClick={() => go({ key: part.key })}>
          Change it
        </button>
      </div>
      <details>
        <summary>All its figures</summary>
        <dl class="facts">
          {card?.figures.map(({ label, text, of }, i) => (
            <div key={`${of.quantity} ${i}`}>
              <dt>{label}</dt>
              <dd>
                <Origin of={of} label={`${label} ${text}`}>
                  {text}
                </Origin>
              </dd>
            </div>
          ))}
        </dl>
      </details>
    </div>
  );
}
