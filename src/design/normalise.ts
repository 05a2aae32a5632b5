/** From a file that passed schema and checks to the design that the model takes. */

import { RELAY_SHARES } from '../data/relays.ts';
import { readAccuracy } from './accuracy.ts';
import { type AcrossKind, acrossKind } from './across.ts';
import { between } from './between.ts';
import { coilMaxFor, dropFor, pullInFor, restingFor, usualDerating } from './by-system.ts';
import type { Carried } from './carried.ts';
import { conductorNamed } from './checks-measured.ts';
import { PRESETS, type Preset, SMALLEST, SMALLEST_WHY } from './defaults.ts';
import type {
  Accuracy,
  Design,
  Fuse,
  FuseType,
  Instrument,
  Measured,
  OwnRow,
  Relay,
  Run,
  Sense,
  Spreading,
  Unknown,
  Wire,
} from './design.ts';
import { coilsOf, evenAngles, eventsOf, rowsOf } from './layout.ts';
import { INSTRUMENTS, judgedAlone, SAE_TYPES, SPREADING } from './names.ts';
import { kitOf } from './normalise-kit.ts';
import type { DesignFile, RunOfFile } from './schema.ts';
import { UNKNOWN } from './schema-runs.ts';
import { areaOf, boundsOf, type OfShop } from './shop/limits.ts';
import type { Bound, Shop, ShopCoil, ShopFuse, ShopRelay } from './shop/shop.ts';
import { asSold } from './sold.ts';
import { seriesOf } from './spellings.ts';

/** Fills in what was left out, and remembers it. */
class Filler {
  readonly assumed: Design['assumed'] = [];

  take<T>(given: T | undefined, preset: Preset<T>, path: string): T {
    if (given !== undefined) return given;
    this.assumed.push({ path, value: preset.text, why: preset.why });
    return preset.value;
  }

  /** A preset that there may not be: then nothing is known. */
  takeIf<T>(given: T | undefined, preset: Preset<T | null> | null, path: string): T | null {
    return preset === null ? (given ?? null) : this.take<T | null>(given, preset, path);
  }
}

function ambientOf(given: number | undefined, run: RunOfFile, path: string, fill: Filler): number {
  const preset = {
    value: run.ambient,
    text: `${Number(run.ambient.toPrecision(4))} degC`,
    why: 'the ambient of the run',
  };
  return fill.take(given, preset, `${path}.ambient`);
}

/** What is filled in, and the highest supply of the points [V]. */
interface Filling {
  readonly fill: Filler;
  readonly highest: number;
}

/** [degC] A contact rating without its temperature is taken for one at this. */
const COOL = RELAY_SHARES.rows[0]?.at ?? 0;

/** Larger ratings are rarely of the medium type. */
const MEDIUM = 40;
const standInFuse = (rating: number | 'auto'): FuseType =>
  rating === 'auto' || rating <= MEDIUM ? 'C' : 'E';

function fuseOf(fuse: NonNullable<RunOfFile['fuse']>, run: RunOfFile, path: string, fill: Filler): Fuse {
  const ambient = ambientOf(fuse.ambient, run, path, fill);
  return {
    use: fuse.use ?? null,
    type: fuse.type === UNKNOWN ? standInFuse(fuse.rating) : fuse.type,
    rating: fuse.rating,
    ambient,
    from_source: fuse.from_source ?? null,
    voltage: fuse.voltage ?? null,
    curve: fuse.curve ?? null,
    melting: fuse.melting ?? null,
    rerating: fill.take<Fuse['rerating']>(fuse.rerating, PRESETS.rerating, `${path}.rerating`),
  };
}

type RelayOfFile = Exclude<NonNullable<RunOfFile['relay']>, typeof UNKNOWN>;

