/**
 * All published tables and constants, for those who walk through every one: the tests and the reference pages.
 */
import type { Quantities } from '../basis/quantity.ts';
import type { AnyTable } from '../basis/table.ts';
import { AMPACITY, ampacity, BUNDLE, ENGINE_SPACE } from './ampacity.ts';
import { AWG_SIZES, awg } from './awg.ts';
import { AMBIENT_CODES, CRANKING, LOWEST_DIPS, RESTING, SUPPLY_RANGES } from './climate.ts';
import { copper } from './copper.ts';
import { crimp, PULL_OUT_MIL, PULL_OUT_UL } from './crimps.ts';
import { DROP_SHARES, DROP_TEST, DROP_VOLTS, dropPractice } from './drop.ts';
import { FAA_FREE_AIR, FAA_FUSES, FAA_LENGTH_FOR_DROP, FAA_RESISTANCE, FAA_WIRE_FOR_DROP } from './faa.ts';
import { FAA_BUNDLE } from './faa-bundle.ts';
import { fuseDistance } from './fuse-distance.ts';
import { FUSE_LIMITS } from './fuse-limits.ts';
import { FUSE_COLOURS, FUSE_RATINGS } from './fuse-ratings.ts';
import { FUSE_DROP, FUSE_PULSES, FUSE_RERATING, FUSE_TYPES, fuse } from './fuses.ts';
import { SOLID_AWG } from './handbook.ts';
import { IEC_60228_CLASS_5 } from './iec60228.ts';
import { CABLE_SIZES, CONDUCTOR_TYPES, INSULATION_CLASSES, SHORT_CIRCUIT_LIMITS } from './insulation.ts';
import { NEC_TABLE_8 } from './nec.ts';
import { NEC_AMBIENT } from './nec-ambient.ts';
import {
  FLAT_TABS,
  RELAY_CLASSES,
  RELAY_DERATING,
  RELAY_LOAD_FACTORS,
  RELAY_RATINGS,
  RELAY_SHARES,
  relay,
  SUPPRESSION,
  TERMINALS,
} from './relays.ts';
import { SAE_SIZES, sae } from './sae.ts';

export const ALL_TABLES: Readonly<Record<string, AnyTable>> = {
  AWG_SIZES,
  SAE_SIZES,
  IEC_60228_CLASS_5,
  SOLID_AWG,
  NEC_TABLE_8,
  AMPACITY,
  ENGINE_SPACE,
  BUNDLE,
  NEC_AMBIENT,
  INSULATION_CLASSES,
  CABLE_SIZES,
  CONDUCTOR_TYPES,
  SHORT_CIRCUIT_LIMITS,
  FUSE_TYPES,
  FUSE_RATINGS,
  FUSE_COLOURS,
  FUSE_DROP,
  FUSE_LIMITS,
  FUSE_PULSES,
  FUSE_RERATING,
  RELAY_RATINGS,
  RELAY_LOAD_FACTORS,
  RELAY_DERATING,
  RELAY_SHARES,
  RELAY_CLASSES,
  FLAT_TABS,
  SUPPRESSION,
  TERMINALS,
  DROP_VOLTS,
  DROP_SHARES,
  DROP_TEST,
  PULL_OUT_UL,
  PULL_OUT_MIL,
  FAA_FUSES,
  FAA_RESISTANCE,
  FAA_WIRE_FOR_DROP,
  FAA_LENGTH_FOR_DROP,
  FAA_FREE_AIR,
  FAA_BUNDLE,
  AMBIENT_CODES,
  SUPPLY_RANGES,
  CRANKING,
  LOWEST_DIPS,
  RESTING,
};

/** Constants that are published or follow from a definition, by the file that holds them. */
export const ALL_CONSTANTS: Readonly<Record<string, Quantities>> = {
  copper,
  awg,
  sae,
  ampacity,
  fuse,
  fuseDistance,
  relay,
  dropPractice,
  crimp,
};
