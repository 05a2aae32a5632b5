/** The `kit` block with its defaults. Its choices are listed with the kit, not with the calculation. */
import { KIT_PRESETS, type Preset } from './defaults.ts';
import type { Design } from './design.ts';
import { FITTING, type Kit, type KitWire, type PartName } from './kit.ts';
import type { DesignFile } from './schema.ts';

type KitOfFile = NonNullable<DesignFile['kit']>;

const PARTS: readonly PartName[] = [
  'fuse',
  'fuse_holder',
  'relay',
  'relay_socket',
  'fuse_terminal',
  'relay_terminal',
  'splice',
  'ground',
  'coil_connector',
  'control_contact',
  'sleeve',
  'label',
  'tie',
];

const wireOf = (given: KitOfFile['relay_ground']): KitWire => ({
  gauge: given?.gauge ?? null,
  insulation: given?.insulation ?? null,
  length: given?.length ?? null,
  colour: given?.colour ?? null,
});

const byRun = <T>(given: Readonly<Record<string, T>> | undefined): Map<string, T> =>
  new Map(Object.entries(given ?? {}));

/** `runs` and `units` are those of the design, for what the kit takes from them. */
export function kitOf(given: KitOfFile, runs: Design['runs'], units?: Kit['units']): Kit {
  const assumed: { path: string; value: string; why: string }[] = [];
  const take = <T>(value: T | undefined, preset: Preset<T>, path: string): T => {
    if (value !== undefined) return value;
    assumed.push({ path: `kit.${path}`, value: preset.text, why: preset.why });
    return preset.value;
  };
  const strip =
    typeof given.strip === 'number'
      ? new Map(runs.map((run) => [run.name, given.strip as number]))
      : byRun(given.strip);
  const delivered = take<Kit['delivered']>(given.delivered, KIT_PRESETS.delivered, 'delivered');
  const [slack, end] =
    delivered === 'loose'
      ? [KIT_PRESETS.allowance, KIT_PRESETS.end_allowance]
      : [KIT_PRESETS.made_allowance, KIT_PRESETS.made_end_allowance];
  return {
    units: take<Kit['units']>(given.units ?? units, KIT_PRESETS.units, 'units'),
    delivered,
    allowance: take<number>(given.allowance, slack, 'allowance'),
    end_allowance: take<number>(given.end_allowance, end, 'end_allowance'),
    cut_tolerance: take<number>(given.cut_tolerance, KIT_PRESETS.cut_tolerance, 'cut_tolerance'),
    strip_tolerance: take<number>(given.strip_tolerance, KIT_PRESETS.strip_tolerance, 'strip_tolerance'),
    waste: take<number>(given.waste, KIT_PRESETS.waste, 'waste'),
    samples: take<number>(given.samples, KIT_PRESETS.samples, 'samples'),
    sample_length: take<number>(given.sample_length, KIT_PRESETS.sample_length, 'sample_length'),
    continuity: take<number>(given.continuity, KIT_PRESETS.continuity, 'continuity'),
    isolation: take<number>(given.isolation, KIT_PRESETS.isolation, 'isolation'),
    insulation_test: {
      voltage: take<number>(
        given.insulation_test?.voltage,
        KIT_PRESETS.insulation_volts,
        'insulation_test.voltage',
      ),
      least: take<number>(
        given.insulation_test?.least,
        KIT_PRESETS.insulation_least,
        'insulation_test.least',
      ),
    },
    test_current: take<number>(given.test_current, KIT_PRESETS.test_current, 'test_current'),
    strip,
    colours: byRun(given.colours),
    terminals: new Map(
      Object.entries(given.terminals ?? {}).map(([run, { from, to }]) => [
        run,
        { from: from ?? null, to: to ?? null },
      ]),
    ),
    fuse_at: byRun(given.fuse_at),
    relay_at: byRun(given.relay_at),
    trigger: { ...wireOf(given.trigger), fuse: given.trigger?.fuse ?? null },
    relay_ground: wireOf(given.relay_ground),
    spares: {
      fuse: take<number>(given.spares?.fuse, KIT_PRESETS.spare_fuses, 'spares.fuse'),
      relay: take<number>(given.spares?.relay, KIT_PRESETS.spare_relays, 'spares.relay'),
      terminals: take<number>(given.spares?.terminals, KIT_PRESETS.spare_terminals, 'spares.terminals'),
    },
    pins: {
      supply: given.pins?.supply ?? null,
      ground: given.pins?.ground ?? null,
      control: given.pins?.control ?? null,
    },
    fitting: Object.fromEntries(
      FITTING.map((name) => [name, given.fitting?.[name] ?? null]),
    ) as Kit['fitting'],
    parts: Object.fromEntries(PARTS.map((name) => [name, given.parts?.[name] ?? null])) as Kit['parts'],
    assumed,
  };
}
