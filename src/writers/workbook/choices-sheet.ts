/** The words and values that the lists in the cells of Inputs offer, a column for each kind of entry. */

import { address } from '../../basis/address.ts';
import type { Quantity } from '../../basis/quantity.ts';
import { CLOSES, MATERIALS, SERIES, SUPPRESSIONS } from '../../design/names.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { opening, type Page } from './page.ts';

export const CHOICES = 'Choices';

type Choice = string | number;

/** Every different value of a column of the tables. */
const column = (name: QuantityName): Choice[] => {
  const q: Quantity = QUANTITIES[name];
  if (q.kind !== 'column') throw new Error(`${name} is no column of a table`);
  return [...new Set(q.values.flat().filter((value) => value !== null) as Choice[])];
};
const rising = (values: readonly Choice[]): Choice[] => [...values].sort((a, b) => Number(a) - Number(b));

/** What can be chosen, by the entry that takes it. */
const LISTS = {
  stroke: [2, 4],
  series: SERIES,
  smallest: column('size_name'),
  run_gauge: ['auto', ...column('size_name')],
  run_smallest: column('size_name'),
  run_largest: column('size_name'),
  run_material: MATERIALS,
  run_insulation: column('insulation_name'),
  fuse_type: column('type_name'),
  fuse_given: ['auto', ...rising(column('fuse_size_rating'))],
  relay_given: ['auto', ...rising(column('relay_size_rating'))],
  relay_suppression: SUPPRESSIONS,
  relay_closes: CLOSES,
} as const satisfies Partial<Record<QuantityName, readonly Choice[]>>;

const NAMES = Object.keys(LISTS) as (keyof typeof LISTS)[];
const TOP = 4;

export const isChosen = (name: QuantityName): name is keyof typeof LISTS => Object.hasOwn(LISTS, name);

/** `Choices!$C$5:$C$9` */
export function choicesFor(name: keyof typeof LISTS): string {
  const at = NAMES.indexOf(name);
  return `${CHOICES}!${address(TOP, at)}:${address(TOP + LISTS[name].length - 1, at)}`;
}

export function choicesPage(): Page {
  const cells: Sheet = [];
  opening(
    cells,
    'Choices',
    'The choices that the cells of Inputs offer; sizes and ratings come from the tables.',
  );
  NAMES.forEach((name, i) => {
    put(cells, TOP - 1, i, { role: 'label', value: QUANTITIES[name].label });
    LISTS[name].forEach((value, j) => {
      put(cells, TOP + j, i, { role: 'given', value });
    });
  });
  return {
    name: CHOICES,
    kind: 'working',
    cells,
    widths: NAMES.map(() => 22),
    frozen: [TOP, 0],
    landscape: true,
    looks: [],
  };
}
