/** The parts of the shop's file from which a workbook lets one choose by name, and which inputs follow the name. */

import type { At, Quantity } from '../../basis/quantity.ts';
import type { System } from '../../basis/shown.ts';
import type { Design } from '../../design/design.ts';
import { coilOfShop, fuseOfShop, relayOfShop } from '../../design/normalise.ts';
import {
  DROPS,
  type Kind,
  type ShopCoil,
  type ShopFuse,
  type ShopRelay,
  type Used,
} from '../../design/shop/shop.ts';
import { usedIn } from '../../design/shop/use.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { inputValue } from '../cell.ts';
import { ANEW } from './check.ts';

export type Device = 'coil' | 'fuse' | 'relay';
export const DEVICES = ['coil', 'fuse', 'relay'] as const;
/** The input in which the name of one stands. */
export const PART_OF = { coil: 'coil_part', fuse: 'fuse_part', relay: 'relay_part' } as const;

/** The device that is named in an input; none for an input of another kind. */
export const deviceNamed = (name: QuantityName): Device | undefined =>
  DEVICES.find((one) => PART_OF[one] === name);

/** Keys that are those of the place of a part, and not of the part. */
const OF_PLACE: Readonly<Record<Device, readonly string[]>> = {
  coil: ['use', 'temperature', 'series_resistor'],
  fuse: ['use', 'ambient', 'from_source'],
  relay: ['use', 'ambient', 'closes', 'trigger_drop'],
};
const KIND: Readonly<Record<Device, Kind>> = { coil: 'coils', fuse: 'fuses', relay: 'relays' };

/** What is no input and follows a key of the part. */
const TABLES: Partial<Record<QuantityName, readonly [Device, string]>> = {
  fuse_own_table: ['fuse', 'rerating'],
  fuse_hot_T: ['fuse', 'rerating'],
  fuse_hot_share: ['fuse', 'rerating'],
  relay_own_table: ['relay', 'derating'],
  relay_hot_T: ['relay', 'derating'],
  relay_hot_amps: ['relay', 'derating'],
};

/** The device whose value a quantity is, and the key of it; null where it is none of a part. */
export function keyOf(name: QuantityName): readonly [Device, string] | null {
  const q: Quantity = QUANTITIES[name];
  if (q.kind !== 'input') return TABLES[name] ?? null;
  const [, device = '', key = ''] = /^(?:runs\.\{run\}\.)?(coil|fuse|relay)\.(\w+)/.exec(q.path) ?? [];
  const own = DEVICES.find((one) => one === device);
  return own === undefined || OF_PLACE[own].includes(key) ? null : [own, key];
}

/** The part of the shop that the design uses as its coil, or in a run. */
export const usedAs = (design: Design, device: Device, { run }: At): Used | undefined =>
  device === 'coil'
    ? design.used.find(({ path }) => path === 'coil')
    : run === undefined
      ? undefined
      : usedIn(design, run, device);

/** The part that a value follows; null for one that stands by itself. */
export function followed(design: Design, name: QuantityName, at: At): { device: Device; used: Used } | null {
  const [device, key] = keyOf(name) ?? [];
  const used = device && usedAs(design, device, at);
  if (!used || !key || !holds(used, key)) return null;
  return heldFor(asUsed(design, device, at, used), name, at) === heldFor(design, name, at)
    ? { device, used }
    : null;
}

/** What a design has for a quantity, in metric units; null for nothing. */
export function heldFor(
  design: Design,
  name: QuantityName,
  at: At,
  system: System = 'metric',
): number | string | null {
  const q: Quantity = QUANTITIES[name];
  if (q.kind === 'input') return inputValue(design, q, at, system);
  const value = q.kind === 'structure' ? q.value(at as Required<At>, design) : '';
  return value === '' ? null : value;
}

const known = new WeakMap<Design, Map<string, Design>>();

