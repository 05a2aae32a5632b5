/** One check of what a person left in an input: a formula that is 1 where it cannot be taken, and what the cell takes. */
import type { At, Input, OfKind, Quantity } from '../../basis/quantity.ts';
import type { System } from '../../basis/shown.ts';
import { printUnit } from '../../basis/units.ts';
import type { Design } from '../../design/design.ts';
import { type List, listOf } from '../../design/spelled.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { asEntered, boundsOf, entryUnit } from '../cell.ts';
import type { Label } from './labels.ts';

export interface Check {
  /** The entry that is named. */
  readonly name: QuantityName;
  readonly at: At;
  /** Without the equals sign; `#` stands for the cell of the entry. */
  readonly wrong: string;
  /** The end of a sentence that says what the cell takes. */
  readonly takes: string;
  /** The label that stands beside it: then that is looked at, and `wrong` says nothing. */
  readonly label?: Label;
}

/** Where a design file would take a value of its own, or needs one: an empty cell would compute with none. */
const NEEDED: readonly QuantityName[] = [
  'stroke',
  'cylinders',
  'rest',
  'event_angle',
  'point_rpm',
  'point_supply',
  'dwell_time',
  'coil_ohm_20',
  'coil_T',
  'driver_drop',
  'energy_limit',
  'series',
  'smallest',
  'run_gauge',
  'parallel',
  'run_also',
  'run_insulation',
  'run_ambient',
  'run_bundle',
  'run_joints',
  'run_contacts',
  'wire_length',
  'wire_load_limit',
  'joint_ohm',
  'plug_ohm',
  'fuse_load_limit',
  'drop_limit',
  'tolerance_ohm',
  'tolerance_henry',
  'tolerance_dwell',
  'tolerance_length',
  'tolerance_joint',
  'coil_warmer',
];
/** Where a device is there, these of it are, too. */
const NEEDED_OF: Readonly<Record<string, readonly QuantityName[]>> = {
  fuse: ['fuse_type', 'fuse_given', 'fuse_ambient'],
  relay: [
    'relay_given',
    'relay_ambient',
    'relay_closes',
    'relay_contact_ohm',
    'relay_rise',
    'relay_trigger_drop',
    'relay_pull_in_20',
    'relay_coil_max',
  ],
};
/** These are counts. */
const WHOLE: readonly QuantityName[] = ['parallel', 'run_bundle', 'run_joints', 'run_contacts'];

/** Device whose input it is; null for one that stands by itself. */
export const deviceOf = ({ path }: Input): 'fuse' | 'relay' | null =>
  (/^runs\.\{run\}\.(fuse|relay)\./.exec(path)?.[1] as 'fuse' | 'relay' | undefined) ?? null;

/** `a number of 1 to 1000 A`, `a word of its list`. */
function taken(name: QuantityName, q: OfKind<'input'>, list: List | null, system: System): string {
  if (q.unit === 'text')
    return list === 'size' || list === 'sizeOrAuto' ? 'a size of its list' : 'a word of its list';
  const [from, to] = boundsOf(q, system);
  const unit = printUnit(entryUnit(q, system));
  const kind = WHOLE.includes(name) ? 'a whole number' : 'a number';
  return `${kind}${from === undefined ? '' : ` of ${from} to ${to}`}${unit === '' ? '' : ` ${unit}`}${list === 'auto' ? ', or auto' : ''}`;
}

/** What an entry by itself must be; `row` is the formula of its row among the spellings. */
export function alone(
  design: Design,
  name: QuantityName,
  at: At,
  made: number | string | null,
  row: string | null,
  system: System,
): Check {
  const q = QUANTITIES[name] as Quantity & { kind: 'input' };
  const list = listOf(q.path);
  const device = deviceOf(q);
  const there = device === null || design.runs[at.run ?? -1]?.[device] != null;
  if (name === 'cylinders' || name === 'stroke')
    return {
      name,
      at,
      wrong: `IF(#=${made},0,1)`,
      takes: `takes ${made}: another number needs another workbook`,
    };
  if (!there || (q.path.startsWith('sweep.') && design.sweep === null))
    return {
      name,
      at,
      wrong: 'IF(#="",0,1)',
      takes: `takes nothing: this workbook has no room for a ${device ?? 'sweep'} here; ${ANEW}`,
    };
  const sparks = q.path.startsWith('ignition.sparks.');
  if (sparks && design.ignition.sparks === null)
    return {
      name,
      at,
      wrong: 'IF(#="",0,1)',
      takes: 'takes nothing: how many further sparks there are, the design says',
    };
  const needed =
    NEEDED.includes(name) ||
    (device !== null && (NEEDED_OF[device] as readonly string[]).includes(name) && made !== null) ||
    q.path.startsWith('sweep.') ||
    sparks;
  // Beside a peak alone nobody needs to know the resistance.
  const missing = name === 'coil_ohm_20' ? 'IF(ISNUMBER(peak_alone),0,1)' : needed ? 1 : 0;
  const word = row === null ? '1' : `IF(${row}>0,0,1)`;
  const [from, to] = (q.range ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]).map((end) =>
    asEntered(end, q, system),
  );
  const whole = WHOLE.includes(name) ? 'IF(#=INT(#),0,1)' : '0';
  const figure = q.unit === 'text' ? '1' : `IF(#<${from},1,IF(#>${to},1,${whole}))`;
  return {
    name,
    at,
    wrong: `IF(ISNUMBER(#),${figure},IF(#="",${missing},${word}))`,
    takes: `takes ${taken(name, q, list, system)}${needed ? '' : ', or nothing'}${needed && device !== null ? `; for no ${device}, with all of its cells empty, ${ANEW}` : ''}`,
  };
}

/** What makes a workbook for another layout from one that a person edited. */
export const ANEW = '“coilfeed size THIS.xlsx --out NEW.xlsx” makes one for the change';
