/** The parts list: what one kit takes, and what a batch takes. */
import { printInsulation } from '../basis/print.ts';
import { FUSE_COLOURS } from '../data/fuse-ratings.ts';
import { FUSE_TYPES } from '../data/fuses.ts';
import { INSULATIONS } from '../data/insulation.ts';
import { classOf } from '../design/by-system.ts';
import type { Design } from '../design/design.ts';
import type { Kind, ShopFuse, ShopRelay } from '../design/shop/shop.ts';
import { fuseOf, namedPrice, relayOf, wirePrice, wireStock } from '../shop/prices.ts';
import { printQuantity } from '../views/print.ts';
import { pulled, reels } from './cut.ts';
import type { Job } from './job.ts';
import type { Spot } from './places.ts';
import { crimpKinds, printedSize } from './terminals.ts';

export interface Part {
  /** `wire`, `fuse`, … : parts of a kind stand together. */
  readonly kind: string;
  /** Designations on the drawing, empty for what has none. */
  readonly at: string;
  /** What it must be, from the design; text of our own and names of the design. */
  readonly what: string;
  /** As the shop orders it; null is a blank. */
  readonly order: string | null;
  /** In one kit, spares counted; null is a blank. Wire in metres. */
  readonly kit: number | null;
  readonly spares: number;
  readonly batch: number | null;
  readonly unit: 'pcs' | 'm';
  /** Price of one, by the shop's file; null where that states none. */
  readonly each: number | null;
}

export function partsList(job: Job): Part[] {
  return [...wire(job), ...fuses(job), ...relays(job), ...terminals(job), ...joints(job), ...others(job)];
}

/** Fuses or relays of one kind, as the design names them, else as the shop orders its own: by number, or by name. */
function deviceOf(
  job: Job,
  device: 'fuse' | 'relay',
  at: string,
  what: string,
  own: ShopFuse | ShopRelay | null,
  count: number,
): Part {
  const { parts, spares } = job.result.evaluation.design.kit;
  const stock = parts[device] ?? own?.stock ?? own?.name ?? null;
  return {
    ...piecesOf(job, device, at, what, stock, count, spares[device] * count),
    each: own?.price?.amount ?? null,
  };
}

/** Where the shop's file has parts of a kind; labels are labels. */
const SHOP_KINDS: Readonly<Record<string, Kind>> = {
  'fuse holder': 'holders',
  'relay socket': 'holders',
  splice: 'splices',
  'ground point': 'terminals',
};

const piecesOf = (
  job: Job,
  kind: string,
  at: string,
  what: string,
  order: string | null,
  count: number | null,
  spares = 0,
  extra = 0,
): Part => {
  const kit = count === null ? null : count + spares;
  return {
    kind,
    at,
    what,
    order,
    kit,
    spares,
    batch: kit === null ? null : kit * job.batch + extra,
    unit: 'pcs',
    each: namedPrice(job.result.evaluation.design, SHOP_KINDS[kind] ?? 'labels', order),
  };
};

/** `class C (125 °C)`, `TXL (125 °C)` */
function insulationOf(insulation: string | null): string {
  const known = INSULATIONS.find((one) => one.name === insulation);
  if (known === undefined) return '____';
  return `${printInsulation(known.name)} (${known.continuous} °C)`;
}

const wire = (job: Job): Part[] =>
  reels(job).map(({ reel, kit, batch }) => ({
    kind: 'wire',
    at: '',
    what: `${printedSize(reel.gauge)}, stranded copper, insulation ${insulationOf(reel.insulation)}`,
    order:
      [wireStock(job.result.evaluation.design, reel.gauge, reel.insulation, reel.colour), reel.colour]
        .filter((known) => known !== null)
        .join(', ') || null,
    kit,
    spares: 0,
    batch,
    unit: 'm',
    each: wirePrice(job.result.evaluation.design, reel.gauge, reel.insulation),
  }));

const spotsOf = ({ harness }: Job, kind: Spot['kind']): Spot[] =>
  harness.spots.filter((spot) => spot.kind === kind);

const runOf = (design: Design, spot: Spot): number => design.wires[spot.wire ?? -1]?.run ?? 0;

