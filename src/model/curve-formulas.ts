/**
 * The two time-current relations, as pieces of formulas and records: they are needed for chosen conductors, for
 * candidates and for every step of a curve, and must be the same everywhere.
 */
import type { Axis, Formula } from '../basis/quantity.ts';
import { PHYSICS } from '../basis/sources.ts';

/** Opening-time limit of the fuse of the run from which `opening` reads; 0 at currents at which it need never open. */
export const rowOf = (current: string, limits = 'opening_current[opening]', holds = 'fuse_holds'): string =>
  `IF(${current}<=${holds}, 0, MATCH(${current}, ${limits}, 1))`;

/**
 * Longest time after which the fuse of the run opens at `current`, straight in the logarithms beyond the limit `row`; by I²t
 * beyond the last one. `never` says of which rows it need not open at all.
 */
export const opening = (current: string, row: string, never: '=0' | '<2' = '=0'): string =>
  `IF(${row}${never}, no_end, INDEX(opening_slowest[opening],1,${row})*` +
  `(${current}/INDEX(opening_current[opening],1,${row}))^INDEX(slowest_slope[opening],1,${row}))`;

interface Place {
  readonly per: readonly Axis[];
  readonly across?: Axis;
}

export type WithstandingName = 'rise' | 'short' | 'overload' | 'withstood';

/**
 * How long a conductor of the run withstands `current`, where `known` holds: one time constant, resistance at the rating
 * of its insulation. Up to 5 s the short-circuit limit counts, beyond it the overload limit. A current that ends at a limit
 * but for `alike` never passes it: programs differ in the last digit of what stands on that edge. `label` says which
 * current, `mark` ends the symbols.
 */
export function withstanding<P extends string>(
  of: P,
  current: string,
  label: string,
  place: Place,
  known: string,
  mark: string,
): Readonly<Record<`${P}_${WithstandingName}`, Formula>> {
  const [rise, short, overload] = [`${of}_rise`, `${of}_short`, `${of}_overload`];
  const reaching = (room: string, symbol: string, limit: string): Formula => ({
    symbol,
    label: `${label}: the conductor reaches its ${limit} limit after`,
    unit: 's',
    shown: 's',
    ...place,
    formula: `IF(ISNUMBER(${rise}), IF(${rise}>${room}+alike*(${room}+load_rise), IF(${room}>0, -theta*LN(1-${room}/${rise}), 0), no_end), "")`,
    source: PHYSICS,
  });
  const all: Record<string, Formula> = {
    [rise]: {
      symbol: `ΔT_${mark}`,
      label: `${label}: rise of the conductor in the end above its temperature under load`,
      unit: 'K',
      ...place,
      formula: `IF(ISNUMBER(heating), IF(${known}, heating*${current}^2-load_rise, ""), "")`,
      source: PHYSICS,
    },
    [short]: reaching('short_room', `t_5s,${mark}`, 'short-circuit'),
    [overload]: reaching('overload_room', `t_6h,${mark}`, 'overload'),
    [`${of}_withstood`]: {
      symbol: `t_w,${mark}`,
      label: `${label}: a conductor of the run withstands it for`,
      unit: 's',
      shown: 's',
      ...place,
      formula: `IF(ISNUMBER(${rise}), IF(ampacity>0, MIN(${short}, MAX(open_limit, ${overload})), 0), "")`,
      source: PHYSICS,
    },
  };
  return all as Readonly<Record<`${P}_${WithstandingName}`, Formula>>;
}

/** Heat capacity of one metre over the heat that leaves it per kelvin. */
export const timeConstant = (area: string, amps: string, ohm: string): string =>
  `copper_heat*${area}*(rating-run_ambient)/(${amps}^2*${ohm}*(1+alpha_20*(rating-T_ref)))`;
