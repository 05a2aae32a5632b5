/** Names that a person’s own formulas may use: a short list in the units in which people read them, and every quantity. */
import { convert } from '../basis/units.ts';
import { namesFor, QUANTITIES, type QuantityName } from '../model/model.ts';

export interface Short {
  readonly name: string;
  readonly quantity: QuantityName;
  /** The same whatever units a design is shown in: a formula means the same everywhere. */
  readonly unit: string;
}

/** Each is one value, and has a cell of its own on the sheet Own. */
export const SHORT: readonly Short[] = [
  { name: 'copper', quantity: 'copper_total', unit: 'g' },
  { name: 'drop', quantity: 'worst_drop', unit: 'V' },
  { name: 'allowed_drop', quantity: 'drop_limit', unit: 'V' },
  { name: 'least_energy_kept', quantity: 'least_kept', unit: '%' },
  { name: 'current_average', quantity: 'worst_total', unit: 'A' },
  { name: 'joints', quantity: 'joints_total', unit: '1' },
];

/** Of these there is one for each run, in the order of the runs: `SUM(run_length)`, `INDEX(run_length,2,1)`. */
export const PER_RUN: readonly QuantityName[] = [
  'gauge',
  'area',
  'run_wires',
  'run_length',
  'run_insulation',
  'fuse_rating',
  'relay_rating',
  'run_drop',
];

export const inShort = ({ quantity, unit }: Short, value: number | null): number | null =>
  value === null ? null : value * convert(QUANTITIES[quantity].unit, unit);

/** What a spreadsheet program would take for the address of a cell: `A1`, `R1C1`, `R`, `C`. */
const ADDRESS = /^(?:[a-z]{1,3}\d+|r\d*(?:c\d*)?|c\d*)$/i;
export const isLegal = (name: string): boolean =>
  /^[A-Za-z_][A-Za-z0-9_]*$/.test(name) && !ADDRESS.test(name);

/** What a name stands for; capitals do not matter. */
export type Meant = { readonly short: Short } | { readonly quantity: QuantityName };

const ALL = new Map<string, Meant>([
  ...namesFor()
    .filter(isLegal)
    .map((quantity): [string, Meant] => [quantity.toLowerCase(), { quantity }]),
  ...SHORT.map((short): [string, Meant] => [short.name, { short }]),
]);

export const meantBy = (name: string): Meant | undefined => ALL.get(name.toLowerCase());