function relayOf(relay: RelayOfFile, run: RunOfFile, path: string, { fill, highest }: Filling): Relay {
  const take = <T>(key: keyof RelayOfFile, given: T | undefined, preset: Preset<T>): T =>
    fill.take(given, preset, `${path}.${key}`);
  const pull_in = fill.takeIf(relay.pull_in, pullInFor(highest), `${path}.pull_in`);
  const coilMax = pull_in === null ? null : coilMaxFor(pull_in);
  const ambient = ambientOf(relay.ambient, run, path, fill);
  const cool = ambient <= (relay.rated_at ?? COOL);
  return {
    use: relay.use ?? null,
    rating: relay.rating,
    rated_at: relay.rated_at ?? null,
    derating: cool
      ? (relay.derating ?? null)
      : take<Relay['derating']>('derating', relay.derating, usualDerating),
    coil: relay.coil ?? null,
    pull_in,
    drop_out: relay.drop_out ?? null,
    coil_max: fill.takeIf(relay.coil_max, coilMax, `${path}.coil_max`),
    closes: take<Relay['closes']>('closes', relay.closes, PRESETS.closes),
    contact: take<number>('contact', relay.contact, PRESETS.contact),
    ambient,
    coil_rise: take<number>('coil_rise', relay.coil_rise, PRESETS.coil_rise),
    suppression: relay.suppression ?? null,
    trigger_drop: take<number>('trigger_drop', relay.trigger_drop, PRESETS.trigger_drop),
    tab: relay.tab ?? null,
    make: relay.make ?? null,
  };
}

/** A fuse of the shop in the place of another one: at its place, and with what its maker says. */
export const fuseOfShop = ({ curve, ...part }: ShopFuse, { ambient, from_source }: Fuse): Fuse =>
  fuseOf(
    { ...part, use: part.name, curve: curve && [...curve], ambient, from_source: from_source ?? undefined },
    { ambient } as RunOfFile,
    '',
    new Filler(),
  );

/** A relay of the shop in the place of another one; `highest` is the highest supply of the points [V]. */
export const relayOfShop = (
  part: ShopRelay,
  { ambient, closes, trigger_drop }: Relay,
  highest: number,
): Relay =>
  relayOf({ ...part, use: part.name, ambient, closes, trigger_drop }, { ambient } as RunOfFile, '', {
    fill: new Filler(),
    highest,
  });

const runOf = (
  run: RunOfFile,
  all: readonly RunOfFile[],
  side: Run['side'],
  path: string,
  fill: Filler,
  highest: number,
): Run => ({
  name: run.run,
  side,
  ambient: run.ambient,
  insulation: run.insulation,
  bundle: run.bundle === UNKNOWN ? 1 : fill.take(run.bundle, PRESETS.bundle, `${path}.bundle`),
  gauge: gaugeOf(run, all, path, fill),
  smallest: run.smallest === undefined ? null : asSold(run.smallest, run.insulation),
  largest: run.largest === undefined ? null : asSold(run.largest, run.insulation),
  takes: { smallest: null, largest: null },
  like: run.like ?? null,
  material: run.material ?? null,
  conductors: run.conductors ?? 1,
  also: run.also ?? 0,
  joints: fill.take(run.joints, PRESETS.joints, `${path}.joints`),
  contacts: run.contacts ?? PRESETS.contacts.value,
  capacitor: run.capacitor ?? null,
  fuse: run.fuse ? fuseOf(run.fuse, run, `${path}.fuse`, fill) : null,
  relay: run.relay
    ? relayOf(run.relay === UNKNOWN ? { rating: 'auto' } : run.relay, run, `${path}.relay`, {
        fill,
        highest,
      })
    : null,
});

/** What a run states and what its terminals take: the narrower of both. `sign` is 1 for a smallest size, −1 for a largest. */
function within(stated: string | null, bound: Bound | null, insulation: string, sign: 1 | -1): string | null {
  if (bound === null) return stated;
  const size = asSold(bound.size, insulation);
  return stated !== null && sign * (areaOf(stated) - areaOf(size)) >= 0 ? stated : size;
}

/** Conductors of one run. `ids` are the coils in their order. */
function wiresOf(run: RunOfFile, index: number, ids: readonly string[]): Wire[] {
  const { carries, length } = run;
  const all = ids.map((_, i) => i);
  if (carries === 'each')
    return all.map((coil) => {
      const id = ids[coil] as string;
      return {
        id: `${run.run}.${id}`,
        run: index,
        coils: [coil],
        length: typeof length === 'number' ? length : (length[id] as number),
      };
    });
  // In the order of the coils, in whatever order the list names them.
  const coils = carries === 'all' ? all : all.filter((coil) => carries.includes(ids[coil] as string));
  return [{ id: run.run, run: index, coils, length: length as number }];
}

