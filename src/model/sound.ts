/**
 * Whether sizes that a way has arrived at endure their shorts: at the begin of each run, where the current is largest,
 * and at its far end, where the fuse is slowest. Everything warm: enough to choose between ways, the last reduction is exact.
 */
import type { Formula } from '../basis/quantity.ts';
import { enduring, gateBelow, opening } from './curve-formulas.ts';

export type SoundName =
  | 'warm'
  | 'before'
  | 'start'
  | 'end'
  | 'start_gate'
  | 'end_gate'
  | 'amps'
  | 'load_T'
  | 'theta'
  | 'endures'
  | 'sound';

/** `way` names the quantities `…_size` and `…_ohm` of the sizes; `label` says which way it is. */
export function soundness(way: string, label: string): [string, Formula][] {
  const kind = 'formula';
  const own = (suffix: SoundName): string => `${way}_${suffix}`;
  const heated = { amps: own('amps'), load_T: own('load_T'), theta: own('theta') };
  const taken = (column: string): string => `INDEX(${column}[candidate], 1, ${way}_size)`;
  const fault = (supply: string, loop: string): string =>
    `IF(ISNUMBER(source_ohm), ${supply}/(source_ohm+chassis_ohm+${loop}), "")`;
  const gate = (current: string): string =>
    `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(${current}), ${gateBelow(current)}, 0), 0)`;
  const opens = (current: string, row: string): string =>
    opening(own(current as SoundName), own(row as SoundName));
  const all: Record<SoundName, Omit<Formula, 'kind'>> = {
    warm: {
      symbol: 'R',
      label: `${label}: warm resistance with joints, fuse and relay contact`,
      unit: 'ohm',
      shown: 'mohm',
      per: ['wire'],
      formula: `${way}_ohm*wire_length+fixed_ohm`,
    },
    before: {
      symbol: 'R_v',
      label: `${label}: resistance of the conductors before it`,
      unit: 'ohm',
      shown: 'mohm',
      per: ['wire'],
      formula: `SUM(${own('warm')}[wire ahead])`,
    },
    start: {
      symbol: 'I_k',
      label: `${label}: largest current of a short at the begin of the run`,
      unit: 'A',
      per: ['feed'],
      formula: fault('highest_supply', `MIN(${own('before')}[wire of run])+fuse_ohm`),
    },
    end: {
      symbol: 'I_k',
      label: `${label}: smallest current of a short at its far end`,
      unit: 'A',
      per: ['feed'],
      formula: fault(
        'lowest_supply',
        `SUMPRODUCT(MAX(${own('before')}[wire of run]+${own('warm')}[wire of run]))`,
      ),
    },
    start_gate: {
      symbol: 'g',
      label: `${label}: gate of the fuse at or below the former`,
      unit: '1',
      per: ['feed'],
      formula: gate(own('start')),
    },
    end_gate: {
      symbol: 'g',
      label: `${label}: gate of the fuse at or below the latter`,
      unit: '1',
      per: ['feed'],
      formula: gate(own('end')),
    },
    amps: {
      symbol: 'I_a',
      label: `${label}: ampacity of the candidate`,
      unit: 'A',
      per: ['feed'],
      formula: taken('candidate_amps'),
    },
    load_T: {
      symbol: 'T_0',
      label: `${label}: temperature of the candidate under load`,
      unit: 'degC',
      per: ['feed'],
      formula: taken('candidate_T'),
    },
    theta: {
      symbol: 'θ',
      label: `${label}: thermal time constant of the candidate`,
      unit: 's',
      shown: 's',
      per: ['feed'],
      formula: taken('candidate_theta'),
    },
    endures: {
      symbol: 'ok',
      label: `${label}: the fuse opens on both in time, and the candidate endures them (1), or not (0)`,
      unit: '1',
      per: ['feed'],
      formula:
        `IF(auto=1, IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(${own('start')}), IF(ISNUMBER(${own('load_T')}), ` +
        `IF(${opens('start', 'start_gate')}<=${enduring(own('start'), heated)}, ` +
        `IF(${opens('end', 'end_gate')}<=MIN(open_limit, ${enduring(own('end'), heated)}), 1, 0), 0), 0), 1), 1), 1)`,
    },
    sound: {
      symbol: 'ok',
      label: `${label}: every run that is sized endures its shorts (1), or not (0)`,
      unit: '1',
      formula: `MIN(${own('endures')}[feed])`,
    },
  };
  return Object.entries(all).map(([suffix, rest]) => [`${way}_${suffix}`, { kind, ...rest }]);
}
