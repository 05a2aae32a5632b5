/** The parts list: what one kit takes, and what a batch takes. */
import { printSize } from '../basis/print.ts';
import { FUSE_COLOURS } from '../data/fuse-ratings.ts';
import { FUSE_TYPES } from '../data/fuses.ts';
import { INSULATIONS } from '../data/insulation.ts';
import type { Design } from '../design/design.ts';
import type { Kind } from '../design/shop/shop.ts';
import { fusePrice, namedPrice, relayPrice, wirePrice } from '../shop/prices.ts';
import { printQuantity } from '../views/print.ts';
import { reels } from './cut.ts';
import type { Job } from './job.ts';
import type { End, Piece, Spot } from './places.ts';

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

export const printedSize = (gauge: string | null): string =>
  gauge === null ? 'size ____' : printSize(gauge);

export function partsList(job: Job): Part[] {
  return [...wire(job), ...fuses(job), ...relays(job), ...terminals(job), ...joints(job), ...others(job)];
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
  return `${known.name.length === 1 ? 'class ' : ''}${known.name} (${known.continuous} °C)`;
}

const wire = (job: Job): Part[] =>
  reels(job).map(({ reel, kit, batch }) => ({
    kind: 'wire',
    at: '',
    what: `${printedSize(reel.gauge)}, stranded copper, insulation ${insulationOf(reel.insulation)}`,
    order: reel.colour,
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
    const size = printedSize(String(e.value('gauge', { run })));
    return [
      {
        ...piecesOf(job, 'fuse', at, what, kit.parts.fuse, group.length, kit.spares.fuse * group.length),
        each: fusePrice(e, run),
      },
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
    const known = (value: number | null | undefined, unit: string): string => `${value ?? '____'} ${unit}`;
    const suppression = relay?.suppression ? SUPPRESSED[relay.suppression] : 'suppression ____';
    return (
      `Relay, make contact ${printQuantity('relay_rating', e.number('relay_rating', { run }))} at ` +
      `${known(relay?.rated_at, '°C')}, 12 V coil of ${known(relay?.coil, 'Ω')}, pulls in at ` +
      `${known(relay?.pull_in, 'V')} (20 °C) at most, ${suppression}, tabs of ${known(relay?.tab, 'mm')}`
    );
  };
  return alike(spotsOf(job, 'relay'), whatOf).flatMap((group) => {
    const at = group.map((spot) => spot.id).join(', ');
    const what = whatOf(group[0] as Spot);
    return [
      {
        ...piecesOf(job, 'relay', at, what, kit.parts.relay, group.length, kit.spares.relay * group.length),
        each: relayPrice(e, runOf(e.design, group[0] as Spot)),
      },
      piecesOf(job, 'relay socket', at, 'Socket for that relay', kit.parts.relay_socket, group.length),
    ];
  });
}

/** What an end of a wire needs. Null where it goes into a splice, which is a part of its own. */
export function terminalFor(
  piece: Piece,
  end: 'from' | 'to',
  { result }: Pick<Job, 'result'>,
): string | null {
  const own = end === 'from' ? piece.fromTerminal : piece.toTerminal;
  if (own !== null) return own;
  const { spot, terminal }: End = piece[end];
  const { design } = result.evaluation;
  switch (spot.kind) {
    case 'splice':
      return null;
    case 'plus':
      return 'ring for the battery post or stud, hole ____';
    case 'minus':
      return 'ring for the battery post or ground stud, hole ____';
    case 'ground':
      return 'ring for the common ground point, hole ____';
    case 'chassis':
      return 'ring for engine ground, hole ____';
    case 'fuse':
      return 'terminal of the fuse holder';
    case 'coil':
      return 'contact of the coil connector';
    case 'trigger':
      return 'joint with the original ignition wire';
    default: {
      const tab = design.runs[runOf(design, spot)]?.relay?.tab;
      const width = terminal === '30' || terminal === '87' ? (tab ?? '____') : '____';
      return `receptacle for a relay tab of ${width} mm`;
    }
  }
}

function terminals(job: Job): Part[] {
  const { kit } = job.result.evaluation.design;
  const ends = job.harness.pieces.flatMap((piece) =>
    (['from', 'to'] as const).flatMap((end) => {
      const what = terminalFor(piece, end, job);
      const name = end === 'from' ? piece.fromTerminal : piece.toTerminal;
      return what === null ? [] : [{ gauge: printedSize(piece.gauge), what, name }];
    }),
  );
  return alike(ends, (end) => JSON.stringify(end)).map((group) => {
    const { gauge, what, name } = group[0] as (typeof ends)[number];
    const part = piecesOf(
      job,
      'terminal',
      '',
      `For ${gauge}: ${what}`,
      null,
      group.length,
      kit.spares.terminals,
      kit.samples,
    );
    return { ...part, each: namedPrice(job.result.evaluation.design, 'terminals', name) };
  });
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

function joints(job: Job): Part[] {
  const { kit } = job.result.evaluation.design;
  return [
    ...alike(spotsOf(job, 'splice'), (spot) => meeting(job, spot)).map((group) =>
      piecesOf(
        job,
        'splice',
        group.map((spot) => spot.id).join(', '),
        `Splice of ${meeting(job, group[0] as Spot)}, insulated and sealed`,
        kit.parts.splice,
        group.length,
      ),
    ),
    ...alike(spotsOf(job, 'ground'), (spot) => meeting(job, spot)).map((group) =>
      piecesOf(
        job,
        'ground point',
        group.map((spot) => spot.id).join(', '),
        `Stud with nut and lock washer, or splice, for ${meeting(job, group[0] as Spot)}`,
        kit.parts.ground,
        group.length,
      ),
    ),
  ];
}

function others(job: Job): Part[] {
  const { design } = job.result.evaluation;
  const { parts } = design.kit;
  const labels = job.harness.pieces.length * 2 + spotsOf(job, 'fuse').length + spotsOf(job, 'relay').length;
  return [
    piecesOf(
      job,
      'coil connector',
      '',
      'Connector that fits the coil, with its seals',
      parts.coil_connector,
      design.coils.length,
    ),
    piecesOf(job, 'label', '', 'Labels of wire ends, fuses and relays', parts.label, labels),
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