/** The wire of the shop that sizes are chosen from; null where it lists none. */
const shelfOf = (shop: Shop | null): Design['shelf'] =>
  shop?.wire?.map(({ size, insulation, resistance: ohm, measured_at, from = null }) => ({
    size: asSold(size, insulation),
    insulation,
    measured: ohm === undefined ? null : { ohm, at: measured_at ?? PRESETS.temperature.value, from },
  })) ?? null;

function sizesOf(file: DesignFile, shelf: Design['shelf'], fill: Filler): Design['sizes'] {
  const { series: given, smallest, stock } = file.sizes ?? {};
  // Types that are sold by SAE number are so in every series.
  const shelved = shelf?.find(({ insulation }) => !SAE_TYPES.includes(insulation))?.size;
  const named = smallest ?? stock?.[0] ?? shelved;
  const typed = [...file.feed, ...(file.return ?? [])].find((run) => SAE_TYPES.includes(run.insulation));
  const of = (series: Design['sizes']['series'], why: string): Preset<Design['sizes']['series']> => ({
    value: series,
    text: series,
    why,
  });
  const preset =
    named !== undefined
      ? of(
          seriesOf(named),
          `the series of ${smallest ? 'sizes.smallest' : stock ? 'sizes.stock' : 'the shop’s wire'}`,
        )
      : typed
        ? of('SAE', `${typed.insulation} is sold by SAE number`)
        : PRESETS.series;
  const series = fill.take(given, preset, 'sizes.series');
  if (series === 'AWG' && typed !== undefined)
    fill.take(
      undefined,
      of('SAE', `${typed.insulation} is sold by SAE number, whatever the series of the rest`),
      `sizes.series of ${typed.insulation}`,
    );
  const least = { value: SMALLEST[series], text: SMALLEST[series], why: SMALLEST_WHY };
  return {
    series,
    smallest: fill.take<string>(smallest, least, 'sizes.smallest'),
    stock: stock ?? null,
    aim: file.sizes?.aim ?? PRESETS.aim.value,
  };
}

/** Size of a run: as stated, that of the run it is to be like, or to be chosen. */
function gaugeOf(run: RunOfFile, all: readonly RunOfFile[], path: string, fill: Filler): string {
  const stated = run.gauge === UNKNOWN ? 'auto' : run.gauge;
  if (stated === 'auto') {
    const other = all.find((one) => one.run === run.like)?.gauge ?? 'auto';
    return other === 'auto' || other === UNKNOWN ? 'auto' : asSold(other, run.insulation);
  }
  const sold = asSold(stated, run.insulation);
  const why = `${run.insulation} is sold by SAE number; the areas are those of SAE, 5 to 12 % below AWG`;
  return sold === stated ? stated : fill.take(undefined, { value: sold, text: sold, why }, `${path}.gauge`);
}

function testOf(test: DesignFile['coil']['test_point'], fill: Filler): Design['coil']['test_point'] {
  if (test === undefined) return null;
  const path = 'coil.test_point.temperature';
  return {
    supply: test.supply,
    dwell: test.dwell,
    peak: test.peak,
    temperature: fill.take<number | null>(test.temperature, PRESETS.test_temperature, path),
  };
}

function coilOf(coil: DesignFile['coil'], fill: Filler): Design['coil'] {
  return {
    use: coil.use ?? null,
    resistance: coil.resistance ?? null,
    inductance: coil.inductance ?? null,
    test_point: testOf(coil.test_point, fill),
    peak: coil.peak ?? null,
    driver_drop: fill.take(coil.driver_drop, PRESETS.driver_drop, 'coil.driver_drop'),
    current_limit: coil.current_limit ?? null,
    series_resistor: coil.series_resistor
      ? {
          value: coil.series_resistor.value,
          bypassed_at: coil.series_resistor.bypassed_at ?? [],
        }
      : null,
    temperature: fill.take(coil.temperature, PRESETS.temperature, 'coil.temperature'),
    max_dwell: coil.max_dwell ?? null,
    max_duty: coil.max_duty ?? null,
    max_peak: coil.max_peak ?? null,
    min_supply: coil.min_supply ?? null,
  };
}

