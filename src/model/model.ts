/**
 * The model: every quantity, once.
 *
 *   timing ─► coil ─► overlap ─► loads ─► conductor ─► drop
 *                                  │  ▲        ▲
 *                                  ▼  │        │
 *                             fuse, relay ─► sizing
 */
import { type Quantities, type Quantity, quantity } from '../basis/quantity.ts';
import { ampacity } from '../data/ampacity.ts';
import { awg } from '../data/awg.ts';
import { copper } from '../data/copper.ts';
import { fuseDistance } from '../data/fuse-distance.ts';
import { fuse } from '../data/fuses.ts';
import { sae } from '../data/sae.ts';
import { coil } from './coil.ts';
import { conductor } from './conductor.ts';
import { contacts } from './contact.ts';
import { drop } from './drop.ts';
import { fault } from './fault.ts';
import { floors } from './floors.ts';
import { fuses } from './fuse.ts';
import { limits } from './limits.ts';
import { loads } from './loads.ts';
import { overlap } from './overlap.ts';
import { parts } from './parts.ts';
import { plausible } from './plausible.ts';
import { protection } from './protection.ts';
import { readings } from './readings.ts';
import { reduction } from './reduction.ts';
import { relays } from './relay.ts';
import { sizing } from './sizing.ts';
import { sparks } from './sparks.ts';
import { stuck } from './stuck.ts';
import { survival } from './survival.ts';
import { sweep } from './sweep.ts';
import { tables } from './tables.ts';
import { timing } from './timing.ts';
import { totals } from './totals.ts';
import { windows } from './windows.ts';

const { fuse_T_ref, fuse_rerating, fuse_least_share } = fuse;
const { fuse_distance } = fuseDistance;
const { ampacity_ambient } = ampacity;

/** Subjects in the order of the flow. */
export const SUBJECTS = {
  timing,
  coil,
  plausible,
  overlap,
  sparks,
  loads,
  sweep,
  conductor,
  fuse: { ...fuses, fuse_T_ref, fuse_rerating, fuse_least_share, fuse_distance },
  relay: relays,
  contact: contacts,
  stuck,
  survival,
  floors,
  sizing,
  reduction,
  drop,
  fault,
  protection,
  windows,
  limits,
  totals,
  readings,
  parts,
  copper,
  tables: { ...tables, ...awg, ...sae, ampacity_ambient },
} as const satisfies Record<string, Quantities>;

type Union<T> = { [S in keyof T]: T[S] }[keyof T];
type Names<T> = T extends unknown ? keyof T : never;
export type QuantityName = Names<Union<typeof SUBJECTS>> & string;

export const QUANTITIES = Object.fromEntries(
  Object.values(SUBJECTS).flatMap((own: Quantities) =>
    Object.entries(own).map(([name, declared]) => [name, quantity(declared)]),
  ),
) as Readonly<Record<QuantityName, Quantity>>;

/**
 * Subjects that are laid out only when somebody asks for them, or the design has a use for them: they make the workbook larger
 * and no size depends on them.
 */
export const ON_REQUEST = ['readings', 'parts'] as const satisfies readonly (keyof typeof SUBJECTS)[];
export type OnRequest = (typeof ON_REQUEST)[number];

/** Names of the quantities to lay out: those of every evaluation, and of the subjects that are asked for. */
export const namesFor = (asked: readonly OnRequest[] = []): QuantityName[] =>
  (Object.entries(SUBJECTS) as [string, Quantities][])
    .filter(([subject]) => ![...ON_REQUEST].some((one) => one === subject && !asked.includes(one)))
    .flatMap(([, own]) => Object.keys(own) as QuantityName[]);