/** Parts that are alike stand in one row. */
function alike<T>(items: readonly T[], key: (item: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(key(item), [...(groups.get(key(item)) ?? []), item]);
  return [...groups.values()];
}

function fuses(job: Job): Part[] {
  const { evaluation: e } = job.result;
  const { kit } = e.design;
  const whatOf = (spot: Spot): string => {
    const run = runOf(e.design, spot);
    const type = e.design.runs[run]?.fuse?.type;
    const rating = e.number('fuse_rating', { run });
    const form = FUSE_TYPES.rows.find((row) => row.type === type)?.form;
    const colour = FUSE_COLOURS.rows.find((row) => row.type === type && row.rating === rating)?.colour;
    const body = colour === undefined ? '' : `, body ${colour}`;
    return `Fuse ${printQuantity('fuse_rating', rating)}, type ${type} (${form})${body}`;
  };
  return alike(spotsOf(job, 'fuse'), whatOf).flatMap((group) => {
    const at = group.map((spot) => spot.id).join(', ');
    const run = runOf(e.design, group[0] as Spot);
    const what = whatOf(group[0] as Spot);
    const own = fuseOf(e, run);
    const size = printedSize(String(e.value('gauge', { run })));
    return [
      deviceOf(job, 'fuse', at, what, own, group.length),
      piecesOf(
        job,
        'fuse holder',
        at,
        `Holder for that fuse, sealed where it may get wet; takes ${size}, and is rated for that current where it is mounted`,
        kit.parts.fuse_holder,
        group.length,
      ),
    ];
  });
}

const SUPPRESSED: Readonly<Record<string, string>> = {
  none: 'without suppression',
  diode: 'coil with diode',
  resistor: 'coil with resistor',
  diode_zener: 'coil with diode and zener diode',
};

function relays(job: Job): Part[] {
  const { evaluation: e } = job.result;
  const { kit } = e.design;
  const whatOf = (spot: Spot): string => {
    const run = runOf(e.design, spot);
    const relay = e.design.runs[run]?.relay;
    const rated = relay?.pull_in == null ? null : classOf(relay.pull_in)?.rated;
    const known = (value: number | null | undefined, unit: string): string => `${value ?? '____'} ${unit}`;
    const suppression = relay?.suppression ? SUPPRESSED[relay.suppression] : 'suppression ____';
    return (
      `Relay, make contact ${printQuantity('relay_rating', e.number('relay_rating', { run }))} at ` +
      `${known(relay?.rated_at, '°C')}, ${known(rated, 'V')} coil of ${known(relay?.coil, 'Ω')}, pulls in at ` +
      `${known(relay?.pull_in, 'V')} (20 °C) at most, ${suppression}, tabs of ${known(relay?.tab, 'mm')}`
    );
  };
  return alike(spotsOf(job, 'relay'), whatOf).flatMap((group) => {
    const at = group.map((spot) => spot.id).join(', ');
    const what = whatOf(group[0] as Spot);
    const own = relayOf(e, runOf(e.design, group[0] as Spot));
    return [
      deviceOf(job, 'relay', at, what, own, group.length),
      piecesOf(job, 'relay socket', at, 'Socket for that relay', kit.parts.relay_socket, group.length),
    ];
  });
}

function terminals(job: Job): Part[] {
  const { kit } = job.result.evaluation.design;
  return crimpKinds(job).map(({ code, what, gauge, largest, stock, count }) => ({
    ...piecesOf(
      job,
      'terminal',
      code,
      `For ${printedSize(gauge)}: ${what}, takes up to ${largest === null ? '____' : printedSize(largest)}`,
      stock,
      count,
      kit.spares.terminals,
      pulled(job),
    ),
    each: namedPrice(job.result.evaluation.design, 'terminals', what),
  }));
}

/** `1 × 10 AWG, 6 × 14 AWG` */
function meeting(job: Job, spot: Spot): string {
  const sizes = job.harness.pieces
    .filter((piece) => piece.from.spot === spot || piece.to.spot === spot)
    .map((piece) => printedSize(piece.gauge));
  return alike(sizes, (size) => size)
    .map((group) => `${group.length} × ${group[0]}`)
    .join(', ');
}

/** More wires than one stud takes. */
const crowded = (job: Job, spot: Spot): boolean =>
  job.harness.pieces.filter((piece) => piece.from.spot === spot || piece.to.spot === spot).length >
  (job.result.evaluation.number('stud_most') ?? Number.POSITIVE_INFINITY);

function joints(job: Job): Part[] {
  const { kit } = job.result.evaluation.design;
  return [
    ...alike(spotsOf(job, 'splice'), (spot) => meeting(job, spot)).map((group) =>
      piecesOf(
        job,
        'splice',
        group.map((spot) => spot.id).join(', '),
        `${crowded(job, group[0] as Spot) ? 'Distribution block, or splices one after the other, for' : 'Splice of'} ${meeting(job, group[0] as Spot)}, insulated and sealed`,
        kit.parts.splice,
        group.length,
      ),
    ),
    ...alike(spotsOf(job, 'ground'), (spot) => meeting(job, spot)).map((group) =>
      piecesOf(
        job,
        'ground point',
        group.map((spot) => spot.id).join(', '),
        crowded(job, group[0] as Spot)
          ? `Bus across several studs, with nuts and lock washers, for ${meeting(job, group[0] as Spot)}`
          : `Stud with nut and lock washer, or splice, for ${meeting(job, group[0] as Spot)}`,
        kit.parts.ground,
        group.length,
      ),
    ),
  ];
}

function others(job: Job): Part[] {
  const { design } = job.result.evaluation;
  const { parts } = design.kit;
  const labels =
    job.harness.pieces.length * 2 + spotsOf(job, 'fuse').length + spotsOf(job, 'relay').length + 1;
  return [
    piecesOf(
      job,
      'coil connector',
      '',
      'Connector that fits the coil, with its seals',
      parts.coil_connector,
      design.coils.length,
    ),
    piecesOf(
      job,
      'control contact',
      '',
      'Contact with seal for the control wire, where the old one does not fit the new connector',
      parts.control_contact,
      design.coils.length,
    ),
    piecesOf(job, 'label', '', 'Labels of wire ends, fuses and relays, and of the kit', parts.label, labels),
    piecesOf(
      job,
      'sleeve',
      '',
      'Sleeve or conduit, for the hottest place it goes through',
      parts.sleeve,
      null,
    ),
    piecesOf(job, 'ties', '', 'Ties, clips, grommets', parts.tie, null),
  ];
}
