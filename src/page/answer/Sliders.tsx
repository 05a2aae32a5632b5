/** The four inputs that matter most of most feeds, as sliders: the answer follows while they move. */
import { useContext, useId, useState } from 'preact/hooks';
import { printSize } from '../../basis/print.ts';
import { readValue } from '../../basis/read-value.ts';
import { inUnit } from '../../basis/shown.ts';
import { printUnit } from '../../basis/units.ts';
import { keyText, type Path } from '../../design/problems.ts';
import { choicesAt, infoAt, unitOf } from '../form/info.ts';
import { asTyped } from '../form/written.ts';
import { valueAt } from '../place.ts';
import type { View } from '../protocol.ts';
import { GoContext, useBench, useBenchState, useShown, useUnits } from '../state/use.ts';

/** A value with a unit, from and to in the first unit: wide enough for a vehicle. Arbitrary. */
interface Range {
  readonly path: Path;
  readonly base: string;
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

const DWELL: Range = { path: ['ignition', 'dwell'], base: 'ms', from: 0.5, to: 8, step: 0.05 };

export function Sliders({ view }: { readonly view: View }) {
  const { tree, form } = useBenchState('tree', 'form');
  const first = valueAt(tree.value, ['feed', 0, 'run']);
  const name = typeof first === 'string' ? first : 'first run';
  if (form === null || !tree.sound) return null;
  return (
    <fieldset class="sliders" aria-label="Four inputs to move">
      <Slider
        label={`Length of ${name}`}
        of={{ path: ['feed', 0, 'length'], base: 'm', from: 0.1, to: 6, step: 0.05 }}
      />
      <Gauge label={`Size of ${name}`} view={view} />
      {Array.isArray(valueAt(tree.value, DWELL.path)) ? (
        <Table view={view} />
      ) : (
        <Slider label="Dwell" of={DWELL} />
      )}
      <Slider
        label={`Ambient of ${name}`}
        of={{ path: ['feed', 0, 'ambient'], base: 'degC', from: 20, to: 120, step: 1 }}
      />
    </fieldset>
  );
}

function Slider({
  label,
  of: { path, base, from, to, step },
}: {
  readonly label: string;
  readonly of: Range;
}) {
  const bench = useBench();
  const { tree, form } = useBenchState('tree', 'form');
  const us = useUnits() === 'us';
  const [held, hold] = useState<number | null>(null);
  const text = valueAt(tree.value, path);
  const read = typeof text === 'string' ? readValue(text, base) : null;
  if (read === null || !read.ok)
    return (
      <Elsewhere label={label} path={path} why={typeof text === 'object' ? 'several values' : 'its form'} />
    );
  // In the unit of the person; the scale is the same.
  const unit = unitOf(infoAt(form, path), us) || base;
  const value = held ?? Number(read.value.toPrecision(6));
  const write = (now: number): void => {
    hold(now);
    const own = inUnit(now, base, unit);
    const value = `${Number(own.toFixed(unit === 'in' ? 1 : 2))} ${unit}`;
    bench.editAll([{ key: path, value }], `slider ${label}`);
  };
  return (
    <Moved
      label={label}
      said={String(text).replace(/[A-Za-z]+$/, printUnit)}
      range={{ from: Math.min(from, value), to: Math.max(to, value), step }}
      value={value}
      move={write}
      rest={() => hold(null)}
    />
  );
}

/** Dwell by supply: what is moved is the row of the point that drops most, and all rows in proportion. */
function Table({ view: { json } }: { readonly view: View }) {
  const bench = useBench();
  const { tree } = useBenchState('tree');
  // The rows when the move started, so that their proportions last.
  const [held, hold] = useState<{ readonly rows: readonly Row[]; readonly now: number } | null>(null);
  const rows = rowsOf(valueAt(tree.value, DWELL.path));
  const supply = json.points.find(({ name }) => name === json.totals.worst_point)?.supply_V ?? 0;
  const row = nearest(held?.rows ?? rows ?? [], supply);
  if (rows === null || row === undefined) return <Elsewhere label="Dwell" path={DWELL.path} why="its form" />;
  const now = held?.now ?? row.ms;
  const write = (to: number): void => {
    const from = held?.rows ?? rows;
    hold({ rows: from, now: to });
    bench.editAll(
      from.map(({ ms }, i) => ({
        key: [...DWELL.path, i, 'dwell'],
        value: `${Number(((ms * to) / row.ms).toFixed(3))} ms`,
      })),
      'slider Dwell',
    );
  };
  return (
    <Moved
      label={`Dwell table, at ${row.supply}`}
      said={`${Number(now.toFixed(3))} ms`}
      range={{ ...DWELL, from: Math.min(DWELL.from, now), to: Math.max(DWELL.to, now) }}
      value={now}
      move={write}
      rest={() => hold(null)}
    />
  );
}

/** A row of the table of dwell: its supply as written and in volts, its dwell in milliseconds. */
interface Row {
  readonly supply: string;
  readonly volts: number;
  readonly ms: number;
}

/** Null where a row cannot be read, or says nothing to scale. */
function rowsOf(table: unknown): readonly Row[] | null {
  const read = (row: unknown, key: string, unit: string): number => {
    const found = readValue(asTyped(valueAt(row, [key])), unit);
    return found.ok ? found.value : Number.NaN;
  };
  const rows = (Array.isArray(table) ? table : []).map(
    (row): Row => ({
      supply: asTyped(valueAt(row, ['supply'])),
      volts: read(row, 'supply', 'V'),
      ms: Number(read(row, 'dwell', 'ms').toPrecision(6)),
    }),
  );
  return rows.every(({ volts, ms }) => Number.isFinite(volts) && ms > 0) ? rows : null;
}

const nearest = (rows: readonly Row[], volts: number): Row | undefined =>
  [...rows].sort((a, b) => Math.abs(a.volts - volts) - Math.abs(b.volts - volts))[0];

interface MovedProps {
  readonly label: string;
  readonly said: string;
  readonly range: Pick<Range, 'from' | 'to' | 'step'>;
  readonly value: number;
  readonly move: (now: number) => void;
  readonly rest: () => void;
}

function Moved({ label, said, range: { from, to, step }, value, move, rest }: MovedProps) {
  const bench = useBench();
  const id = useId();
  return (
    <div class="slider">
      <label for={id}>{label}</label>
      <output>{said}</output>
      <input
        id={id}
        type="range"
        min={from}
        max={to}
        step={step}
        value={value}
        aria-valuetext={said}
        onInput={(event) => move(Number(event.currentTarget.value))}
        onChange={() => {
          rest();
          bench.settle();
        }}
      />
    </div>
  );
}

/** Through the sizes of the series that the feed has; or the tool chooses. */
function Gauge({ label, view }: { readonly label: string; readonly view: View }) {
  const bench = useBench();
  const { tree, form } = useBenchState('tree', 'form');
  const { parts } = useShown(view);
  const path = ['feed', 0, 'gauge'];
  const text = valueAt(tree.value, path);
  const now = view.json.runs[0]?.gauge ?? '';
  const auto = text === 'auto';
  const series = (auto ? now : String(text)).split(' ')[1] ?? 'AWG';
  const sizes = choicesAt(form, tree.value, path).filter((size) => size.endsWith(` ${series}`));
  const at = auto ? sizes.indexOf(now) : sizes.indexOf(String(text));
  if (sizes.length === 0 || typeof text !== 'string' || (at < 0 && !auto))
    return <Elsewhere label={label} path={path} why="its form" />;
  // Of a type that is sold by SAE numbers the AWG number stands for the SAE one, as everywhere in the answer.
  const sold = parts.find(({ kind }) => kind === 'wire')?.name.split(' ')[1];
  const size = printSize(auto ? now : sold === 'SAE' ? text.replace('AWG', sold) : text);
  const said = `${size}${auto ? ', chosen' : ''}`;
  const write = (value = 'auto'): void => bench.editAll([{ key: path, value }], `slider ${label}`);
  return (
    <div class="slider">
      <label for="slider-gauge">{label}</label>
      <output>
        {size}{' '}
        <button
          type="button"
          class="small"
          aria-pressed={auto}
          onClick={() => write(auto ? now || sizes.at(-1) : 'auto')}
        >
          auto
        </button>
      </output>
      <input
        id="slider-gauge"
        type="range"
        min={0}
        max={sizes.length - 1}
        step={1}
        value={Math.max(0, at)}
        aria-valuetext={said}
        onInput={(event) => write(sizes[Number(event.currentTarget.value)])}
        onChange={() => bench.settle()}
      />
    </div>
  );
}

interface ElsewhereProps {
  readonly label: string;
  readonly path: Path;
  readonly why: string;
}

/** What no slider can say leads to its form. */
function Elsewhere({ label, path, why }: ElsewhereProps) {
  const go = useContext(GoContext);
  return (
    <p class="slider">
      <span>{label}</span>
      <button type="button" class="link" onClick={() => go({ key: keyText(path) })}>
        {why}
        <span class="of"> of {label}</span>
      </button>
    </p>
  );
}