/** A coil of the shop in the place of another one, as warm, and behind the same resistor. */
export const coilOfShop = (
  part: ShopCoil,
  { temperature, series_resistor }: Design['coil'],
): Design['coil'] => ({
  ...coilOf({ ...part, use: part.name, temperature }, new Filler()),
  series_resistor,
});

function limitsOf(
  limits: NonNullable<DesignFile['limits']>,
  runs: readonly Run[],
  energies: boolean,
  highest: number,
  fill: Filler,
): Design['limits'] {
  const { contact_resistance: contact } = limits;
  const path = 'limits.contact_resistance';
  return {
    drop: fill.take(limits.drop, dropFor(highest), 'limits.drop'),
    // Of a coil with a peak alone no energy is known.
    energy: energies
      ? fill.take<number>(limits.energy, PRESETS.energy, 'limits.energy')
      : (limits.energy ?? PRESETS.energy.value),
    // Without a plug nobody needs to know what one would have been taken for.
    contact_resistance: runs.some(({ contacts }) => contacts > 0)
      ? fill.take<number>(contact, PRESETS.contact_resistance, path)
      : (contact ?? PRESETS.contact_resistance.value),
    wire_load: fill.take(limits.wire_load, PRESETS.wire_load, 'limits.wire_load'),
    fuse_load: fill.take(limits.fuse_load, PRESETS.fuse_load, 'limits.fuse_load'),
    joint_resistance: fill.take(limits.joint_resistance, PRESETS.joint_resistance, 'limits.joint_resistance'),
  };
}

/** `known`: the resistance of the coil is stated. */
function toleranceOf(
  known: boolean,
  given: NonNullable<DesignFile['tolerance']>,
  fill: Filler,
  main: Filler,
  spread: Filler,
): Design['tolerance'] {
  const take = (key: Spreading, preset: Preset<number>, into = fill): number =>
    into.take(given[key], preset, `tolerance.${key}`);
  return {
    // It sets the current of a driver that stays on, and so matters to sizes, too.
    coil_resistance: (known ? main : fill).take(
      given.coil_resistance,
      PRESETS.coil_resistance,
      'tolerance.coil_resistance',
    ),
    coil_inductance: take('coil_inductance', PRESETS.coil_inductance),
    coil_warmer: take('coil_warmer', PRESETS.coil_warmer),
    dwell: take('dwell', PRESETS.dwell_tolerance),
    length: take('length', PRESETS.length_tolerance),
    joint_resistance: take('joint_resistance', PRESETS.joint_tolerance),
    supply: take('supply', PRESETS.supply_tolerance),
    current_limit: take('current_limit', PRESETS.limit_tolerance, spread),
    ambient: take('ambient', PRESETS.ambient_tolerance, spread),
    distribution: Object.fromEntries(
      SPREADING.map((key) => [key, given.distribution?.[key] ?? 'uniform']),
    ) as Design['tolerance']['distribution'],
  };
}

function instrumentsOf(given: NonNullable<DesignFile['instruments']>, fill: Filler): Design['instruments'] {
  const of = (sense: Sense): Accuracy =>
    given[sense] ?? {
      ...(readAccuracy(PRESETS[sense].text, sense) as Accuracy),
      ...(fill.take<null>(undefined, PRESETS[sense], `instruments.${sense}`) ?? {}),
    };
  return {
    meter: of('meter'),
    scope: of('scope'),
    clamp: of('clamp'),
    ohmmeter: of('ohmmeter'),
    trace: of('trace'),
    log: of('log'),
    camera: of('camera'),
  };
}