/** The design with the part by itself: what stands beside its name may move what is taken where the shop says nothing. */
function asUsed(design: Design, device: Device, at: At, { name }: Used): Design {
  const own = known.get(design) ?? new Map<string, Design>();
  known.set(design, own);
  const key = `${device} ${at.run}`;
  const found = own.get(key) ?? withPart(design, device, at, name);
  own.set(key, found);
  return found;
}

/** Whether a key has the value of the part: it is not stated beside it, nor dropped by what is. */
const holds = ({ kind, stated }: Used, key: string): boolean =>
  ![...stated, ...stated.flatMap((own) => DROPS[kind]?.[own] ?? [])].includes(key);

/** Parts of the shop that a design could use in the place of the one it uses, those behind them that only stay where they are. */
export interface Offered {
  readonly free: readonly string[];
  readonly fixed: readonly string[];
}

/** All parts of one kind that the design knows by name. */
export const namesOf = ({ shop }: Design, device: Device): readonly string[] =>
  (shop?.[KIND[device]] ?? []).map(({ name }) => name);

/** Null where the design uses none by name. */
export function offered(design: Design, device: Device): Offered | null {
  const { shop, runs } = design;
  const places: At[] = device === 'coil' ? [{}] : runs.map((_, run) => ({ run }));
  const names = places.flatMap((at) => usedAs(design, device, at)?.name ?? []);
  if (names.length === 0) return null;
  const all: readonly { readonly name: string; readonly largest?: string; readonly curve?: unknown }[] =
    (shop?.[KIND[device]] ?? []) as [];
  // The connector of a coil bounds the wire at it; what a maker's curve moves is laid out for one.
  const connector = all.find(({ name }) => name === names[0])?.largest;
  const free = all.filter((part) =>
    device === 'coil' ? part.largest === connector : device === 'relay' || part.curve === undefined,
  );
  return {
    free: free.map(({ name }) => name),
    fixed: all.filter((part) => !free.includes(part) && names.includes(part.name)).map(({ name }) => name),
  };
}

/** Whether the run keeps its fuse, by the curve of which it is judged. */
export function isFixed(design: Design, device: Device, used: Used): boolean {
  return holds(used, 'curve') && (offered(design, device)?.fixed.includes(used.name) ?? false);
}

/** Why a part of the shop is not on the list of an input, and how one gets to it: a sentence, short enough for a cell’s message. */
export function elsewhere(design: Design, device: Device, used: Used): string {
  if (device === 'relay')
    return 'It holds all that were in the shop’s file: name another one in the design file';
  if (device === 'coil') {
    const largest = design.shop?.coils?.find(({ name }) => name === used.name)?.largest;
    const connector = largest === undefined ? 'says no largest wire' : `takes wire up to ${largest}`;
    return `It holds coils whose connector ${connector}: name another one in the design file`;
  }
  if (isFixed(design, device, used))
    return `The run is judged by its maker’s curve: once another fuse is typed, ${ANEW}`;
  return design.shop?.fuses?.some(({ curve }) => curve !== undefined)
    ? `Not on it: fuses with a maker’s curve. Once one is typed, ${ANEW}`
    : 'It holds the fuses of the types in this design: name another one in the design file';
}

/** The design with another part of the shop in the place of the one that it uses. */
export function withPart(design: Design, device: Device, { run = -1 }: At, name: string): Design {
  const part = design.shop?.[KIND[device]]?.find((one) => one.name === name);
  if (device === 'coil') return { ...design, coil: coilOfShop(part as ShopCoil, design.coil) };
  const highest = Math.max(...design.points.map(({ supply }) => supply));
  const runs = design.runs.map((own, i) => {
    if (i !== run) return own;
    return device === 'fuse'
      ? { ...own, fuse: own.fuse && fuseOfShop(part as ShopFuse, own.fuse) }
      : { ...own, relay: own.relay && relayOfShop(part as ShopRelay, own.relay, highest) };
  });
  return { ...design, runs };
}
