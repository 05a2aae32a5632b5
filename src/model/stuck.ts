/**
 * A driver that stays on: what it draws through the whole path of its coil, feed and return, when the first fuse on that
 * path opens, and how long each run withstands it. A driver that failed short, without drop and limit, likewise.
 */
import type { Formula, Quantities } from '../basis/quantity.ts';
import { ARBITRARY, DEFINITION, PHYSICS } from '../basis/sources.ts';
import { ends, RANGES } from '../design/ranges.ts';
import { opening, rowOf, type WithstandingName, withstanding } from './curve-formulas.ts';

type EndsName = 'row' | 'after' | 'ends';

/** When the first fuse on the path of each coil opens at the current `${of}_amps` of that coil. */
export const ending = <P extends string>(
  of: P,
  label: string,
  mark: string,
): Readonly<Record<`${P}_${EndsName}`, Formula>> => {
  const all: Record<string, Formula> = {
    [`${of}_row`]: {
      symbol: `g,${mark}`,
      label: `${label}: opening-time limit of the fuse of the run at or below it; 0 where it need never open`,
      unit: '1',
      per: ['event'],
      across: 'run',
      formula: `IF(meets_fuse=1, IF(ISNUMBER(${of}_amps), ${rowOf(`${of}_amps`)}, 0), 0)`,
      source: DEFINITION,
    },
    [`${of}_after`]: {
      symbol: `t_F,${mark}`,
      label: `${label}: the fuse of the run opens at the latest after`,
      unit: 's',
      shown: 's',
      per: ['event'],
      across: 'run',
      formula: opening(`${of}_amps`, `${of}_row`),
      source: PHYSICS,
    },
    [`${of}_ends`]: {
      symbol: `t_1,${mark}`,
      label: `${label}: the first fuse on the path opens at the latest after`,
      unit: 's',
      shown: 's',
      per: ['event'],
      formula: `MIN(${of}_after[run])`,
      source: PHYSICS,
    },
  };
  return all as Readonly<Record<`${P}_${EndsName}`, Formula>>;
};

type CaseName = 'amps' | 'current' | 'rms' | 'lasts' | WithstandingName | EndsName;

/** One way for a driver to stay on; `amps` is the current of each coil where `known` is a number. */
const staying = <P extends string>(
  of: P,
  label: string,
  mark: string,
  known: string,
  amps: string,
  note: string,
): Readonly<Record<`${P}_${CaseName}`, Formula>> => {
  const own: Record<string, Formula> = {
    [`${of}_amps`]: {
      symbol: `I,${mark}`,
      label: `${label}: current of the coil`,
      unit: 'A',
      per: ['event'],
      formula: `IF(ISNUMBER(${known}), ${amps}, "")`,
      source: PHYSICS,
      note,
    },
    [`${of}_current`]: {
      symbol: `I_1,${mark}`,
      label: `${label}: largest current of one coil through the run`,
      unit: 'A',
      per: ['run'],
      formula: `IF(ISNUMBER(${known}), SUMPRODUCT(MAX((path_length[event]>0)*${of}_amps[event])), "")`,
      source: PHYSICS,
    },
    [`${of}_rms`]: {
      symbol: `I_rms,${mark}`,
      label: `${label}: effective current of the run, the other coils and loads included`,
      unit: 'A',
      per: ['run'],
      formula: `IF(ISNUMBER(${of}_current), SQRT(${of}_current^2+2*${of}_current*others_average+others_square), "")`,
      source: PHYSICS,
    },
    [`${of}_lasts`]: {
      symbol: `t_l,${mark}`,
      label: `${label}: lasts at most, by the first fuse on the path`,
      unit: 's',
      shown: 's',
      per: ['run'],
      formula: `IF(ISNUMBER(${of}_current), MIN(longest_stuck, SUMPRODUCT(MAX((path_length[event]>0)*${of}_ends[event]))), "")`,
      source: PHYSICS,
      note: 'The fuse is read at the current of this coil alone; with the others it opens sooner.',
    },
  };
  const withstood = withstanding(
    of,
    `(${of}_rms/parallel)`,
    label,
    { per: ['run'] },
    `ISNUMBER(${of}_rms)`,
    mark,
  );
  return { ...own, ...withstood, ...ending(of, label, mark) } as Readonly<
    Record<`${P}_${CaseName}`, Formula>
  >;
};