/** One reading for each instrument of each entry. */
function measuredOf(file: DesignFile, wires: readonly Wire[], ids: readonly string[]): Measured[] {
  const runs = [...file.feed, ...(file.return ?? [])];
  const all = (file.measured ?? []).flatMap((entry, i): Measured[] => {
    const named = entry.run === undefined ? null : conductorNamed(entry.run, entry.coil, runs, ids);
    const wire = named === null ? -1 : wires.findIndex(({ id }) => id === named);
    const place = {
      what: entry.what,
      wire: wire < 0 ? null : wire,
      coil: wire < 0 && entry.coil !== undefined ? ids.indexOf(entry.coil) : null,
      point: entry.point === undefined ? null : file.points.findIndex(({ name }) => name === entry.point),
      path: `measured[${i}]`,
      between: betweenOf(entry, file, wires, ids),
      across: acrossOf(entry.across),
      ambient: entry.ambient ?? null,
    };
    return (Object.keys(INSTRUMENTS) as Instrument[]).flatMap((instrument) => {
      const value = entry[instrument];
      return value === undefined ? [] : [{ ...place, instrument, value }];
    });
  });
  // What is judged by itself stands behind what is weighed together.
  return [...all.filter((one) => !judgedAlone(one)), ...all.filter(judgedAlone)];
}

/** Of these a run has one at most. */
const SINGLE: readonly AcrossKind[] = ['fuse', 'holder', 'relay'];

/** `joint` and `joint 1` are one place. */
function acrossOf(across: string | undefined): string | null {
  const place = across === undefined ? null : acrossKind(across);
  if (place === null) return null;
  return SINGLE.includes(place.kind) ? place.kind : `${place.kind} ${place.no}`;
}

function betweenOf(
  { from, to }: NonNullable<DesignFile['measured']>[number],
  file: DesignFile,
  wires: readonly Wire[],
  ids: readonly string[],
): number[] | null {
  if (from === undefined || to === undefined) return null;
  const found = between(from, to, file.feed, file.return ?? [], ids) ?? [];
  return found.map((id) => wires.findIndex((wire) => wire.id === id));
}

/** Parts that the file calls unknown. Something stands in for each; `coilfeed check` judges what it could be. */
function unknownsOf(file: DesignFile): Unknown[] {
  const of = (runs: readonly RunOfFile[], side: 'feed' | 'return', before: number): Unknown[] =>
    runs.flatMap((run, i) => {
      const at = { run: before + i };
      const path = `${side}[${i}]`;
      return [
        ...(run.gauge === UNKNOWN ? [{ ...at, kind: 'gauge', path: `${path}.gauge` } as const] : []),
        ...(run.bundle === UNKNOWN ? [{ ...at, kind: 'bundle', path: `${path}.bundle` } as const] : []),
        ...(run.fuse?.type === UNKNOWN
          ? [{ ...at, kind: 'fuse_type', path: `${path}.fuse.type` } as const]
          : []),
        ...(run.relay === UNKNOWN ? [{ ...at, kind: 'relay', path: `${path}.relay` } as const] : []),
      ];
    });
  return [...of(file.feed, 'feed', 0), ...of(file.return ?? [], 'return', file.feed.length)];
}

/** The same coils behind the other feed, as a design of its own. */
function originalOf({ original, ...file }: DesignFile, text: Carried, own: OfShop): Design | null {
  if (original === undefined) return null;
  const { feed, return: back } = original;
  return normalise(
    {
      ...file,
      title: 'Original wiring',
      feed,
      return: back,
      kit: undefined,
      measured: undefined,
      own: undefined,
      added: undefined,
    },
    text,
    // Its terminals are not known.
    { ...own, used: own.used.filter(({ path }) => !path.startsWith('kit.')) },
  );
}

/**
 * `file` must have passed the checks: the layout is computed without looking for faults again. `text` is handed
 * through.
 */
