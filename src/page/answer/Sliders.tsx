/** The four inputs that matter most of most feeds, as sliders: the answer follows while they move. */
import { useContext, useId, useState } from 'preact/hooks';
import { printSize } from '../../basis/print.ts';
import { readValue } from '../../basis/read-value.ts';
import { inUnit } from '../../basis/shown.ts';
import { keyText, type Path } from '../../design/problems.ts';
import { choicesAt, infoAt, unitOf } from '../form/info.ts';
import { valueAt } from '../place.ts';
import type { View } from '../protocol.ts';
import { GoContext, useBench, useBenchState, useUnits } from '../state/use.ts';

/** A value with a unit, from and to in the first unit: wide enough for a vehicle. Arbitrary. */
interface Range {
  readonly path: Path;
  readonly base: string;
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

export function Sliders({ view }: { readonly view: View }) {
  const { tree, form } = useBenchState();
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
      <Slider label="Dwell" of={{ path: ['ignition', 'dwell'], base: 'ms', from: 0.5, to: 8, step: 0.05 }} />
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
  const { tree, form } = useBenchState();
  const us = useUnits() === 'us';
  const [held, hold] = useState<number | null>(null);
  const id = useId();
  const text = valueAt(tree.value, path);
  const read = typeof text === 'string' ? readValue(text, base) : null;
  if (read === null || !read.ok)
    return (
      <Elsewhere label={label} path={path} why={typeof text === 'object' ? 'several values' : 'its form'} />
    );
  // In the unit of the person; the scale is the same.
  const unit = unitOf(infoAt(form, path), us) || base;
  const value = held ?? Number(read.value.toPrecision(6));
  const most = Math.max(to, value);
  const write = (now: number): void => {
    hold(now);
    const own = inUnit(now, base, unit);
    const value = `${Number(own.toFixed(unit === 'in' ? 1 : 2))} ${unit}`;
    bench.editAll([{ key: path, value }], `slider ${label}`);
  };
  return (
    <div class="slider">
      <label for={id}>{label}</label>
      <output>{String(text)}</output>
      <input
        id={id}
        type="range"
        min={Math.min(from, value)}
        max={most}
        step={step}
        value={value}
        aria-valuetext={String(text)}
        onInput={(event) => write(Number(event.currentTarget.value))}
        onChange={() => {
          hold(null);
          bench.settle();
        }}
      />
    </div>
  );
}

/** Through the sizes of the series that the feed has; or the tool chooses. */
function Gauge({ label, view }: { readonly label: string; readonly view: View }) {
  const bench = useBench();
  const { tree, form } = useBenchState();
  const path = ['feed', 0, 'gauge'];
  const text = valueAt(tree.value, path);
  const now = view.json.runs[0]?.gauge ?? '';
  const auto = text === 'auto';
  const series = (auto ? now : String(text)).split(' ')[1] ?? 'AWG';
  const sizes = choicesAt(form, tree.value, path).filter((size) => size.endsWith(` ${series}`));
  const at = auto ? sizes.indexOf(now) : sizes.indexOf(String(text));
  if (sizes.length === 0 || typeof text !== 'string' || (at < 0 && !auto))
    return <Elsewhere label={label} path={path} why="its form" />;
  const said = `${printSize(auto ? now : text)}${auto ? ', chosen' : ''}`;
  const write = (value: string): void => bench.editAll([{ key: path, value }], `slider ${label}`);
  return (
    <div class="slider">
      <label for="slider-gauge">{label}</label>
      <output>
        {printSize(auto ? now : text)}{' '}
        <button type="button" class="small" aria-pressed={auto} onClick={() => write(auto ? now : 'auto')}>
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
        onInput={(event) => write(sizes[Number(event.currentTarget.value)] ?? 'auto')}
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
