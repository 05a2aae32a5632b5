/** What a field is called, in which unit a bare number is taken, and what may be picked there. */
import { readValue } from '../../basis/read-value.ts';
import { shownIn } from '../../basis/shown.ts';
import { printUnit } from '../../basis/units.ts';
import type { Path } from '../../design/problems.ts';
import { labelOf, placeOf, valueAt } from '../place.ts';
import type { FieldInfo, Form, View } from '../protocol.ts';

export const infoAt = (form: Form | null, path: Path): FieldInfo | undefined => form?.fields[placeOf(path)];

export const unitOf = (info: Partial<FieldInfo> | undefined, us: boolean): string =>
  (us ? info?.us : info?.unit) ?? '';

/** `Primary inductance, mH`; a member of a map, such as a coil, by its own key. */
export function titleOf(info: Partial<FieldInfo> | undefined, path: Path, us: boolean): string {
  const label = info?.label ?? labelOf(path.at(-1) ?? '');
  const unit = unitOf(info, us);
  return unit === '' ? label : `${label}, ${printUnit(unit)}`;
}

const names = (parts: readonly { readonly name: string }[] | undefined): string[] =>
  (parts ?? []).map(({ name }) => name);

/** Names of the design itself, and of the shop's parts. */
const NAMED: Readonly<Record<string, (view: View) => readonly string[]>> = {
  'coil.use': ({ design }) => names(design.shop?.coils),
  'run.fuse.use': ({ design }) => names(design.shop?.fuses),
  'run.relay.use': ({ design }) => names(design.shop?.relays),
  'run.like': ({ design }) => ['none', ...design.runs.map(({ name }) => name)],
  'measured.run': ({ json }) => [...new Set(json.runs.flatMap(({ run, id }) => [run, id]))],
  'measured.coil': ({ json }) => json.coil.ids,
  'measured.point': ({ json }) => json.points.map(({ name }) => name),
};

/** What may be picked; ratings of fuses by the type beside them. */
export function choicesAt(
  form: Form | null,
  root: unknown,
  path: Path,
  view: View | null = null,
): readonly string[] {
  const place = placeOf(path);
  const named = view === null ? undefined : NAMED[place]?.(view);
  if (named !== undefined) return named;
  const type = place === 'run.fuse.rating' ? ` ${String(valueAt(root, [...path.slice(0, -1), 'type']))}` : '';
  const all = form?.choices[place + type] ?? [];
  // What is on the shelf comes first.
  const shelf = /gauge|smallest|largest/.test(place)
    ? (view?.design.shop?.wire ?? []).map(({ size }) => size)
    : [];
  const have = all.filter((choice) => shelf.includes(choice));
  return have.length === 0
    ? all
    : [
        ...all.filter((one) => one === 'auto'),
        ...have,
        ...all.filter((one) => one !== 'auto' && !have.includes(one)),
      ];
}

const BARE = /^[+\-−]?(\d+([.,]\d+)?|[.,]\d+)$/;

/** A number without a unit takes that of its field. What could be read in two ways is left to the reader, who says so. */
export const withUnit = (typed: string, unit: string): string =>
  unit !== '' && BARE.test(typed.trim()) ? `${typed.trim()} ${unit}` : typed;

/** A value in the units of the other system, where they differ: `≈ 59.1 in`; empty otherwise. */
export function inOther(text: string, info: FieldInfo | undefined): string {
  if (info === undefined || info.unit === info.us || info.unit === '') return '';
  const read = readValue(text, info.unit);
  if (!read.ok) return '';
  const metric = /(in|ft|mil|degF|°F|["'″′])\s*$/.test(text);
  return `≈ ${shownIn(read.value, info.unit, metric ? 'metric' : 'us', info.unit)}`;
}