export function normalise(file: DesignFile, text: Carried, own: OfShop = { shop: null, used: [] }): Design {
  const fill = new Filler();
  const { cylinders, stroke, firing_order } = file.engine;
  const even = evenAngles(cylinders, stroke);
  const evenPreset = {
    value: even,
    text: even.map((a) => Number(a.toFixed(2))).join(', '),
    why: 'even firing',
  };
  const firing_angles = fill.take(file.engine.firing_angles, evenPreset, 'engine.firing_angles');
  const engine = { cylinders, stroke, firing_order, firing_angles };
  const { dwell, layout, sparks } = file.ignition;
  const coils = coilsOf(layout, engine, file.ignition.coils ?? []);
  const ids = coils.map((coil) => coil.id);
  const rest = fill.take(file.ignition.rest, PRESETS.rest, 'ignition.rest');
  const coil = coilOf(file.coil, fill);
  const shelf = shelfOf(own.shop);
  const sizes = sizesOf(file, shelf, fill);
  const highest = Math.max(...file.points.map(({ supply }) => supply));
  const all = [...file.feed, ...(file.return ?? [])];
  const sided = all.map((run, i) => ({
    ...run,
    side: i < file.feed.length ? ('feed' as const) : ('return' as const),
  }));
  const runs = [
    ...file.feed.map((run, i) => runOf(run, all, 'feed', `feed[${i}]`, fill, highest)),
    ...(file.return ?? []).map((run, i) => runOf(run, all, 'return', `return[${i}]`, fill, highest)),
  ];
  for (const [i, run] of runs.entries()) {
    const terminals = boundsOf(sided, i, own);
    run.takes = terminals;
    run.smallest = within(run.smallest, terminals.smallest, run.insulation, 1);
    run.largest = within(run.largest, terminals.largest, run.insulation, -1);
  }
  // Only a relay that closes before cranking asks for it.
  const early = runs.some(({ relay }) => relay?.closes === 'before cranking');
  const resting = fill.takeIf(file.supply?.resting, early ? restingFor(highest) : null, 'supply.resting');
  const cranking = file.supply?.cold_cranking ?? null;
  if (cranking !== null) fill.take<null>(undefined, PRESETS.source, 'supply.source_resistance');
  const limits = limitsOf(file.limits ?? {}, runs, coil.peak === null, highest, fill);
  const [read, spread] = [new Filler(), new Filler()];
  const tolerance = toleranceOf(file.coil.resistance !== undefined, file.tolerance ?? {}, read, fill, spread);
  const wires = [...file.feed, ...(file.return ?? [])].flatMap((run, i) => wiresOf(run, i, ids));
  return {
    title: file.title,
    notes: file.notes ?? null,
    date: file.date ?? null,
    units: file.units ?? PRESETS.units.value,
    engine,
    ignition: {
      layout,
      rest,
      sparks: sparks
        ? { ...sparks, burn: fill.take<number>(sparks.burn, PRESETS.burn, 'ignition.sparks.burn') }
        : null,
      dwell: Array.isArray(dwell) ? dwell.toSorted((a, b) => a.supply - b.supply) : [{ supply: null, dwell }],
    },
    coils,
    events: eventsOf(coils),
    coil,
    supply: {
      source_resistance: file.supply?.source_resistance ?? null,
      cold_cranking: cranking,
      alternator: file.supply?.alternator ?? null,
      other_load: file.supply?.other_load ?? null,
      resting,
    },
    points: file.points.map((point) => ({ ...point, dip: point.dip ?? null })),
    sweep: file.sweep
      ? { ...file.sweep, rows: rowsOf(file.sweep.from, file.sweep.to, file.sweep.step) }
      : null,
    sizes,
    runs,
    wires,
    limits,
    kit: kitOf(file.kit ?? {}, runs, file.units),
    ...own,
    shelf,
    pins: null,
    tolerance,
    instruments: instrumentsOf(file.instruments ?? {}, read),
    tolerance_assumed: read.assumed,
    spread_assumed: spread.assumed,
    measured: measuredOf(file, wires, ids),
    own: (file.own ?? []).map(ownOf),
    added: new Map(
      Object.entries(file.added ?? {}).map(([name, cells]) => [name, new Map(Object.entries(cells))]),
    ),
    remarks: new Map(Object.entries(file.remarks ?? {})),
    assumed: fill.assumed,
    unknowns: unknownsOf(file),
    original: originalOf(file, text, own),
    text,
  };
}

function ownOf({
  label,
  formula,
  unit,
  at_most,
  at_least,
  words,
}: NonNullable<DesignFile['own']>[number]): OwnRow {
  const sense = at_most !== undefined ? 'at_most' : at_least !== undefined ? 'at_least' : null;
  return {
    label,
    formula: formula.replace(/^=/, ''),
    unit: unit ?? '',
    sense,
    limit: at_most ?? at_least ?? null,
    words: words ?? '',
  };
}