export const stuck = {
  tolerance_ohm: {
    symbol: 't_R',
    label: 'Tolerance of the primary resistance, up and down',
    unit: '1',
    shown: '%',
    path: 'tolerance.coil_resistance',
    range: ends(RANGES.spread, '1'),
    source: ARBITRARY,
  },
  longest_stuck: {
    symbol: 't_day',
    label: 'Longest time for which a driver stays on',
    unit: 's',
    shown: 's',
    value: 86_400,
    source: ARBITRARY,
    note: 'One day: until then battery, fuel or coil are spent. It is compared with what a run withstands continuously.',
  },
  meets_fuse: {
    symbol: 'F',
    label: 'The run has a fuse, and the coil of this firing is fed through it (1), or not (0)',
    unit: '1',
    per: ['event'],
    across: 'run',
    value: (at, layout) =>
      layout.runs[at.run]?.fuse &&
      layout.wires.some((w) => w.run === at.run && w.coils.includes(layout.events[at.event]?.coil ?? -1))
        ? 1
        : 0,
  },
  path_length: {
    symbol: 'ℓ_p',
    label: 'Length of the run on the path of this coil',
    unit: 'm',
    per: ['event'],
    across: 'run',
    formula: 'SUMPRODUCT(MMULT(carried[wire of run], wire_length[wire of run]))',
    source: DEFINITION,
  },
  ohm_least: {
    symbol: 'R_0',
    label: 'Least resistance of a primary that a design may state',
    unit: 'ohm',
    shown: 'mohm',
    value: RANGES.coil_resistance.from,
    source: ARBITRARY,
  },
  primary_low: {
    symbol: 'R_low',
    label: 'Primary resistance at its lower tolerance',
    unit: 'ohm',
    formula: 'IF(ISNUMBER(coil_ohm), coil_ohm*(1-tolerance_ohm), IF(ISNUMBER(current_limit), ohm_least, ""))',
    source: PHYSICS,
    note: 'Where it is not known a current limit still bounds what a driver stuck on draws.',
  },
  stuck_alone: {
    symbol: 'I_0',
    label: 'Driver stuck on: current through the primary and the resistor before it alone',
    unit: 'A',
    per: ['point'],
    formula: 'IF(ISNUMBER(primary_low), drive/(primary_low+series_ohm), 0)',
    source: PHYSICS,
  },
  stuck_worst: {
    symbol: 'p_w',
    label: 'No point has a larger one (1) or one has (0)',
    unit: '1',
    per: ['point'],
    formula: 'IF(stuck_alone>=MAX(stuck_alone[point])*(1-alike), 1, 0)',
    source: DEFINITION,
  },
  stuck_point: {
    symbol: 'p_st',
    label: 'Driver stuck on: number of the point at which it draws most',
    unit: '1',
    formula: 'MATCH(1, stuck_worst[point], 0)',
    source: DEFINITION,
    note: 'The one with the highest supply; where a resistor before the coil is bridged at some points a lower supply can draw more.',
  },
  stuck_ohm: {
    symbol: 'R_st',
    label: 'Resistance of the primary at its lower tolerance and of the resistor before it, at that point',
    unit: 'ohm',
    formula: 'IF(ISNUMBER(primary_low), primary_low+INDEX(series_ohm[speed], stuck_point, 1), "")',
    source: PHYSICS,
  },
  stuck_volts: {
    symbol: 'V_st',
    label: 'Voltage that drives the current of a driver stuck on',
    unit: 'V',
    formula: 'INDEX(drive[speed], stuck_point, 1)',
    source: PHYSICS,
  },
  driver_limit: {
    symbol: 'I_dr',
    label: 'Current that the driver, or the primary with the resistor before it alone, lets through',
    unit: 'A',
    formula: 'IF(ISNUMBER(current_limit), current_limit, IF(ISNUMBER(stuck_ohm), stuck_volts/stuck_ohm, ""))',
    source: PHYSICS,
  },
  path_cold: {
    symbol: 'R_p,20',
    label: 'Resistance of the coil’s path, cold',
    unit: 'ohm',
    shown: 'mohm',
    per: ['event'],
    formula: 'SUMPRODUCT(MMULT(carried[wire], cold_ohm[wire]))',
    source: PHYSICS,
  },
  wire_coils: {
    symbol: 'n_c',
    label: 'Coils carried',
    unit: '1',
    per: ['wire'],
    value: (at, layout) => layout.wires[at.wire]?.coils.length ?? 0,
  },
  wire_others_average: {
    symbol: 'I_o,w',
    label: 'Average current of the other coils and loads',
    unit: 'A',
    per: ['wire', 'point'],
    formula: 'average-(average-run_also)/wire_coils',
    source: PHYSICS,
  },
  wire_others_square: {
    symbol: 'I_o,w²',
    label: 'Square of the effective current of the other coils and loads, at most',
    unit: 'A^2',
    per: ['wire', 'point'],
    formula: 'MAX(0, effective^2-wire_firings/wire_coils*INDEX(product_all[lag],1,1)/cycle_time)',
    source: PHYSICS,
    note: 'What the coil itself has in common with the others is left in: cautious.',
  },
  others_average: {
    symbol: 'I_o',
    label: 'Largest average current of the other coils and loads in the run',
    unit: 'A',
    per: ['run'],
    formula: 'MAX(wire_others_average[wire of run,point])',
    source: DEFINITION,
  },
  others_square: {
    symbol: 'I_o²',
    label: 'Largest square of the effective current of the other coils and loads in the run',
    unit: 'A^2',
    per: ['run'],
    formula: 'MAX(wire_others_square[wire of run,point])',
    source: DEFINITION,
  },
  ...staying(
    'stuck',
    'Driver stuck on',
    'st',
    'stuck_ohm',
    'MIN(driver_limit, stuck_volts/(stuck_ohm+path_cold))',
    'Supply less the drop of the driver, over the primary at its lower tolerance, the resistor before it and the cold path, at most the current limit.',
  ),
  ...staying(
    'failed',
    'Driver failed short',
    'sc',
    'coil_ohm',
    'INDEX(supply[speed], stuck_point, 1)/(stuck_ohm+path_cold)',
    'Neither drop nor limit of the driver are left.',
  ),
  stuck_opening: {
    symbol: 't_F,r',
    label: 'Driver stuck on: the fuse of this run opens at the latest after',
    unit: 's',
    shown: 's',
    per: ['run'],
    formula: 'IF(fused=1, SUMPRODUCT(MAX(meets_fuse[event]*stuck_after[event])), "")',
    source: PHYSICS,
  },
  stuck_most: {
    symbol: 'I_st',
    label: 'Largest current of one coil whose driver stays on',
    unit: 'A',
    formula: 'IF(ISNUMBER(stuck_ohm), MAX(stuck_amps[event]), "")',
    source: PHYSICS,
  },
} as const satisfies Quantities;
