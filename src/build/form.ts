/**
 * What the forms of the page are made from: the schema of a design, and of each field its name, unit and help as the model
 * records them. The same for every design, so that it is worked out when the page is built.
 */
import { labelParts, type Quantity } from '../basis/quantity.ts';
import { FUSE_RATINGS } from '../data/fuse-ratings.ts';
import { RELAY_RATINGS } from '../data/relays.ts';
import type { What } from '../design/design.ts';
import { FUSE_TYPES, INSTRUMENTS, MEASURED, SIZES } from '../design/names.ts';
import { designJsonSchema } from '../design/schema-json.ts';
import { QUANTITIES } from '../model/model.ts';
import { labelOf, placeOf } from '../page/place.ts';
import type { FieldInfo, Form, Schema } from '../page/protocol.ts';

/** Units that a person who works in US customary units writes in the place of ours. */
const US: Readonly<Record<string, string>> = { m: 'in', mm: 'in', degC: 'degF' };

/** Keys stand in the marks of a text, not in those of a page of documentation. */
const spoken = (text: string): string => text.replace(/`([^`]*)`/g, '“$1”');

export function formOf(): Form {
  const schema: Schema = JSON.parse(spoken(JSON.stringify(designJsonSchema())));
  const records = new Map(
    Object.values<Quantity>(QUANTITIES).flatMap((q) =>
      q.kind === 'input'
        ? [[placeOf(q.path.split('.').filter((step) => !step.startsWith('{'))), q] as const]
        : [],
    ),
  );
  const fields: Record<string, FieldInfo> = {};
  const walk = (at: Schema, path: readonly string[]): void => {
    for (const inner of [...(at.anyOf ?? []), ...(at.items ? [at.items] : [])]) walk(inner, path);
    for (const [key, inner] of Object.entries(at.properties ?? {})) {
      const own = [...path, key];
      const place = placeOf(own);
      fields[place] ??= infoOf(place, inner, records.get(place));
      walk(inner, own);
    }
  };
  walk(schema, []);
  return { schema, fields, choices: choicesOf(), readings: readingsOf() };
}

/** What the key alone does not say. */
const NAMES: Readonly<Record<string, string>> = {
  use: 'Part of the shop’s file',
  'kit.fuse_at': 'Fuse, from the start of the run',
  'kit.relay_at': 'Relay, from the start of the run',
  'kit.strip': 'Bared length at both ends',
  'kit.trigger.fuse': 'Fuse of the original wire',
};

/** Units that a field takes, in the order of preference of the reader: its own, or those of the value that a table may stand for. */
const unitsOf = ({ description = '', anyOf = [], additionalProperties: of }: Schema): readonly string[] =>
  /Unit: ([^;]*?)(?:;|\.|$)/.exec(description)?.[1]?.split(', ') ??
  [...anyOf, ...(typeof of === 'object' ? [of] : [])].map(unitsOf).find((units) => units.length > 0) ??
  [];

/** The unit that one writes, where the first is another; small lengths of a kit are in millimetres. */
const WRITTEN: Readonly<Record<string, string>> = { Hz: 'rpm', H: 'mH', s: 'ms' };
const writtenAt = (place: string, unit: string): string =>
  unit === 'm' && /^kit\.(strip|end_allowance|cut_tolerance|fuse_at|relay_at|sample_length)/.test(place)
    ? 'mm'
    : (WRITTEN[unit] ?? unit);

/** A field of the file by itself has the name of its key and the first of the units that it takes. */
function infoOf(place: string, schema: Schema, q: Quantity | undefined): FieldInfo {
  const { description = '' } = schema;
  const key = place.split('.').at(-1) ?? '';
  const units = unitsOf(schema);
  const of = q === undefined ? '' : (q.shown ?? q.unit);
  const unit = units.includes(of) ? of : writtenAt(place, units[0] ?? '');
  const us = US[unit] ?? unit;
  // The form names above the part that it belongs to.
  const { within, empty } = labelParts(q?.label ?? NAMES[place] ?? NAMES[key] ?? labelOf(key));
  return {
    label: within,
    unit,
    us: units.includes(us) ? us : unit,
    help: [description, ...(empty === null ? [] : [`${empty}.`]), q?.note ?? ''].filter(Boolean).join(' '),
  };
}

const amps = (ratings: readonly number[]): string[] =>
  [...new Set(ratings)].sort((a, b) => a - b).map((rating) => `${rating} A`);

/** Lists to pick from, by the place of the field. */
function choicesOf(): Readonly<Record<string, readonly string[]>> {
  const sizes = [
    ...SIZES.AWG.map((size) => `${size} AWG`),
    ...SIZES.SAE.map((size) => `${size} SAE`),
    ...SIZES.mm2.map((size) => `${size} mm2`),
  ];
  return {
    'run.gauge': ['auto', ...sizes],
    'run.smallest': sizes,
    'run.largest': sizes,
    'sizes.smallest': sizes,
    // By the type that stands beside it.
    ...Object.fromEntries(
      FUSE_TYPES.map((type) => [
        `run.fuse.rating ${type}`,
        ['auto', ...amps(FUSE_RATINGS.rows.flatMap((row) => (row.type === type ? [row.rating] : [])))],
      ]),
    ),
    'run.relay.rating': ['auto', ...amps(RELAY_RATINGS.rows.map(({ rating }) => rating))],
    'kit.trigger.gauge': sizes,
    'kit.relay_ground.gauge': sizes,
  };
}

/** Where each kind of reading is taken; the instruments that can take it stand in `INSTRUMENTS`. */
const TAKEN: Readonly<Record<What, readonly string[]>> = {
  drop: ['run', 'across', 'point'],
  voltage: ['from', 'to', 'point'],
  supply: ['coil', 'point'],
  current: ['run', 'coil', 'point'],
  resistance: ['run', 'coil'],
  inductance: ['coil'],
  dwell: ['point'],
  trigger: ['run', 'point'],
  resting: [],
  temperature: ['run', 'across', 'point', 'ambient'],
};

const readingsOf = (): Record<string, readonly string[]> =>
  Object.fromEntries(
    MEASURED.map((what) => [
      what,
      [
        ...TAKEN[what],
        ...Object.entries(INSTRUMENTS).flatMap(([key, takes]) => (takes.includes(what) ? [key] : [])),
      ],
    ]),
  );
